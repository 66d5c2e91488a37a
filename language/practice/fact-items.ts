import type { ItemSet, PracticeItem } from './practice-item.js';
import { inRows, rowOf } from './triangle.js';

/** Additions of two numbers from 1 up whose result is `from` to `to`; 3 + 4 and 4 + 3 are two. */
export function sums(from: number, to: number): ItemSet {
    return partsOf(from, to, (part, whole) => ({ ask: `${part} + ${whole - part} = ?`, answer: String(whole), about: fact(part, whole - part), room: 'gap' }));
}

/** The part that is missing of a sum as `sums` makes it. */
export function missingParts(from: number, to: number): ItemSet {
    return partsOf(from, to, (part, whole) => ({ ask: `${part} + ? = ${whole}`, answer: String(whole - part), about: fact(part, whole - part), room: 'gap' }));
}

/** 7 + 8, 8 + 7, 15 − 7 and 7 + ? = 15 are one fact; so are 7 + 7, double 7 and half of 14. */
export const fact = (one: number, other: number): string[] => [`${Math.min(one, other)} + ${Math.max(one, other)}`];

/** A whole in the range that is made of two parts from 1 up, and its first part. */
function partsOf(from: number, to: number, item: (part: number, whole: number) => PracticeItem): ItemSet {
    const least = Math.max(from, 2);
    const before = inRows(least - 2);
    return {
        total: Math.max(0, inRows(to - 1) - before),
        at: index => {
            const { row, column } = rowOf(index + before);
            return item(column + 1, row + 2);
        },
        find: ([first, second, ...more]) => {
            if (first === undefined || second === undefined || more.length > 0 || first < 1 || second < 1) return undefined;
            const whole = first + second;
            return whole < least || whole > to ? undefined : inRows(whole - 2) + first - 1 - before;
        }
    };
}

/** The two parts of a number from `from` to `to`; nothing and the whole are parts too, so ten has eleven bonds. */
export function bonds(from: number, to: number): ItemSet {
    const before = inRows(from);
    return {
        total: Math.max(0, inRows(to + 1) - before),
        at: index => {
            const { row: whole, column: part } = rowOf(index + before);
            return { ask: `${whole} is ${part} and ?`, answer: String(whole - part), about: fact(part, whole - part), room: 'gap' };
        },
        find: ([first, second, ...more]) => {
            if (first === undefined || second === undefined || more.length > 0) return undefined;
            const whole = first + second;
            return whole < from || whole > to ? undefined : inRows(whole) + first - before;
        }
    };
}

/** Subtractions that begin and end in the range and take away at least 1. */
export function differences(from: number, to: number): ItemSet {
    return pairsIn(from, to, (less, more) => ({ ask: `${more} − ${more - less} = ?`, answer: String(less), about: fact(less, more - less), room: 'gap' }),
        ([whole, taken, ...more]) => (whole === undefined || taken === undefined || more.length > 0 ? undefined : [whole - taken, whole]));
}

/** Two different numbers of the range, of which one is more; each pair once. */
export function comparisons(from: number, to: number): ItemSet {
    return pairsIn(from, to, (less, more) => {
        const [first, second] = Math.floor((less + more) / 2) % 2 === 0 ? [less, more] : [more, less];
        return { ask: `Which is more, ${first} or ${second}?`, answer: String(more), about: [String(less), String(more)], room: 'number' };
    }, ([first, second, ...more]) => (first === undefined || second === undefined || more.length > 0 ? undefined : [Math.min(first, second), Math.max(first, second)]));
}

function pairsIn(
    from: number, to: number, item: (less: number, more: number) => PracticeItem, pairOf: (numbers: readonly number[]) => [less: number, more: number] | undefined
): ItemSet {
    return {
        total: Math.max(0, inRows(to - from)),
        at: index => {
            const { row, column } = rowOf(index);
            return item(from + column, from + row + 1);
        },
        find: numbers => {
            const [less, more] = pairOf(numbers) ?? [0, 0];
            return less < more && less >= from && more <= to ? inRows(more - from - 1) + less - from : undefined;
        }
    };
}
