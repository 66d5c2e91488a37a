/** Calendar arithmetic against published ISO 8601 week dates and against another date library. */
import { dayOfIso, isoOfDay, weekdayOf } from '@haversack/language/attachments/day-numbers';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { dayLabel, readDay } from '../../server/planning/calendar.js';
import { daysInWords, longDay, shortDay } from '../../server/planning/schedule/day-words.js';
import { weekdaysBetween } from '../../server/planning/schedule/weeks.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { course, klass, lesson, meets, on, programme } from '../planning/sheets.js';

// ISO 8601 week dates as published in tables of the standard's week calendar; computed again with Python's isocalendar.
const weekDates: [string, string][] = [
    ['2005-01-01', '2004-W53-6'], ['2005-01-02', '2004-W53-7'], ['2005-12-31', '2005-W52-6'], ['2006-01-01', '2005-W52-7'],
    ['2006-01-02', '2006-W01-1'], ['2006-12-31', '2006-W52-7'], ['2007-01-01', '2007-W01-1'], ['2008-09-26', '2008-W39-5'], ['2008-12-28', '2008-W52-7'],
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
        const number = dayOfIso(date)!;
        expect(weekdayOf(number) + 1).toBe(Number(weekDate.slice(-1)));
        expect(isoOfDay(number - weekdayOf(number))).toBe(mondayOfWeekDate(weekDate));
    });
    // The years of 53 weeks from 2000 to 2039, as published; 71 in 400 years.
    test('years of 53 weeks', () => {
        const weeksIn = (year: number) => {
            const firstOf = (y: number) => dayOfIso(mondayOfWeekDate(`${y}-W01-1`))!;
            return (firstOf(year + 1) - firstOf(year)) / 7;
        };
        const years = Array.from({ length: 400 }, (_, i) => 2000 + i).filter(year => weeksIn(year) === 53);
        expect(years.filter(year => year < 2040)).toEqual([2004, 2009, 2015, 2020, 2026, 2032, 2037]);
        expect(years).toHaveLength(71);
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

describe('every day from 2020 to 2039, as luxon has it', () => {
    const first = DateTime.utc(2020, 1, 1);
    const all = Array.from({ length: 7305 }, (_, i) => first.plus({ days: i }).setLocale('en-GB'));
    test('dates, weekdays, Mondays and days in words', () => {
        expect(all.at(-1)?.toISODate()).toBe('2039-12-31');
        const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
        for (const [i, date] of all.entries()) {
            const iso = date.toFormat('yyyy-MM-dd');
            const day = dayOfIso(iso)!;
            expect(day).toBe(date.toSeconds() / 86_400);
            expect(day).toBe(dayOfIso('2020-01-01')! + i);
            expect(isoOfDay(day)).toBe(iso);
            expect(weekdayOf(day) + 1).toBe(date.weekday);
            expect(isoOfDay(day - weekdayOf(day))).toBe(date.startOf('week').toISODate());
            expect(longDay(day)).toBe(`${date.toFormat('cccc d')} ${months[date.month - 1]} ${date.year}`);
            expect([shortDay(day), dayLabel(readDay(iso)!)]).toEqual(Array(2).fill(`${date.toFormat('ccc d')} ${months[date.month - 1]!.slice(0, 3)}`));
        }
    });
    test('dates that do not exist, by month and year', () => {
        for (let year = 2020; year < 2040; year++) {
            for (let month = 0; month <= 13; month++) {
                for (const day of [0, 1, 28, 29, 30, 31, 32]) {
                    const text = [year, month, day].map((n, i) => String(n).padStart(i === 0 ? 4 : 2, '0')).join('-');
                    const exists = DateTime.utc(year, month, day).isValid;
                    expect([text, dayOfIso(text) !== undefined, readDay(text) !== undefined]).toEqual([text, exists, exists]);
                }
            }
        }
    });
    test('the weeks of a class that meets every day are the ISO weeks, from the first to the last', () => {
        const names = all.map((_, i) => `day-${i}`);
        const { weeks } = planSchedule(programme(...names.map(n => lesson(n)), course('c', names),
            klass('k', 'c', 5, { starts: on('2020-01-01'), meets: meets('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun') })));
        const isoWeeks = new Map<string, string[]>();
        for (const date of all) {
            const key = `${date.weekYear}-${date.weekNumber}`;
            isoWeeks.set(key, [...isoWeeks.get(key) ?? [], date.toFormat('yyyy-MM-dd')]);
        }
        expect(weeks.map(w => w.meetings.map(m => m.date))).toEqual([...isoWeeks.values()]);
    });
    test('how many weekdays lie between two days', () => {
        for (let i = 0; i < 400; i++) {
            const [from, to] = [all[i * 7]!, all[i * 18]!];
            const weekdays = [true, false, true, true, false, i % 2 === 0, false];
            let count = 0;
            for (let day = from; day <= to; day = day.plus({ days: 1 })) if (weekdays[day.weekday - 1]) count += 1;
            expect(weekdaysBetween(dayOfIso(from.toISODate()!)!, dayOfIso(to.toISODate()!)!, weekdays)).toBe(count);
            if (i > 40) i += 17;
        }
    });
});

test('a span in words; the same month of another year is another month', () => {
    const words = (from: string, to: string) => daysInWords(dayOfIso(from)!, dayOfIso(to)!);
    expect([words('2026-11-23', '2026-11-27'), words('2026-11-30', '2026-12-04'), words('2026-11-12', '2026-11-12'), words('2026-12-21', '2027-12-08')])
        .toEqual(['23 to 27 November', '30 November to 4 December', '12 November', '21 December to 8 December']);
    // 6 to 9 March 2026 is three days (ISO 8601 duration P3D).
    expect(dayOfIso('2026-03-09')! - dayOfIso('2026-03-06')!).toBe(3);
});

// Weekdays in a month, counted by a script outside the project: September 2026 has 22, 21 without the 7th; November 2026 has 21.
test.each([['2026-09', [], 22], ['2026-09', ['2026-09-07'], 21], ['2026-11', [], 21]] as const)('meeting days in %s without %j: %d', (month, free, count) => {
    const names = Array.from({ length: 80 }, (_, i) => `day-${i}`);
    const schedule = planSchedule(programme(
        ...names.map(n => lesson(n)), course('c', names),
        klass('k', 'c', 5, {
            starts: on('2026-09-01'), meets: meets('mon', 'tue', 'wed', 'thu', 'fri'), off: free.map(date => ({ from: on(date), at: on(date).at }))
        })
    ));
    expect(schedule.weeks.flatMap(w => w.meetings).filter(m => m.date?.startsWith(month)).length).toBe(count);
});
