import Fraction from 'fraction.js';

/** `n`/`d` with `d` above 0, not always in lowest terms: cheaper than a Fraction where the denominator is nearly always 1. */
export interface Ratio {
    n: bigint;
    d: bigint;
}

export function ratioOf({ s, n, d }: Fraction): Ratio {
    return { n: s * n, d };
}

export function fractionOf({ n, d }: Ratio): Fraction {
    return new Fraction(n, d);
}

/** The least common multiple of two numbers above 0. */
export function lcm(a: bigint, b: bigint): bigint {
    if (a === b || b === 1n) return a;
    if (a === 1n) return b;
    let [x, y] = [a, b];
    while (y !== 0n) [x, y] = [y, x % y];
    return a / x * b;
}

export function most(a: bigint, b: bigint): bigint {
    return a > b ? a : b;
}

export function least(a: bigint, b: bigint): bigint {
    return a < b ? a : b;
}
