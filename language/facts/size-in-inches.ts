import { unitNamed } from './units.js';

/** A number that is longer than this is a slip of the hand. */
const longestNumber = 40;
const written = /^(?:(\d+) +)?(\d+)(?:\.(\d+)|\/(\d+))?$/;

/**
 * The sides of a declared size in inches, the smallest first. One length in two units gives the very same number, because the way there
 * is made in whole numbers (1 in = 25.4 mm, NIST SP 811). Undefined where the unit is no length, or a side is not a number above zero.
 */
export function sidesInInches(sides: readonly string[], unit: string): number[] | undefined {
    const known = unitNamed(unit);
    if (known?.dimension !== 'length' || sides.length === 0) return undefined;
    const inches = sides.map(side => lengthInInches(side, known.factor));
    return inches.every(length => length !== undefined) ? inches.sort((a, b) => a - b) : undefined;
}

function lengthInInches(side: string, factor: string): number | undefined {
    const length = asRatio(side);
    const millimetres = asRatio(factor);
    if (!length || !millimetres || length.above === 0n) return undefined;
    const above = length.above * millimetres.above * 10n;
    const below = length.below * millimetres.below * 254n;
    const shared = commonDivisor(above, below);
    return Number(above / shared) / Number(below / shared);
}

/** "20", "14.50", "1/2" and "1 1/2" as a ratio of whole numbers. */
function asRatio(text: string): { above: bigint; below: bigint } | undefined {
    const trimmed = text.trim();
    const [, whole = '0', first = '', decimals, divisor] = (trimmed.length <= longestNumber && written.exec(trimmed)) || [];
    if (first === '' || (whole !== '0' && divisor === undefined)) return undefined;
    if (decimals !== undefined) return { above: BigInt(first + decimals), below: 10n ** BigInt(decimals.length) };
    const below = BigInt(divisor ?? '1');
    return below === 0n ? undefined : { above: BigInt(whole) * below + BigInt(first), below };
}

function commonDivisor(a: bigint, b: bigint): bigint {
    while (b > 0n) [a, b] = [b, a % b];
    return a;
}
