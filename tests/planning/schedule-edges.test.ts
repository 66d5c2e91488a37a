/** Edges of the plan: rooms that are nearly full, minutes nobody wrote, what catch-ups and repeats owe one another, which line a problem leads to. */
import { describe, expect, test } from 'vitest';
import type { Attachment } from '@haversack/language/attachments/attachment';
import type { LessonSheet, Unsure } from '@haversack/language/sheets/sheet';
import { dayLabel, readDay } from '../../server/planning/calendar.js';
import { circlesAmong } from '../../server/planning/schedule/circles.js';
import { movedSchedule } from '../../server/planning/schedule/moved.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { activity, course, lesson, meets, mention, off, on, part, programme, range } from './sheets.js';
import { catchUp, closing, fixed, follows, kinds, perMeeting, planOf, repeat, session, timed, told, twoDays, unsure } from './schedule-sheets.js';

const many = (count: number, minutes: (number | undefined)[] = [40]): LessonSheet[] => Array.from({ length: count }, (_, i) => timed(`l${i + 1}`, minutes));
const messages = (plan: ReturnType<typeof planOf>): string[] => plan.problems.map(p => p.message);

describe('a meeting that is nearly full', () => {
    test('a lesson that is divided fills its meeting: what goes on waits for the next', () => {
        // Ten minutes are left beside the first piece of b, and the next part of a takes five.
        const plan = planOf([timed('a', [48, 5, 40]), timed('b', [40, 40])], { ...twoDays, ...session(50), fixed: [fixed('b', '2026-09-10')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a.0', 'Thu 10 Sep: b.0 (fixed)', 'Mon 14 Sep: a.1+2', 'Thu 17 Sep: b.1']);
    });
    test('no more lessons than the class says, though one only goes on', () => {
        const plan = planOf([timed('b', [40, 40, 5]), timed('a', [5])], { ...twoDays, ...session(50), ...perMeeting(1), fixed: [fixed('a', '2026-09-10')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: b.0', 'Thu 10 Sep: a (fixed)', 'Mon 14 Sep: b.1+2']);
    });
    test('a part of what has been begun goes on beside a lesson of that day', () => {
        const plan = planOf([timed('a', [40, 20, 40]), timed('c', [10])], { ...twoDays, ...session(50), fixed: [fixed('c', '2026-09-10')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a.0', 'Thu 10 Sep: c (fixed), a.1', 'Mon 14 Sep: a.2']);
    });
    test('a lesson is not begun beside another, only beside what is taught again, and never for a warm-up alone', () => {
        expect(told(planOf([timed('a', [30]), timed('b', [10, 40])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b']);
        const warm = lesson('b', [], [part('warm-up', 'stretch', { minutes: 10 }), activity('a', [], { minutes: 40 })]);
        const again = lesson('a', [], [activity('a', [], { minutes: 30 }), closing(repeat('a', 'tomorrow'))]);
        const log = [unsure('a', '2026-09-07')];
        expect(told(planOf([again, warm], { ...twoDays, ...session(50), log }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: a.0 (repeat)', 'Mon 14 Sep: b']);
        expect(told(planOf([again, timed('b', [10, 40])], { ...twoDays, ...session(50), log }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: a.0 (repeat), b.0', 'Mon 14 Sep: b.1']);
    });
    test('no minutes are a length; fewer than none, or none that can be meant, are not', () => {
        expect(told(planOf([timed('a', [0]), timed('b', [10])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a, b']);
        for (const minutes of [-5, Number.NaN, Infinity]) {
            expect(told(planOf([timed('a', [minutes]), timed('b', [10])], { ...twoDays, ...session(50) }))).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: b']);
        }
    });
});

describe('how many meetings a lesson takes whose end finds no day', () => {
    const piece = (minutes: number[]) => planOf([timed('a', minutes)], { ...twoDays, ...session(50), ends: on('2026-09-09') }).weeks[0]?.meetings[0]?.taught[0]?.piece;
    test.each<[minutes: number[], of: number]>([[[40, 20, 20], 2], [[40, 40, 40], 3], [[40, 60, 10], 3], [[40, 20, 20, 20], 3]])('%j', (minutes, of) => {
        expect(piece(minutes)).toEqual({ number: 1, of });
    });
});

describe('what is taught again beside a lesson that is fixed on the next day', () => {
    /** Of l1, 20 minutes are to be done again; the session has 50. */
    const next = (...minutes: (number | undefined)[]) => told(planOf([
        lesson('l1', [], [activity('a', [], { minutes: 20 }), activity('b', [], { minutes: 20 }), closing(repeat('b', 'tomorrow'))]), timed('l2', minutes), timed('l3', [40])
    ], { ...twoDays, ...session(50), log: [unsure('l1', '2026-09-07')], fixed: [fixed('l2', '2026-09-10')] })).slice(1, 3);
    test.each<[minutes: (number | undefined)[], days: string[]]>([
        [[10], ['Thu 10 Sep: l1.1 (repeat), l2 (fixed)', 'Mon 14 Sep: l3']],
        [[30], ['Thu 10 Sep: l1.1 (repeat), l2 (fixed)', 'Mon 14 Sep: l3']],
        [[31], ['Thu 10 Sep: l2 (fixed)', 'Mon 14 Sep: l1.1 (repeat)']],
        [[10, undefined], ['Thu 10 Sep: l2 (fixed)', 'Mon 14 Sep: l1.1 (repeat)']],
        [[40, 40], ['Thu 10 Sep: l2.0 (fixed)', 'Mon 14 Sep: l1.1 (repeat)']]
    ])('%j minutes', (minutes, days) => {
        expect(next(...minutes)).toEqual(days);
    });
    test('a whole lesson again keeps its room, too', () => {
        const again = (perDay: number) => told(planOf([timed('l1', [10]), timed('l2', [10]), timed('l3', [10])], {
            ...twoDays, ...session(50), ...perMeeting(perDay), log: [unsure('l1', '2026-09-07')], fixed: [fixed('l3', '2026-09-10')]
        }));
        expect(again(1)).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l3 (fixed)', 'Mon 14 Sep: l1 (repeat)', 'Thu 17 Sep: l2']);
        expect(again(2)).toEqual(['Mon 7 Sep: l1, l2', 'Thu 10 Sep: l1 (repeat), l3 (fixed)']);
    });
});

test('the last closing question that says what to do counts', () => {
    const asks = lesson('l1', [], [activity('a', [], { minutes: 20 }), closing(repeat('a', 'tomorrow')), activity('b', [], { minutes: 20 })]);
    expect(told(planOf([asks, timed('l2', [10])], { ...twoDays, log: [unsure('l1', '2026-09-07')] }))[1]).toBe('Thu 10 Sep: l1.0 (repeat), l2');
    const revisit: Unsure = { then: 'revisit', lessons: 1, at: range() };
    const early = lesson('l1', [], [activity('a', [], { minutes: 20 }), closing(revisit), activity('b', [], { minutes: 20 })]);
    expect(told(planOf([early, timed('l2', [10]), timed('l3', [10])], { ...twoDays, log: [unsure('l1', '2026-09-07')] }))[2]).toBe('Mon 14 Sep: l1.1 (revisit), l3');
});

test('a catch-up that repeats have shortened leaves the next one whole', () => {
    // Three days every three lessons. Two repeats take meetings 2 and 4, so two of the three days are used up, and from the fourth lesson on all is as planned.
    const own = { ...twoDays, ...catchUp(3, 3) };
    const plan = planOf(many(7), { ...own, log: [unsure('l1', '2026-09-07'), unsure('l2', '2026-09-14')] });
    expect(told(plan).map(line => line.split(': ')[1])).toEqual([
        'l1', 'l1 (repeat)', 'l2', 'l2 (repeat)', 'l3', 'free, catch-up', 'l4', 'l5', 'l6', 'free, catch-up', 'free, catch-up', 'free, catch-up', 'l7'
    ]);
    expect(told(plan).slice(6)).toEqual(told(planOf(many(7), own)).slice(6));
    expect(plan.weeks.flatMap(w => w.remarks)).toEqual(['2 days to catch up are used up by what was taught again.']);
    expect(kinds(planOf(many(2), { ...own, ...catchUp(50, 1) }))).toEqual([]);
    expect(told(planOf(many(2), { ...twoDays, ...catchUp(50, 1) }))).toHaveLength(52);
});

describe('ways out', () => {
    const short = { ...twoDays, ends: on('2026-09-18') };
    const titles = (plan: ReturnType<typeof planOf>) => plan.proposals.map(p => p.title);
    test('a weekday with one free day rather than a Saturday with two', () => {
        const plan = planOf(many(6), { ...short, ends: on('2026-09-20'), off: [off('2026-09-08', '2026-09-09'), off('2026-09-11')] });
        expect(plan.proposals.find(p => p.title.startsWith('Meet on'))).toMatchObject({ title: 'Meet on Tuesdays too', places: 1, line: { text: 'meets mon, tue, thu' } });
    });
    test('a class that meets every day has no other weekday', () => {
        const plan = planOf(many(16), { ...short, meets: meets('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun') });
        expect(titles(plan)).toEqual(['Teach up to 2 lessons at a meeting', 'End on Tuesday 22 September 2026', expect.stringMatching(/^Leave out /)]);
    });
    test('a longer session holds all that the class is taught in one, short lessons together', () => {
        // In 50 minutes: l1 in two pieces, l2 beside the second; l3 and l4; the first piece of l5. In 60: l1; l2, l3 and l4; l5; l6.
        const plan = planOf([timed('l1', [30, 30]), timed('l2', [20]), timed('l3', [20]), timed('l4', [20]), timed('l5', [30, 30]), timed('l6', [20])], { ...short, ...session(50) });
        expect(plan.unplaced.map(u => u.lesson)).toEqual(['l5', 'l6']);
        expect(plan.proposals.find(p => p.title.startsWith('Meet for'))).toMatchObject({ title: 'Meet for 60 min instead of 50', gives: 'Both lessons fit.', givesUp: '10 min more at each of 4 meetings.' });
    });
    test('no longer session where there is none, or where no lesson is longer', () => {
        expect(titles(planOf([timed('a', [10]), timed('b', [10]), timed('c', [10]), timed('d', [10]), timed('e', [40])], short)).some(title => title.startsWith('Meet for'))).toBe(false);
        expect(titles(planOf(many(6), { ...short, ...session(40) })).some(title => title.startsWith('Meet for'))).toBe(false);
    });
    test('leaving out one of two lessons that introduce the same, not both', () => {
        const about = (name: string): LessonSheet => timed(name, [40], { introduces: [mention('mass')] });
        const checks = (name: string): LessonSheet => timed(name, [40], { checks: [mention('mass')] });
        const plan = planOf([about('l1'), about('l2'), checks('l3'), checks('l4'), timed('l5', [40], follows('l4', 'l3')), timed('l6', [40])], short);
        expect(plan.proposals.find(p => p.title.startsWith('Leave out'))).toMatchObject({ title: 'Leave out “L2”', gives: '1 of the 2 lessons fits.', givesUp: '1 lesson. No lesson follows it, and other lessons check what it teaches.' });
    });
});

describe('days off', () => {
    test('of several, the one that takes the day is named', () => {
        const plan = planOf(many(2), { ...twoDays, off: [off('2026-09-10', undefined, 'Fair'), off('2026-09-14', '2026-09-18', 'Harvest'), off('2026-09-21', undefined, 'Dentist')], fixed: [fixed('l1', '2026-09-17')] });
        expect(messages(plan)[0]).toContain('that day is off: “Harvest”.');
    });
    test('titles to look for that are blank count as none', () => {
        const from = (...named: string[]) => [{ path: 'town.ics', named, at: range() }];
        const town: Attachment = { state: 'calendar', calendar: { events: [['Fair', '2026-09-10'], ['Bridge day', '2026-09-14']].map(([title, day]) => ({ uid: title!, title: title!, days: { from: day!, to: day! } })), remarks: [] } };
        const titles = (...named: string[]) => planOf(many(3), { ...twoDays, offFrom: from(...named) }, { 'town.ics': town }).daysOff.map(d => d.title);
        expect(titles(' ')).toEqual(['Fair', 'Bridge day']);
        expect(titles('', 'bridge')).toEqual(['Bridge day']);
    });
    test('one remark too many of a calendar is one', () => {
        const town: Attachment = { state: 'calendar', calendar: { events: [], remarks: ['One.', 'Two.', 'Three.', 'Four.'] } };
        expect(messages(planOf(many(1), { ...twoDays, offFrom: [{ path: 'town.ics', named: [], at: range() }] }, { 'town.ics': town })).at(-1)).toBe('In “town.ics”: 1 more could not be read and is left out.');
    });
    test('more stretches than are told one by one are summed up', () => {
        // 7 September 2026 to 10 August 2028 are 100 weeks and four days: 202 Mondays and Thursdays, of which the first and the last are taught.
        const days = Array.from({ length: 702 }, (_, i) => new Date(Date.UTC(2026, 8, 8 + i)).toISOString().slice(0, 10));
        const plan = planOf(many(2), { ...twoDays, off: days.map(day => off(day, undefined, `Off ${day}`)) });
        expect([plan.trail[0], plan.trail.at(-2), plan.trail.at(-1)].map(step => step?.words)).toEqual(['Mondays and Thursdays, 7 September 2026 to 10 August 2028: 202 days', 'less 188 for other days off', 'leaves 2 meeting days']);
    });
    test('no day at all, with an end and without', () => {
        const said = (own: object) => planOf(many(1), { ...twoDays, off: [off('2026-09-01', '9999-12-31')], ...own }).assumptions;
        expect(said({})).toEqual(['The days off of the class “K” leave too few days to meet: the weeks have no dates.']);
        expect(said({ ends: on('2026-12-18') })).toEqual(['The first and last day and the days off of the class “K” leave too few days to meet: the weeks have no dates.']);
    });
    test('a class without lessons or an end still says which days it would meet', () => {
        expect(planOf([], twoDays).trail.map(step => step.words)).toEqual(['Mondays and Thursdays, 7 September to 7 September 2026: 1 day']);
    });
});

describe('problems and the lines they lead to', () => {
    test('a part that is too long, without dates', () => {
        const own = { meets: twoDays.meets, ...session(50) };
        const plan = planOf([timed('a', [70])], own);
        expect(plan.problems).toEqual([{
            kind: 'session-overrun', lesson: 'a', date: undefined, place: expect.objectContaining({ uri: 'file:///demo/all.course' }),
            message: '“A” in “A” takes 70 min, but the class “K” meets for 50 min. Make two parts of it, shorten it, or make the session longer.',
            related: [{ message: 'The session of “K”', place: { uri: 'file:///demo/all.course', range: own.session.at } }]
        }]);
    });
    test('a part that was brought in leads to its own file', () => {
        const brought = { ...activity('a', [], { minutes: 70 }), uri: 'file:///demo/elsewhere.lesson' };
        expect(planOf([lesson('a', [], [brought])], { ...twoDays, ...session(50) }).problems.map(p => p.place.uri)).toEqual(['file:///demo/elsewhere.lesson']);
    });
    test('what waits, in the order of the course, each at the name it waits for', () => {
        const [b, c] = [timed('b', [5], follows('a', 'e', 'd')), timed('c', [5], follows('d'))];
        const plan = planOf([timed('a', [5]), b, c, timed('d', [5]), timed('e', [5])], twoDays);
        expect(told(plan).map(line => line.split(': ')[1])).toEqual(['a', 'd', 'c', 'e', 'b']);
        expect(plan.problems.map(p => [p.lesson, p.message.split(', which')[0]])).toEqual([['b', '“B” waits for “E”'], ['c', '“C” waits for “D”']]);
        expect(plan.problems[0]?.place.range).toBe(b.follows[1]?.at);
        expect(plan.problems[1]?.place.range).toBe(c.follows[0]?.at);
    });
    test('a fixed date that finds no room lets its lesson come late, which is no waiting', () => {
        const plan = planOf(['a', 'b', 'c', 'd'].map(name => timed(name, [40])), { ...twoDays, fixed: [fixed('d', '2026-09-14'), fixed('b', '2026-09-14')] });
        expect(told(plan)).toEqual(['Mon 7 Sep: a', 'Thu 10 Sep: c', 'Mon 14 Sep: d (fixed)', 'Thu 17 Sep: b']);
        expect(messages(plan)).toEqual(['“B” is fixed on Monday 14 September 2026, but what else is fixed on that day leaves no room for it. It is taught on Thu 17 Sep instead. Choose another day for one of them.']);
    });
    test('a fixed date too early for two lessons that it follows, and one with no day left', () => {
        const plan = planOf([timed('a', [40]), timed('b', [40]), timed('c', [40], follows('a', 'b'))], { ...twoDays, ends: on('2026-09-11'), fixed: [fixed('c', '2026-09-07')] });
        expect(plan.problems[0]).toMatchObject({
            kind: 'fixed-too-early', lesson: 'c', related: [{ message: '“A” comes first' }, { message: '“B” comes first' }],
            message: '“C” is fixed on Monday 7 September 2026, but “A” and “B”, which it follows, have not been taught by then (Thu 10 Sep). No other day is left for it. Choose a later day.'
        });
    });
    test('one lesson too many', () => {
        expect(messages(planOf(many(3), { ...twoDays, ends: on('2026-09-10') }))).toEqual([
            '1 lesson no longer fits before the class “K” ends on Thursday 10 September 2026: “L3”. Choose a later end, more or longer meetings, or leave lessons out.'
        ]);
    });
    test('a logged lesson that finds no day', () => {
        expect(messages(planOf(many(2), { ...twoDays, ends: on('2026-09-07'), log: [unsure('l2', '2026-09-07')] }))[0]).toBe(
            'The log says that “L2” was taught on Monday 7 September 2026, but this plan has no day for it. Correct the line, or give the lesson a fixed day.');
    });
    test('without a class the order holds and nothing is told at lines that no class has', () => {
        const plan = planSchedule(programme(timed('b', [5], follows('a')), timed('a', [5]), course('c', ['b', 'a'])));
        expect([plan.weeks[0]?.meetings.map(m => m.lessons[0]), plan.problems, plan.unplaced]).toEqual([['a', 'b'], [], []]);
    });
    test('a fixed day without a word', () => {
        expect(planOf(many(1), { ...twoDays, fixed: [fixed('l1', '2026-09-07')] }).weeks[0]?.meetings[0]?.taught[0]?.remark).toBe('fixed for this day');
    });
});

test('circles: those that lead back to themselves, each once', () => {
    expect(circlesAmong([[1], [0], [2], [1], [], [6], [7], [5, 4]])).toEqual([[0, 1], [2], [5, 6, 7]]);
    expect(circlesAmong([[1], [2], []])).toEqual([]);
});

test('days: what does not exist is none', () => {
    expect([readDay('2026-02-30'), readDay('2026-09-14')?.toString(), dayLabel(readDay('2026-09-14')!), dayLabel(readDay('2027-01-03')!)]).toEqual([undefined, '2026-09-14', 'Mon 14 Sep', 'Sun 3 Jan']);
});

describe('lessons that moved in their files', () => {
    const below = { start: { line: 7, character: 0 }, end: { line: 9, character: 0 } };
    const moved = (plan: ReturnType<typeof planOf>, name: string) => movedSchedule(plan, new Map([[name, { ...timed(name, []), uri: 'file:///demo/moved.lesson', at: below }]]));
    test('lead to their new lines, and nothing else is made anew', () => {
        const plan = planOf(many(4), twoDays);
        const now = moved(plan, 'l3');
        expect(now?.weeks.flatMap(w => w.meetings.flatMap(m => m.taught.map(t => [t.lesson, t.place.uri, t.place.range === below])))).toEqual([
            ['l1', 'file:///demo/all.course', false], ['l2', 'file:///demo/all.course', false], ['l3', 'file:///demo/moved.lesson', true], ['l4', 'file:///demo/all.course', false]
        ]);
        expect(now?.weeks[0]).toBe(plan.weeks[0]);
        expect(now?.weeks[1]?.meetings[1]).toBe(plan.weeks[1]?.meetings[1]);
        expect({ ...now, weeks: [] }).toEqual({ ...plan, weeks: [] });
    });
    test('a plan that tells of them in words, or in a related line, is made anew', () => {
        const at = (uri: string) => ({ uri, range: below });
        const plan = planOf(many(1), twoDays);
        const elsewhere = { kind: 'waits', message: '', place: at('file:///demo/a.course') } as const;
        expect(moved({ ...plan, problems: [elsewhere] }, 'l1')).toBeDefined();
        expect(moved({ ...plan, problems: [{ ...elsewhere, place: at('file:///demo/moved.lesson') }] }, 'l1')).toBeUndefined();
        expect(moved({ ...plan, problems: [elsewhere, { ...elsewhere, related: [{ message: '', place: at('file:///demo/moved.lesson') }] }] }, 'l1')).toBeUndefined();
        expect(moved({ ...plan, unplaced: [{ lesson: 'l9', title: '', why: '', place: at('file:///demo/moved.lesson') }] }, 'l1')).toBeUndefined();
    });
});
