import Fraction from 'fraction.js';
import { unitNamed, type Unit } from '@haversack/language/facts/units';
import type { Amount, Exact, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';

/** A number as a cell says it, exactly. */
export interface Numeral {
    value: Fraction;
    /** As the language writes it: "0.5", "1 1/2". */
    text: Exact;
}

/** An amount with what it is an amount of, as far as a cell says so: at most one of the three. */
export interface Quantity extends Numeral {
    /** A unit of the language. */
    unit?: Unit;
    /** A word of its own for the thing, such as "sets". */
    word?: string;
    /** A word for what it comes in, such as "boxes": so many packs. */
    packs?: string;
}

/** How amounts of a material are given. */
export type Measure = { unit: Unit } | { one: string; many: string } | 'pieces';

/** Reads a number of the language; undefined where it is none, or longer than anyone means. */
export function exactly(text: Exact): Fraction | undefined {
    return text.length <= 40 && /^(?:\d+(?:\.\d+)?|(?:\d+ +)?\d+\/0*[1-9]\d*)$/.test(text) ? new Fraction(text) : undefined;
}

/** A number as the language writes it: a decimal where that is exact and short, else a fraction. */
export function numeral(value: Fraction, asFraction = false): Numeral {
    if (asFraction || !hasShortDecimals(value)) return { value, text: value.toFraction(true) };
    return { value, text: value.toString(12) };
}

function hasShortDecimals(value: Fraction): boolean {
    return value.mul(1_000_000).d === 1n;
}

/** As text that can stand in a file: "2 kg", "1 1/2 cups", "3 sets", "12". */
export function written({ text, value, unit, word }: Quantity): string {
    const many = value.gt(1) || value.equals(0);
    return [text, unit ? (many ? unit.plural : unit.symbol) : word].filter(part => part !== undefined).join(' ');
}

export function measureOf(thing: ThingSheet): Measure | undefined {
    if (thing.kind === 'print') return { one: 'copy', many: 'copies' };
    if (thing.kind === 'book') return 'pieces';
    return materialMeasure(thing);
}

/** Absent where a material neither says nor shows how its amounts are given, and nothing speaks for pieces either. */
function materialMeasure({ measured, counted, packs }: MaterialSheet): Measure | undefined {
    if (measured) {
        const unit = unitNamed(measured.unit);
        return unit && { unit };
    }
    if (counted) return { one: counted.one, many: counted.many };
    for (const { amount } of packs) {
        const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
        if (unit) return { unit };
    }
    return 'pieces';
}

/** An amount of a file in a measure; undefined where it cannot be turned into it. */
export function amountIn({ value, unit }: Pick<Amount, 'value' | 'unit'>, measure: Measure): Fraction | undefined {
    const number = exactly(value);
    if (!number || unit === undefined) return number;
    if (measure === 'pieces') return undefined;
    if ('one' in measure) return isWordOf(unit, measure) ? number : undefined;
    const known = unitNamed(unit);
    return known && converted(number, known, measure.unit);
}

/** The same of an amount of a cell; a bare number counts in the measure as it is. */
export function quantityIn({ value, unit, word, packs }: Quantity, measure: Measure): Fraction | undefined {
    if (packs !== undefined) return undefined;
    if (unit) return measure !== 'pieces' && 'unit' in measure ? converted(value, unit, measure.unit) : undefined;
    if (word === undefined) return value;
    return measure !== 'pieces' && 'one' in measure && isWordOf(word, measure) ? value : undefined;
}

export function isWordOf(word: string, { one, many }: { one: string; many: string }): boolean {
    const plain = word.toLowerCase();
    return [one, many].some(own => own.toLowerCase() === plain || singular(own.toLowerCase()) === singular(plain));
}

function converted(value: Fraction, from: Unit, to: Unit): Fraction | undefined {
    if (from.symbol === to.symbol) return value;
    return from.dimension === to.dimension ? value.mul(from.factor).div(to.factor) : undefined;
}

/** "sets" and "set" give "set", "boxes" gives "box"; other words stay as they are. */
export function singular(word: string): string {
    if (/(?:ch|sh|x|ss|z)es$/.test(word)) return word.slice(0, -2);
    if (/[^aeiou]ies$/.test(word)) return `${word.slice(0, -3)}y`;
    return /[^s]s$/.test(word) && word.length > 2 ? word.slice(0, -1) : word;
}

export function plural(one: string): string {
    if (/(?:ch|sh|x|s|z)$/.test(one)) return `${one}es`;
    if (/[^aeiou]y$/.test(one)) return `${one.slice(0, -1)}ies`;
    return /^[\x20-\x7e]+$/.test(one) ? `${one}s` : one;
}
