import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemsWithoutRepeat, mostItems, possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import { lineInWords, lineKinds } from '@haversack/language/practice/practice-lines';
import { readPractice } from '@haversack/language/practice/read-practice';
import { statementsIn } from '@haversack/language/facts/statements';
import { lastView, problemsIn } from './fixture.js';
import { practiceLine, practicePart } from './practice-parts.js';

const every = [
    'name numbers 11 to 99', 'name numbers 11 to 99 in words', 'name numbers 11 to 99 in places', 'write numbers 0 to 40', 'write numbers 11 to 99 from words',
    'write numbers 11 to 99 from places', 'digits and words 5 to 15', 'arrange digits of 481', 'fives and tens 6 to 20', 'sums 2 to 9', 'differences 0 to 9', 'doubles 1 to 9', 'halves 2 to 19', 'missing parts 2 to 9', 'bonds of 10',
    'bonds of 6 to 10', 'compare numbers 10 to 15', 'return to 67', 'return to 7 and 8'
];
const making = every.filter(line => !line.startsWith('return'));
const someLines = fc.subarray(making, { minLength: 1, maxLength: 4 });
const seed = fc.stringMatching(/^[a-z]{1,6}$/);

describe('a line as it is read', () => {
    test.each(every)('%s: the words and numbers of the sheet, and back to the text', async text => {
        await problemsIn({ 'a.lesson': `lesson a\n  practice p\n    ${text}   # a remark\n` });
        const line = lastView().programme.lessons.get('a')!.parts[0]!.practice![0]!;
        expect({ words: line.words, numbers: line.numbers }).toEqual({ words: practiceLine(text).words, numbers: practiceLine(text).numbers });
        expect(lineInWords(line)).toBe(text);
    });

    test('every practice line of the table of statements makes items, and every kind stands in it', () => {
        const heads = statementsIn('practice').filter(({ example }) => practiceLine(example).numbers.length > 0 && !example.startsWith('practice') && !example.startsWith('show'));
        for (const { example } of heads.filter(({ head }) => head !== 'return to')) expect(possibleItems(practicePart([example])), example).toBeGreaterThan(0);
        expect(lineKinds.map(({ words }) => heads.some(({ head }) => head.startsWith(words)))).toEqual(lineKinds.map(() => true));
    });
});

describe('the items of a practice', () => {
    test('are the same for the same text, whoever asks and however often', () => {
        fc.assert(fc.property(someLines, seed, fc.integer({ min: 1, max: 30 }), (lines, lesson, items) => {
            expect(practiceItems(practicePart(lines, items), lesson)).toEqual(practiceItems(practicePart([...lines], items), lesson));
        }));
    });

    test('some and then more are the same as all at once', () => {
        fc.assert(fc.property(someLines, seed, fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }), (lines, lesson, items, some, more) => {
            const part = practicePart(lines, items);
            expect([...practiceItems(part, lesson, { count: some }), ...practiceItems(part, lesson, { from: some, count: more })]).toEqual(practiceItems(part, lesson, { count: some + more }));
        }));
    });

    test('never repeat while one is unused, and have all been when the first comes again', () => {
        fc.assert(fc.property(someLines, seed, fc.integer({ min: 1, max: 12 }), (lines, lesson, items) => {
            const part = practicePart(lines, items);
            const possible = possibleItems(part);
            const asks = practiceItems(part, lesson, { count: 2 * possible }).map(({ ask }) => ask);
            expect(asks).toHaveLength(2 * possible);
            expect(new Set(asks.slice(0, possible)).size).toBe(possible);
            expect(new Set(asks.slice(possible)).size).toBe(possible);
            if (possible > 1) expect(asks.findIndex((ask, index) => ask === asks[index + 1])).toBe(-1);
        }), { numRuns: 50 });
    });

    test('begin anew with another than the one that came last', () => {
        for (const lines of [['bonds of 1'], ['arrange digits of 102'], ['sums 2 to 3', 'bonds of 1']]) {
            fc.assert(fc.property(seed, lesson => {
                const asks = practiceItems(practicePart(lines), lesson, { count: 30 }).map(({ ask }) => ask);
                expect(asks.findIndex((ask, index) => ask === asks[index + 1])).toBe(-1);
            }));
        }
    });

    test('two lines that ask the same ask it once', () => {
        const part = practicePart(['sums 2 to 6', 'sums 4 to 8', 'sums 4 to 8'], 28);
        // 1 + 2 + ... + 7 sums of 2 to 8.
        expect(possibleItems(part)).toBe(28);
        expect(new Set(practiceItems(part, 'a').map(({ ask }) => ask)).size).toBe(28);
    });

    test('are as many as asked for; ten where nothing is said; and never more than there are', () => {
        expect(practiceItems(practicePart(['sums 2 to 20'], 8), 'a')).toHaveLength(8);
        expect(practiceItems(practicePart(['sums 2 to 20']), 'a')).toHaveLength(10);
        expect(practiceItems(practicePart(['sums 2 to 3']), 'a')).toHaveLength(3);
        expect(practiceItems(practicePart(['arrange digits of 481'], 12), 'a')).toHaveLength(5);
        expect(practiceItems(practicePart(['sums 0 to 100000'], 10_000), 'a')).toHaveLength(mostItems);
        expect(practiceItems(practicePart([]), 'a')).toEqual([]);
    });

    test('another line below does not change those above', () => {
        const one = practiceItems(practicePart(['sums 2 to 20'], 5), 'a').map(({ ask }) => ask);
        const two = practiceItems(practicePart(['sums 2 to 20', 'bonds of 10'], 10), 'a').filter(({ line }) => line === 0).map(({ ask }) => ask);
        expect(two).toEqual(one);
    });

    test('a name in both directions comes in its other form only after every number has been', () => {
        const answers = practiceItems(practicePart(['write numbers 11 to 30'], 40), 'a').map(({ answer }) => answer);
        expect(new Set(answers.slice(0, 20)).size).toBe(20);
        expect(new Set(answers.slice(20)).size).toBe(20);
    });

    test('a range that is turned round is read the other way', () => {
        expect(practiceItems(practicePart(['sums 20 to 2']), 'a')).toEqual(practiceItems(practicePart(['sums 2 to 20']), 'a'));
    });
});

describe('anything that the grammar takes', () => {
    const number = fc.oneof(fc.nat({ max: 120 }).map(String), fc.nat().map(String), fc.double({ min: 0, max: 2e6, noNaN: true }).map(one => one.toFixed(2)), fc.constantFrom('0', '999999', '1000000', '9'.repeat(40)));
    const words = fc.constantFrom(...every.map(line => practiceLine(line).words));
    const line = fc.record({ words, numbers: fc.array(number, { minLength: 0, maxLength: 2 }), at: fc.constant(practiceLine('sums').at) });

    test('has items or a problem, and never fails', () => {
        fc.assert(fc.property(fc.array(line, { maxLength: 4 }), fc.option(fc.integer({ min: 0, max: 1e6 }), { nil: undefined }), (practice, items) => {
            const part = { name: 'p', items, practice };
            const found = practiceItems(part, 'a');
            const read = readPractice(part);
            expect(found.length).toBeLessThanOrEqual(Math.max(itemsWithoutRepeat(read), 0));
            expect(practiceItems(part, 'a', { from: 5, count: 20 }).length).toBeLessThanOrEqual(20);
            for (const { message } of read.problems) expect(message).toMatch(/^['A-Z0-9].*[.]$/s);
        }), { numRuns: 500 });
    });
});
