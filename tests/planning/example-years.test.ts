/** The term of the year example holds: counted against its texts, read with nothing of ours. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readProgramme } from '../../server/cli/read-programme.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';

const text = (name: string): string => readFileSync(new URL(`../../examples/year/${name}`, import.meta.url), 'utf8');
const { programme } = (await readProgramme('examples/year')).view;

/** Names of the lessons of a course, in the order in which its text lists them. */
function lessonsOf(course: string): string[] {
    const [, block = ''] = new RegExp(`^course ${course} .*\\n((?:\\s*\\n| .*\\n?)*)`, 'm').exec(text('programme.course')) ?? [];
    return [...block.matchAll(/^ {4}([a-z]+-(?:\d+|fair))$/gm)].map(([, name]) => name!);
}

/** What the adaptations of a class make of that order, read off them by a person. */
const changed: Record<string, (listed: readonly string[]) => string[]> = {
    'friday-table': listed => {
        const earlier = ['sort-1', 'sort-2', 'sort-3'];
        const instead: Record<string, string[]> = { 'count-7': [...earlier, 'count-7'], 'sort-6': [], 'float-7': ['library-afternoon'], 'measure-9': ['measure-9', 'measure-9-part-2'] };
        return listed.filter(name => !earlier.includes(name)).flatMap(name => instead[name] ?? [name]);
    },
    'alder-house': listed => listed.flatMap(name => (name === 'sort-4' ? ['sort-4', 'market-visit'] : name === 'sort-6' ? [] : [name]))
};

/** Days on which the village or the class itself keeps no lessons, read off the calendar and the class by a person. */
const closed: Record<string, readonly string[]> = {
    millpond: ['2026-10-26', '2026-10-29', '2026-11-18', '2026-12-21', '2027-01-07', '2027-02-02', '2027-02-15', '2027-03-29', '2027-04-08', '2027-05-05', '2027-05-06'],
    'friday-table': ['2026-10-02', '2026-10-30', '2026-11-06', '2026-12-04', '2027-01-01', '2027-01-08', '2027-02-05', '2027-03-05', '2027-05-07'],
    'rook-lane': ['2026-12-21', '2027-01-08', '2027-04-05', '2027-04-09'],
    'alder-house': ['2026-10-29']
};
/** Days that the calendar only seems to close: a market, a choir, waste paper, a date left out, an event called off. */
const open: Record<string, readonly string[]> = {
    millpond: ['2026-09-08', '2026-09-10', '2026-09-07', '2026-12-07', '2026-12-08'], 'friday-table': ['2026-09-11', '2026-12-11'], 'rook-lane': ['2026-11-19'], 'alder-house': ['2026-12-17']
};

const terms = [['millpond', 'orchard-year', 120, '2027-06-17'], ['friday-table', 'friday-orchard', 48, '2027-05-28'], ['rook-lane', 'orchard-year', 120, '2027-05-28'], ['alder-house', 'first-orchard', 15, '2026-12-18']] as const;

describe.each(terms)('the term of %s', (name, course, count, ends) => {
    const schedule = planSchedule(programme, { class: name });
    const meetings = schedule.weeks.flatMap(week => week.meetings);

    test('teaches every lesson of the course once, in its order, before the term ends', () => {
        const listed = lessonsOf(course);
        expect(listed).toHaveLength(count);
        const first = meetings.flatMap(({ taught }) => taught.filter(({ why }) => why === undefined || why === 'fixed').map(({ lesson }) => lesson));
        expect(first).toEqual(changed[name]?.(listed) ?? listed);
        expect(schedule.unplaced).toEqual([]);
        expect(schedule.problems).toEqual([]);
        expect(meetings.at(-1)!.date! < ends).toBe(true);
    });

    test('keeps the days off and no others', () => {
        const dates = meetings.map(({ date }) => date);
        expect(closed[name]!.filter(day => dates.includes(day))).toEqual([]);
        expect(open[name]!.filter(day => !dates.includes(day))).toEqual([]);
    });

    test.each(['2026-08-20', '2026-09-07', '2026-11-25', '2027-03-01', '2027-08-01'])('is late with nothing, short of nothing and clashes with nobody on %s', today => {
        const { orders, shortages, clashes, costs } = planSupplies(programme, { class: name }, { today, schedule });
        expect(orders.length).toBeGreaterThan(name === 'alder-house' ? 0 : 10); // The short course buys only apples.
        expect(orders.filter(({ late }) => late).map(order => order.title)).toEqual([]);
        expect(shortages.map(({ title, meeting }) => `${title} ${meeting}`)).toEqual([]);
        expect(clashes.map(({ title, meeting }) => `${title} ${meeting}`)).toEqual([]);
        expect(costs.term.map(({ currency }) => currency)).toEqual(['EUR']);
        expect(costs.unpriced).toEqual([]);
        expect(orders.reduce((sum, { cost }) => sum + Number(cost?.minor ?? 0), 0)).toBe(Number(costs.term[0]!.minor));
    });
});

test('market day is on the day that is fixed, a Thursday, and the log moves what the lessons ask for', () => {
    const meetings = planSchedule(programme, { class: 'millpond' }).weeks.flatMap(week => week.meetings);
    const on = (date: string) => meetings.find(meeting => meeting.date === date)!.taught.map(({ lesson, why }) => [lesson, why]);
    expect(new Date('2027-03-11').getUTCDay()).toBe(4);
    expect(on('2027-03-11').map(([lesson]) => lesson)).toEqual(['market-8']);
    expect(on('2026-10-06').map(([lesson]) => lesson)).toEqual(['teens-3', 'teens-4']);
    expect(on('2026-10-19').map(([lesson]) => lesson)).toEqual(['teens-7', 'float-2']);
});
