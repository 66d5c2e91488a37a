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
