/** The words that are said, against the CMU Pronouncing Dictionary: each is one entry, said in as many syllables as it has stressed or unstressed vowels. */
import { dictionary } from 'cmu-pronouncing-dictionary';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inPlaces, inWords, largestNumber, wordsSaid } from '@haversack/language/practice/number-names';
import { practiceItems } from '@haversack/language/practice/sequence';
import { practicePart } from '../language/practice-parts.js';

/** Vowels carry a digit for their stress in the dictionary's notation. */
const syllables = (word: string): number => (dictionary[word]!.match(/[A-Z]+\d/g) ?? []).length;

describe('words that are said', () => {
    test('each stands in the dictionary as one word', () => {
        const said = new Set<string>();
        for (let number = 0; number <= 9999; number++) for (const word of [...wordsSaid(inWords(number)), ...wordsSaid(inPlaces(number))]) said.add(word);
        expect([...said].filter(word => !(word in dictionary))).toEqual([]);
        expect(said.size).toBe(30);
    });

    // Ten is said as often in 43 as the place-value form writes it; the everyday name hides it in a syllable.
    test.each([[13, 'thirteen', 2, '1-ten 3', 3], [30, 'thirty', 2, '3-ten', 2], [17, 'seventeen', 3, '1-ten 7', 4], [70, 'seventy', 3, '7-ten', 3]])(
        '%d: "%s" has %d syllables, "%s" has %d', (number, everyday, one, places, other) => {
            const count = (name: string): number => wordsSaid(name).reduce((sum, word) => sum + syllables(word), 0);
            expect([inWords(number), count(inWords(number)), inPlaces(number), count(inPlaces(number))]).toEqual([everyday, one, places, other]);
        });
});

describe('digits against words', () => {
    // A rule of the trade (common practice, no source): "two hundred" needs three digits, "2-ten" two.
    test.each([
        [200, ['2 words, 3 digits: 200', '2 words, 3 digits: 200']], [20, ['1 word, 2 digits: 20', '2 words, 2 digits: 20']], [43, ['2 words, 2 digits: 43', '3 words, 2 digits: 43']],
        [642, ['4 words, 3 digits: 642', '5 words, 3 digits: 642']], [7, ['1 word, 1 digit: 7']]
    ])('%d', (number, answers) => {
        expect(practiceItems(practicePart([`digits and words ${number} to ${number}`]), 'one').map(({ answer }) => answer).sort()).toEqual(answers);
    });

    test('every answer counts what its question says, by the dictionary', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: largestNumber }), number => {
            for (const { ask, answer } of practiceItems(practicePart([`digits and words ${number} to ${number}`]), 'one')) {
                const name = /“(.*)”/.exec(ask)![1]!;
                const heard = name.replace(/\d/g, digit => ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'][Number(digit)]!).split(/[^a-z]+/);
                expect(heard.every(word => word in dictionary)).toBe(true);
                expect(answer).toBe(`${heard.length} word${heard.length === 1 ? '' : 's'}, ${String(number).length} digit${number < 10 ? '' : 's'}: ${number}`);
            }
        }));
    });
});
