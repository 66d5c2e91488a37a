/** How a brief shows a lesson that is split over meetings, fixed or taught again. */
import { describe, expect, test } from 'vitest';
import { planWeek } from '../../server/planning/week.js';
import { activity, consumable, course, klass, lesson, measured, mention, need, programme, reusable, step } from './sheets.js';
import { closing, fixed, repeat, session, twoDays, unsure } from './schedule-sheets.js';

const long = lesson('l1', [need('cube', '20', 'pair'), need('bean', '100 g', 'pair')], [
    activity('a', [need('card', '1', 'pair')], { minutes: 30 }), activity('b', [need('rope', '1', 'class')], { minutes: 30 }), closing(repeat('b', 'tomorrow'))
], { steps: [step('about', 'Compare.'), step('note', 'Check the pivot.')], introduces: [mention('mass')], words: [mention('heavier')], follows: [mention('gone')], notNeeded: [mention('card')] });
const things = [reusable('cube'), consumable('bean', measured('g')), reusable('card'), reusable('rope')];
const lessonsOf = (own: Parameters<typeof klass>[3], week = 1) => planWeek(programme(...things, long, lesson('l2', [], [activity('c', [], { minutes: 20 })]), course('c', ['l1', 'l2']),
    klass('k', 'c', 7, { ...twoDays, ...own })), { week }).lessons;

describe('a lesson in pieces', () => {
    const [first, second] = lessonsOf(session(45));
    test('each piece has its own parts, minutes and start', () => {
        expect([first, second].map(l => [l?.name, l?.meeting, l?.minutes, l?.piece, l?.parts.map(p => [p.name, p.startsAt])])).toEqual([
            ['l1', 'Mon 7 Sep', 30, { number: 1, of: 2 }, [['a', 0]]],
            ['l1', 'Thu 10 Sep', 35, { number: 2, of: 2 }, [['b', 0], ['closing', 30]]]
        ]);
        expect(lessonsOf(session(45), 2).map(l => [l.name, l.piece])).toEqual([['l2', undefined]]);
    });
    test('what is handed back is there each time, what is used up comes once, and so do words and notes', () => {
        expect(first?.needs.map(n => n.name)).toEqual(['cube', 'bean']);
        expect(second?.needs.map(n => n.name)).toEqual(['cube']);
        expect([first?.steps.length, second?.steps.length, first?.words, second?.words, first?.follows.length, second?.follows.length]).toEqual([1, 0, ['heavier'], [], 1, 0]);
        expect([first?.aim.length, second?.aim.length, second?.objectives.length, second?.parts[0]?.needs.map(n => n.name)]).toEqual([1, 1, 1, ['rope']]);
    });
});

test('a part that is repeated is a short entry with its own things, and says why', () => {
    const [first, again, next] = lessonsOf({ log: [unsure('l1', '2026-09-07')] });
    expect([first, again, next].map(l => [l?.name, l?.meeting])).toEqual([['l1', 'Mon 7 Sep'], ['l1', 'Thu 10 Sep'], ['l2', 'Thu 10 Sep']]);
    expect(again).toMatchObject({
        why: 'repeat', remark: 'again: the children were unsure on Mon 7 Sep', minutes: 30, parts: [{ name: 'b', startsAt: 0, needs: [{ name: 'rope' }] }],
        aim: [], steps: [], objectives: [], words: [], follows: [], needs: [], notNeeded: []
    });
    expect(first).toMatchObject({ minutes: 65, parts: [{}, {}, {}], needs: [{}, {}] });
    expect(first?.why).toBeUndefined();
});

test('a fixed day is told', () => {
    expect(lessonsOf({ fixed: [fixed('l2', '2026-09-07', 'Market visit')] })[0]).toMatchObject({ name: 'l2', why: 'fixed', remark: 'fixed for this day: Market visit' });
});
