import { describe, expect, test } from 'vitest';
import { follows, fixed, kinds, perMeeting, planOf, session, timed, told, twoDays } from './schedule-sheets.js';

const short = (name: string, ...before: string[]) => timed(name, [20], follows(...before));
const order = (plan: ReturnType<typeof planOf>) => told(plan).map(t => t.split(': ')[1]);

describe('what a lesson follows comes first', () => {
    test('a lesson waits for one that the course names later, and all else keeps its turn', () => {
        const plan = planOf([short('a'), short('b', 'd'), short('c', 'b'), short('d'), short('e')], twoDays);
        expect(order(plan)).toEqual(['a', 'd', 'b', 'c', 'e']);
        expect(plan.problems).toMatchObject([{
            kind: 'waits', lesson: 'b', message: '“B” waits for “D”, which it follows and which the course names later. Name “D” first in the course.',
            related: [{ message: '“D” comes first' }]
        }]);
    });
    test('on the same day, too', () => {
        expect(order(planOf([short('b', 'a'), short('a'), short('c', 'b')], { ...twoDays, ...session(60) }))).toEqual(['a, b, c']);
    });
    test('lessons of other courses and names that do not exist are not waited for', () => {
        const plan = planOf([short('a', 'gone', 'a2'), short('b', 'a')], twoDays);
        expect([order(plan), plan.problems]).toEqual([['a', 'b'], []]);
    });
    test('a circle keeps the order of the course, and what follows it waits for all of it', () => {
        const plan = planOf([short('x', 'b'), short('a', 'c'), short('b', 'a'), short('c', 'b'), short('d', 'd')], twoDays);
        expect(order(plan)).toEqual(['a', 'b', 'x', 'c', 'd']);
        expect(plan.problems.filter(p => p.kind === 'circle').map(p => [p.lesson, p.message, p.related?.length])).toEqual([
            ['a', '“A”, “B” and “C” wait for each other, so they are taught in the order of the course. Take one of them out of “follows”.', 2],
            ['d', '“D” follows itself. Take its own name out of “follows”.', undefined]
        ]);
    });
    test('a lesson that the course names twice is taught twice; what follows it waits for the first time', () => {
        expect(order(planOf([short('b', 'a'), short('a'), short('c'), short('a')], twoDays))).toEqual(['a', 'b', 'c', 'a']);
    });
    test('without dates too', () => {
        const plan = planOf([short('b', 'a'), short('a')], {});
        expect([order(plan), kinds(plan)]).toEqual([['a', 'b'], ['waits']]);
    });
    test('a long chain the wrong way round, quickly', () => {
        const lessons = Array.from({ length: 3000 }, (_, i) => short(`l${i}`, `l${i + 1}`));
        const plan = planOf(lessons, { ...twoDays, ...perMeeting(100) });
        expect(plan.weeks.flatMap(w => w.meetings.flatMap(m => m.lessons))).toEqual(lessons.map(l => l.name).reverse());
    });
});

describe('fixed dates', () => {
    const lessons = [short('a'), short('b', 'a'), short('c', 'b'), short('d')];
    test('the lesson is taught on its day; the others take their turn', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('d', '2026-09-10', 'Market visit')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: d (fixed)', 'Mon 14 Sep: b', 'Thu 17 Sep: c']);
        expect(plan.weeks[0]?.meetings[1]?.taught[0]).toMatchObject({ remark: 'fixed for this day: Market visit', because: { uri: 'file:///demo/all.course' } });
        expect(plan.problems).toEqual([]);
    });
    test('what follows it waits and says why, and a day on which nothing can be taught is free', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('a', '2026-09-17')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: d', 'Thu 10 Sep: free, waiting', 'Mon 14 Sep: free, waiting', 'Thu 17 Sep: a (fixed)', 'Mon 21 Sep: b', 'Thu 24 Sep: c']);
        expect(plan.weeks[0]?.meetings[1]?.free).toMatchObject({ words: 'Nothing can be taught yet: what is left waits for “A” on Thu 17 Sep.', place: { uri: 'file:///demo/all.course' } });
        expect(plan.problems).toMatchObject([{
            kind: 'waits', lesson: 'b', message: '“B” waits for “A”, which it follows and which is fixed on Thu 17 Sep. Fix an earlier day if it should not wait.'
        }]);
    });
    test('a lesson that is itself fixed does not wait, though it follows another fixed one and others come before it', () => {
        const plan = planOf([short('a'), short('b', 'a'), short('c')], { ...twoDays, fixed: [fixed('a', '2026-09-10'), fixed('b', '2026-09-14')] });
        expect([told(plan), plan.problems]).toEqual([['Mon 7 Sep: c', 'Thu 10 Sep: a (fixed)', 'Mon 14 Sep: b (fixed)'], []]);
    });
    test('before what it follows it cannot be taught: it keeps its turn', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('c', '2026-09-10')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b', 'Mon 14 Sep: c', 'Thu 17 Sep: d']);
        expect(plan.problems).toMatchObject([{
            kind: 'fixed-too-early', lesson: 'c', date: '2026-09-10', related: [{ message: '“B” comes first' }],
            message: '“C” is fixed on Thursday 10 September 2026, but “B”, which it follows, has not been taught by then (Thu 10 Sep). It is taught on Mon 14 Sep instead. Choose a later day.'
        }]);
    });
    test('on the same day as what it follows, where the session has room for both', () => {
        const both = planOf([short('a'), short('b', 'a'), short('d')], { ...twoDays, ...session(45), fixed: [fixed('b', '2026-09-07')] });
        expect([told(both), both.problems]).toEqual([['Mon 7 Sep: a, b (fixed)', 'Thu 10 Sep: d'], []]);
        const full = planOf([short('a'), short('b', 'a'), short('d')], { ...twoDays, ...session(35), fixed: [fixed('b', '2026-09-07')] });
        expect([order(full), kinds(full)]).toEqual([['a', 'b', 'd'], ['fixed-too-early']]);
    });
    test.each([
        ['2026-09-08', 'that is a Tuesday, and the class meets on Mondays and Thursdays'],
        ['2026-09-14', 'that day is off: “Fair”'],
        ['2026-09-03', 'the class starts only on Monday 7 September 2026'],
        ['2027-09-06', 'the class ends on Friday 30 July 2027'],
        ['9999-12-31', 'the class ends on Friday 30 July 2027']
    ])('on %s there is no meeting: %s', (date, why) => {
        const place = (d: string) => ({ date: d, at: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } });
        const plan = planOf(lessons, { ...twoDays, ends: place('2027-07-30'), off: [{ from: place('2026-09-14'), title: 'Fair', at: place('').at }], fixed: [fixed('b', date)] });
        expect(plan.problems.map(p => [p.kind, p.message.includes(why)])).toEqual([['fixed-not-a-meeting', true]]);
        expect(order(plan)).toEqual(['a', 'b', 'c', 'd']);
    });
    test('dates that do not exist, lessons of no course, a lesson fixed twice', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('d', '2026-02-30'), fixed('gone', '2026-09-07'), fixed('a', '2026-09-07'), fixed('a', '2026-09-10')] });
        expect(kinds(plan)).toEqual(['fixed-not-a-meeting', 'fixed-outside-course', 'fixed-twice']);
        expect(told(plan)[0]).toBe('Mon 7 Sep: a (fixed)');
    });
    test('two on a day with room for one: the second is told and keeps its turn', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('a', '2026-09-07'), fixed('d', '2026-09-07')] });
        expect(order(plan)).toEqual(['a (fixed)', 'b', 'c', 'd']);
        expect(plan.problems).toMatchObject([{ kind: 'fixed-no-room', lesson: 'd' }]);
        expect(order(planOf(lessons, { ...twoDays, ...session(45), fixed: [fixed('a', '2026-09-07'), fixed('d', '2026-09-07')] }))).toEqual(['a (fixed), d (fixed)', 'b, c']);
    });
    test('a long one goes on after its day, and one that was going on waits for it', () => {
        const long = (name: string) => timed(name, [40, 40, 40]);
        const plan = planOf([long('a'), long('b'), timed('c', [10])], { ...twoDays, ...session(50), fixed: [fixed('b', '2026-09-10')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a.0', 'Thu 10 Sep: b.0 (fixed)', 'Mon 14 Sep: a.1', 'Thu 17 Sep: a.2', 'Mon 21 Sep: b.1', 'Thu 24 Sep: b.2, c']);
    });
    test('a slip of a century does not make a plan of a century', () => {
        const plan = planOf(lessons, { ...twoDays, fixed: [fixed('d', '2926-09-10')] });
        expect([kinds(plan), told(plan).length]).toEqual([['fixed-not-a-meeting'], 4]);
    });
});
