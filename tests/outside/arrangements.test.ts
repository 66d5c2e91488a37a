/** Arrangements of digits against js-combinatorics 2.1.4, whose permutations take equal digits as different, and against n! / (m1! m2! ...). */
import fc from 'fast-check';
import { Permutation } from 'js-combinatorics';
import { describe, expect, test } from 'vitest';
import { arrangementsOf } from '@haversack/language/practice/arrangements';
import { inWords } from '@haversack/language/practice/number-names';
import { practiceItems } from '@haversack/language/practice/sequence';
import { practicePart } from '../language/practice-parts.js';

/** All different arrangements of the digits, those with a zero in front too. */
const allOrders = (number: number): string[] => [...new Set([...new Permutation([...String(number)])].map(digits => digits.join('')))].sort();
const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

describe('js-combinatorics', () => {
    test.each([[123, 6], [112, 3], [1234, 24], [1123, 12], [1122, 6], [100, 3], [102, 6]])('the digits of %d have %d different orders', (number, count) => {
        expect(allOrders(number)).toHaveLength(count);
    });

    test('the same numbers, without those that begin with zero and the number itself', () => {
        fc.assert(fc.property(fc.integer({ min: 10, max: 999_999 }), number => {
            expect(arrangementsOf(number).map(String)).toEqual(allOrders(number).filter(order => !order.startsWith('0') && order !== String(number)));
        }), { numRuns: 200 });
    });

    test('without a zero there are n! / (m1! m2! ...) of them, the number itself among them', () => {
        fc.assert(fc.property(fc.stringMatching(/^[1-9]{2,6}$/), digits => {
            const equal = new Map<string, number>();
            for (const digit of digits) equal.set(digit, (equal.get(digit) ?? 0) + 1);
            expect(arrangementsOf(Number(digits)).length + 1).toBe(factorial(digits.length) / [...equal.values()].reduce((product, count) => product * factorial(count), 1));
        }));
    });
});

test('481 gives 148, 184, 418, 814 and 841 besides itself', () => expect(arrangementsOf(481)).toEqual([148, 184, 418, 814, 841]));

test('102 gives 120, 201 and 210: none begins with zero', () => expect(arrangementsOf(102)).toEqual([120, 201, 210]));

test('items: each arrangement once, asked for by its name', () => {
    const items = practiceItems(practicePart(['arrange digits of 481']), 'one');
    expect(items.map(({ answer }) => answer).sort()).toEqual(['148', '184', '418', '814', '841']);
    for (const { ask, answer } of items) expect(ask).toBe(`Arrange 4, 8 and 1 to make ${inWords(Number(answer))}`);
});
