import { fact } from './fact-items.js';
import { largestNumber } from './number-names.js';
import type { ItemSet } from './practice-item.js';

/** The largest number whose double is still a number that is practised with. */
export const largestDoubled = Math.floor(largestNumber / 2);

/** Numbers `from` to `to`, each to be doubled. */
export function doubles(from: number, to: number): ItemSet {
    return {
        total: to - from + 1,
        at: index => ({ ask: `Double ${from + index} is ?`, answer: String(2 * (from + index)), about: fact(from + index, from + index), room: 'gap' }),
        find: ([number, ...more]) => (number !== undefined && more.length === 0 && number >= from && number <= to ? number - from : undefined)
    };
}

/** The even numbers from `from` to `to`, each to be halved: what is left of an odd one is another lesson's matter. */
export function halves(from: number, to: number): ItemSet {
    const least = Math.ceil(from / 2);
    return {
        total: Math.max(0, Math.floor(to / 2) - least + 1),
        at: index => ({ ask: `Half of ${2 * (least + index)} is ?`, answer: String(least + index), about: fact(least + index, least + index), room: 'gap' }),
        find: ([number, ...more]) => (number !== undefined && more.length === 0 && number % 2 === 0 && number >= from && number <= to ? number / 2 - least : undefined)
    };
}
