import type { Does } from '../coverage-figures.js';
import type { TrailStep } from '../figure.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import { whenOf, type Column, type CoveredMeeting } from './columns.js';
import type { Naming } from './namings.js';

/** An objective named in a lesson: one cell of the grid. */
export class Cell {
    constructor(readonly column: Column, private readonly index: number) {}

    get does(): Naming['does'] { return this.column.namings[this.index]!.does; }
    get places(): Naming['places'] { return this.column.namings[this.index]!.places; }
}

/** A cell at a meeting. */
export interface Visit {
    cell: Cell;
    at: CoveredMeeting;
    /** The lesson is taught once more. */
    again: boolean;
}

/** So many gaps are listed one by one; of more, the shortest and the longest are told. */
const listedGaps = 6;

/** What lessons do with an objective, meeting by meeting. */
export function visitsOf(cells: readonly Cell[]): Visit[] {
    const visits: Visit[] = [];
    for (const cell of cells) for (const at of cell.column.visits) visits.push({ cell, at, again: at !== cell.column.visits[0] });
    return visits.length > cells.length ? visits.sort((a, b) => a.at.meeting - b.at.meeting) : visits;
}

export function spacingOf(visits: readonly Visit[]): number[] {
    const gaps: number[] = [];
    visits.forEach((visit, i) => {
        const gap = visit.at.meeting - (visits[i - 1] ?? visit).at.meeting;
        if (gap > 0) gaps.push(gap);
    });
    return gaps;
}

/**
 * Whether gaps grow. Told as a fact only: Kang, Lindsey, Mozer and Pashler (2014) found expanding gaps no better at the final test than
 * equal ones.
 */
export function isWidening(spacing: readonly number[]): boolean | undefined {
    if (spacing.length < 2) return undefined;
    return spacing.every((gap, i) => gap >= (spacing[i - 1] ?? gap)) && spacing[spacing.length - 1]! > spacing[0]!;
}

export function visitsText(visits: readonly Visit[], spacing: readonly number[]): string {
    if (visits.length === 0) return 'in no lesson of this plan';
    const does = (what: Does): Visit[] => visits.filter(v => !v.again && v.cell.does.includes(what));
    const [introduced, practised, checked] = [does('introduces'), does('practises'), does('checks')];
    const again = visits.filter(v => v.again);
    const words = [introduced.length === 0 ? 'never introduced' : `introduced ${inWeeks(introduced.slice(0, 1))}`];
    if (practised.length > 0) words.push(`practised ${times(practised.length)} ${inWeeks(practised)}`);
    if (again.length > 0) words.push(`taught again ${times(again.length)} ${inWeeks(again)}`);
    words.push(checked.length === 0 ? 'never checked' : `checked ${inWeeks(checked)}`);
    return words.join(', ') + gapsText(spacing);
}

function gapsText(spacing: readonly number[]): string {
    if (spacing.length === 0) return '';
    if (spacing.length === 1) return `; visited again after ${counted(spacing[0]!, 'meeting')}`;
    const how = isWidening(spacing) ? 'widening gaps' : 'gaps';
    const [least, most] = [Math.min(...spacing), Math.max(...spacing)];
    if (spacing.length <= listedGaps) return `; visited at ${how} of ${listing(spacing.map(String))} meetings`;
    return `; visited at ${how} of ${least === most ? counted(least, 'meeting') : `${least} to ${most} meetings`}`;
}

function times(count: number): string {
    return count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;
}

function inWeeks(visits: readonly Visit[]): string {
    const weeks = [...new Set(visits.map(v => v.at.week))];
    if (weeks.length > 2) return `in weeks ${weeks[0]!} to ${weeks[weeks.length - 1]!}`;
    return `in ${weeks.length === 1 ? 'week' : 'weeks'} ${listing(weeks.map(String))}`;
}

/** "“Which is heavier?” introduces it (week 1, Mon 7 Sep)", then "4 meetings later: …". */
export function visitsTrail(visits: readonly Visit[]): TrailStep[] {
    return visits.map((visit, i) => {
        const gap = visit.at.meeting - (visits[i - 1] ?? visit).at.meeting;
        const { column, does, places } = visit.cell;
        const title = quoted(column.lesson.title);
        const what = visit.again ? `${title} is taught again` : `${title} ${listing(does)} it`;
        const words = i === 0 ? what : gap === 0 ? `at the same meeting: ${what}` : `${counted(gap, 'meeting')} later: ${what}`;
        return { words: `${words} (${whenOf(visit.at)})`, place: places[0]! };
    });
}
