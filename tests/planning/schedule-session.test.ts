import { describe, expect, test } from 'vitest';
import { part } from './sheets.js';
import { catchUp, closing, kinds, perMeeting, planOf, session, timed, told, twoDays } from './schedule-sheets.js';

describe('lessons that share a day', () => {
    const short = ['l1', 'l2', 'l3', 'l4', 'l5'].map(n => timed(n, [10, 10]));
    test.each([
        ['one a meeting where nothing is said', {}, ['l1', 'l2', 'l3', 'l4', 'l5']],
        ['as many whole lessons as fit', session(50), ['l1, l2', 'l3, l4', 'l5']],
        ['up to the last minute', session(60), ['l1, l2, l3', 'l4, l5']],
        ['never more than the class says', { ...session(60), ...perMeeting(2) }, ['l1, l2', 'l3, l4', 'l5']],
        ['so many where no length is known', perMeeting(3), ['l1, l2, l3', 'l4, l5']],
        ['numbers that cannot be meant are not said', { ...session(Number.NaN), ...perMeeting(0) }, ['l1', 'l2', 'l3', 'l4', 'l5']]
    ])('%s', (_, own, expected) => {
        const plan = planOf(short, { ...twoDays, ...own });
        expect(told(plan).map(t => t.split(': ')[1])).toEqual(expected);
        expect(plan.weeks[0]?.meetings[0]?.minutes).toBe((expected[0]?.split(', ').length ?? 0) * 20);
        expect(plan.problems).toEqual([]);
    });
    test('in the order of the course: a short lesson does not slip in front of one that does not fit', () => {
        expect(told(planOf([timed('a', [30]), timed('b', [25]), timed('c', [20])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b, c']);
    });
    test('a lesson with a part without minutes, or without parts, takes the whole meeting', () => {
        const plan = planOf([timed('a', [10]), timed('b', [10, undefined]), timed('c', []), timed('d', [10]), timed('e', [10])], { ...twoDays, ...session(50) });
        expect(told(plan)).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b', 'Mon 14 Sep: c', 'Thu 17 Sep: d, e']);
    });
});

describe('long lessons', () => {
    test('are split between their parts over the next meetings, the rest shares its day', () => {
        const plan = planOf([timed('a', [20, 20, 20, 20]), timed('b', [10])], { ...twoDays, ...session(50) });
        expect(told(plan)).toEqual(['Mon 7 Sep: a.0+1', 'Thu 10 Sep: a.2+3, b']);
        expect(plan.weeks[0]?.meetings.flatMap(m => m.taught.map(t => [t.lesson, t.piece, t.minutes]))).toEqual([
            ['a', { number: 1, of: 2 }, 40], ['a', { number: 2, of: 2 }, 40], ['b', undefined, 10]
        ]);
        expect(plan.problems).toEqual([]);
        expect(plan.trail.map(t => t.words)).toContain('1 lesson takes more than one meeting of 50 min');
    });
    test('begin on a day of their own', () => {
        expect(told(planOf([timed('a', [20]), timed('b', [20, 40])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b.0', 'Mon 14 Sep: b.1']);
    });
    test('of which some part has no minutes are split where the others are too long', () => {
        expect(told(planOf([timed('a', [30, undefined, 30]), timed('b', [5])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a.0+1', 'Thu 10 Sep: a.2, b']);
    });
    test('a part that is longer than the session stands alone and is told where it can be mended', () => {
        const long = timed('a', [10, 70, 10]);
        const plan = planOf([long, long], { ...twoDays, ...session(50) });
        expect(told(plan).slice(0, 3)).toEqual(['Mon 7 Sep: a.0', 'Thu 10 Sep: a.1', 'Mon 14 Sep: a.2']);
        expect(plan.problems).toMatchObject([{
            kind: 'session-overrun', lesson: 'a', date: '2026-09-10', place: { range: long.parts[1]?.head },
            message: '“B” in “A” takes 70 min, but the class “K” meets for 50 min (Thu 10 Sep). Make two parts of it, shorten it, or make the session longer.',
            related: [{ message: 'The session of “K”' }]
        }]);
    });
    test('nothing is split without a session, nor in the middle of a part', () => {
        expect(told(planOf([timed('a', [90, 90])], twoDays))).toEqual(['Mon 7 Sep: a']);
        expect(told(planOf([timed('a', [49.5, 0.5, 1])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a.0+1', 'Thu 10 Sep: a.2']);
    });
    test('without dates too', () => {
        const plan = planOf([timed('a', [20, 40]), timed('b', [5]), timed('c', [5])], { meets: twoDays.meets, ...session(50) });
        expect(told(plan)).toEqual(['Day 1: a.0', 'Day 2: a.1, b, c']);
        expect(plan.weeks[0]).not.toHaveProperty('from');
    });
});

describe('days to catch up', () => {
    const names = ['l1', 'l2', 'l3', 'l4', 'l5'];
    test('so many after every so many lessons, none after the last', () => {
        const plan = planOf(names.slice(0, 4).map(n => timed(n, [40])), { ...twoDays, ...session(50), ...catchUp(1, 2) });
        expect(told(plan)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2', 'Mon 14 Sep: free, catch-up', 'Thu 17 Sep: l3', 'Mon 21 Sep: l4']);
        expect(plan.weeks[1]?.meetings[0]).toMatchObject({ free: { words: 'Kept free to catch up, after 2 lessons.', place: { uri: 'file:///demo/all.course' } }, lessons: [], minutes: 0 });
        expect(plan.trail.map(t => t.words)).toContain('1 day of them kept free to catch up (1 after every 2 lessons)');
    });
    test('never between the pieces of a lesson', () => {
        const plan = planOf([timed('l1', [10]), timed('l2', [40, 40]), timed('l3', [10])], { ...twoDays, ...session(50), ...catchUp(2, 2) });
        expect(told(plan)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2.0', 'Mon 14 Sep: l2.1, l3']);
        const more = planOf([timed('l1', [10]), timed('l2', [40, 40]), timed('l3', [40])], { ...twoDays, ...session(50), ...catchUp(2, 2) });
        expect(told(more).slice(3)).toEqual(['Thu 17 Sep: free, catch-up', 'Mon 21 Sep: free, catch-up', 'Thu 24 Sep: l3']);
    });
    test.each([[0, 2], [1, 0], [Number.NaN, 2], [-1, 2], [1e9, 4]])('%d days every %d lessons cannot be: none are kept, said', (days, every) => {
        const plan = planOf(names.map(n => timed(n, [40])), { ...twoDays, ...catchUp(days, every) });
        expect([told(plan).length, plan.assumptions]).toEqual([5, [`The class “K” keeps ${days} days to catch up every ${every} lessons, which cannot be: no days are kept.`]]);
    });
});

test('a closing alone of no minutes, a game and a practice keep their order', () => {
    const lesson = timed('a', [30]);
    const parts = [...lesson.parts, part('game', 'grocer', { minutes: 30 }), part('practice', 'say-it', { minutes: 0 }), closing()];
    const plan = planOf([{ ...lesson, parts }], { ...twoDays, ...session(50) });
    expect([told(plan), kinds(plan)]).toEqual([['Mon 7 Sep: a.0', 'Thu 10 Sep: a.1+2+3'], []]);
});
