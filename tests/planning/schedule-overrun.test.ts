import { describe, expect, test } from 'vitest';
import type { ClassSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { meets, mention, off, on } from './sheets.js';
import { catchUp, fixed, follows, kinds, perMeeting, planOf, session, timed, told, twoDays } from './schedule-sheets.js';

const lessons = (count: number, minutes: (number | undefined)[] = [40], more: (i: number) => Partial<LessonSheet> = () => ({})) =>
    Array.from({ length: count }, (_, i) => timed(`l${i + 1}`, minutes, more(i)));
/** Two weeks of Monday and Thursday: four meetings. */
const short = { ...twoDays, ends: on('2026-09-18') };
const titles = (plan: ReturnType<typeof planOf>) => plan.proposals.map(p => p.title);
const only = (plan: ReturnType<typeof planOf>, title: string) => plan.proposals.find(p => p.title.startsWith(title));

describe('lessons that no longer fit', () => {
    test('are named with the reason, and the end is where it can be mended', () => {
        const plan = planOf(lessons(6, [40], i => (i === 5 ? follows('l5') : {})), short);
        expect(told(plan)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2', 'Mon 14 Sep: l3', 'Thu 17 Sep: l4']);
        expect(plan.unplaced.map(u => [u.lesson, u.why])).toEqual([
            ['l5', 'No meeting is left before the class ends on Friday 18 September 2026.'], ['l6', 'It follows “L5”, which has no day either.']
        ]);
        expect(plan.problems).toMatchObject([{
            kind: 'term-overrun', place: { range: short.ends.at }, related: [{ message: '“L5” has no day' }, { message: '“L6” has no day' }],
            message: '2 lessons no longer fit before the class “K” ends on Friday 18 September 2026: “L5” and “L6”. Choose a later end, more or longer meetings, or leave lessons out.'
        }]);
        expect(plan).toMatchObject({ starts: '2026-09-07', ends: '2026-09-18' });
    });
    test('many are counted, a few are named', () => {
        expect(planOf(lessons(20), short).problems[0]?.message).toContain('16 lessons no longer fit before the class “K” ends on Friday 18 September 2026: “L5”, “L6”, “L7”, “L8” and 12 more.');
    });
    test('a lesson of which a piece fits', () => {
        const plan = planOf(lessons(3, [40, 40]), { ...short, ...session(50), ends: on('2026-09-15') });
        expect(told(plan).at(-1)).toBe('Mon 14 Sep: l2.0');
        expect(plan.weeks.at(-1)?.meetings.at(-1)?.taught[0]?.piece).toEqual({ number: 1, of: 2 });
        expect(plan.unplaced.map(u => u.why)[0]).toBe('Only its first part has a day: no meeting is left before the class ends on Tuesday 15 September 2026.');
    });
    test('an end that holds everything says nothing', () => {
        expect(planOf(lessons(4), short)).toMatchObject({ unplaced: [], proposals: [], problems: [] });
    });
});

describe('ways out, each planned again', () => {
    test('another weekday, the one that brings the most days', () => {
        const plan = planOf(lessons(6), { ...short, off: [off('2026-09-15', '2026-09-16')] });
        expect(only(plan, 'Meet on')).toEqual({
            title: 'Meet on Fridays too', gives: 'Both lessons fit.', givesUp: '2 free days: the Fridays, 7 September to 18 September 2026.', places: 2,
            line: { head: 'meets', text: 'meets mon, thu, fri' }
        });
        const all = meets('mon', 'tue', 'wed', 'thu', 'fri');
        expect(only(planOf(lessons(12), { ...short, meets: all }), 'Meet on')).toMatchObject({ title: 'Meet on Saturdays too', places: 1, gives: '1 of the 2 lessons fits.' });
    });
    test('no days to catch up', () => {
        const plan = planOf(lessons(4), { ...short, ...catchUp(1, 2) });
        expect(told(plan)).toContain('Mon 14 Sep: free, catch-up');
        expect(only(plan, 'Keep no')).toEqual({
            title: 'Keep no days to catch up', gives: 'The lesson fits.', places: 1,
            givesUp: 'The day kept free to catch up: what has to be repeated then moves the rest.',
            line: { head: 'catch-up', text: '' }
        });
        expect(only(planOf(lessons(6), short), 'Keep no')).toBeUndefined();
    });
    test('days that are shared', () => {
        expect(only(planOf(lessons(6), short), 'Teach')).toEqual({
            title: 'Teach up to 2 lessons at a meeting', gives: 'Both lessons fit.', givesUp: 'A meeting for each lesson: 2 share it on 3 days.', places: 2,
            line: { head: 'lessons', text: 'lessons 2 per meeting' }
        });
        expect(only(planOf(lessons(9), { ...short, ...perMeeting(2) }), 'Teach')?.line?.text).toBe('lessons 3 per meeting');
        expect(only(planOf(lessons(6), { ...short, ...session(50) }), 'Teach')).toBeUndefined();
    });
    test('a longer session where lessons are split', () => {
        expect(only(planOf(lessons(4, [30, 30]), { ...short, ...session(50) }), 'Meet for')).toEqual({
            title: 'Meet for 60 min instead of 50', gives: 'Both lessons fit.', givesUp: '10 min more at each of 4 meetings.', places: 2, line: { head: 'session', text: 'session 60 min' }
        });
    });
    test('a later end', () => {
        expect(only(planOf(lessons(6), { ...short, off: [off('2026-09-21')] }), 'End on')).toEqual({
            title: 'End on Monday 28 September 2026', gives: 'Both lessons fit.', givesUp: '2 more meetings after Friday 18 September 2026.', places: 2, line: { head: 'ends', text: 'ends 2026-09-28' }
        });
    });
    test('leaving out what nothing follows and others check', () => {
        const about = (i: number): Partial<LessonSheet> => [
            { introduces: [mention('mass')] }, { practises: [mention('mass')] }, { practises: [mention('mass')] }, { checks: [mention('mass')] }, { checks: [mention('mass')], ...follows('l3') }
        ][i] ?? {};
        const plan = planOf(lessons(5, [40], about), short);
        expect(only(plan, 'Leave out')).toEqual({
            title: 'Leave out “L4”', leavesOut: ['l4'], gives: 'The lesson fits.', givesUp: '1 lesson. No lesson follows it, and other lessons check what it teaches.', places: 1
        });
        // L4 alone introduces time; L3 and L2 are followed, L1 alone introduces mass.
        const needed = (i: number): Partial<LessonSheet> => (i === 3 ? { introduces: [mention('time')], checks: [mention('time')] } : i === 2 ? { ...about(i), ...follows('l2') } : about(i));
        expect(only(planOf(lessons(5, [40], needed), short), 'Leave out')).toBeUndefined();
        // Without objectives nobody can tell, and the sentence says so.
        expect(only(planOf(lessons(6), short), 'Leave out')).toMatchObject({ title: 'Leave out “L3” and “L4”', givesUp: '2 lessons. No lesson follows them, and they name no objectives.' });
        // What is fixed or stands in the log has its reason to be there.
        expect(only(planOf(lessons(5), { ...short, fixed: [fixed('l4', '2026-09-17')] }), 'Leave out')?.title).toBe('Leave out “L3”');
    });
    test('leaving out what makes room for some of them', () => {
        // Two days for l1 and l2; l4 follows l3, which follows l2. Only l1 is not needed: then l2 and l3 have their days, and l4 still has none.
        const plan = planOf([timed('l1', [40]), timed('l2', [40]), timed('l3', [40], follows('l2')), timed('l4', [40], follows('l3'))], { ...twoDays, ends: on('2026-09-10') });
        expect(plan.unplaced.map(({ lesson }) => lesson)).toEqual(['l3', 'l4']);
        expect(only(plan, 'Leave out')).toMatchObject({ title: 'Leave out “L1”', leavesOut: ['l1'], places: 1 });
    });
    test('the most helpful first; a way that places nothing is not offered', () => {
        const plan = planOf(lessons(16), short);
        expect(plan.proposals.map(p => p.places)).toEqual([...plan.proposals.map(p => p.places)].sort((a, b) => b - a));
        expect(plan.proposals.every(p => p.places > 0)).toBe(true);
        expect(plan.proposals[0]?.gives).toBe('All 12 lessons fit.');
        expect(titles(plan)[0]).toBe('End on Thursday 29 October 2026');
    });
    test('what is proposed and written down holds', () => {
        const change: Record<string, Partial<ClassSheet>> = {
            meets: { meets: meets('mon', 'tue', 'thu') }, lessons: perMeeting(2), ends: { ends: on('2026-09-24') }
        };
        const plan = planOf(lessons(6), short);
        for (const proposal of plan.proposals.filter(p => p.line)) {
            expect(2 - planOf(lessons(6), { ...short, ...change[proposal.line!.head] }).unplaced.length).toBe(proposal.places);
        }
        expect(plan.proposals.filter(p => p.line)).toHaveLength(3);
    });
});

describe('terms that cannot be', () => {
    const said = (own: Partial<ClassSheet>) => planOf(lessons(5), { ...twoDays, ...own });
    test('an end before the start, or that does not exist: planned without, said', () => {
        expect(said({ ends: on('2026-09-01') })).toMatchObject({ unplaced: [], assumptions: ['The class “K” ends on 2026-09-01, before it starts on 2026-09-07: it is planned without an end.'] });
        expect(said({ ends: on('2026-13-01') }).assumptions).toEqual(['The class “K” ends on 2026-13-01, a date that does not exist: it is planned without an end.']);
    });
    test('no day to meet between start and end: weeks without dates', () => {
        const plan = said({ starts: on('2026-09-08'), ends: on('2026-09-09') });
        expect([kinds(plan), plan.weeks[0]?.from, plan.weeks.flatMap(w => w.meetings).length]).toEqual([['no-meeting-days'], undefined, 5]);
        expect(plan.assumptions).toEqual(['The first and last day and the days off of the class “K” leave too few days to meet: the weeks have no dates.']);
    });
    test('days off without end, after some meetings', () => {
        const plan = said({ off: [off('2026-09-14', '9999-12-31')] });
        expect([told(plan), plan.unplaced.map(u => u.why), kinds(plan), plan.proposals]).toEqual([
            ['Mon 7 Sep: l1', 'Thu 10 Sep: l2'], Array.from({ length: 3 }, () => 'The days off of the class “K” leave too few days to meet.'), ['no-meeting-days'], []
        ]);
    });
    test('where it is mended: at the first day, as no end is in the way', () => {
        const starts = on('2026-09-07');
        expect(said({ starts, off: [off('2026-09-14', '9999-12-31')] }).problems.map(({ place }) => place.range)).toEqual([starts.at]);
        const ends = on('2026-09-10');
        expect(said({ starts, ends }).problems.map(({ kind, place }) => [kind, place.range])).toEqual([['term-overrun', ends.at]]);
    });
    test('a session of no minutes or fewer is none: a lesson a meeting', () => {
        for (const minutes of [0, -5]) expect([kinds(said(session(minutes))), told(said(session(minutes))).length]).toEqual([[], 5]);
    });
    test('a class of nobody, an empty class, a course of nothing', () => {
        expect(planOf(lessons(2), { ...twoDays, learners: { count: 0, at: on('').at } }).weeks).toHaveLength(1);
        expect(planOf(lessons(5), {}).weeks.map(w => w.meetings.length)).toEqual([4, 1]);
        expect(planOf([], short)).toMatchObject({ weeks: [], unplaced: [], problems: [], proposals: [] });
    });
});
