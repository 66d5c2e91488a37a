import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { unitNamed, units } from '@haversack/language/facts/units';
import type { Measure } from '../../server/planning/amounts.js';
import { readsPlainly, sensiblyDown, sensiblyUp } from '../../server/planning/rounding.js';

const inUnit = (symbol: string): Measure => {
    const unit = unitNamed(symbol);
    if (!unit) throw new Error(`no unit ${symbol}`);
    return { is: 'measured', unit };
};
const up = (value: string, symbol: string) => sensiblyUp(new Fraction(value), inUnit(symbol)).toFraction(true);
const down = (value: string, symbol: string) => sensiblyDown(new Fraction(value), inUnit(symbol)).toFraction(true);

// Steps of 1 and 5 within a twenty-fifth: common practice, no source.
describe('what people weigh and pour', () => {
    test.each([
        ['600/19', 'g', '32'], ['3000/19', 'g', '160'], ['924', 'g', '930'], ['396/100', 'm', '4'], ['0.66', 'm', '33/50'], ['1001', 'g', '1010'],
        ['150', 'g', '150'], ['1.1', 'kg', '1 1/10'], ['22.1', 'g', '23'], ['1.1', 'cup', '1 1/4'], ['0.55', 'cup', '5/8'], ['6.6', 'in', '7'], ['22', 'cup', '22']
    ])('%s %s is fetched as %s', (value, symbol, said) => expect(up(value, symbol)).toBe(said));
    test.each([['768.42', 'g', '768'], ['22.68', 'g', '22'], ['453.59237', 'g', '453'], ['20', 'm', '20'], ['1.1', 'cup', '1']])('%s %s at hand is said as %s', (value, symbol, said) => expect(down(value, symbol)).toBe(said));
    test('whole things are left to their own rounding', () => {
        expect(sensiblyUp(new Fraction(7, 2), { is: 'pieces' }).equals('7/2')).toBe(true);
        expect(sensiblyUp(new Fraction(7, 2), inUnit('sheet')).equals('7/2')).toBe(true);
        expect(sensiblyUp(new Fraction(0), inUnit('g')).equals(0)).toBe(true);
    });
    test('up is never less and at most a twentieth more, down never more and at most a twentieth less, in decimal units', () => {
        const decimal = fc.constantFrom(...units.filter(u => u.parts !== 'fraction' && u.dimension !== 'sheet').map(u => u.symbol));
        fc.assert(fc.property(decimal, fc.integer({ min: 1, max: 10 ** 7 }), fc.integer({ min: 1, max: 10 ** 4 }), (symbol, n, d) => {
            const value = new Fraction(n, d);
            const more = sensiblyUp(value, inUnit(symbol));
            const less = sensiblyDown(value, inUnit(symbol));
            expect(more.gte(value) && more.lte(value.mul(21).div(20))).toBe(true);
            expect(less.lte(value) && less.gte(value.mul(19).div(20))).toBe(true);
        }));
    });
    test('what reads plainly', () => {
        expect([['1/3', 'cup'], ['1/3', 'g'], ['0.25', 'kg'], ['0.125', 'kg'], ['1/8', 'in']].map(([v, u]) => readsPlainly(new Fraction(v ?? ''), inUnit(u ?? '')))).toEqual([true, false, true, false, true]);
    });
});
