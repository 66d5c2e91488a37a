import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ClassSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import type { WeekBrief } from '../../server/planning/figures.js';
import { planWeek } from '../../server/planning/week.js';
import type { file} from './sheets.js';
import {
    consumable, counted, course, held, kit, klass, lesson, measured, meets, mention, need, on, percent, programme, range, reusable
} from './sheets.js';

type Declared = Parameters<typeof file>[number];
const stocked = (brief: WeekBrief) => brief.fetch.flatMap(g => g.things)
    .map(t => [t.name, t.amount.text, t.atHand?.text, t.missing?.text]);

/** One lesson a week on Mondays from 7 September 2026; each needs so many beads (used up) and cubes (handed back). */
function weekly(amounts: number[], own: Partial<ClassSheet> = {}, extra: Declared[] = [], ofCourse: Partial<CourseSheet> = {}) {
    const names = amounts.map((_, i) => `l${i}`);
    const sheets = programme(consumable('bead', { source: 'shop' }), reusable('cube', { source: 'shop' }), ...extra,
        ...names.map((n, i) => lesson(n, [need('bead', String(amounts[i]), 'class'), need('cube', String(amounts[i]), 'class')])),
        course('c', names, ofCourse), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own }));
    return (week: number) => planWeek(sheets, { week });
}

describe('at hand', () => {
    test('nothing is known: no figure, all is missing', () => {
        expect(stocked(weekly([10])(1))).toEqual([['bead', '10', undefined, '10'], ['cube', '10', undefined, '10']]);
    });
    test('consumables run down week by week, reusables do not', () => {
        const brief = weekly([10, 30, 10], { onHand: [held('bead', '35'), held('cube', '35')] });
        expect([1, 2, 3].map(w => stocked(brief(w)))).toEqual([
            [['bead', '10', '35', undefined], ['cube', '10', '35', undefined]],
            [['bead', '30', '25', '5'], ['cube', '30', '35', undefined]],
            [['bead', '10', '0', '10'], ['cube', '10', '35', undefined]]
        ]);
        const trail = brief(3).fetch[0]?.things[0]?.atHand?.trail;
        expect(trail?.map(s => s.words)).toEqual(['on hand: 35', 'used in weeks 1 and 2: 40, of which 5 had to be bought']);
        expect(trail?.[0]?.place).toBeDefined();
    });
    test('what an earlier week had to buy is there still, if it is handed back, said', () => {
        const cubes = (week: number, brief = weekly([3, 5, 4], { onHand: [held('cube', '1')] })(week)) =>
            ({ brief, row: stocked(brief)[1], list: brief.buy.filter(b => b.name === 'cube').map(b => b.missing.text), ahead: brief.next?.order.filter(o => o.name === 'cube').map(o => o.missing.text) });
        expect([1, 2, 3].map(w => cubes(w).row)).toEqual([['cube', '3', '1', '2'], ['cube', '5', '3', '2'], ['cube', '4', '5', undefined]]);
        expect(cubes(1)).toMatchObject({ list: ['2'], ahead: ['2'] });
        expect(cubes(2)).toMatchObject({ list: ['2'], ahead: [] });
        expect(cubes(3)).toMatchObject({ list: [] });
        const { brief } = cubes(3);
        expect(brief.fetch[0]?.things[1]?.atHand?.trail.map(s => s.words)).toEqual(['on hand: 1', '2 bought for week 1', '2 bought for week 2']);
        expect(brief.assumptions).toEqual(['What the lists of earlier weeks say to buy is counted as bought.']);
        expect(cubes(1).brief.assumptions).toEqual([]);
    });
    test('what no list says to buy is not counted on: from home, or wholly optional', () => {
        const second = (source: 'home' | 'shop', optional: boolean) => planWeek(programme(reusable('cube', { source }),
            lesson('a', [need('cube', '3', 'class', { optional })]), lesson('b', [need('cube', '5', 'class')]), course('c', ['a', 'b']),
            klass('k', 'c', 7, { meets: meets('mon'), onHand: [held('cube', '1')] })), { week: 2 });
        expect(stocked(second('shop', false))).toEqual([['cube', '5', '3', '2']]);
        expect(stocked(second('shop', true))).toEqual([['cube', '5', '1', '4']]);
        expect(stocked(second('home', false))).toEqual([['cube', '5', '1', '4']]);
    });
    test("a week's list and the look-ahead of the week before it agree", () => {
        fc.assert(fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 2, maxLength: 6 }), fc.integer({ min: 0, max: 30 }), (needs, have) => {
            const brief = weekly(needs, { onHand: [held('cube', String(have)), held('bead', String(have))] });
            for (let week = 2; week <= needs.length; week++) {
                const of = (lines: WeekBrief['buy'] | undefined) => lines?.map(l => [l.name, l.missing.exact]);
                expect(of(brief(week - 1).next?.order)).toEqual(of(brief(week).buy));
            }
        }), { numRuns: 30 });
    });
    test('spares are used up with the rest', () => {
        const names = ['a', 'b'];
        const sheets = programme(consumable('bead', { spare: percent('10') }), ...names.map(n => lesson(n, [need('bead', '50', 'class')])), course('c', names),
            klass('k', 'c', 7, { meets: meets('mon'), onHand: [held('bead', '100')] }));
        expect(stocked(planWeek(sheets, { week: 2 }))).toEqual([['bead', '55', '45', '10']]);
    });
    test('orders count from the first use that they do not miss: what comes on the day is there, as for the last day to order', () => {
        const brief = weekly([10, 10, 10], { onOrder: [held('bead', '100', '2026-09-15'), held('cube', '5', '2026-09-14')] });
        expect([1, 2, 3].map(w => stocked(brief(w)))).toEqual([
            [['bead', '10', undefined, '10'], ['cube', '10', undefined, '10']],
            [['bead', '10', undefined, '10'], ['cube', '10', '15', undefined]],
            [['bead', '10', '100', undefined], ['cube', '10', '15', undefined]]
        ]);
        expect(brief(2).buy[0]?.when).toBe('needed Mon 14 Sep; 100 on order, arriving Tue 15 Sep');
        expect(brief(3).fetch[0]?.things[0]?.atHand?.trail.map(s => s.words)).toEqual(['used in weeks 1 and 2: 20, of which 20 had to be bought', 'arrived Tue 15 Sep: 100']);
    });
    test('an order without a date, or a plan without dates, is not counted on, said', () => {
        const undated = weekly([10], { onOrder: [held('bead', '100'), held('cube', '9', '2026-02-30')] })(1);
        expect(stocked(undated).map(s => s[3])).toEqual(['10', '10']);
        expect(undated.assumptions).toEqual([
            '100 of “Bead” on order have no date of arrival: they are not counted on.', '9 of “Cube” on order have no date of arrival: they are not counted on.'
        ]);
        const plain = weekly([10], { starts: undefined, onOrder: [held('bead', '100', '2026-09-01')] })(1);
        expect(stocked(plain)[0]?.[3]).toBe('10');
        expect(plain.assumptions.at(-1)).toBe('Without dates for the weeks, the order of “Bead” is not counted on.');
    });
    test('amounts are converted, or left out and said', () => {
        const sheets = (text: string) => programme(consumable('bean', { ...measured('g'), source: 'shop' }), lesson('a', [need('bean', '1 kg', 'class')]),
            course('c', ['a']), klass('k', 'c', 7, { onHand: [held('bean', text)] }));
        expect(stocked(planWeek(sheets('1 lb'), { week: 1 }))).toEqual([['bean', '1 kg', '453 g', '547 g']]);
        const left = planWeek(sheets('2 cup'), { week: 1 });
        expect(stocked(left)).toEqual([['bean', '1 kg', undefined, '1 kg']]);
        expect(left.assumptions.at(-1)).toBe('The class has 2 cup of “Bean”, which cannot be counted in g: it is left out.');
    });
    test.each([
        ['2 cup', counted('bag', 'bags'), '2 cup of “Bean”, which cannot be counted in bags: it is left out.'],
        ['2 cup', {}, '2 cup of “Bean”, which cannot be counted in whole pieces: it is left out.'],
        ['x', measured('g'), 'x of “Bean”, which cannot be counted in g: it is left out.']
    ])('%s, where it is counted as %j, is said by whose it is', (text, measure, says) => {
        const bean = consumable('bean', { ...measure, source: 'shop' });
        const left = (own: Partial<ClassSheet>, other: Partial<ClassSheet>) => planWeek(programme(bean, lesson('a', [need('bean', '1', 'class')]), course('c', ['a']),
            klass('k', 'c', 7, own), klass('m', 'c', 7, { sharesWith: [mention('k')], ...other })), { week: 1, class: 'k' }).assumptions.filter(one => one.includes('left out'));
        const has = { onHand: [held('bean', text)] };
        expect([left(has, {}), left({}, has)]).toEqual([[`The class has ${says}`], [`The class “M” has ${says}`]]);
    });
    // 1 lb is 453.59237 g (NIST Handbook 44, appendix C): at hand is said rounded down, what is missing makes up the rest.
    test('the exact amounts stay beside the rounded ones', () => {
        const sheets = programme(consumable('bean', { ...measured('g'), source: 'shop', loss: percent('5') }), lesson('a', [need('bean', '30 g', 'class')]), course('c', ['a']),
            klass('k', 'c', 7, { onHand: [held('bean', '1/20 lb')] }));
        const [bean] = planWeek(sheets, { week: 1 }).fetch[0]?.things ?? [];
        expect(bean?.amount).toMatchObject({ exact: '600/19', text: '32 g', unit: 'g' });
        expect(bean?.amount.trail.at(-1)?.words).toBe('rounded up to 32 g');
        expect(bean?.atHand).toMatchObject({ exact: '22.6796185', text: '22 g' });
        expect(bean?.atHand?.trail.at(-1)?.words).toBe('rounded down to 22 g');
        expect(bean?.missing?.text).toBe('10 g');
        expect(bean?.missing?.trail[0]?.words).toBe('32 g needed less 22 g at hand');
    });
    test('rounding never makes a shortage of what is enough', () => {
        const sheets = (have: string) => programme(consumable('bean', { ...measured('g'), loss: percent('5') }), lesson('a', [need('bean', '150 g', 'class')]), course('c', ['a']),
            klass('k', 'c', 7, { onHand: [held('bean', have)] }));
        expect(stocked(planWeek(sheets('158 g'), { week: 1 }))).toEqual([['bean', '157.9 g', '158 g', undefined]]);
        expect(stocked(planWeek(sheets('160 g'), { week: 1 }))).toEqual([['bean', '160 g', '160 g', undefined]]);
        expect(stocked(planWeek(sheets('157 g'), { week: 1 }))).toEqual([['bean', '160 g', '157 g', '3 g']]);
    });
    test('library things are asked for, not missing', () => {
        const sheets = programme(reusable('atlas', { source: 'library' }), lesson('a', [need('atlas', '2', 'class')]), course('c', ['a']), klass('k', 'c', 7));
        expect(stocked(planWeek(sheets, { week: 1 }))).toEqual([['atlas', '2', undefined, undefined]]);
    });
    test('home things are missing only where some are known to be there', () => {
        const sheets = (onHand: ReturnType<typeof held>[]) => programme(reusable('jar', { source: 'home' }), lesson('a', [need('jar', '9', 'class')]),
            course('c', ['a']), klass('k', 'c', 7, { onHand }));
        expect(stocked(planWeek(sheets([]), { week: 1 }))).toEqual([['jar', '9', undefined, undefined]]);
        expect(stocked(planWeek(sheets([held('jar', '4')]), { week: 1 }))).toEqual([['jar', '9', '4', '5']]);
    });
});

describe('kits', () => {
    const box = kit('box', ['cube', '20'], ['bead', '30']);
    const per = (who: CourseSheet['uses'][number]['per'], count = 1): Partial<CourseSheet> => ({ uses: [{ kit: mention('box'), count, per: who, at: range() }] });
    const cubes = (brief: WeekBrief) => stocked(brief).find(s => s[0] === 'cube')?.[2];
    test("the class's own kits count, and only they", () => {
        const own = { kits: [{ kit: mention('box'), count: 3, at: range() }] };
        expect(cubes(weekly([10], own, [box], per({ who: 'all' }, 9))(1))).toBe('60');
        expect(weekly([10], own, [box])(1).fetch[0]?.things[0]?.atHand?.trail[0]?.words).toBe('3 kits “Box” with 30: 90');
    });
    test("else the course's: per so many learners, in all, per family", () => {
        expect(cubes(weekly([10], {}, [box], per({ who: 'learners', of: 4 }))(1))).toBe('40');
        expect(cubes(weekly([10], {}, [box], per({ who: 'all' }, 3))(1))).toBe('60');
        const family = weekly([10], {}, [box], per({ who: 'family' }))(1);
        expect(cubes(family)).toBe('20');
        expect(family.assumptions).toEqual(['“Box” comes per family, and the class does not list its kits: 1 kit counted.']);
    });
    test('consumables of a kit run down too', () => {
        const brief = weekly([10, 25], { kits: [{ kit: mention('box'), count: 1, at: range() }] }, [box]);
        expect(stocked(brief(2))[0]).toEqual(['bead', '25', '20', '5']);
    });
    test('a kit that no file declares, or none of it, holds nothing', () => {
        expect(cubes(weekly([10], { kits: [{ kit: mention('chest'), count: 3, at: range() }, { kit: mention('box'), count: 0, at: range() }] }, [box])(1))).toBeUndefined();
    });
});

test('more on hand never makes more missing, and at hand covers the rest exactly', () => {
    const amounts = fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1, maxLength: 5 });
    fc.assert(fc.property(amounts, fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 50 }), (needs, have, more) => {
        const less = weekly(needs, { onHand: [held('bead', String(have)), held('cube', String(have))] });
        const rich = weekly(needs, { onHand: [held('bead', String(have + more)), held('cube', String(have + more))] });
        needs.forEach((_, i) => {
            const [a, b] = [stocked(less(i + 1)), stocked(rich(i + 1))];
            a.forEach((row, j) => {
                expect(Number(b[j]?.[3] ?? 0)).toBeLessThanOrEqual(Number(row[3] ?? 0));
                expect(Number(row[3] ?? 0)).toBe(Math.max(0, Number(row[1]) - Number(row[2])));
            });
        });
    }), { numRuns: 40 });
});
