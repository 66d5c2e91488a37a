import { thingNamed } from '../sheets/programme.js';
import type { FileSheet, GameSheet, LessonSheet, Need, PartSheet, ThingSheet } from '../sheets/sheet.js';
import { measureOf } from './amounts-in.js';
import type { Edit } from './check.js';
import { inLessonHead } from './fixes.js';
import { kitFlagFor } from './kit-flags.js';
import { gameThings } from './lesson-facts.js';
import { declarationsOf, type ProgrammeView } from './programme-view.js';

/** A line under `materials`, and the edit that puts it there. */
export interface NeedToAdd {
    line: string;
    edit: Edit;
}

/** The line by which a lesson or a game says that it needs a thing, at the end of its materials; the block comes with it where there is none. */
export function needToAdd(thing: ThingSheet, to: LessonSheet | GameSheet, view: ProgrammeView, block: Pick<PartSheet, 'needs'> = to): NeedToAdd {
    const { needs } = block;
    const flag = to.kind === 'lesson' && thing.kind === 'material' ? kitFlagFor(thing.name, to, view) : undefined;
    const line = inColumns([thing.name, usualAmount(thing, view), flag ?? ''], needs);
    const last = needs.at(-1);
    const edit: Edit = last ? { uri: to.uri, afterLine: last.at.end.line, like: last.at.start.line, deeper: 0, lines: [line] } : withBlock(to, ['materials', `  ${line}`]);
    return { line: line.replace(/ {2,}/g, ' '), edit };
}

/**
 * What can be added to the materials of the lesson or game around a line: a material or a print that is not there yet. A book that a text names
 * need not lie on the table.
 */
export function needsToAddAt(file: FileSheet, line: number, view: ProgrammeView): (name: string) => NeedToAdd | undefined {
    const around = declarationsOf(file).filter(({ at }) => at.start.line <= line).sort((a, b) => b.at.start.line - a.at.start.line)[0];
    const to = file.lessons.find(lesson => lesson === around) ?? file.games.find(game => game === around);
    if (!to) return () => undefined;
    const there = to.kind === 'lesson' ? new Set([...view.factsOf(to).there, ...to.notNeeded.map(({ name }) => name)]) : gameThings(to, view.programme);
    const part = to.kind === 'lesson' ? to.parts.find(({ whole, needs }) => needs.length > 0 && whole.start.line <= line && line <= whole.end.line) : undefined;
    return name => {
        const thing = thingNamed(view.programme, name);
        const isNeeded = thing && thing.kind !== 'book' && !there.has(name) && !view.taughtWords.has(name) && !view.programme.unreadable.has(name);
        return isNeeded ? needToAdd(thing, to, view, part ?? to) : undefined;
    };
}

function withBlock(to: LessonSheet | GameSheet, lines: string[]): Edit {
    if (to.kind === 'lesson') return inLessonHead(to, lines);
    return { uri: to.uri, afterLine: to.found?.at.end.line ?? to.at.end.line, like: to.at.start.line, deeper: 1, lines, until: to.whole.end.line };
}

/** As most lessons ask for it; else one of it. How many grams are meant only the writer knows. */
function usualAmount(thing: ThingSheet, view: ProgrammeView): string {
    const other = view.usualNeeds.get(thing.name);
    if (other?.amount) {
        const { amount, per } = other;
        const who = per && (per.who === 'group' && per.size !== undefined ? `group of ${per.size}` : per.who);
        return [amount.value, amount.unit, who && `per ${who}`].filter(Boolean).join(' ');
    }
    if (thing.kind === 'print') return '1 per learner';
    if (thing.kind === 'book') return '1 per class';
    const measure = measureOf(thing, view);
    if (measure === 'pieces') return '1 per group';
    return typeof measure === 'object' && 'one' in measure ? `1 ${measure.one} per group` : '';
}

/** The pieces of a line in the columns that all of its neighbours keep: amounts below amounts, flags below flags. */
function inColumns(pieces: readonly string[], neighbours: readonly Need[]): string {
    const starts = neighbours.map(({ at }) => at.start.character);
    const columns = [undefined, columnOf(neighbours, starts, ({ amount }) => amount?.at.start.character), columnOf(neighbours, starts, ({ flagAt }) => flagAt?.start.character)];
    return pieces.reduce((line, piece, index) => {
        if (piece === '') return line;
        const column = columns[index];
        return line === '' ? piece : column === undefined ? `${line} ${piece}` : `${line.padEnd(column - 1)} ${piece}`;
    }, '');
}

/** Counted from where the lines begin; only where it is kept on purpose: by several lines of different lengths, or with more than one blank. */
function columnOf(neighbours: readonly Need[], starts: readonly number[], of: (need: Need) => number | undefined): number | undefined {
    const columns = new Set(neighbours.flatMap((need, index) => {
        const column = of(need);
        return column === undefined ? [] : [column - starts[index]!];
    }));
    const [column] = columns;
    if (columns.size !== 1 || column === undefined) return undefined;
    const endsOfNames = new Set(neighbours.map(({ options, at }) => (options.at(-1)?.at ?? at).end.character));
    return endsOfNames.size > 1 || neighbours.some(({ options, amount }) => amount && options.at(-1)?.at && amount.at.start.character > options.at(-1)!.at!.end.character + 1) ? column : undefined;
}
