import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { unitNamed, units } from '@haversack/language/facts/units';
import { convert, figure, inMeasure, measureOf, spared, sparedSteps, type Measure } from '../../server/planning/amounts.js';
import { exactText, readExact } from '../../server/planning/exact.js';
import { amount, book, consumable, counted, material, measured, pack, percent, print } from './sheets.js';

const unit = (symbol: string) => {
    const found = unitNamed(symbol);
    if (!found) throw new Error(`no unit ${symbol}`);
    return found;
};
const inUnit = (symbol: string): Measure => ({ is: 'measured', unit: unit(symbol) });
const text = (value: string, measure: Measure) => figure(new Fraction(value), measure).text;
const sets: Measure = { is: 'counted', one: 'set', many: 'sets' };

describe('reading numbers', () => {
    test.each([['20', '20'], ['14.50', '14.5'], ['1/2', '0.5'], ['1 1/2', '1.5'], ['1/3', '1/3']])('%s', (written, exact) => {
        const value = readExact(written);
        expect(value && exactText(value)).toBe(exact);
    });
    test.each(['', 'x', '1/0', '1/00', '-3', '1e9', '0.(3)', '1,5', '9'.repeat(41), 'NaN'])('%j is no number', written => {
        expect(readExact(written)).toBeUndefined();
    });
    test('a decimal of up to 12 places, else a fraction', () => {
        const text = (n: number, d: number) => exactText(new Fraction(n, d));
        expect([text(1, 2 ** 12), text(1, 2 ** 13), text(2, 3), text(5, 1)]).toEqual(['0.000244140625', '1/8192', '2/3', '5']);
    });
    test('exact text reads back as the same number', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: 10 ** 9 }), fc.integer({ min: 1, max: 10 ** 6 }), (n, d) => {
            const value = new Fraction(n, d);
            expect(readExact(exactText(value))?.equals(value)).toBe(true);
        }));
    });
});

describe('amounts for people', () => {
    test.each([
        ['150', 'g', '150 g'], ['1000', 'g', '1 kg'], ['1200', 'g', '1.2 kg'], ['1250', 'g', '1.25 kg'], ['1025', 'g', '1025 g'], ['1001', 'g', '1001 g'],
        ['0.25', 'kg', '0.25 kg'], ['1500', 'ml', '1.5 l'], ['2100', 'cm', '21 m'], ['90', 'cm', '90 cm'],
        ['3/2', 'cup', '1 1/2 cups'], ['1/2', 'cup', '1/2 cup'], ['1', 'cup', '1 cup'], ['2', 'cup', '2 cups'], ['0', 'cup', '0 cups'],
        ['1/3', 'cup', '1/3 cup'], ['7/5', 'lb', '1.4 lb'], ['5/2', 'in', '2 1/2 in'], ['7/2', 'sheet', '3 1/2 sheets'], ['4', 'fl oz', '4 fl oz']
    ])('%s %s is %s', (value, symbol, words) => expect(text(value, inUnit(symbol))).toBe(words));
    test('own words in singular and plural', () => {
        expect([text('1', sets), text('2', sets), text('1/2', sets)]).toEqual(['1 set', '2 sets', '1/2 set']);
    });
    test('what decimals cannot write is shown rounded up and kept exact', () => {
        const shown = figure(new Fraction(1000, 9), inUnit('g'));
        expect(shown).toMatchObject({ text: '111.12 g', exact: '1000/9', unit: 'g' });
    });
    test('plain pieces have no unit', () => {
        const shown = figure(new Fraction(80), { is: 'pieces' });
        expect(shown).toEqual({ exact: '80', text: '80', trail: [] });
    });
});

describe('the measure of a thing', () => {
    test('declared, counted, from its packs, from what was asked, else pieces', () => {
        expect(measureOf(consumable('bean', measured('g')))).toEqual(inUnit('g'));
        expect(measureOf(material('card', counted('set', 'sets')))).toEqual(sets);
        expect(measureOf(consumable('bean', { packs: [pack('2 kg')] }))).toEqual(inUnit('kg'));
        expect(measureOf(consumable('bean'), amount('5 oz'))).toEqual(inUnit('oz'));
        expect(measureOf(consumable('bean'))).toEqual({ is: 'pieces' });
        expect(measureOf(print('sheet'))).toMatchObject({ one: 'copy' });
        expect(measureOf(book('games'))).toEqual({ is: 'pieces' });
    });
    test('a mass never becomes a volume, nor a piece', () => {
        expect(inMeasure(amount('1 cup'), inUnit('g'))).toBeUndefined();
        expect(inMeasure(amount('1 g'), sets)).toBeUndefined();
        expect(inMeasure(amount('1 g'), { is: 'pieces' })).toBeUndefined();
        expect(inMeasure(amount('1 bag'), inUnit('g'))).toBeUndefined();
        for (const from of units) for (const to of units) {
            expect(convert(new Fraction(1), from, to) === undefined).toBe(from.dimension !== to.dimension);
        }
    });
    test('a number without a unit is in the own unit', () => expect(inMeasure(amount('150'), inUnit('g'))?.valueOf()).toBe(150));
    test('there and back is exactly the same number', () => {
        const one = fc.constantFrom(...units);
        fc.assert(fc.property(one, one, fc.integer({ min: 1, max: 10 ** 6 }), fc.integer({ min: 1, max: 64 }), (from, to, n, d) => {
            const value = new Fraction(n, d);
            const there = convert(value, from, to);
            if (there) expect(convert(there, to, from)?.equals(value)).toBe(true);
        }));
    });
});

describe('spares and loss', () => {
    const ready = (amountText: string, more: Parameters<typeof consumable>[1], measure: Measure = { is: 'pieces' }) => {
        const bead = consumable('bead', more);
        const used = new Fraction(amountText);
        return { value: spared(used, bead, measure), steps: sparedSteps(used, bead, measure) };
    };
    test('no spare changes nothing and leaves no trail', () => {
        expect(ready('100', {})).toEqual({ value: new Fraction(100), steps: [] });
    });
    test('each step of the trail leads to the line that says it', () => {
        const bead = consumable('bead', { spare: percent('10'), loss: percent('20') });
        const places = sparedSteps(new Fraction(100), bead, { is: 'pieces' }).map(({ words, place }) => [words, place]);
        // 100 and a tenth are 110; of 137.5 a fifth is lost and 110 are left.
        expect(places).toEqual([
            ['spare 10%: 100 becomes 110', { uri: bead.uri, range: bead.spare!.at }], ['loss 20%: 137 1/2 leave 110', { uri: bead.uri, range: bead.loss!.at }], ['rounded up to whole things: 138', undefined]
        ]);
    });
    test('spare comes before rounding up', () => {
        const got = ready('7/2', { spare: percent('10') });
        expect(got.value.valueOf()).toBe(4);
        expect(got.steps.map(s => s.words)).toEqual(['spare 10%: 3 1/2 becomes 3.85', 'rounded up to whole things: 4']);
        expect(got.steps[0]?.place).toBeDefined();
    });
    test('measured goods are not rounded, sheets are', () => {
        expect(ready('150', { spare: percent('10') }, inUnit('g')).value.valueOf()).toBe(165);
        expect(ready('1/2', { spare: percent('10') }, inUnit('cup')).value.toFraction()).toBe('11/20');
        expect(ready('7/2', {}, inUnit('sheet')).value.valueOf()).toBe(4);
    });
    test('a loss of all or more, or one that cannot be read, is passed over', () => {
        expect(ready('100', { loss: percent('100') }).value.valueOf()).toBe(100);
        expect(ready('100', { loss: percent('x'), spare: percent('') }).value.valueOf()).toBe(100);
    });
});
