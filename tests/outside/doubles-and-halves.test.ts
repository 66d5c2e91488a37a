/** Doubles and halves against mathjs 15, and against the even numbers as the On-Line Encyclopedia of Integer Sequences lists them. */
import fc from 'fast-check';
import { divide, mod, multiply, range } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import { practicePart } from '../language/practice-parts.js';

/** Every item of a line once, as "what is asked answer". */
const everyItem = (line: string): string[] => practiceItems(practicePart([line]), 'a', { count: possibleItems(practicePart([line])) }).map(({ ask, answer }) => `${ask} ${answer}`).sort();
const numbers = (from: number, to: number): number[] => range(from, to, true).toArray() as number[];
const ranges = (least: number) => fc.tuple(fc.integer({ min: least, max: 120 }), fc.integer({ min: least, max: 120 })).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);

describe('all of them, each once, and no other', () => {
    test('doubles', () => fc.assert(fc.property(ranges(1), ([from, to]) => {
        expect(everyItem(`doubles ${from} to ${to}`)).toEqual(numbers(from, to).map(number => `Double ${number} is ? ${multiply(number, 2)}`).sort());
    }), { numRuns: 60 }));

    test('halves: of even numbers only', () => fc.assert(fc.property(ranges(2).filter(([from, to]) => to > from || from % 2 === 0), ([from, to]) => {
        expect(everyItem(`halves ${from} to ${to}`)).toEqual(numbers(from, to).filter(number => mod(number, 2) === 0).map(number => `Half of ${number} is ? ${divide(number, 2)}`).sort());
    }), { numRuns: 60 }));

    test('up to the largest', () => {
        expect(everyItem('doubles 499998 to 499999')).toEqual(['Double 499998 is ? 999996', 'Double 499999 is ? 999998']);
        expect(everyItem('halves 999997 to 999999')).toEqual(['Half of 999998 is ? 499999']);
        expect(possibleItems(practicePart(['halves 2 to 999999']))).toBe(499_999);
    });
});

test('doubles are the even numbers', () => {
    // OEIS A005843, "the nonnegative even numbers", from its second term on; the terms from memory.
    const even = [2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30];
    const answers = practiceItems(practicePart(['doubles 1 to 15'], 15), 'a').map(({ answer }) => Number(answer));
    expect(answers.sort((a, b) => a - b)).toEqual(even);
});

test('a double and the half that gives it away are no neighbours while others are left', () => {
    fc.assert(fc.property(fc.stringMatching(/^[a-z]{1,6}$/), lesson => {
        const asks = practiceItems(practicePart(['doubles 1 to 10', 'halves 2 to 20'], 14), lesson).map(({ ask }) => Number(/\d+/.exec(ask)![0]) * (ask.startsWith('Double') ? 2 : 1));
        expect(asks.findIndex((whole, index) => whole === asks[index + 1])).toBe(-1);
    }));
});
