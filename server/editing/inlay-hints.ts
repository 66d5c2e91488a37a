import type { LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint, InlayHintParams, Position } from 'vscode-languageserver-protocol';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { asCommonNoun } from '@haversack/language/sheets/titles';
import type { CourseSheet, FileSheet, LessonSheet, Range } from '@haversack/language/sheets/sheet';
import type { ClassTerm } from '../plan-checks/term.js';
import { meetingsOf } from '../plan-checks/meetings.js';
import type { ThingFigures } from '../planning/figures.js';
import { weekOfLesson } from '../planning/schedule.js';
import { taughtAs, weekOfTaught } from '../planning/taught-as.js';
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
        const term = this.services.terms.of(course.uri).latest(this.services.client.refreshesHints).find(({ group }) => group.teaches?.name === course.name);
        if (!term) return [];
        const first = firstMeetings(term);
        return course.units.flatMap(({ lessons }) => lessons).flatMap(({ name, at }) => {
            const { names, leftOut } = taughtAs(name, term.adapted);
            if (leftOut) return [hint(at, 'left out', `${leftOut.says}, for ${term.group.title}`)];
            const label = names.flatMap(own => first.get(own) ?? [])[0];
            return label === undefined ? [] : [hint(at, label, `When ${term.group.title} is taught it`)];
        });
    }

    /** What an adaptation brings to a line in place of its thing is named. */
    private amountsOf(lesson: LessonSheet): InlayHint[] {
        const terms = this.services.terms.of(lesson.uri).latest(this.services.client.refreshesHints);
        const term = terms.find(({ adapted, schedule }) => weekOfTaught(schedule, taughtAs(lesson.name, adapted)) !== undefined);
        if (!term) return [];
        const needs = [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)].filter(({ per }) => per !== undefined && per.who !== 'class');
        const amounts = needs.length === 0 ? new Map<number, LineAmount>() : this.amountsByLine(lesson, term);
        return needs.flatMap(need => {
            const amount = amounts.get(need.at.start.line);
            if (!amount) return [];
            const { thing, week } = amount;
            const short = thing?.missing && thing.atHand ? `, ${thing.atHand.text} at hand` : '';
            const other = need.options.some(option => option.thing.name === amount.name) ? '' : ` ${asCommonNoun(amount.title)}`;
            return [hint(need.at, `${amount.text}${other} in all${short}`, `For ${term.group.title} in week ${week}`)];
        });
    }

    /** Of the lines of a lesson's own file, wherever the class is taught them; the first time where that is more than once. */
    private amountsByLine({ name, uri }: LessonSheet, { adapted, group }: ClassTerm): Map<number, LineAmount> {
        const amounts = new Map<number, LineAmount>();
        const plans = this.services.plans.of(uri);
        for (const taught of taughtAs(name, adapted).names) {
            const week = weekOfLesson(plans.schedule(group.name), taught);
            if (week === undefined) continue;
            const brief = plans.brief(week, group.name);
            const figures = brief.lessons.filter(one => one.name === taught);
            const things = new Map(brief.fetch.flatMap(({ things: all }) => all).map(thing => [thing.name, thing]));
            for (const need of figures.flatMap(({ needs, parts }) => [...needs, ...parts.flatMap(part => part.needs)])) {
                const { line } = need.place.range.start;
                if (need.place.uri === uri && !amounts.has(line)) amounts.set(line, { name: need.name, title: need.title, text: need.amount.text, thing: things.get(need.name), week });
            }
        }
        return amounts;
    }
}

interface LineAmount {
    name: string;
    title: string;
    text: string;
    thing?: ThingFigures;
    week: number;
}

function firstMeetings({ schedule }: ClassTerm): Map<string, string> {
    const first = new Map<string, string>();
    for (const { lessons, label, date } of meetingsOf(schedule)) {
        for (const name of lessons) if (date !== undefined && !first.has(name)) first.set(name, label);
    }
    return first;
}

/** Behind a remark too, where it cannot be taken for text. */
function endOfLine(line: number, text: TextDocument): Position {
    const words = text.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    return { line, character: words.replace(/[\r\n]+$/, '').length };
}

function hint(at: Range, label: string, tooltip: string): InlayHint {
    return { position: at.end, label, tooltip, paddingLeft: true };
}
