/** Names of numbers against the rules of the Unicode CLDR (rule-based number format, English), and place-value names against what they say. */
import rules from 'cldr-rbnf/rbnf/en.json';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inPlaces, inWords, largestNumber, withAnd } from '@haversack/language/practice/number-names';
import { practiceItems } from '@haversack/language/practice/sequence';
import { practicePart } from '../language/practice-parts.js';

type RuleSet = [base: string, text: string][];
const sets = (rules as unknown as { rbnf: { rbnf: { SpelloutRules: Record<string, RuleSet> } } }).rbnf.rbnf.SpelloutRules;

/**
 * A rule set read as Unicode Technical Standard 35, part 3, says: the rule with the greatest base not above the number; `←←` is the number divided by
 * the rule's power of ten, `→→` the rest, `=%set=` and `→%set→` the number and the rest by another set, an apostrophe begins a text with a blank, and what stands in brackets
 * falls away where the rest is 0.
 */
function spellout(number: number, name = '%spellout-cardinal'): string {
    const set = sets[name]!.filter(([base]) => /^\d+$/.test(base)).map(([base, text]): [number, string] => [Number(base), text]);
    const [base, text] = set.filter(([from]) => from <= number).pop()!;
    const divisor = 10 ** Math.floor(Math.log10(Math.max(base, 1)) + 1e-9);
    const rest = number % divisor;
    return text.replace(/;$/, '').replace(/^'/, '').replace(/\[(.*?)\]/, (_, inner: string) => (rest === 0 ? '' : inner))
        .replace('←←', () => spellout(Math.floor(number / divisor), name)).replace('→→', () => spellout(rest, name))
        .replace(/=(%[\w%-]+)=/, (_, other: string) => spellout(number, other)).replace(/→(%[\w%-]+)→/, (_, other: string) => spellout(rest, other));
}

const same = (name: string): string => name.toLowerCase().replace(/[\s,-]+/g, ' ').trim();

describe('Unicode CLDR 48.2.0, English, %spellout-cardinal', () => {
    test('every number from 0 to 9999', () => {
        for (let number = 0; number <= 9999; number++) expect(same(inWords(number)), String(number)).toBe(same(spellout(number)));
    });

    test('numbers up to the largest', () => {
        fc.assert(fc.property(fc.integer({ min: 10_000, max: largestNumber }), number => same(inWords(number)) === same(spellout(number))), { numRuns: 2000 });
        expect(inWords(largestNumber)).toBe(spellout(largestNumber));
    });

    // The library and CLDR write hyphens alike as well.
    test.each([21, 43, 99, 143, 1001, 12_345])('%d with its hyphens and spaces', number => expect(inWords(number)).toBe(spellout(number)));
});

// Spellings that learners and programs get wrong; the rules above say the same.
test.each([
    [11, 'eleven'], [12, 'twelve'], [13, 'thirteen'], [15, 'fifteen'], [18, 'eighteen'], [20, 'twenty'], [30, 'thirty'], [40, 'forty'], [50, 'fifty'],
    [80, 'eighty'], [90, 'ninety'], [0, 'zero'], [100, 'one hundred'], [101, 'one hundred one']
])('%d is %s', (number, name) => {
    expect(inWords(number)).toBe(name);
    expect(spellout(number)).toBe(name);
});

describe('place-value form', () => {
    // The project's own convention (no published written form is known): a count before every place, empty places silent.
    test.each([
        [10, '1-ten'], [11, '1-ten 1'], [14, '1-ten 4'], [19, '1-ten 9'], [20, '2-ten'], [21, '2-ten 1'], [30, '3-ten'], [67, '6-ten 7'], [90, '9-ten'], [99, '9-ten 9'],
        [143, '1-hundred 4-ten 3'], [205, '2-hundred 5'], [1001, '1-thousand 1'], [12_345, '1-ten-thousand 2-thousand 3-hundred 4-ten 5']
    ])('%d is %s', (number, name) => expect(inPlaces(number)).toBe(name));

    test('adds up to the number again, and no two numbers share a form', () => {
        const worth: Record<string, number> = { ten: 10, hundred: 100, thousand: 1000, 'ten-thousand': 10_000, 'hundred-thousand': 100_000 };
        const value = (name: string): number => name.split(' ').reduce((sum, part) => {
            const [, count = '', place = ''] = /^(\d)-?(.*)$/.exec(part)!;
            return sum + Number(count) * (place === '' ? 1 : worth[place]!);
        }, 0);
        fc.assert(fc.property(fc.integer({ min: 0, max: largestNumber }), number => value(inPlaces(number)) === number), { numRuns: 2000 });
    });
});

// Unicode CLDR 48.2.0, English, %spellout-cardinal-verbose: "four hundred and eighteen". Its commas after thousands are not said.
test('a name with “and” is the verbose one, for every number that has one', () => {
    const said = (number: number): string => same(withAnd(inWords(number)) ?? inWords(number));
    const verbose = (number: number): string => same(spellout(number, '%spellout-cardinal-verbose'));
    for (let number = 0; number <= 9999; number++) expect(said(number)).toBe(verbose(number));
    fc.assert(fc.property(fc.integer({ min: 10_000, max: largestNumber }), number => said(number) === verbose(number)), { numRuns: 3000 });
    expect(spellout(418, '%spellout-cardinal-verbose')).toBe('four hundred and eighteen');
    expect(withAnd('ninety-nine')).toBeUndefined();
    expect(withAnd('two hundred')).toBeUndefined();
});

test('items: both names, either name, and the other direction', () => {
    const only = (line: string): { ask: string; answer: string }[] => practiceItems(practicePart([line]), 'one');
    expect(only('name numbers 67 to 67')).toMatchObject([{ ask: 'Name 67 in words and in tens and ones', answer: 'sixty-seven; 6-ten 7' }]);
    expect(only('name numbers 67 to 67 in words')).toMatchObject([{ ask: 'Name 67 in words', answer: 'sixty-seven' }]);
    expect(only('name numbers 67 to 67 in places')).toMatchObject([{ ask: 'Name 67 in tens and ones', answer: '6-ten 7' }]);
    expect(only('name numbers 7 to 7 in places')).toMatchObject([{ ask: 'Name 7 in ones' }]);
    expect(only('name numbers 205 to 205 in places')).toMatchObject([{ ask: 'Name 205 in hundreds, tens and ones', answer: '2-hundred 5' }]);
    expect(only('write numbers 67 to 67 from words')).toMatchObject([{ ask: 'Write in digits: sixty-seven', answer: '67' }]);
    expect(only('write numbers 67 to 67 from places')).toMatchObject([{ ask: 'Write in digits: 6-ten 7', answer: '67' }]);
    expect(only('write numbers 67 to 67').map(({ ask }) => ask).sort()).toEqual(['Write in digits: 6-ten 7', 'Write in digits: sixty-seven']);
});
