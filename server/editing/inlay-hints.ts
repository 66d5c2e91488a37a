import type { LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintParams, Position } from 'vscode-languageserver-protocol';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { CourseSheet, FileSheet, LessonSheet, Range } from '@haversack/language/sheets/sheet';
import type { ClassTerm } from '../plan-checks/term.js';
import { meetingsOf } from '../plan-checks/meetings.js';
import type { LessonFigures } from '../planning/figures.js';
import type { HaversackServerServices } from '../workspace/services.js';

/**
 * Computed figures at the ends of lines, few: what a need comes to where it is more than the line says, and the day of a lesson in
 * the course. For the first class that is taught the course; details are in the hover.
 */
export class HaversackInlayHints implements InlayHintProvider {
    constructor(private readonly services: HaversackServerServices) {}

    async getInlayHints(document: LangiumDocument, { range }: InlayHintParams): Promise<InlayHint[]> {
        if (!await this.services.client.isOn('inlayHints')) return [];
        const sheet: FileSheet = this.services.sheets.sheetOf(document);
        const seen = ({ whole }: { whole: Range }): boolean => whole.start.line <= range.end.line && range.start.line <= whole.end.line;
        const hints = [
            ...sheet.courses.filter(seen).flatMap(course => this.daysOf(course)),
            ...sheet.lessons.filter(seen).flatMap(lesson => this.amountsOf(lesson))
        ];
        return hints.filter(({ position }) => range.start.line <= position.line && position.line <= range.end.line)
            .map(one => ({ ...one, position: endOfLine(one.position.line, document.textDocument) }));
    }

    private daysOf(course: CourseSheet): InlayHint[] {
        const term = this.services.terms.latest(this.services.client.refreshesHints).find(({ group }) => group.teaches?.name === course.name);
        if (!term) return [];
        const first = firstMeetings(term);
        return course.units.flatMap(({ lessons }) => lessons).flatMap(({ name, at }) => {
            const label = first.get(name);
            return label === undefined ? [] : [hint(at, label, `When ${term.group.title} is taught it`)];
        });
    }

    private amountsOf(lesson: LessonSheet): InlayHint[] {
        const term = this.services.terms.latest(this.services.client.refreshesHints).find(({ schedule }) => meetingsOf(schedule).some(({ lessons }) => lessons.includes(lesson.name)));
        const week = term && this.services.plans.weekOf(lesson.name, term.group.name);
        if (week === undefined) return [];
        const brief = this.services.plans.brief(week, term!.group.name);
        const figures = brief.lessons.find(({ name }) => name === lesson.name);
        const things = new Map(brief.fetch.flatMap(group => group.things).map(thing => [thing.name, thing]));
        const needs = [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)].filter(({ per }) => per !== undefined && per.who !== 'class');
        const amounts = figures ? amountsByLine(figures) : new Map<number, { name: string; text: string }>();
        return needs.flatMap(need => {
            const amount = amounts.get(need.at.start.line);
            const thing = amount && things.get(amount.name);
            if (!amount) return [];
            const short = thing?.missing && thing.atHand ? `, ${thing.atHand.text} at hand` : '';
            return [hint(need.at, `${amount.text} in all${short}`, `For ${term!.group.title} in week ${week}`)];
        });
    }
}

function firstMeetings({ schedule }: ClassTerm): Map<string, string> {
    const first = new Map<string, string>();
    for (const { lessons, label, date } of meetingsOf(schedule)) {
        for (const name of lessons) if (date !== undefined && !first.has(name)) first.set(name, label);
    }
    return first;
}

function amountsByLine({ needs, parts }: LessonFigures): Map<number, { name: string; text: string }> {
    return new Map([...needs, ...parts.flatMap(part => part.needs)].map(({ place, name, amount }) => [place.range.start.line, { name, text: amount.text }]));
}

/** Behind a remark too, where it cannot be taken for text. */
function endOfLine(line: number, text: TextDocument): Position {
    const words = text.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    return { line, character: words.replace(/[\r\n]+$/, '').length };
}

function hint(at: Range, label: string, tooltip: string): InlayHint {
    return { position: at.end, label, tooltip, paddingLeft: true };
}
