import { unitNamed } from './units.js';

/**
 * Whether a thing of declared size may be a small part. The cylinder of 16 CFR 1501.4 is 1.25 in (31.7 mm) wide and 1 to
 * 2.25 in (25.4 to 57.1 mm) deep on its slanted bottom. A box is told apart by two lengths: its smallest face has to pass
 * the opening, and its longest side is at most the longest chord inside. Between what surely fits and what cannot fit only a real
 * gauge decides, so this answers "may fit", on the careful side.
 */
const width = 31.75;
const deepest = 57.15;
const longestChord = Math.hypot(width, deepest);

/** `sides` in `unit`: one side is a ball, two are the side of a square and a length, three a box. False for unknown units. */
export function mayBeSmallPart(sides: readonly number[], unit: string): boolean {
    const known = unitNamed(unit);
    if (known?.dimension !== 'length' || sides.length === 0 || sides.some(side => !(side > 0))) return false;
    const sorted = sides.map(side => side * Number(known.factor)).sort((a, b) => a - b);
    if (sorted.length === 1) return sorted[0]! <= width;
    const [least, next] = sorted.length === 2 ? [sorted[0]!, sorted[0]!] : [sorted[0]!, sorted[1]!];
    return Math.hypot(least, next) <= width && sorted[sorted.length - 1]! <= longestChord;
}
