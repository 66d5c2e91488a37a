/**
 * The order of items. Mixing kinds of items helped children more than blocks of one kind (Rohrer, Dedrick and Burgess 2014, grade 7), so lines
 * take turns. No published schedule is known for how soon a hard item should return; wider and wider gaps are no better
 * in the end than equal ones (Kang, Lindsey, Mozer and Pashler 2014), so only these are held: the items stay the same ones,
 * none stands twice running, and the same seed gives the same order (common practice, no source).
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { practiceItems } from '@haversack/language/practice/sequence';
import { practicePart } from '../language/practice-parts.js';

const lesson = fc.stringMatching(/^[a-z]{1,6}$/);
const asks = (lines: readonly string[], seed: string, count: number): string[] => practiceItems(practicePart(lines, count), seed).map(({ ask }) => ask);
const twiceRunning = (list: readonly unknown[]): boolean => list.some((one, index) => index > 0 && one === list[index - 1]);

describe('what returns', () => {
    const drills = fc.record({ seed: lesson, hard: fc.integer({ min: 21, max: 99 }), count: fc.integer({ min: 2, max: 60 }) });

    test('never stands twice running, and neither does anything else', () => {
        fc.assert(fc.property(drills, ({ seed, hard, count }) => {
            expect(twiceRunning(asks(['name numbers 21 to 99', `return to ${hard}`], seed, count))).toBe(false);
        }));
    });

    test('comes back between at least one and at most four others, and begins after one', () => {
        fc.assert(fc.property(drills, ({ seed, hard, count }) => {
            const list = asks(['name numbers 21 to 99', `return to ${hard}`], seed, count);
            const at = list.flatMap((ask, index) => (ask.startsWith(`Name ${hard} `) ? [index] : []));
            expect(at[0]).toBe(1);
            const gaps = at.slice(1).map((index, before) => index - at[before]! - 1);
            expect(gaps.every(gap => gap >= 1 && gap <= 4)).toBe(true);
            expect(list.length - 1 - at[at.length - 1]!).toBeLessThanOrEqual(4);
        }));
    });

    test('leaves the other items as they are without it, in their order', () => {
        fc.assert(fc.property(drills, ({ seed, hard, count }) => {
            const others = asks(['name numbers 21 to 99', `return to ${hard}`], seed, count).filter(ask => !ask.startsWith(`Name ${hard} `));
            const without = practiceItems(practicePart(['name numbers 21 to 99'], count), seed, { count: 79 }).map(({ ask }) => ask).filter(ask => !ask.startsWith(`Name ${hard} `));
            expect(others).toEqual(without.slice(0, others.length));
        }));
    });

    test('two that return take turns', () => {
        const list = asks(['sums 2 to 20', 'return to 7 and 8', 'return to 6 and 9'], 'tens-1', 20).filter(ask => ['7 + 8 = ?', '6 + 9 = ?'].includes(ask));
        expect(list.slice(0, 4)).toEqual(['7 + 8 = ?', '6 + 9 = ?', '7 + 8 = ?', '6 + 9 = ?']);
    });

    test('is found in whichever line has it', () => {
        const times = (lines: string[], ask: string): number => asks(lines, 'a', 12).filter(one => one === ask).length;
        expect(times(['name numbers 11 to 20', 'fives and tens 6 to 10', 'return to 8'], 'Show 8 as fives and tens')).toBe(4);
        expect(times(['differences 0 to 20', 'return to 15 and 7'], '15 − 7 = ?')).toBe(4);
        expect(times(['missing parts 5 to 20', 'return to 7 and 8'], '7 + ? = 15')).toBe(4);
        expect(times(['bonds of 6 to 10', 'return to 3 and 7'], '10 is 3 and ?')).toBe(4);
        expect(times(['arrange digits of 4813', 'return to 1348'], 'Arrange 4, 8, 1 and 3 to make one thousand three hundred forty-eight')).toBe(4);
    });
});

describe('several lines', () => {
    const lines = ['name numbers 11 to 99', 'sums 2 to 20', 'arrange digits of 481', 'bonds of 3', 'compare numbers 10 to 12'];

    test('no two items of one line are neighbours where that can be avoided', () => {
        fc.assert(fc.property(lesson, fc.subarray(lines, { minLength: 2 }), fc.integer({ min: 2, max: 40 }), (seed, some, count) => {
            const from = practiceItems(practicePart(some, count), seed).map(({ line }) => line);
            const most = Math.max(...some.map((_, index) => from.filter(line => line === index).length));
            // An order without neighbours of one kind exists when no kind has more than half of the places, rounded up.
            if (most <= Math.ceil(from.length / 2)) expect(twiceRunning(from)).toBe(false);
        }));
    });

    test('each has its share', () => {
        fc.assert(fc.property(lesson, fc.integer({ min: 3, max: 60 }), (seed, count) => {
            const from = practiceItems(practicePart(['sums 2 to 20', 'differences 0 to 20', 'missing parts 5 to 20'], count), seed).map(({ line }) => line);
            for (const line of [0, 1, 2]) expect(Math.abs(from.filter(one => one === line).length - count / 3)).toBeLessThan(1);
        }));
    });
});

test('the same seed gives the same order, another gives another', () => {
    const lines = ['name numbers 11 to 99', 'return to 67'];
    expect(asks(lines, 'tens-1', 20)).toEqual(asks(lines, 'tens-1', 20));
    expect(asks(lines, 'tens-1', 20)).not.toEqual(asks(lines, 'tens-2', 20));
});
