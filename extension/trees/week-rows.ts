import type { BuyThing, GatherThing, WeekAnswer } from '@haversack/server/protocol/programme';
import type { GatheringWeek, Standing, Ticks } from './ticks.js';

/** A row of the week's tree; its id stays the same from week to week, so that what is open stays so. A thing knows its week: another may be shown by the time that it is ticked. */
export type WeekRow =
    | { kind: 'group'; id: string; title: string; gathered: number; children: WeekRow[] }
    | { kind: 'thing'; id: string; thing: GatherThing; standing: Standing; week: GatheringWeek }
    | { kind: 'buying'; id: string; children: WeekRow[] }
    | { kind: 'buy'; id: string; thing: BuyThing };

/** The week's things by where they come from, each with whether it was gathered; below them what is to be bought. */
export function weekRows(answer: WeekAnswer, ticks: Ticks): WeekRow[] {
    const week = gatheringWeek(answer);
    const groups = answer.groups.map(({ source, title, things }): WeekRow => ({
        kind: 'group', id: source, title, gathered: ticks.gathered(week, things),
        children: things.map(thing => ({ kind: 'thing', id: `thing ${thing.name}`, thing, standing: ticks.standing(week, thing), week }))
    }));
    const times = new Map<string, number>();
    const buying = answer.buy.map((thing): WeekRow => {
        const nth = (times.get(thing.name) ?? 0) + 1;
        times.set(thing.name, nth);
        return { kind: 'buy', id: `buy ${thing.name} ${nth}`, thing };
    });
    return buying.length > 0 ? [...groups, { kind: 'buying', id: 'buying', children: buying }] : groups;
}

/** Makes rows say what others say, where those are the same rows of the same week in the same order. @returns the rows that differed; undefined, and nothing is changed, where the rows are others */
export function updateRows(rows: readonly WeekRow[], others: readonly WeekRow[]): WeekRow[] | undefined {
    if (!sameRows(rows, others)) return undefined;
    return rows.flatMap((row, index) => {
        const within = updateRows(childrenOf(row), childrenOf(others[index]!)) ?? [];
        const other = others[index]!;
        const whole = 'children' in row ? { ...other, children: row.children } : other;
        if (JSON.stringify(whole) === JSON.stringify(row)) return within;
        Object.assign(row, whole);
        return [row, ...within];
    });
}

function sameRows(rows: readonly WeekRow[], others: readonly WeekRow[]): boolean {
    return rows.length === others.length && rows.every((row, index) => {
        const other = others[index]!;
        return row.id === other.id && weekOf(row) === weekOf(other) && sameRows(childrenOf(row), childrenOf(other));
    });
}

const weekOf = (row: WeekRow): string => ('week' in row ? JSON.stringify(row.week) : '');

const childrenOf = (row: WeekRow): readonly WeekRow[] => ('children' in row ? row.children : []);

export function gatheringWeek({ programme, class: group, from, week }: WeekAnswer): GatheringWeek {
    return { programme, class: group?.name, from, week };
}

/** What was ticked or unticked, by the week that its rows stood in. */
export function tickedByWeek(rows: readonly { row: WeekRow; gathered: boolean }[]): Map<GatheringWeek, { name: string; amount: string; gathered: boolean }[]> {
    const weeks = new Map<GatheringWeek, { name: string; amount: string; gathered: boolean }[]>();
    for (const { row, gathered } of rows) {
        if (row.kind !== 'thing') continue;
        const { thing: { name, amount }, week } = row;
        weeks.set(week, [...weeks.get(week) ?? [], { name, amount, gathered }]);
    }
    return weeks;
}

export function thingsOf({ groups }: WeekAnswer): GatherThing[] {
    return groups.flatMap(({ things }) => things);
}
