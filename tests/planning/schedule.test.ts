import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { planSchedule, weekOfLesson } from '../../server/planning/schedule.js';
import { course, klass, lesson, meets, off, on, programme } from './sheets.js';

function schedule(lessons: number, own: Partial<ClassSheet>) {
    const names = Array.from({ length: lessons }, (_, i) => `l${i + 1}`);
    return planSchedule(programme(...names.map(n => lesson(n)), course('c', names), klass('k', 'c', 7, own)));
}
const termClass = { starts: on('2026-09-07'), meets: meets('mon', 'tue', 'thu') };
const dates = (plan: ReturnType<typeof schedule>) => plan.weeks.map(w => w.meetings.map(m => m.date));

describe('dated weeks', () => {
    test('one lesson a meeting, weeks from Monday, days in the order of the week', () => {
        const plan = schedule(4, { ...termClass, meets: meets('thu', 'mon', 'tue', 'tue') });
        const taught = (name: string) => [{ lesson: name, title: name.toUpperCase(), place: expect.objectContaining({ uri: 'file:///demo/all.course' }), minutes: 0 }];
        expect(plan.weeks[0]).toEqual({
            number: 1, from: '2026-09-07', to: '2026-09-10', remarks: [], meetings: [
                { date: '2026-09-07', label: 'Mon 7 Sep', lessons: ['l1'], taught: taught('l1'), minutes: 0 },
                { date: '2026-09-08', label: 'Tue 8 Sep', lessons: ['l2'], taught: taught('l2'), minutes: 0 },
                { date: '2026-09-10', label: 'Thu 10 Sep', lessons: ['l3'], taught: taught('l3'), minutes: 0 }
            ]
        });
        expect(plan.weeks[1]).toMatchObject({ number: 2, from: '2026-09-14', meetings: [{ lessons: ['l4'] }] });
        expect(plan).toMatchObject({ class: 'k', course: 'c', assumptions: [] });
    });
    test('a start in the middle of a week', () => {
        expect(dates(schedule(3, { ...termClass, starts: on('2026-09-09') }))).toEqual([['2026-09-10'], ['2026-09-14', '2026-09-15']]);
    });
    test('a week without meetings has no number; the next week says what was off', () => {
        const plan = schedule(7, { ...termClass, starts: on('2026-11-16'), off: [off('2026-11-23', '2026-11-27', 'Harvest week')] });
        expect(plan.weeks.map(w => [w.number, w.from, w.remarks])).toEqual([
            [1, '2026-11-16', []], [2, '2026-11-30', ['Harvest week: no meetings 23 to 27 November.']], [3, '2026-12-07', []]
        ]);
    });
    test('a day off inside a week is said in that week; one that costs no meeting is not', () => {
        const plan = schedule(5, { ...termClass, off: [off('2026-09-10', undefined, 'Fair'), off('2026-09-11'), off('2026-09-14')] });
        expect(plan.weeks.map(w => w.remarks)).toEqual([['Fair: no meeting on Thu 10 Sep.'], ['Day off: no meeting on Mon 14 Sep.'], []]);
        expect(dates(plan)).toEqual([['2026-09-07', '2026-09-08'], ['2026-09-15', '2026-09-17'], ['2026-09-21']]);
    });
    test('a stretch over two months, and over the first days', () => {
        const plan = schedule(1, { ...termClass, starts: on('2026-11-30'), off: [off('2026-11-28', '2026-12-08', 'Snow')] });
        expect(plan.weeks).toMatchObject([{ number: 1, from: '2026-12-10', remarks: ['Snow: no meetings 28 November to 8 December.'] }]);
    });
    test('no lesson is lost, doubled or put on a day off, in whatever calendar', () => {
        const date = fc.integer({ min: 0, max: 200 }).map(n => new Date(Date.UTC(2026, 8, 1 + n)).toISOString().slice(0, 10));
        const weekday = fc.constantFrom('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun');
        fc.assert(fc.property(fc.array(weekday, { minLength: 1, maxLength: 7 }), fc.array(fc.tuple(date, date), { maxLength: 6 }), date, fc.integer({ min: 1, max: 60 }), (on7, spans, start, count) => {
            const free = spans.map(([a, b]) => (a < b ? off(a, b) : off(b, a)));
            const plan = schedule(count, { starts: on(start), meets: meets(...on7 as Parameters<typeof meets>), off: free });
            const meetings = plan.weeks.flatMap(w => w.meetings);
            expect(meetings.flatMap(m => m.lessons)).toEqual(Array.from({ length: count }, (_, i) => `l${i + 1}`));
            const days = meetings.map(m => m.date ?? '');
            expect([...days].sort()).toEqual(days);
            expect(new Set(days).size).toBe(days.length);
            for (const day of days) {
                expect(day >= start).toBe(true);
                expect(on7).toContain(['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][new Date(`${day}T00:00Z`).getUTCDay()]);
                expect(free.some(f => f.from.date <= day && day <= (f.to?.date ?? f.from.date))).toBe(false);
            }
            expect(plan.weeks.map(w => w.number)).toEqual(plan.weeks.map((_, i) => i + 1));
        }), { numRuns: 80 });
    });
});

describe('plain weeks', () => {
    const said = (own: Partial<ClassSheet>) => schedule(5, own).assumptions.join(' ');
    test('without a class: four lessons a week, said', () => {
        const plan = planSchedule(programme(...['a', 'b', 'c', 'd', 'e'].map(n => lesson(n)), course('year', ['e', 'a', 'b', 'c', 'd'])));
        expect(plan.weeks).toMatchObject([
            { number: 1, remarks: [], meetings: ['e', 'a', 'b', 'c'].map((l, i) => ({ label: `Day ${i + 1}`, lessons: [l], taught: [{ lesson: l }] })) },
            { number: 2, remarks: [], meetings: [{ label: 'Day 1', lessons: ['d'] }] }
        ]);
        expect(Object.keys(plan.weeks[0]!).sort()).toEqual(['meetings', 'number', 'remarks']);
        expect(Object.keys(plan.weeks[0]!.meetings[0]!).sort()).toEqual(['label', 'lessons', 'minutes', 'taught']);
        expect(plan.assumptions).toEqual(['No class is declared: one learner, one kit and four lessons a week.']);
    });
    test('no first day: as many lessons as weekdays', () => {
        expect(schedule(5, { meets: meets('mon', 'thu') }).weeks.map(w => w.meetings.length)).toEqual([2, 2, 1]);
        expect(said({ meets: meets('mon') })).toContain('does not say when it starts: the weeks have no dates.');
    });
    test('no weekdays', () => expect(said({ starts: on('2026-09-07') })).toContain('does not say on which weekdays it meets: 4 lessons a week, without dates.'));
    test.each(['2026-02-30', '2025-02-29', '2026-13-01', '', 'soon', '20260907', '+012026-01-01'])('a first day %j that does not exist', date => {
        expect(said({ ...termClass, starts: on(date) })).toContain('a date that does not exist: the weeks have no dates.');
    });
    test('days off that do not exist or stand the wrong way round are left out, said', () => {
        const plan = schedule(2, { ...termClass, off: [off('2026-02-30', undefined, 'Gap'), off('2026-09-08', '2026-09-07')] });
        expect(dates(plan)).toEqual([['2026-09-07', '2026-09-08']]);
        expect(plan.assumptions).toEqual([
            'The days off “Gap” from 2026-02-30 are left out: such a date does not exist.',
            'The days off from 2026-09-08 to 2026-09-07 are left out: the last day stands before the first.'
        ]);
    });
    test('days off without end neither hang nor throw', () => {
        expect(said({ ...termClass, off: [off('2026-09-01', '9999-12-31')] })).toContain('leave too few days to meet');
        expect(said({ ...termClass, starts: on('9999-12-31') })).toContain('leave too few days to meet: the weeks have no dates.');
        expect(schedule(5, { ...termClass, starts: on('9999-12-30') })).toMatchObject({ weeks: [{ from: '9999-12-30' }], unplaced: [{}, {}, {}, {}] });
    });
});

test('the week of a lesson', () => {
    const plan = schedule(5, termClass);
    expect([weekOfLesson(plan, 'l1'), weekOfLesson(plan, 'l5'), weekOfLesson(plan, 'x')]).toEqual([1, 2, undefined]);
});
