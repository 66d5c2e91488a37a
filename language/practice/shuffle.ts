import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Draws the numbers from 0 to `total` - 1, each once, in an order that the seed decides; then nothing more. */
export type Draw = () => number | undefined;

/**
 * Shuffles as Fisher and Yates do, remembering only what has moved: a draw from a million million numbers costs as little as
 * one from ten. The first `wave` numbers come before the next `wave`. `round` makes a new order of the same numbers.
 */
export function shuffled(total: number, seed: string, round: number, wave = total): Draw {
    const random = generator(hash(`${seed}/${round}`));
    const moved = new Map<number, number>();
    let drawn = 0;
    return () => {
        if (drawn >= total) return undefined;
        const end = Math.min(total, (Math.floor(drawn / wave) + 1) * wave);
        const chosen = uniformInt(random, drawn, end - 1);
        const value = moved.get(chosen) ?? chosen;
        moved.set(chosen, moved.get(drawn) ?? drawn);
        moved.delete(drawn);
        drawn++;
        return value;
    };
}

/** Its first values are too much alike for seeds that are alike, so they are left out. */
function generator(seed: number): ReturnType<typeof xoroshiro128plus> {
    const random = xoroshiro128plus(seed);
    for (let skipped = 0; skipped < 16; skipped++) random.next();
    return random;
}

/** 32 bits of FNV-1a. */
function hash(text: string): number {
    let bits = 0x811c9dc5;
    for (let at = 0; at < text.length; at++) bits = Math.imul(bits ^ text.charCodeAt(at), 0x01000193);
    return bits | 0;
}
