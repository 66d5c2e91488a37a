/**
 * A box in the small-parts cylinder by trial: turns the box about in space, seeks the best place for it, and says how much room is left. It
 * shares nothing with our own geometry, which reasons about faces and diagonals.
 */
type Point = readonly [number, number, number];
type Turn = readonly [number, number, number, number];

const radius = 0.625;
const depthOnAxis = 1.625;

/** A generator of numbers from 0 to 1 that always gives the same ones (mulberry32). */
export function numbers(seed: number): () => number {
    let state = seed;
    return () => {
        state = (state + 0x6d2b79f5) | 0;
        let t = Math.imul(state ^ (state >>> 15), 1 | state);
        t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
        return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
}

/** The most room found, in inches along the wall: not negative where the box was seen to be inside. */
export function roomFound(sides: Point, seed: number, tries = 24): number {
    const random = numbers(seed);
    let best = -Infinity;
    for (let attempt = 0; attempt < tries && best < 0; attempt++) {
        let turn: Turn = attempt < uprights.length ? uprights[attempt]! : unit([random() - 0.5, random() - 0.5, random() - 0.5, random() - 0.5]);
        let here = room(sides, turn);
        for (let stride = 0.5; stride > 1e-5; stride *= 0.86) {
            for (let i = 0; i < 8; i++) {
                const next = unit(turn.map(part => part + stride * (random() - 0.5)) as unknown as Turn);
                const there = room(sides, next);
                if (there > here) [turn, here] = [next, there];
            }
        }
        best = Math.max(best, here);
    }
    return best;
}

const half = Math.SQRT1_2;
/** The six ways to stand a box on a face, as quaternions. */
const uprights: readonly Turn[] = [[1, 0, 0, 0], [half, half, 0, 0], [half, 0, half, 0], [half, 0, 0, half], [0.5, 0.5, 0.5, 0.5], [0.5, -0.5, -0.5, -0.5]];

function unit(turn: Turn): Turn {
    const length = Math.hypot(...turn);
    return turn.map(part => part / length) as unknown as Turn;
}

/** With its top at the rim the box hangs over the slanted bottom: how far towards the deep wall it must be, and how far it can. */
function room(sides: Point, turn: Turn): number {
    const corners = cornersOf(sides, turn);
    const top = Math.max(...corners.map(([, , z]) => z));
    const least = Math.max(...corners.map(([x, , z]) => top - z - x)) - depthOnAxis;
    const reach = (aside: number): number => Math.min(...corners.map(([x, y]) => {
        const left = radius * radius - (aside + y) ** 2;
        return left < 0 ? -10 + left : Math.sqrt(left) - x;
    }));
    const opposite = (aside: number): number => Math.min(...corners.map(([x, y]) => {
        const left = radius * radius - (aside + y) ** 2;
        return left < 0 ? -10 + left : Math.sqrt(left) + x;
    }));
    // The farthest place inside the circle: the reach rises and falls once over `aside`.
    let [low, high] = [-radius, radius];
    for (let i = 0; i < 40; i++) {
        const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
        if (reach(a) < reach(b)) low = a;
        else high = b;
    }
    const aside = (low + high) / 2;
    // The corners have to be on this side of the other wall too: x from -opposite to reach.
    return Math.min(reach(aside) - least, (reach(aside) + opposite(aside)) / 2);
}

function cornersOf([a, b, c]: Point, [w, x, y, z]: Turn): Point[] {
    const rows: Point[] = [
        [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
        [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
        [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)]
    ];
    const signs = [-0.5, 0.5];
    return signs.flatMap(i => signs.flatMap(j => signs.map(k => rows.map(([p, q, r]) => p * i * a + q * j * b + r * k * c) as unknown as Point)));
}
