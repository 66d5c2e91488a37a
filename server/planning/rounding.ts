import Fraction from 'fraction.js';
import { decimalsOf } from './exact.js';
import type { Measure } from './amounts.js';

/**
 * What people weigh, pour and cut: nobody fetches 157.9 g of rice. These only change what is shown; counting goes on with the exact
 * number. Upwards for what is needed and downwards for what is at hand, so that no shortage is hidden.
 *
 * Decimal units: the largest step of 1 or 5 in any decimal place that is at most a twenty-fifth of the amount (31.58 g is 32 g, 157.9 g
 * is 160 g, 924 g is 930 g, 3.96 m is 4 m); grams, millilitres and millimetres from 20 on in whole ones. Units told in
 * fractions (cups, inches): eighths below 1, quarters below 5, halves below 20, else whole ones. The shares are our judgement (common practice, no source).
 */
export function sensiblyUp(value: Fraction, measure: Measure): Fraction {
    const step = stepFor(value, measure, 25);
    return step ? value.div(step).ceil().mul(step) : value;
}

/** Finer than upwards, a 250th at most, so that next to nothing of what is there goes unmentioned. */
export function sensiblyDown(value: Fraction, measure: Measure): Fraction {
    const step = stepFor(value, measure, 250);
    return step ? value.div(step).floor().mul(step) : value;
}

/** Whether people read the number as it is: at most two decimals, or a fraction that a measuring cup or a ruler shows. */
export function readsPlainly(value: Fraction, measure: Measure): boolean {
    if (measure.is === 'measured' && measure.unit.parts === 'fraction' && kitchenParts.has(value.d)) return true;
    const decimals = decimalsOf(value);
    return decimals !== undefined && decimals <= 2;
}

export const kitchenParts: ReadonlySet<bigint> = new Set([1n, 2n, 3n, 4n, 8n, 16n]);

/** Units too small for kitchen scales and jugs to part. */
const small: ReadonlySet<string> = new Set(['g', 'ml', 'mm']);

function stepFor(value: Fraction, measure: Measure, share: number): Fraction | undefined {
    if (measure.is !== 'measured' || measure.unit.dimension === 'sheet' || !value.gt(0)) return undefined;
    if (measure.unit.parts === 'fraction') return new Fraction(1, value.lt(1) ? 8 : value.lt(5) ? 4 : value.lt(20) ? 2 : 1);
    const most = value.div(share);
    const ten = new Fraction(10).pow(Math.floor(Math.log10(most.valueOf())));
    if (!ten) return undefined;
    const step = ten.mul(5).lte(most) ? ten.mul(5) : ten;
    return step.lt(1) && small.has(measure.unit.symbol) && value.gte(20) ? new Fraction(1) : step;
}
