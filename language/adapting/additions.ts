import type { Added, Change } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Mention, PartSheet } from '../sheets/sheet.js';
import { namedApart } from './moved-parts.js';
import { lessonsOf } from './part-changes.js';
import { fromFile, markOf, marked, type Line, type Outcome, type WorkingCourse } from './working-course.js';
import { quoted } from '../facts/wording.js';

const nothing = 'it adds nothing';

/**
 * Of a lesson in pieces the piece with the anchor gets it all. Without an anchor new parts come before the closing checkpoint of the last piece, what is
 * checked to the last piece, everything else to the first.
 */
export function addToLesson(course: WorkingCourse, { lesson, side, anchor, added }: Extract<Change, { does: 'add to lesson' }>, line: Line): Outcome {
    const names = [...new Set(course.meant(lesson.name).map(({ name }) => name))].filter(name => course.sheet(name));
    const [first] = names;
    if (first === undefined) return course.missing(lesson);
    if (isNothing(added)) return { idle: nothing };
    if (anchor) {
        const found = course.parts({ lesson, part: anchor });
        const beside = side === 'before' ? found[0] : found.at(-1);
        if (!beside) return course.missingPart({ lesson, part: anchor });
        course.change(beside.lesson, [line.change, 'all', ...titlesIn(added, course)], sheet => withAdded(sheet, added, line, beside.index + (side === 'before' ? 0 : 1), course));
        return { touched: [beside.lesson] };
    }
    const last = names.at(-1)!;
    const early: Added = { ...added, parts: [], checks: [] };
    const late: Added = { ...added, steps: [], introduces: [], practises: [], needs: [], cautions: [], words: [] };
    for (const [name, own] of first === last ? [[first, added] as const] : [[first, early] as const, [last, late] as const]) {
        if (!isNothing(own)) course.change(name, [line.change, name === last ? 'last' : 'first', first === last, ...titlesIn(own, course)], sheet => withAdded(sheet, own, line, beforeClosing(sheet), course));
    }
    return { touched: names.filter(name => name === first ? !isNothing(first === last ? added : early) : name === last && !isNothing(late)) };
}

export function addToActivity(course: WorkingCourse, { activity, added }: Extract<Change, { does: 'add to activity' }>, line: Line): Outcome {
    const [found] = course.parts(activity);
    if (!found) return course.missingPart(activity);
    if (isNothing(added)) return { idle: nothing };
    course.change(found.lesson, [line.change, found.index], sheet => ({
        ...sheet, parts: sheet.parts.map((part, i): PartSheet => {
            if (i !== found.index) return part;
            const into = part.uri ?? sheet.uri;
            const { steps, needs, cautions } = linesOf(added, line, into);
            return { ...part, steps: [...part.steps, ...steps], needs: [...part.needs, ...needs], cautions: [...part.cautions, ...cautions] };
        })
    }));
    return { touched: lessonsOf([found]) };
}

/** They stand in the mark, so a sheet that was made hangs on them. */
function titlesIn({ introduces, practises, checks }: Added, course: WorkingCourse): string[] {
    return [introduces, practises, checks].flatMap(list => list.map(({ name }) => course.objective(name)));
}

function isNothing({ parts, needs, introduces, practises, checks, steps, cautions, words }: Added): boolean {
    return [parts, needs, introduces, practises, checks, steps, cautions, words].every(list => list.length === 0);
}

function beforeClosing({ parts }: LessonSheet): number {
    return parts.at(-1)?.kind === 'checkpoint' ? parts.length - 1 : parts.length;
}

function linesOf({ steps, needs, cautions }: Added, line: Line, into: string): Pick<Added, 'steps' | 'needs' | 'cautions'> {
    const { uri } = line.adaptation;
    const mark = markOf(line, 'added');
    return {
        steps: steps.map(step => marked(fromFile(step, uri, into), mark)),
        needs: needs.map(need => marked(fromFile(need, uri, into), mark)),
        cautions: cautions.map(caution => marked(fromFile(caution, uri, into), mark))
    };
}

function withAdded(sheet: LessonSheet, added: Added, line: Line, at: number, course: WorkingCourse): LessonSheet {
    const { uri } = line.adaptation;
    const { steps, needs, cautions } = linesOf(added, line, sheet.uri);
    const parts: PartSheet[] = [];
    for (const part of added.parts) {
        const apart = namedApart(part, [...sheet.parts, ...parts]);
        const own = apart === part && uri === sheet.uri ? part : { ...apart, ...(uri !== sheet.uri && { uri }), ...(apart !== part && { from: [{ lesson: sheet.name, part: part.name }] }) };
        parts.push(marked(own, markOf(line, 'added')));
    }
    const mentions = (own: readonly Mention[], more: readonly Mention[]): Mention[] => {
        const known = new Set(own.map(({ name }) => name));
        return [...own, ...more.filter(({ name }) => !known.has(name)).map(mention => fromFile(mention, uri, sheet.uri))];
    };
    const made: LessonSheet = {
        ...sheet,
        steps: [...sheet.steps, ...steps], needs: [...sheet.needs, ...needs], cautions: [...sheet.cautions, ...cautions],
        introduces: mentions(sheet.introduces, added.introduces), practises: mentions(sheet.practises, added.practises), checks: mentions(sheet.checks, added.checks),
        words: mentions(sheet.words, added.words),
        parts: [...sheet.parts.slice(0, at), ...parts, ...sheet.parts.slice(at)]
    };
    const objectives = [['introduces', added.introduces], ['practises', added.practises], ['checks', added.checks]] as const;
    const says = [...objectives.flatMap(([does, list]) => list.map(({ name }) => `${does} ${quoted(course.objective(name))}`)), ...added.words.map(({ name }) => `teaches the word ${quoted(name)}`)];
    return says.length === 0 ? made : marked(made, markOf(line, `also ${says.join(', ')}`));
}
