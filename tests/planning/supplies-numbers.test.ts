/** What stands in an inventory and a lesson as whole numbers: facts of buying, amounts of need lines, and how often who is there needs them. */
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { unitNamed } from '@haversack/language/facts/units';
import type { LessonSheet, MaterialSheet, Need, ThingSheet } from '@haversack/language/sheets/sheet';
import type { Measure } from '../../server/planning/amounts.js';
import type { Crowd } from '../../server/planning/people.js';
import { Attendance, atOnce } from '../../server/planning/supplies/attendance.js';
import { eitherClaim, NumberReader, sameMeasure } from '../../server/planning/supplies/lesson-needs.js';
import { pieceOf, taughtAt, type Taught } from '../../server/planning/supplies/pieces.js';
import { fractionOf, lcm, ratioOf } from '../../server/planning/supplies/ratio.js';
import { allowed, materialRequirements, type RequirementsInput } from '../../server/planning/supplies/material-requirements.js';
import { factsOf } from '../../server/planning/supplies/thing-facts.js';
import { activity, amount, book, consumable, counted, days, game, lesson, material, measured, mention, need, pack, part, percent, print, programme, range, reusable, step } from './sheets.js';

const grams: Measure = { is: 'measured', unit: unitNamed('g')! };
const pieces: Measure = { is: 'pieces' };
const money = (value: string, currency = 'USD') => ({ value, currency, at: range() });

describe('ratios', () => {
    test.each([[1n, 1n, 1n], [4n, 1n, 4n], [1n, 6n, 6n], [5n, 5n, 5n], [4n, 6n, 12n], [18n, 12n, 36n], [7n, 3n, 21n]])('%s and %s have %s in common', (a, b, both) => {
        expect(lcm(a, b)).toBe(both);
    });
    test('a fraction there and back, below nothing too', () => {
        expect(ratioOf(new Fraction(-3, 4))).toEqual({ n: -3n, d: 4n });
        expect(fractionOf({ n: 6n, d: 8n }).toFraction()).toBe('3/4');
    });
});

describe('what the inventory says of buying', () => {
    const of = (more: Partial<MaterialSheet>, measure: Measure = grams) => factsOf(consumable('bean', more), measure);
    test.each([[-3, 0, 0], [0, 0, 0], [2.5, 2, 2], [14, 14, 14], [1e9, 3650, 3650], [Number.NaN, 0, undefined], [Number.POSITIVE_INFINITY, 0, undefined]])('%s days are %s on the way, and %s of keeping', (written, lead, keepsDays) => {
        expect(of({ arrives: days(written), keeps: days(written) })).toMatchObject({ lead: { days: lead, working: undefined }, keepsDays });
    });
    test('nothing said is nothing known', () => {
        expect(of({})).toEqual({ whole: false, packs: [], lead: { days: 0, working: undefined }, remarks: [], spare: undefined, loss: undefined, safety: undefined, currency: undefined, delivery: undefined, keepsDays: undefined });
        expect(of({}, pieces).whole).toBe(true);
        expect(of({ arrives: { days: 3, working: true, at: range() } }).lead).toEqual({ days: 3, working: true });
    });
    test.each([['50 g', { n: 50n, d: 1n }], ['1 kg', { n: 1000n, d: 1n }], ['0 g', undefined], ['5 ml', undefined], ['x', undefined]])('%s of reserve', (text, safety) => {
        expect(of({ safetyStock: amount(text) }).safety).toEqual(safety);
    });
    test.each([[money('3'), { minor: 300n, currency: 'USD' }], [money('0'), undefined], [money('-3'), undefined], [money('0.001'), undefined], [undefined, undefined]])('delivery %#', (written, delivery) => {
        expect(of({ delivery: written }).delivery).toEqual(delivery);
    });
    test('spares and losses as shares of one', () => {
        expect(of({ spare: percent('5'), loss: percent('10') })).toMatchObject({ spare: { n: 1n, d: 20n }, loss: { n: 1n, d: 10n } });
    });
    test('packs in the measure of the thing; one that cannot be counted in it is left out, said', () => {
        const tooSmall = of({ packs: [pack('1 lb', '2.00'), pack('0 g', '1.00'), pack('1 kg')] });
        expect(tooSmall.packs.map(({ size, cost }) => [size, cost])).toEqual([[{ n: 45359237n, d: 100000n }, { minor: 200n, currency: 'USD' }], [{ n: 1000n, d: 1n }, undefined]]);
        expect(tooSmall).toMatchObject({ currency: 'USD', remarks: ['A pack whose size cannot be counted like the needs is left out.'] });
        expect(of({ packs: [pack('1 l', '2.00')] })).toMatchObject({ packs: [], currency: undefined, remarks: ['A pack whose size cannot be counted like the needs is left out.'] });
        expect(of({ packs: [pack('1 kg', '2.00')] }).remarks).toEqual([]);
    });
    test('the first priced pack says the currency; packs without a price stay, those of another do not', () => {
        const { packs, currency, remarks } = of({ packs: [pack('1 kg'), { ...pack('2 kg'), cost: money('3', 'EUR') }, pack('4 kg', '5.00')] });
        expect([packs.map(({ size }) => size.n), currency]).toEqual([[1000n, 2000n], 'EUR']);
        expect(remarks).toEqual(['Packs are compared in EUR only: prices in other currencies are left out.']);
    });
    test('prints are made, not bought; a book with a price is its own pack', () => {
        expect(factsOf(print('page'), { is: 'counted', one: 'copy', many: 'copies' })).toEqual({ whole: true, packs: [], lead: { days: 0 }, remarks: [] });
        expect(factsOf(book('tales'), pieces)).toEqual({ whole: true, packs: [], lead: { days: 0 }, remarks: [] });
        expect(factsOf(book('tales', { cost: money('0.001') }), pieces)).toMatchObject({ currency: undefined, packs: [{ cost: undefined }] });
        expect(factsOf(consumable('bean', { packs: [{ ...pack('5'), cost: money('x') }] }), pieces)).toMatchObject({ currency: undefined, remarks: [] });
        const priced = book('tales', { cost: money('12', 'EUR') });
        expect(factsOf(priced, pieces)).toEqual({ whole: true, currency: 'EUR', packs: [{ size: { n: 1n, d: 1n }, cost: { minor: 1200n, currency: 'EUR' }, at: priced.cost!.at }], lead: { days: 0 }, remarks: [] });
    });
});

describe('need lines as numbers', () => {
    const read = (needs: Need[], ...things: ThingSheet[]) => new NumberReader(programme(...things)).of(lesson('l', needs));
    const bean = consumable('bean', measured('g'));
    const rope = reusable('rope', measured('m'));
    test('lines of one thing get one denominator: a half, a third and a quarter are 6, 4 and 3 twelfths', () => {
        const { things, incomplete, choice, options } = read([need('rope', '1/2 m'), need('rope', '1/3 m'), need('rope', '1/4 m')], rope);
        expect(things.map(({ d, lines }) => [d, lines.map(({ n }) => n)])).toEqual([[12n, [6n, 4n, 3n]]]);
        expect([incomplete, choice, options]).toEqual([false, false, []]);
    });
    test('and the unit of the first: one pound is 453.59237 g (NIST Handbook 44)', () => {
        expect(read([need('bean', '100 g'), need('bean', '1 lb')], bean).things).toMatchObject([{ measure: grams, d: 100000n, lines: [{ n: 10000000n }, { n: 45359237n }] }]);
    });
    test('a thing that says no unit takes that of its first amount; what cannot be made into it is not counted', () => {
        const loose = material('salt', { use: undefined });
        expect(read([need('salt', '5 g'), need('salt', '1 kg')], loose)).toMatchObject({ incomplete: false, things: [{ measure: grams, use: 'consumable', lines: [{ n: 5n }, { n: 1000n }] }] });
        expect(read([need('salt', '5 g'), need('salt', '1 cup')], loose)).toMatchObject({ incomplete: true, things: [{ measure: grams, lines: [{ n: 5n }] }] });
        expect(read([need('salt', '3')], loose)).toMatchObject({ incomplete: false, things: [{ measure: pieces, use: 'reusable', lines: [{ n: 3n }] }] });
        expect(read([need('salt', '3'), need('salt', '5 g')], loose)).toMatchObject({ incomplete: true, things: [{ measure: pieces, lines: [{ n: 3n }] }] });
    });
    test.each([
        ['no inventory declares it', [need('gone', '1')]], ['the name cannot be read', [{ ...need('bean', '1 g'), options: [{ thing: mention(''), parts: [] }] }]],
        ['nothing stands there', [{ ...need('bean', '1 g'), options: [] }]], ['no amount of what is weighed', [need('bean')]], ['a mass is no volume', [need('bean', '1 cup')]]
    ])('not counted: %s', (_, needs) => {
        expect(read(needs, bean)).toMatchObject({ things: [], incomplete: true, choice: false });
    });
    test('a name that cannot be read is not that of another', () => {
        expect(read([{ ...need('bean', '1'), options: [{ thing: mention(''), parts: [] }] }], reusable(''))).toMatchObject({ things: [], incomplete: true });
    });
    test('without an amount one whole thing is meant', () => {
        expect(read([need('cube')], reusable('cube'))).toMatchObject({ incomplete: false, things: [{ d: 1n, lines: [{ n: 1n }] }] });
    });
    test('the same number with and without a unit is not the same amount', () => {
        const sheet = reusable('sheet', { ...counted('sheet', 'sheets') });
        const oz = consumable('oil', measured('g'));
        const { things, incomplete } = read([need('sheet', '2 sheets'), need('oil', '2'), need('oil', '2 kg'), need('oil', '2')], sheet, oz);
        expect([incomplete, things.map(({ lines }) => lines.map(({ n }) => n))]).toEqual([false, [[2n], [2n, 2000n, 2n]]]);
    });
    test('optional when every line is; in the kit when one says so', () => {
        const flags = (...lines: Partial<Need>[]) => read(lines.map(more => need('bean', '1 g', 'class', more)), bean).things.map(({ optional, inKit }) => [optional, inKit])[0];
        expect([flags({ optional: true }, { optional: true }), flags({ optional: true }, {}), flags({}, { optional: true }), flags({})]).toEqual([[true, undefined], [false, undefined], [false, undefined], [false, undefined]]);
        expect([flags({ inKit: false }, { inKit: true }), flags({}, { inKit: false }), flags({ inKit: true }, {})]).toEqual([[false, true], [false, false], [false, true]]);
    });
    test.each([[undefined, undefined, undefined], [undefined, false, false], [true, undefined, true], [false, false, false], [false, true, true], [true, false, true]])('claims %s and %s are %s', (a, b, both) => {
        expect(eitherClaim(a, b)).toBe(both);
    });
    test('a choice is left to where its reasons are told: what could be chosen, and nothing counted', () => {
        const { things, choice, options, incomplete } = read([need('bean', '1 g'), need('cube or button', '3'), need('rope or cube', '1 m')], bean, rope, reusable('cube'), reusable('button'));
        expect([things, choice, options, incomplete]).toEqual([[], true, ['cube', 'button', 'rope', 'cube'], true]);
    });
    test('measures are the same by their unit; the names of pieces do not matter', () => {
        const one: Measure = { is: 'counted', one: 'sheet', many: 'sheets' };
        const ml: Measure = { is: 'measured', unit: unitNamed('ml')! };
        expect([sameMeasure(grams, { ...grams }), sameMeasure(grams, ml), sameMeasure(grams, pieces), sameMeasure(pieces, { is: 'pieces' }), sameMeasure(one, { ...one }), sameMeasure(one, pieces)]).toEqual([true, false, false, true, true, false]);
    });
    test('read once for each version of a lesson, a thing and a measure', () => {
        const reader = new NumberReader(programme(bean));
        const first = lesson('l', [need('bean', '1 g')]);
        expect(reader.of(first)).toBe(reader.of(first));
        expect(reader.of({ ...first, needs: [need('bean', '7 g')] }).things[0]!.lines[0]!.n).toBe(7n);
        expect(reader.factsOf(bean, grams)).toBe(reader.factsOf(bean, { ...grams }));
        const bag = consumable('bag', { packs: [pack('5')] });
        expect([reader.factsOf(bag, grams).whole, reader.factsOf(bag, pieces).whole, reader.factsOf(bag, grams).whole]).toEqual([false, true, false]);
        expect([reader.dayOf('2026-09-08')! - reader.dayOf('2026-09-07')!, reader.dayOf('x'), reader.dayOf('x')]).toEqual([1, undefined, undefined]);
    });
});

describe('how much for those who are there', () => {
    const crowd = (learners: number, more: Partial<Crowd> = {}): Crowd => ({ learners, adults: 2, ...more });
    const sheets = [reusable('cube'), consumable('bead'), game('two', [need('cube', '1', 'group'), need('bead', '1', 'group')], [2, 2]), game('four', [need('cube', '10', 'group'), need('bead', '10', 'group')], [4, 4]), game('free', [need('bead', '100', 'group')])];
    const of = (given: LessonSheet, ...crowds: Crowd[]) => Object.fromEntries(new Attendance(crowds).demandsOf(new NumberReader(programme(...sheets)).of(given)).map(({ name, n, d, perCrowd }) => [name, perCrowd ? [n, d, perCrowd] : [n, d]]));

    test.each([['learner', 7n], ['adult', 2n], ['pair', 4n], ['class', 1n], ['group', 3n], ['group of 2', 4n], ['group of 4', 2n], [undefined, 1n]])('seven learners in threes, for each %s: %s times', (per, times) => {
        expect(of(lesson('l', [need('cube', '5', per)]), crowd(7, { groupsOf: 3 }))).toEqual({ cube: [5n * times, 1n] });
    });
    test('each line is counted for those it speaks of: 7 + 40 + 500 + 4000', () => {
        const all = [need('bead', '1', 'learner'), need('bead', '10', 'group of 2'), need('bead', '100', 'group of 3'), need('bead', '1000', 'group of 2')];
        expect(of(lesson('l', [...all, need('bead', '100', 'adult')]), crowd(7))).toEqual({ bead: [7n + 40n + 300n + 4000n + 200n, 1n] });
    });
    test('tables of each game as that game is played: eight are four pairs and two fours, and one group', () => {
        const played = lesson('l', [], [part('game', 'two'), part('game', 'four'), part('game', 'free')]);
        // Used up: 4 x 1 + 2 x 10 + 1 x 100. Handed back: the game that uses most, 2 x 10.
        expect(of(played, crowd(8))).toEqual({ cube: [20n, 1n], bead: [124n, 1n] });
    });
    test('of what is handed back the part that uses most counts, lines of one part together', () => {
        const parts = [activity('x', [need('cube', '3'), need('cube', '4')]), activity('y', [need('cube', '6')])];
        expect(of(lesson('l', [need('cube', '5')], parts), crowd(7))).toEqual({ cube: [7n, 1n] });
        expect(of(lesson('l', [need('cube', '9')], parts), crowd(7))).toEqual({ cube: [9n, 1n] });
    });
    test('several crowds: what is used up adds up; what is handed back as the hours allow', () => {
        const asked = lesson('l', [need('cube', '2', 'learner'), need('bead', '3', 'learner')]);
        expect(of(asked, crowd(5, { clock: '09:00' }), crowd(4, { clock: '10:00' }))).toEqual({ cube: [10n, 1n, [10n, 8n]], bead: [27n, 1n] });
        expect(of(asked, crowd(5, { clock: '09:00' }), crowd(4, { clock: '09:00' }))).toEqual({ cube: [18n, 1n, [10n, 8n]], bead: [27n, 1n] });
        expect(of(asked, crowd(5), crowd(4, { clock: '09:00' }))).toEqual({ cube: [18n, 1n, [10n, 8n]], bead: [27n, 1n] });
        const twice = lesson('l', [need('cube', '2', 'learner'), need('cube', '1', 'class'), need('bead', '3', 'learner'), need('bead', '1', 'class')]);
        expect(of(twice, crowd(5, { clock: '09:00' }), crowd(4, { clock: '10:00' }))).toEqual({ cube: [11n, 1n, [11n, 9n]], bead: [29n, 1n] });
    });
    test.each([
        [[2n, 3n, 4n, 1n], ['9', '9', '10', undefined], 6n], [[2n, 3n, 9n, 1n], ['9', '9', '10', undefined], 10n], [[1n, 2n], [undefined, undefined], 3n], [[], [], 0n]
    ] as const)('%s at %s are %s at once', (amounts, clocks, all) => {
        expect(atOnce(amounts, clocks)).toBe(all);
    });
    test('counted once for the same version of a lesson', () => {
        const reader = new NumberReader(programme(...sheets));
        const attendance = new Attendance([crowd(7)]);
        const first = lesson('l', [need('cube', '5')]);
        const before = attendance.demandsOf(reader.of(first));
        expect(attendance.demandsOf(reader.of(first))).toBe(before);
        expect(attendance.demandsOf(reader.of({ ...first, needs: [need('cube', '6')] }))[0]!.n).toBe(6n);
    });
    test('of a piece only its own lines, with what those say of themselves', () => {
        const given = lesson('l', [need('cube', '8', 'class', { inKit: true }), need('bead', '2', 'class', { optional: true })], [activity('x', [need('bead', '40', 'class', { inKit: false })]), activity('y', [need('cube', '12')])]);
        const demands = (taught: Taught) => new Attendance([crowd(7)]).demandsOf(new NumberReader(programme(...sheets)).of(given), pieceOf(taught, given, () => undefined)).map(({ name, n, optional, inKit, lines, use }) => [name, n, optional, inKit, lines.length, use]);
        expect(demands({ lesson: 'l' })).toEqual([['cube', 12n, false, true, 2, 'reusable'], ['bead', 42n, false, false, 2, 'consumable']]);
        expect(demands({ lesson: 'l', parts: [1], piece: { number: 1, of: 2 } })).toEqual([['cube', 12n, false, true, 2, 'reusable'], ['bead', 2n, true, undefined, 1, 'consumable']]);
        expect(demands({ lesson: 'l', parts: [0], piece: { number: 1, of: 2 } })).toEqual([['cube', 8n, false, true, 1, 'reusable'], ['bead', 42n, false, false, 2, 'consumable']]);
        expect(demands({ lesson: 'l', parts: [1], piece: { number: 2, of: 2 } })).toEqual([['cube', 12n, false, true, 2, 'reusable']]);
        expect(demands({ lesson: 'l', parts: [0], piece: { number: 2, of: 2 } })).toEqual([['cube', 8n, false, true, 1, 'reusable'], ['bead', 40n, false, false, 1, 'consumable']]);
    });
});

describe('a piece of a lesson', () => {
    const given = lesson('l', [], [activity('x', [], { steps: [step('do', 'Use the {bean}.')] }), part('game', 'shop'), activity('y')]);
    const shop = game('shop', [], undefined, { steps: [step('do', 'Pay with the {coin}.')] });
    const takes = (taught: Omit<Taught, 'lesson'>) => {
        const piece = pieceOf({ lesson: 'l', ...taught }, given, name => (name === 'shop' ? shop : undefined));
        const line = (slot: number) => ({ need: need('bean', '1'), uri: '', slot });
        return piece && {
            key: piece.key, slots: [0, 1, 2].filter(slot => piece.takes(line(slot), 'bean', true)),
            ofLesson: [['bean', true], ['bean', false], ['coin', true], ['rope', false]].flatMap(([name, usedUp]) => (piece.takes(line(-1), name as string, usedUp as boolean) ? [name] : []))
        };
    };
    test.each<[string, Omit<Taught, 'lesson'>, ReturnType<typeof takes>]>([
        ['the whole lesson is none', {}, undefined],
        ['the whole lesson again is none', { why: 'repeat' }, undefined],
        ['the first', { parts: [0, 2], piece: { number: 1, of: 2 } }, { key: '0,2 first', slots: [0, 2], ofLesson: ['bean', 'bean', 'coin', 'rope'] }],
        ['a later one brings again what is handed back', { parts: [1], piece: { number: 2, of: 2 } }, { key: '1 later', slots: [1], ofLesson: ['bean', 'rope'] }],
        ['some parts in their turn', { parts: [1] }, { key: '1 first', slots: [1], ofLesson: ['bean', 'bean', 'coin', 'rope'] }],
        ['some parts on a fixed day', { parts: [1], why: 'fixed' }, { key: '1 first', slots: [1], ofLesson: ['bean', 'bean', 'coin', 'rope'] }],
        ['an activity again: what its steps name', { parts: [0], why: 'repeat' }, { key: '0 again', slots: [0], ofLesson: ['bean', 'bean'] }],
        ['a game again: what its steps name', { parts: [1], why: 'revisit' }, { key: '1 again', slots: [1], ofLesson: ['coin'] }],
        ['a piece of what is taught again is a piece', { parts: [2], why: 'repeat', piece: { number: 2, of: 2 } }, { key: '2 later', slots: [2], ofLesson: ['bean', 'rope'] }],
        ['a part that is gone', { parts: [9], why: 'repeat' }, { key: '9 again', slots: [], ofLesson: [] }]
    ])('%s', (_, taught, expected) => {
        expect(takes(taught)).toEqual(expected);
    });
    test('a meeting without details teaches its lessons whole', () => {
        const meeting = { label: 'Day 1', lessons: ['a', 'b'], taught: [], minutes: 0 };
        expect(taughtAt(meeting)).toEqual([{ lesson: 'a' }, { lesson: 'b' }]);
        const taught = [{ lesson: 'a', title: 'A', place: { uri: '', range: range() }, minutes: 5, parts: [0] }];
        expect(taughtAt({ ...meeting, taught })).toBe(taught);
    });
});

describe('what is not bought takes what packs leave over, as far as nothing later needs that', () => {
    const record = (gross: bigint[], ordered: boolean[], more: Partial<RequirementsInput> = {}) => {
        const { onHand, unmet, lots } = materialRequirements({ gross, onHand: 0n, ordered, lotSizing: () => ({ packs: [{ size: 150n }] }), ...more });
        return { onHand, unmet, lots: lots.map(({ period, covers, unused }) => [period, covers, unused]) };
    };
    test('100, 30, 100 and 30 out of two packs of 150: 40 are left', () => {
        expect(record([100n, 30n, 100n, 30n], [true, false, true, false])).toEqual({ onHand: [50n, 20n, 70n, 40n], unmet: [0n, 0n, 0n, 0n], lots: [[0, [0, 1, 2], 0n], [2, [2, 3], 40n]] });
    });
    test('more than is left', () => {
        expect(record([100n, 80n], [true, false])).toEqual({ onHand: [50n, 0n], unmet: [0n, 30n], lots: [[0, [0, 1], 0n]] });
    });
    test('of 50 that are left 40 are for later', () => {
        expect(record([100n, 50n, 40n], [true, false, true])).toEqual({ onHand: [50n, 40n, 0n], unmet: [0n, 40n, 0n], lots: [[0, [0, 1, 2], 0n]] });
    });
    test('what was short before does not matter later; before a pack has come there is none', () => {
        expect(record([100n, 100n, 50n], [true, true, false], { onHand: 100n })).toEqual({ onHand: [0n, 50n, 0n], unmet: [0n, 0n, 0n], lots: [[1, [1, 2], 0n]] });
        expect(record([20n, 100n], [false, true])).toEqual({ onHand: [0n, 50n], unmet: [20n, 0n], lots: [[1, [1], 50n]] });
    });
    test('what is handed back is lent, and there again', () => {
        expect(record([100n, 130n, 160n, 120n], [true, false, false, true], { handedBack: true })).toEqual({ onHand: [150n, 150n, 150n, 150n], unmet: [0n, 0n, 10n, 0n], lots: [[0, [0, 3], 30n]] });
    });
    test('what goes off is not counted on', () => {
        expect(record([100n, 30n], [true, false], { lotSizing: () => ({ packs: [{ size: 150n }], keepsWeeks: 1 }) }).unmet).toEqual([0n, 30n]);
    });
});

describe('spares, losses, whole things', () => {
    const tenth = { n: 1n, d: 10n };
    test.each<[bigint, Parameters<typeof allowed>[1], bigint]>([
        [7n, {}, 7n], [7n, { whole: 1n }, 7n], [7n, { whole: 3n }, 9n], [9n, { whole: 3n }, 9n], [15n, { spare: tenth }, 17n], [100n, { loss: tenth }, 112n], [20n, { spare: tenth, loss: tenth }, 25n], [15n, { spare: tenth, whole: 5n }, 20n], [0n, { spare: tenth, whole: 5n }, 0n]
    ])('%s with %o', (amount, how, expected) => {
        expect(allowed(amount, how)).toBe(expected);
    });
});
