/** Facts of arithmetic against every one that there is in a small range, listed here by trying all. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asFivesAndTens } from '@haversack/language/practice/fives-and-tens';
import { possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import { readPractice } from '@haversack/language/practice/read-practice';
import { practicePart } from '../language/practice-parts.js';

/** Every item that a line can give, in any order. */
function everyItem(line: string): string[] {
    const [{ set } = { set: undefined }] = readPractice(practicePart([line])).lines;
    return set ? Array.from({ length: set.total }, (_, index) => set.at(index)).map(({ ask, answer }) => `${ask} ${answer}`).sort() : [];
}

/** Every pair of numbers from 0 to `most`. */
const pairs = (most: number): [number, number][] => Array.from({ length: (most + 1) ** 2 }, (_, index) => [Math.floor(index / (most + 1)), index % (most + 1)]);

const ranges = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 })).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);

describe('all of them, and no other', () => {
    test('sums', () => fc.assert(fc.property(ranges, ([from, to]) => {
        const wanted = pairs(to).filter(([a, b]) => a >= 1 && b >= 1 && a + b >= from && a + b <= to).map(([a, b]) => `${a} + ${b} = ? ${a + b}`);
        expect(everyItem(`sums ${from} to ${to}`)).toEqual(wanted.sort());
    }), { numRuns: 60 }));

    test('missing parts', () => fc.assert(fc.property(ranges, ([from, to]) => {
        const wanted = pairs(to).filter(([a, b]) => a >= 1 && b >= 1 && a + b >= from && a + b <= to).map(([a, b]) => `${a} + ? = ${a + b} ${b}`);
        expect(everyItem(`missing parts ${from} to ${to}`)).toEqual(wanted.sort());
    }), { numRuns: 60 }));

    test('differences', () => fc.assert(fc.property(ranges, ([from, to]) => {
        const wanted = pairs(to).filter(([a, b]) => b >= 1 && a >= from && a - b >= from).map(([a, b]) => `${a} − ${b} = ? ${a - b}`);
        expect(everyItem(`differences ${from} to ${to}`)).toEqual(wanted.sort());
    }), { numRuns: 60 }));

    test('bonds', () => fc.assert(fc.property(ranges, ([from, to]) => {
        const wanted = pairs(to).filter(([a, b]) => a + b >= Math.max(1, from) && a + b <= to).map(([a, b]) => `${a + b} is ${a} and ? ${b}`);
        if (from >= 1) expect(everyItem(`bonds of ${from} to ${to}`)).toEqual(wanted.sort());
    }), { numRuns: 60 }));

    test('comparisons: each pair once, in one order or the other', () => fc.assert(fc.property(ranges, ([from, to]) => {
        const found = everyItem(`compare numbers ${from} to ${to}`).map(item => {
            const [, first, second, answer] = /^Which is more, (\d+) or (\d+)\? (\d+)$/.exec(item)!.map(Number);
            expect(answer).toBe(Math.max(first!, second!));
            return `${Math.min(first!, second!)} ${Math.max(first!, second!)}`;
        });
        expect(found.sort()).toEqual(pairs(to).filter(([a, b]) => a >= from && a < b).map(([a, b]) => `${a} ${b}`).sort());
    }), { numRuns: 60 }));

    test('the eleven bonds of ten', () => {
        expect(everyItem('bonds of 10')).toHaveLength(11);
        expect(everyItem('bonds of 10')).toEqual(expect.arrayContaining(['10 is 0 and ? 10', '10 is 3 and ? 7', '10 is 10 and ? 0']));
    });
});

describe('quantities as fives and tens', () => {
    // Arithmetic: 6 = 5 + 1, 16 = 10 + 5 + 1. The use of five as an anchor is Flexer's (1986), from memory.
    test.each([
        [5, '5'], [6, '5 and 1'], [7, '5 and 2'], [8, '5 and 3'], [9, '5 and 4'], [10, '10'], [13, '10 and 3'], [16, '10, 5 and 1'], [18, '10, 5 and 3'], [4, '4'],
        [20, '2 tens'], [43, '4 tens and 3'], [67, '6 tens, 5 and 2'], [100, '10 tens']
    ])('%d is %s', (quantity, parts) => expect(asFivesAndTens(quantity)).toBe(parts));

    test('every one adds up, with at most one five and four ones', () => {
        for (let quantity = 1; quantity <= 100; quantity++) {
            const parts = asFivesAndTens(quantity).split(/, | and /).map(part => (part.endsWith(' tens') ? Number.parseInt(part) * 10 : Number(part)));
            expect(parts.reduce((sum, part) => sum + part, 0), String(quantity)).toBe(quantity);
            expect(parts.filter(part => part === 5).length).toBeLessThanOrEqual(1);
            expect(parts.filter(part => part < 5).length).toBeLessThanOrEqual(1);
        }
    });

    test('items up to twenty have a ten-frame, larger ones a bead string', () => {
        expect(practiceItems(practicePart(['fives and tens 8 to 8']), 'one')).toMatchObject([{ answer: '5 and 3', show: { kind: 'ten-frame', count: 8 } }]);
        expect(practiceItems(practicePart(['fives and tens 43 to 43']), 'one')).toMatchObject([{ show: { kind: 'bead-string', count: 43, of: 100 } }]);
    });
});

test('a range of a million has its items without their being listed', () => {
    // n (n - 1) / 2 sums of 2 to n.
    expect(possibleItems(practicePart(['sums 2 to 999999']))).toBe((999_999 * 999_998) / 2);
    const items = practiceItems(practicePart(['sums 0 to 999999', 'compare numbers 0 to 999999'], 200), 'one', { count: 200 });
    expect(new Set(items.map(({ ask }) => ask)).size).toBe(200);
    for (const { ask, answer } of items) {
        const [first, second] = ask.match(/\d+/g)!.map(Number) as [number, number];
        expect(Number(answer)).toBe(ask.includes('+') ? first + second : Math.max(first, second));
    }
});
