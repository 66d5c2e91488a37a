import type { PracticeLine } from '../sheets/sheet.js';
import { arrangingDigits } from './arrangements.js';
import { doubles, halves, largestDoubled } from './doubles-and-halves.js';
import { bonds, comparisons, differences, missingParts, sums } from './fact-items.js';
import { largestQuantity, quantities } from './fives-and-tens.js';
import { digitsOf, namesOf, wordsAgainstDigits, type NameForm } from './naming-items.js';
import { largestNumber } from './number-names.js';
import type { ItemSet } from './practice-item.js';

/** A line that makes items from one or two numbers. */
export interface LineKind {
    /** Its words without numbers and form, as a sheet has them. */
    words: string;
    /** Numbers outside these ends cannot be. */
    least: number;
    most: number;
    /** `to` is the number itself where the line has only one. */
    items(from: number, to: number, form: NameForm | undefined): ItemSet;
    /** Why a line in those ends may have no item at all. */
    none: string;
    /** A line that is right, for messages. */
    example: string;
    /** For lines whose items are about two numbers: the range in which the item about these two lies. */
    ends?(first: number, second: number): [from: number, to: number];
}

const largest = largestNumber;
const whole: LineKind['ends'] = (first, second) => [first + second, first + second];

export const lineKinds: readonly LineKind[] = [
    { words: 'name numbers', least: 0, most: largest, items: namesOf, none: '', example: 'name numbers 11 to 99' },
    { words: 'write numbers', least: 0, most: largest, items: digitsOf, none: '', example: 'write numbers 11 to 99' },
    { words: 'digits and words', least: 0, most: largest, items: wordsAgainstDigits, none: '', example: 'digits and words 20 to 999' },
    { words: 'arrange digits', least: 10, most: largest, items: arrangingDigits, none: 'its digits make no other number', example: 'arrange digits of 481' },
    { words: 'fives and tens', least: 1, most: largestQuantity, items: quantities, none: '', example: 'fives and tens 6 to 20' },
    { words: 'sums', least: 0, most: largest, items: sums, none: 'a sum is made of two numbers from 1 up, so the smallest is 2', example: 'sums 2 to 20', ends: whole },
    { words: 'differences', least: 0, most: largest, items: differences, none: 'something has to be taken away', example: 'differences 0 to 20', ends: (first, second) => [first - second, first] },
    { words: 'doubles', least: 1, most: largestDoubled, items: doubles, none: '', example: 'doubles 1 to 10' },
    { words: 'halves', least: 2, most: largest, items: halves, none: 'only an even number has a half that is whole', example: 'halves 2 to 20' },
    { words: 'missing parts', least: 0, most: largest, items: missingParts, none: 'a sum is made of two numbers from 1 up, so the smallest is 2', example: 'missing parts 5 to 20', ends: whole },
    { words: 'bonds', least: 1, most: largest, items: bonds, none: '', example: 'bonds of 10', ends: whole },
    { words: 'compare numbers', least: 0, most: largest, items: comparisons, none: 'two different numbers are compared', example: 'compare numbers 10 to 99', ends: (first, second) => [Math.min(first, second), Math.max(first, second)] }
];

/** The kind of a line, and in which of its forms; undefined for `return to` and for words that could not be read. */
export function kindOf(line: PracticeLine): { kind: LineKind; form?: NameForm } | undefined {
    const words = line.words.join(' ');
    const kind = lineKinds.find(one => words === one.words || words.startsWith(`${one.words} `));
    const last = line.words[line.words.length - 1];
    return kind && { kind, form: words !== kind.words && (last === 'words' || last === 'places') ? last : undefined };
}

export const isReturn = (line: PracticeLine): boolean => line.words[0] === 'return';

/** The line as it is written, with these numbers in place of its own: "name numbers 11 to 99 in words". */
export function lineInWords(line: PracticeLine, numbers: readonly (number | string)[] = line.numbers): string {
    const found = kindOf(line);
    const [first = '', second] = numbers;
    const words = found && !isReturn(line) ? found.kind.words : line.words.join(' ');
    if (isReturn(line)) return second === undefined ? `${words} ${first}` : `${words} ${first} and ${second}`;
    const of = words === 'bonds' || words === 'arrange digits' ? ' of' : '';
    const form = found?.form === undefined ? '' : ` ${words === 'write numbers' ? 'from' : 'in'} ${found.form}`;
    return `${words}${of} ${first}${second === undefined ? '' : ` to ${second}`}${form}`;
}
