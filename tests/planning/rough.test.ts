/** Whatever stands in the sheets, planning answers: it never throws and never hangs. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planSchedule } from '../../server/planning/schedule.js';
import { planWeek } from '../../server/planning/week.js';
import { amount, book, course, game, held, kit, klass, lesson, material, meets, mention, need, on, part, print, programme, range, section } from './sheets.js';

const name = fc.constantFrom('cube', 'bean', 'page', 'tales', 'gone', '', '__proto__', 'toString');
const text = fc.constantFrom('1', '20', '1/2', '1 1/2', '150 g', '2 cup', '1 set', '0', 'x', '1/0', '1e99', '9'.repeat(60), '-4', '5 furlong');
const per = fc.constantFrom('learner', 'pair', 'group', 'class', 'adult', 'group of 0', 'group of 3', undefined);
const number = fc.constantFrom(undefined, 0, 1, 7, -3, 2.5, Number.NaN, 1e12);
const date = fc.constantFrom('2026-09-07', '2026-02-30', '', 'x', '9999-12-31', '-000001-01-01', '2026-09-10');
const needs = fc.array(fc.tuple(name, name, text, per).map(([a, b, t, p]) => need(a === b ? a : `${a} or ${b}`, t, p)), { maxLength: 4 });

test('any sheets', () => {
    fc.assert(fc.property(needs, needs, number, number, date, date, fc.array(fc.tuple(name, text, date), { maxLength: 3 }), (own, gameNeeds, n, m, start, other, stock) => {
        const things = [
            material('cube', { use: undefined, packs: [{ amount: amount('x'), at: range() }], spare: { percent: 'x', at: range() }, arrives: { days: n ?? 3, at: range() } }),
            material('bean', { use: 'consumable', measured: { unit: 'furlong', at: range() }, loss: { percent: '100', at: range() } }),
            print('page', n ?? 1, true), book('tales'), game('grocer', gameNeeds, [n ?? 2, m], { found: { book: mention('tales'), at: range() } }),
            kit('box', ...stock.map(([thing, t]) => [thing, t] as [string, string]))
        ];
        const sheets = programme(...things, lesson('l', own, [part('game', 'grocer'), part('activity', 'a', { needs: own, minutes: n })]), course('c', ['l', 'gone', 'l'], {
            uses: [{ kit: mention('box'), count: n ?? 1, per: { who: 'learners', of: m ?? 0 }, at: range() }]
        }), klass('k', 'c', n, {
            groupsOf: m, sections: m === undefined ? [] : [section('a', n, other), section('b', m, '9:00')], starts: on(start), meets: meets('mon', 'thu'),
            off: [{ from: on(other), to: on(start), at: range() }], onHand: stock.map(s => held(...s)), onOrder: stock.map(s => held(...s)),
            kits: n === undefined ? [] : [{ kit: mention('box'), count: n, at: range() }]
        }));
        const schedule = planSchedule(sheets);
        for (const week of [0, 1, 2]) {
            const brief = planWeek(sheets, { week }, { schedule });
            expect(JSON.parse(JSON.stringify(brief.fetch))).toEqual(brief.fetch);
        }
        expect(schedule.weeks.flatMap(w => w.meetings.flatMap(m2 => m2.lessons))).toEqual(['l', 'l']);
    }), { numRuns: 400 });
});
