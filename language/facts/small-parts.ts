/**
 * Whether a thing of declared size fits the small-parts cylinder of 16 CFR 1501.4 (figure 1), in any orientation and wholly inside:
 * 1.25 in wide, 1 in deep at one wall and 2.25 in at the other, so that its bottom slants at 45 degrees. The inch figures govern there, so inches
 * are what is computed with. One length is the diameter of a ball, two are the side of a square and the length of a rod, three a box.
 *
 * The inside is convex, so a box is inside when its corners are. Where a placement is found the answer is "fits"; where none can be, "does not fit".
 * Between the two, and for whatever is soft or not a box, only a real gauge decides.
 */
import { sidesInInches } from './size-in-inches.js';

export type GaugeAnswer = 'fits' | 'does not fit' | 'check with a real gauge';

const width = 1.25;
const radius = width / 2;
const deepest = 2.25;
/** On the axis; towards the deep wall the bottom falls as fast as one goes sideways. */
const depthOnAxis = 1.625;
/** Inches by which arithmetic may round; what just fits, fits. */
const hair = 1e-9;
/** Slants of a box that are tried, in degrees from upright. */
const slants: readonly number[] = Array.from({ length: 90 }, (_, degrees) => degrees * Math.PI / 180);

/** Undefined where the size is no length, or does not have one to three sides. */
export function gaugeAnswer(sides: readonly string[], unit: string): GaugeAnswer | undefined {
    const inches = sidesInInches(sides, unit);
    if (!inches || inches.length > 3) return undefined;
    if (inches.length === 1) return inches[0]! <= width + hair ? 'fits' : 'does not fit';
    const box = boxOf(sides.length === 2 ? [sidesInInches(sides.slice(0, 1), unit)![0]!, ...inches] : inches);
    return fits(box) ? 'fits' : cannotFit(box) ? 'does not fit' : 'check with a real gauge';
}

/**
 * Whether a ball of this size passes the 1.75 in hole of 16 CFR 1500.18(a)(17). Only one length is a ball: dice are none.
 */
export function isSmallBall(sides: readonly string[], unit: string): boolean {
    const inches = sides.length === 1 ? sidesInInches(sides, unit) : undefined;
    return inches !== undefined && inches[0]! <= 1.75 + hair;
}

type Box = readonly [least: number, middle: number, most: number];

function boxOf(sides: readonly number[]): Box {
    const [least = 0, middle = 0, most = 0] = [...sides].sort((a, b) => a - b);
    return [least, middle, most];
}

/** Tries to lay the box with each side in turn across the slant, and each of the others as its height. */
function fits([a, b, c]: Box): boolean {
    return [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]].some(([across = 0, wide = 0, high = 0]) => hasRoom(across, wide, high));
}

/**
 * Whether a box stands somewhere inside with one side level and across the slant. Seen from that side there is a four-cornered room: as
 * wide as the circle leaves beside the level side, flat on top, slanted at the bottom. A rectangle turned in it touches the deep wall and the
 * rim first, and what is left is whether its corner reaches the bottom.
 */
function hasRoom(across: number, wide: number, high: number): boolean {
    if (across > width) return false;
    const half = Math.sqrt(radius * radius - across * across / 4);
    return slants.some(slant => {
        const [along, up] = [Math.sin(slant), Math.cos(slant)];
        const sideways = wide * up + high * along;
        return sideways <= 2 * half + hair && wide * (up + along) + high * Math.max(up, along) <= half + depthOnAxis + hair;
    });
}

/**
 * Two reasons why no orientation can be inside.
 * 1. From above, the box has to lie in the circle. Its shadow is never narrower than the diagonal of its smallest face, because of the four
 *    diagonals of the box one always loses at most the longest side to the tilt.
 * 2. A longest side that is longer than the opening stands upright by some angle. Then it takes cos(angle) of its length in depth, and the least side as much of its own beside
 *    the deep wall; and sideways sin(angle) of the one and cos(angle) of the other.
 */
function cannotFit([least, middle, most]: Box): boolean {
    if (Math.hypot(least, middle) > width + hair) return true;
    if (most <= width) return false;
    const upright = Math.min(1, deepest / (least + most));
    return most * Math.sqrt(1 - upright * upright) + least * upright > width + hair;
}
