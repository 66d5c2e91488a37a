import type { LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Command } from 'vscode-languageserver-protocol';
import type { AdaptationSheet, ClassSheet, Declared, LessonSheet, MaterialSheet } from '@haversack/language/sheets/sheet';
import type { ClassTerm } from '../plan-checks/term.js';
import { dayInWords } from '../plan-checks/days.js';
import { meetingsOf } from '../plan-checks/meetings.js';
import { taughtAs, weekOfTaught } from '../planning/taught-as.js';
import { counted, listing } from '@haversack/language/facts/wording';
import type { HaversackServerServices } from '../workspace/services.js';
import { adaptationInWords, termOf } from './describe-change.js';
import { otherwiseTaught, toBuy } from './plan-facts.js';

const openLesson = 'haversack.brief.openLesson';
const openTerm = 'haversack.term.open';
const showChanges = 'haversack.showChanges';

/**
 * What the plan says of a lesson, a course, a class, an adaptation or a material, above its first line. With several classes the first of them that
 * it concerns speaks; the hover tells of all. A click opens the brief or the term, where the client has a command for it.
 */
export class HaversackCodeLenses implements CodeLensProvider {
    constructor(private readonly services: HaversackServerServices) {}

    async provideCodeLens(document: LangiumDocument): Promise<CodeLens[]> {
        if (!await this.services.client.isOn('codeLenses')) return [];
        const sheet = this.services.sheets.sheetOf(document);
        const terms = this.services.terms.of(document.uri).latest(this.services.client.refreshesLenses);
        if (terms.length === 0) return [];
        return [
            ...sheet.lessons.flatMap(lesson => this.lens(lesson, this.ofLesson(lesson, terms), openLesson, { uri: lesson.uri, line: lesson.at.start.line })),
            ...sheet.courses.flatMap(course => this.ofTerm(course, terms.find(({ group }) => group.teaches?.name === course.name))),
            ...sheet.classes.flatMap(group => this.ofTerm(group, terms.find(term => isSame(term.group, group)))),
            ...sheet.adaptations.flatMap(adaptation => this.ofAdaptation(adaptation, terms)),
            ...sheet.materials.flatMap(material => this.lens(material, ofMaterial(material, terms), openTerm, { thing: material.name }))
        ];
    }

    private ofLesson(lesson: LessonSheet, terms: readonly ClassTerm[]): string | undefined {
        const view = this.services.sheets.viewOf(lesson.uri);
        const without = terms.filter(({ adapted }) => adapted?.leftOut.has(lesson.name)).map(({ group }) => group.title);
        const leftOut = without.length > 0 && `left out for ${without.length > 2 ? counted(without.length, 'class', 'classes') : listing(without)}`;
        for (const term of terms) {
            const taught = taughtAs(lesson.name, term.adapted);
            const week = weekOfTaught(term.schedule, taught);
            if (week === undefined) continue;
            const minutes = taught.names.flatMap(name => term.taught.lessons.get(name)?.parts ?? []).reduce((sum, part) => sum + (part.minutes ?? 0), 0);
            const buy = toBuy(lesson, view.factsOf(lesson).there, term).length;
            return said([`week ${week}`, otherwiseTaught(taught, term), minutes > 0 && `${minutes} min`, buy > 0 && `${counted(buy, 'thing')} to buy`, leftOut]);
        }
        return leftOut || undefined;
    }

    private ofTerm(declared: Declared, term: ClassTerm | undefined): CodeLens[] {
        const meetings = term ? meetingsOf(term.schedule) : [];
        const first = meetings[0];
        if (!term || !first) return [];
        const { weeks, unplaced } = term.schedule;
        const words = said([
            `${counted(weeks.length, 'week')}, ${first.label} to ${meetings[meetings.length - 1]!.label}`,
            unplaced.length > 0 && `${counted(unplaced.length, 'lesson does', 'lessons do')} not fit`
        ]);
        return this.lens(declared, words, openTerm, { class: term.group.name });
    }

    private ofAdaptation(adaptation: AdaptationSheet, terms: readonly ClassTerm[]): CodeLens[] {
        const term = termOf(adaptation, terms);
        const ledger = term?.ledger;
        return ledger && adaptation.changes.length > 0 ? this.lens(adaptation, adaptationInWords(adaptation, ledger), showChanges, { class: term.group.name }) : [];
    }

    private lens({ at }: Declared, title: string | undefined, command: string, argument: object): CodeLens[] {
        if (title === undefined) return [];
        const behind: Command = this.services.client.has(command) ? { title, command, arguments: [argument] } : { title, command: '' };
        return [{ range: { start: { line: at.start.line, character: 0 }, end: at.end }, command: behind }];
    }
}

function ofMaterial({ name }: MaterialSheet, terms: readonly ClassTerm[]): string | undefined {
    for (const { supplies } of terms) {
        const record = supplies.record(name);
        if (!record?.runsOut) continue;
        const order = supplies.ordersFor(name).find(one => one.orderBy !== undefined);
        return said([`runs out in week ${record.runsOut.week}`, order && `order by ${dayInWords(order.orderBy!)}`]);
    }
    return undefined;
}

function said(parts: readonly (string | false | undefined)[]): string {
    return parts.filter(Boolean).join(' · ');
}

function isSame(a: ClassSheet, b: ClassSheet): boolean {
    return a.name === b.name && a.uri === b.uri;
}
