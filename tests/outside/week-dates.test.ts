/** Calendar arithmetic against published ISO 8601 week dates. */
import { describe, expect, test } from 'vitest';
import { mondayOf, readDay } from '../../server/planning/calendar.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { course, klass, lesson, meets, on, programme } from '../planning/sheets.js';

// ISO 8601 week dates as published in tables of the standard's week calendar; computed again with Python's isocalendar.
const weekDates: [string, string][] = [
    ['2005-01-01', '2004-W53-6'], ['2005-01-02', '2004-W53-7'], ['2005-12-31', '2005-W52-6'], ['2006-01-01', '2005-W52-7'],
    ['2006-01-02', '2006-W01-1'], ['2007-01-01', '2007-W01-1'], ['2008-09-26', '2008-W39-5'], ['2008-12-28', '2008-W52-7'],
    ['2008-12-29', '2009-W01-1'], ['2008-12-31', '2009-W01-3'], ['2009-01-01', '2009-W01-4'], ['2009-12-31', '2009-W53-4'],
    ['2010-01-03', '2009-W53-7'], ['2010-01-04', '2010-W01-1'], ['2019-12-30', '2020-W01-1'], ['2022-12-31', '2022-W52-6'],
    ['2026-12-31', '2026-W53-4'], ['2027-01-01', '2026-W53-5']
];

/** Day 1 of a week date, from the standard's own definition: week 1 is the week that holds 4 January. */
function mondayOfWeekDate(text: string): string {
    const [, year = '', week = ''] = /^(\d+)-W(\d+)-\d$/.exec(text) ?? [];
    const fourth = new Date(Date.UTC(Number(year), 0, 4));
    const monday = fourth.getTime() - ((fourth.getUTCDay() + 6) % 7) * 864e5 + (Number(week) - 1) * 7 * 864e5;
    return new Date(monday).toISOString().slice(0, 10);
}

describe('weeks begin on Monday', () => {
    test.each(weekDates)('%s is %s', (date, weekDate) => {
        const day = readDay(date);
        expect(day?.dayOfWeek).toBe(Number(weekDate.slice(-1)));
        expect(day && mondayOf(day).toString()).toBe(mondayOfWeekDate(weekDate));
    });
});

test('a class that meets every day changes week exactly where the week date does, across a year of 53 weeks', () => {
    const names = Array.from({ length: 40 }, (_, i) => `day-${i}`);
    const schedule = planSchedule(programme(
        ...names.map(n => lesson(n)), course('c', names),
        klass('k', 'c', 5, { starts: on('2026-12-10'), meets: meets('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun') })
    ));
    const weeks = schedule.weeks.map(w => [w.from, w.to]);
    expect(weeks.slice(0, 5)).toEqual([
        ['2026-12-10', '2026-12-13'], ['2026-12-14', '2026-12-20'], ['2026-12-21', '2026-12-27'],
        ['2026-12-28', '2027-01-03'], // 2026-W53
        ['2027-01-04', '2027-01-10'] // 2027-W01
    ]);
});

// Weekdays in a month, counted by a script outside the project: September 2026 has 22, 21 without the 7th.
test.each([[[], 22], [['2026-09-07'], 21]] as const)('meeting days in September 2026 without %j: %d', (free, count) => {
    const names = Array.from({ length: 60 }, (_, i) => `day-${i}`);
    const schedule = planSchedule(programme(
        ...names.map(n => lesson(n)), course('c', names),
        klass('k', 'c', 5, {
            starts: on('2026-09-01'), meets: meets('mon', 'tue', 'wed', 'thu', 'fri'), off: free.map(date => ({ from: on(date), at: on(date).at }))
        })
    ));
    expect(schedule.weeks.flatMap(w => w.meetings).filter(m => m.date?.startsWith('2026-09')).length).toBe(count);
});
