import { lastOf } from '@haversack/language/checks/fixes';
import type { Edit } from '@haversack/language/checks/check';
import type { Added, Change, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, ClassSheet, CourseSheet, Mention, Range } from '@haversack/language/sheets/sheet';

/** Changes that a mend or an action writes, as sheets to try them and as lines to write them down. */

const nowhere: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
const named = (name: string): Mention => ({ name, at: nowhere });
const nothing: Added = { steps: [], introduces: [], practises: [], checks: [], needs: [], cautions: [], words: [], parts: [] };

/** A change with the lines that say it; a deeper line begins with two blanks for each step in. */
export interface ChangeToWrite {
    change: WrittenChange;
    lines: string[];
}

function written(change: Change, ...lines: string[]): ChangeToWrite {
    return { change: { ...change, head: nowhere, at: nowhere }, lines };
}

export function skipLesson(lesson: string): ChangeToWrite {
    return written({ does: 'skip lesson', lesson: named(lesson) }, `skip lesson ${lesson}`);
}

export function skipPart(lesson: string, part: string): ChangeToWrite {
    return written({ does: 'skip activity', activity: { lesson: named(lesson), part: named(part), at: nowhere } }, `skip activity ${lesson}.${part}`);
}

export function moveLesson(lesson: string, side: 'after' | 'before', anchor: string): ChangeToWrite {
    return written({ does: 'move lesson', lesson: named(lesson), side, anchor: named(anchor) }, `move ${lesson} ${side} ${anchor}`);
}

export function addObjective(lesson: string, does: readonly ('introduces' | 'checks')[], objective: string): ChangeToWrite {
    const added: Added = { ...nothing, ...Object.fromEntries(does.map(word => [word, [named(objective)]])) };
    return written({ does: 'add to lesson', lesson: named(lesson), added }, `add to ${lesson}`, '  objectives', ...does.map(word => `    ${word} ${objective}`));
}

export function addWord(lesson: string, word: string): ChangeToWrite {
    return written({ does: 'add to lesson', lesson: named(lesson), added: { ...nothing, words: [named(word)] } }, `add to ${lesson}`, `  words ${word}`);
}

/** Behind the last change of the last adaptation of the class and course; without one, in a new adaptation behind the class. */
export function writeForClass(changes: readonly ChangeToWrite[], group: ClassSheet, course: CourseSheet, programme: Programme): Edit {
    const own = [...programme.adaptations.values()].filter(({ of, forClass }) => of?.name === course.name && forClass?.name === group.name).at(-1);
    if (own) return writeInto(own, changes.flatMap(({ lines: [first = '', ...under] }) => [first + asOf(course, own), ...under]));
    const edition = course.edition === undefined ? '' : ` edition ${course.edition}`;
    const head = `adaptation ${freeName(`${group.name}-changes`, programme)} of ${course.name}${edition} for ${group.name}`;
    return { uri: group.uri, afterLine: group.whole.end.line, like: group.at.start.line, deeper: 0, lines: ['', head, ...changes.flatMap(({ lines }) => lines.map(line => `  ${line}`))] };
}

/** In an adaptation of an earlier edition: the line is written with the course as it is now in mind. */
function asOf({ edition }: CourseSheet, adaptation: AdaptationSheet): string {
    return edition === undefined || adaptation.edition === undefined || adaptation.edition === edition ? '' : ` as of edition ${edition}`;
}

/** Behind one of the changes of an adaptation. */
export function writeAfter({ change, adaptation }: { change: WrittenChange; adaptation: AdaptationSheet }, lines: readonly string[]): Edit {
    return { uri: adaptation.uri, afterLine: change.at.end.line, like: change.at.start.line, deeper: 0, lines: [...lines] };
}

function writeInto(adaptation: AdaptationSheet, lines: readonly string[]): Edit {
    const last = lastOf(adaptation.changes.map(({ at }) => at));
    if (last) return { uri: adaptation.uri, afterLine: last.end.line, like: last.start.line, deeper: 0, lines: [...lines] };
    const { line } = adaptation.at.start;
    return { uri: adaptation.uri, afterLine: line, like: line, deeper: 1, lines: [...lines] };
}

function freeName(wanted: string, { adaptations }: Programme): string {
    let name = wanted;
    for (let next = 2; adaptations.has(name); next++) name = `${wanted}-${next}`;
    return name;
}
