import { describe, expect, test } from 'vitest';
import type { Unsure } from '@haversack/language/sheets/sheet';
import { activity, lesson, on, range } from './sheets.js';
import { catchUp, closing, fixed, kinds, perMeeting, planOf, repeat, session, timed, told, twoDays, unsure } from './schedule-sheets.js';

/** l1 to l6: activities a and b of 20 minutes and a closing of 5; the closing of l1 asks for what is given. */
const lessons = (asks?: Unsure) => Array.from({ length: 6 }, (_, i) => lesson(`l${i + 1}`, [],
    [activity('a', [], { minutes: 20 }), activity('b', [], { minutes: 20 }), closing(i === 0 ? asks : undefined)]));
const log = [unsure('l1', '2026-09-07')];

describe('what a closing asks for when the children were unsure', () => {
    test('repeat a part today: at the same meeting, and nothing moves', () => {
        const plan = planOf(lessons(repeat('b', 'today')), { ...twoDays, ...session(50), log });
        expect(told(plan).slice(0, 2)).toEqual(['Mon 7 Sep: l1, l1.1 (repeat)', 'Thu 10 Sep: l2']);
        expect(plan.weeks[0]?.meetings[0]).toMatchObject({ lessons: ['l1'], minutes: 65 });
        expect(plan.problems).toEqual([]);
    });
    test('repeat a part tomorrow: the next meeting begins with it', () => {
        const plan = planOf(lessons(repeat('b', 'tomorrow')), { ...twoDays, log });
        expect(told(plan)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l1.1 (repeat), l2', 'Mon 14 Sep: l3', 'Thu 17 Sep: l4', 'Mon 21 Sep: l5', 'Thu 24 Sep: l6']);
        expect(plan.weeks[0]?.meetings[1]).toMatchObject({
            lessons: ['l1', 'l2'], minutes: 65,
            taught: [{ lesson: 'l1', parts: [1], minutes: 20, why: 'repeat', remark: 'again: the children were unsure on Mon 7 Sep', because: { uri: 'file:///demo/all.course' } }, {}]
        });
    });
    test('where the session has no room for both, the lesson of the day is divided, and the rest catches up', () => {
        const plan = planOf(lessons(repeat('b', 'tomorrow')), { ...twoDays, ...session(50), log });
        expect(told(plan).slice(0, 4)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l1.1 (repeat), l2.0', 'Mon 14 Sep: l2.1+2', 'Thu 17 Sep: l3']);
        expect(plan.weeks.flatMap(w => w.meetings).every(m => m.minutes <= 50)).toBe(true);
    });
    test('repeat the lesson: it takes the next meeting, or the rest of the same day', () => {
        const again = (when?: 'today' | 'tomorrow'): Unsure => ({ then: 'repeat lesson', when, at: range() });
        const next = ['Mon 7 Sep: l1', 'Thu 10 Sep: l1 (repeat)', 'Mon 14 Sep: l2'];
        expect(told(planOf(lessons(again()), { ...twoDays, log })).slice(0, 3)).toEqual(next);
        expect(told(planOf(lessons(again('tomorrow')), { ...twoDays, log })).slice(0, 3)).toEqual(next);
        expect(told(planOf(lessons(again('today')), { ...twoDays, log })).slice(0, 2)).toEqual(['Mon 7 Sep: l1, l1 (repeat)', 'Thu 10 Sep: l2']);
        expect(told(planOf(lessons(again()), { ...twoDays, ...perMeeting(2), log })).slice(0, 2)).toEqual(['Mon 7 Sep: l1, l2', 'Thu 10 Sep: l1 (repeat), l3']);
    });
    test('without a word, or with an activity that does not exist: the lesson again at the next meeting', () => {
        expect(told(planOf(lessons(), { ...twoDays, log }))[1]).toBe('Thu 10 Sep: l1 (repeat)');
        expect(told(planOf(lessons(repeat('gone', 'tomorrow')), { ...twoDays, log }))[1]).toBe('Thu 10 Sep: l1 (repeat)');
    });
    test('go on and revisit: the closing again after so many lessons, at the end at the latest', () => {
        const revisit = (count: number): Unsure => ({ then: 'revisit', lessons: count, at: range() });
        expect(told(planOf(lessons(revisit(2)), { ...twoDays, log })).slice(0, 4)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2', 'Mon 14 Sep: l3', 'Thu 17 Sep: l1.2 (revisit), l4']);
        expect(told(planOf(lessons(revisit(99)), { ...twoDays, log })).slice(-2)).toEqual(['Thu 24 Sep: l6', 'Mon 28 Sep: l1.2 (revisit)']);
        expect(planOf(lessons(revisit(2)), { ...twoDays, log }).weeks[1]?.meetings[1]?.taught[0]?.remark).toBe('once more: the children were unsure on Mon 7 Sep');
    });
    test('a lesson that was split is unsure on the day of any of its pieces', () => {
        const long = timed('l1', [40, 40]);
        expect(told(planOf([long, timed('l2', [10])], { ...twoDays, ...session(50), log }))).toEqual(
            ['Mon 7 Sep: l1.0', 'Thu 10 Sep: l1.0 (repeat)', 'Mon 14 Sep: l1.1 (repeat)', 'Thu 17 Sep: l1.1, l2']);
    });
    test('unsure again after the repeat: once more', () => {
        const plan = planOf(lessons(), { ...twoDays, log: [...log, unsure('l1', '2026-09-10'), unsure('l1', '2026-09-10')] });
        expect([told(plan).slice(0, 4), plan.problems]).toEqual([['Mon 7 Sep: l1', 'Thu 10 Sep: l1 (repeat)', 'Mon 14 Sep: l1 (repeat)', 'Thu 17 Sep: l2'], []]);
    });
    test('a lesson that is fixed on the next day keeps it; the repeat waits', () => {
        expect(told(planOf(lessons(), { ...twoDays, log, fixed: [fixed('l2', '2026-09-10')] })).slice(0, 3)).toEqual(
            ['Mon 7 Sep: l1', 'Thu 10 Sep: l2 (fixed)', 'Mon 14 Sep: l1 (repeat)']);
    });
});

describe('repeats and days to catch up', () => {
    test('a repeat that took a meeting uses up the next day to catch up, so that the rest comes as planned', () => {
        const own = { ...twoDays, ...catchUp(1, 3) };
        const before = told(planOf(lessons(), own));
        const after = planOf(lessons(), { ...own, log });
        expect(before).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2', 'Mon 14 Sep: l3', 'Thu 17 Sep: free, catch-up', 'Mon 21 Sep: l4', 'Thu 24 Sep: l5', 'Mon 28 Sep: l6']);
        expect(told(after)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l1 (repeat)', 'Mon 14 Sep: l2', 'Thu 17 Sep: l3', ...before.slice(4)]);
        expect(after.weeks.flatMap(w => w.remarks)).toEqual(['A day to catch up is used up by what was taught again.']);
    });
    test('a repeat that took none leaves it', () => {
        expect(told(planOf(lessons(repeat('b', 'tomorrow')), { ...twoDays, ...catchUp(1, 3), log }))[3]).toBe('Thu 17 Sep: free, catch-up');
    });
    test('of two days one is used up; a repeat on such a day is taught on it', () => {
        expect(told(planOf(lessons(), { ...twoDays, ...catchUp(2, 3), log })).slice(3, 6)).toEqual(['Thu 17 Sep: l3', 'Mon 21 Sep: free, catch-up', 'Thu 24 Sep: l4']);
        expect(told(planOf(lessons(), { ...twoDays, ...catchUp(1, 3), log: [unsure('l3', '2026-09-14')] })).slice(2, 5)).toEqual(
            ['Mon 14 Sep: l3', 'Thu 17 Sep: l3 (repeat)', 'Mon 21 Sep: l4']);
    });
});

describe('a log that the plan cannot follow', () => {
    test('a day on which the lesson was not taught, a lesson of another course, a day without a meeting', () => {
        const plan = planOf(lessons(), { ...twoDays, log: [unsure('l1', '2026-09-10'), unsure('gone', '2026-09-07'), unsure('l1', '2026-09-08'), unsure('l1', '2026-02-30')] });
        expect(told(plan)).toHaveLength(6);
        expect(plan.problems.map(p => [p.kind, p.message])).toEqual([
            ['log-not-taught', 'The log says that “L1” was taught on Thursday 10 September 2026, but in this plan it comes on Mon 7 Sep. Correct the line, or give the lesson a fixed day.'],
            ['log-not-taught', 'The log says that “gone” was taught on Monday 7 September 2026, but the class is not taught this lesson. Correct the line, or give the lesson a fixed day.'],
            ['log-not-taught', 'The log says that “L1” was taught on Tuesday 8 September 2026, but in this plan it comes on Mon 7 Sep. Correct the line, or give the lesson a fixed day.']
        ]);
    });
    test('no meeting is left for the repeat', () => {
        const plan = planOf([timed('l1', [10])], { ...twoDays, ends: on('2026-09-08'), log });
        expect([kinds(plan), plan.problems[0]?.message, plan.unplaced]).toEqual([['term-overrun'], '“L1” is to be taught again, but no meeting is left for it.', []]);
    });
});
