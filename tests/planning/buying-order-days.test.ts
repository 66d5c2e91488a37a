import fc from 'fast-check';
import { DateTime } from 'luxon';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { lastDayToOrder } from '../../server/planning/buying/order-days.js';

const day = (text: string) => Temporal.PlainDate.from(text);
const off = (...dates: string[]) => (date: Temporal.PlainDate) => dates.includes(date.toString());

describe('the last day to order', () => {
    // Worked out by a script outside this project.
    test.each([
        ['10 days', 10, false, [], '2026-09-04'], ['10 working days', 10, true, [], '2026-08-31'], ['10 working days, Mon 7 Sep off', 10, true, ['2026-09-07'], '2026-08-28'],
        ['0 days', 0, false, [], '2026-09-14'], ['0 working days', 0, true, [], '2026-09-14'], ['1 working day', 1, true, [], '2026-09-11']
    ])('for Mon 2026-09-14 with %s', (_, days, working, free, last) => {
        expect(lastDayToOrder(day('2026-09-14'), { days, working }, off(...free))?.toString()).toBe(last);
    });
    test('needed on a Sunday', () => expect(lastDayToOrder(day('2026-09-13'), { days: 1, working: true })?.toString()).toBe('2026-09-11'));
    test('days off do not count against calendar days', () => expect(lastDayToOrder(day('2026-09-14'), { days: 10 }, () => true)?.toString()).toBe('2026-09-04'));
    test.each([[5, true], [1e9, true], [1e9, false], [Infinity, false]])('no such day: %d', (days, working) => {
        expect(lastDayToOrder(day('2026-09-14'), { days, working }, () => true)).toBeUndefined();
    });
    test.each([-3, NaN])('%d days are none', days => expect(lastDayToOrder(day('2026-09-14'), { days, working: true })?.toString()).toBe('2026-09-14'));
    test('the first of all dates', () => expect(lastDayToOrder(day('-271821-04-20'), { days: 5 })).toBeUndefined());
    test('counted forward again with another date library', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: 7300 }), fc.integer({ min: 1, max: 40 }), fc.uniqueArray(fc.integer({ min: 0, max: 80 })), (start, days, free) => {
            const needed = day('2020-01-01').add({ days: start });
            const closed = new Set(free.map(back => needed.subtract({ days: back }).toString()));
            const last = lastDayToOrder(needed, { days, working: true }, date => closed.has(date.toString()))!;
            let working = 0;
            const end = DateTime.fromISO(needed.toString(), { zone: 'utc' });
            for (let date = DateTime.fromISO(last.toString(), { zone: 'utc' }); date < end; date = date.plus({ days: 1 })) {
                if (date.weekday <= 5 && !closed.has(date.toISODate()!)) working++;
            }
            expect(working).toBe(days);
            expect(last.dayOfWeek <= 5 && !closed.has(last.toString())).toBe(true);
        }));
    });
});
