/** Unit factors against published tables and against another library's. */
import Fraction from 'fraction.js';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { unitNamed, units } from '@haversack/language/facts/units';
import { convert } from '../../server/planning/amounts.js';

function converted(value: number, from: string, to: string): string {
    const [a, b] = [unitNamed(from), unitNamed(to)];
    if (!a || !b) throw new Error(`${from} or ${to} is missing`);
    return convert(new Fraction(value), a, b)?.toString(15) ?? 'none';
}

describe('NIST Special Publication 811, appendix B, and NIST Handbook 44, appendix C', () => {
    test.each([
        [1, 'in', 'mm', '25.4'], [1, 'ft', 'm', '0.3048'], [1, 'yd', 'm', '0.9144'],
        [1, 'lb', 'g', '453.59237'], [1, 'oz', 'g', '28.349523125'],
        [1, 'gallon', 'l', '3.785411784'], [1, 'fl oz', 'ml', '29.5735295625'], [1, 'cup', 'ml', '236.5882365'],
        [1, 'pint', 'ml', '473.176473'], [1, 'quart', 'ml', '946.352946']
    ])('%d %s in %s is exactly %s', (value, from, to, exact) => expect(converted(value, from, to)).toBe(exact));

    // Handbook 44, appendix C: how customary units are made of one another.
    test.each([
        [1, 'ft', 'in', '12'], [1, 'yd', 'ft', '3'], [1, 'lb', 'oz', '16'], [1, 'cup', 'fl oz', '8'],
        [1, 'pint', 'fl oz', '16'], [1, 'quart', 'pint', '2'], [1, 'gallon', 'quart', '4'], [1, 'gallon', 'fl oz', '128']
    ])('%d %s is %s %s', (value, from, to, exact) => expect(converted(value, from, to)).toBe(exact));
});

describe('mathjs 15 agrees on every pair of units it knows', () => {
    const theirs: Record<string, string> = {
        g: 'g', kg: 'kg', oz: 'oz', lb: 'lbm', ml: 'ml', l: 'l', 'fl oz': 'fluidounce', cup: 'cup', pint: 'pint', quart: 'quart', gallon: 'gallon',
        mm: 'mm', cm: 'cm', m: 'm', in: 'in', ft: 'ft', yd: 'yd'
    };
    test('all but paper sheets are compared', () => expect(Object.keys(theirs)).toEqual(units.filter(u => u.dimension !== 'sheet').map(u => u.symbol)));
    for (const from of units.filter(u => u.symbol in theirs)) {
        for (const to of units.filter(u => u.symbol in theirs && u.dimension === from.dimension)) {
            test(`${from.symbol} in ${to.symbol}`, () => {
                const own = convert(new Fraction(1), from, to)?.valueOf() ?? Number.NaN;
                const other = mathUnit(1, theirs[from.symbol]).toNumber(theirs[to.symbol] ?? '');
                // mathjs carries US volumes to six or seven digits (0.2365882 l for a cup), so the comparison is relative.
                expect(Math.abs(own / other - 1)).toBeLessThan(from.dimension === 'volume' ? 1e-5 : 1e-12);
            });
        }
    }
});
