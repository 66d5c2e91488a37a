import { counted } from '../facts/wording.js';
import { inPlaces, inWords, wordsSaid } from './number-names.js';
import type { ItemSet, PracticeItem } from './practice-item.js';

const placeNames = ['ones', 'tens', 'hundreds', 'thousands', 'ten thousands', 'hundred thousands'] as const;

/** The two ways in which a number is named. */
export type NameForm = 'words' | 'places';

/** "67": sixty-seven; 6-ten 7. Without a form both names are asked for. */
export function namesOf(from: number, to: number, form?: NameForm): ItemSet {
    const forms: NameForm[] = form ? [form] : ['words', 'places'];
    return eachNumber(from, to, number => ({
        ask: `Name ${number} ${forms.map(one => (one === 'words' ? 'in words' : placesAsked(number))).join(' and ')}`,
        answer: forms.map(one => nameOf(number, one)).join('; '),
        about: [String(number)],
        room: 'line'
    }));
}

/** The other way round: a name to write in digits. */
export function digitsOf(from: number, to: number, form?: NameForm): ItemSet {
    const item = (number: number, one: NameForm): PracticeItem => ({ ask: `Write in digits: ${nameOf(number, one)}`, answer: String(number), about: [String(number)], room: 'number' });
    return form ? eachNumber(from, to, number => item(number, form)) : inBothForms(from, to, item);
}

/** How many words are said and how many digits are written: "two hundred" needs three digits, "2-ten" two. */
export function wordsAgainstDigits(from: number, to: number): ItemSet {
    return inBothForms(from, to, (number, form) => {
        const name = nameOf(number, form);
        return {
            ask: `“${name}”: how many words are said, how many digits are written?`,
            answer: `${counted(wordsSaid(name).length, 'word')}, ${counted(String(number).length, 'digit')}: ${number}`,
            about: [String(number)],
            room: 'line'
        };
    });
}

function nameOf(number: number, form: NameForm): string {
    return form === 'words' ? inWords(number) : inPlaces(number);
}

/** In the words of the answer: "in hundreds, tens and ones", as far as the number has them; below ten there is one place only. */
function placesAsked(number: number): string {
    const places = placeNames.slice(0, String(number).length).reverse();
    return `in ${places.length === 1 ? 'ones' : `${places.slice(0, -1).join(', ')} and ${places.at(-1)}`}`;
}

function eachNumber(from: number, to: number, item: (number: number) => PracticeItem): ItemSet {
    return {
        total: to - from + 1,
        at: index => item(from + index),
        find: ([number, ...more]) => (number !== undefined && more.length === 0 && number >= from && number <= to ? number - from : undefined)
    };
}

/**
 * Every number in one of its two names first, about half of them in each; then in the other. Below ten there is no place to
 * name, so those have one name only.
 */
function inBothForms(from: number, to: number, item: (number: number, form: NameForm) => PracticeItem): ItemSet {
    const numbers = to - from + 1;
    const twice = Math.max(from, 10);
    return {
        total: numbers + Math.max(0, to - twice + 1),
        wave: numbers,
        at: index => (index < numbers ? item(from + index, firstForm(from + index)) : item(twice + index - numbers, otherForm(firstForm(twice + index - numbers)))),
        find: ([number, ...more]) => (number !== undefined && more.length === 0 && number >= from && number <= to ? number - from : undefined)
    };
}

/** Mixed without a pattern that a child would notice. */
function firstForm(number: number): NameForm {
    return number >= 10 && Math.imul(number, 0x9e3779b1) < 0 ? 'places' : 'words';
}

const otherForm = (form: NameForm): NameForm => (form === 'words' ? 'places' : 'words');
