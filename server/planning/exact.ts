import Fraction from 'fraction.js';
import type { Exact } from '@haversack/language/sheets/sheet';

/** A number of a sheet that is longer than this is a slip of the hand; reading it could stall the engine. */
const longestNumber = 40;
const written = /^(?:\d+(?:\.\d+)?|(?:\d+ +)?\d+\/0*[1-9]\d*)$/;

/** Reads "20", "14.50", "1/2" or "1 1/2"; undefined for anything else, a zero denominator included. */
export function readExact(text: Exact): Fraction | undefined {
    const trimmed = text.trim();
    return trimmed.length <= longestNumber && written.test(trimmed) ? new Fraction(trimmed) : undefined;
}

/** How many decimals write the number exactly; undefined where no finite number of them does. */
export function decimalsOf(value: Fraction): number | undefined {
    let rest = value.d;
    let twos = 0;
    let fives = 0;
    while (rest % 2n === 0n) { rest /= 2n; twos++; }
    while (rest % 5n === 0n) { rest /= 5n; fives++; }
    return rest === 1n ? Math.max(twos, fives) : undefined;
}

/** Exact text that `readExact` reads back: a decimal where one is short, else a fraction. */
export function exactText(value: Fraction): Exact {
    const decimals = decimalsOf(value);
    return decimals !== undefined && decimals <= 12 ? value.toString(decimals) : value.toFraction();
}

export function sum(values: Iterable<Fraction>): Fraction {
    let total = new Fraction(0);
    for (const value of values) total = total.add(value);
    return total;
}

export function largest(values: Iterable<Fraction>): Fraction {
    let most = new Fraction(0);
    for (const value of values) if (value.gt(most)) most = value;
    return most;
}
