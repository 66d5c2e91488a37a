/** Class-shaped values, worked out by a script outside this project (check-values 1.6 and 1.5 F of the project's notes). */
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { spared } from '../../server/planning/amounts.js';
import { groupsOf, pairsOf } from '../../server/planning/people.js';
import { planWeek } from '../../server/planning/week.js';
import { consumable, course, days, held, klass, lesson, meets, need, on, pack, percent, programme } from '../planning/sheets.js';

const ready = (value: number, more: Parameters<typeof consumable>[1]) =>
    spared(new Fraction(value), consumable('bead', more), { is: 'pieces' }).valueOf();

describe('27 children', () => {
    test('pairs and groups', () => {
        expect(pairsOf(27)).toBe(14);
        expect([3, 4, 5].map(k => groupsOf(27, k).length)).toEqual([9, 7, 6]);
    });
    test('4 each is 108; with 10% spares 119; 35 on hand leave 84 to get', () => {
        const sheets = programme(
            consumable('bead', { spare: percent('10'), packs: [pack('24', '3.20')] }),
            lesson('thread', [need('bead', '4', 'learner')]),
            course('c', ['thread']),
            klass('k', 'c', 27, { onHand: [held('bead', '35')] })
        );
        const brief = planWeek(sheets, { week: 1 });
        const thing = brief.fetch[0]?.things[0];
        expect([thing?.amount.text, thing?.atHand?.text, thing?.missing?.text]).toEqual(['119', '35', '84']);
        expect(brief.buy.map(b => [b.missing.text, b.packs])).toEqual([['84', ['packs of 24 at 3.20 USD']]]);
        expect(thing?.amount.trail.map(s => s.words)).toEqual([
            '“Thread”, Day 1: 4 x 27 learners = 108', 'spare 10%: 108 becomes 118.8', 'rounded up to whole things: 119'
        ]);
    });
});

describe('exact per cents (with doubles, 54 of the first 1000 whole numbers go wrong at 10%)', () => {
    test.each([[50, 55], [100, 110]])('%d with 10% spare is %d', (n, spared) => expect(ready(n, { spare: percent('10') })).toBe(spared));
    test('every whole number to 1000 against whole-number arithmetic', () => {
        for (let n = 1; n <= 1000; n++) expect(ready(n, { spare: percent('10') })).toBe(Number((BigInt(n) * 110n + 99n) / 100n));
    });
    // Shrinkage of 10% on 100: 111.11, from a published description of shrinkage in a planning handbook; rounded up to 112.
    test('a loss of 10% divides', () => expect(ready(100, { loss: percent('10') })).toBe(112));
    // Shrinkage 20%: a net need of 52 orders 65, one of 68 orders 85 (two published worked examples).
    test.each([[52, 65], [68, 85]])('%d at a loss of 20%% orders %d', (net, order) => expect(ready(net, { loss: percent('20') })).toBe(order));
});

test('needed Mon 2026-09-14 with 10 calendar days: order by Fri 2026-09-04', () => {
    const sheets = programme(
        consumable('bead', { arrives: days(10), packs: [pack('24')] }),
        lesson('thread', [need('bead', '4', 'learner')]),
        course('c', ['thread']),
        klass('k', 'c', 7, { starts: on('2026-09-14'), meets: meets('mon') })
    );
    expect(planWeek(sheets, { week: 1 }).buy[0]).toMatchObject({
        neededBy: '2026-09-14', orderBy: '2026-09-04', when: 'needed Mon 14 Sep; arrives in 10 days, so order by Fri 4 Sep'
    });
});
