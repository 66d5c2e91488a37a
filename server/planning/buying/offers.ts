/** Packs as offered, made ready for whole-number arithmetic. */

export interface PackOffer {
    /** Whole smallest units in one pack, more than 0. */
    size: number | bigint;
    /** Minor units of one currency; absent where the price is not known. */
    cost?: number | bigint;
}

/** One size of pack worth buying. */
export interface Kind {
    /** Where it stands among the packs as offered. */
    index: number;
    /** In multiples of `Offers.unit`. */
    size: bigint;
    /** In multiples of `Offers.coin`; 0 where no pack has a price. */
    cost: bigint;
}

export interface Offers {
    offered: number;
    priced: boolean;
    /** The greatest common divisor of all sizes, and of all costs. */
    unit: bigint;
    coin: bigint;
    /** Cheapest for its size first, of equals the larger. Never empty. */
    kinds: readonly Kind[];
}

/** So many of the best are compared with all others; with more sizes than that some needless ones stay, which costs time only. */
const compared = 64;

/**
 * Packs without a whole size above 0 are left out; a price that is no whole number from 0 up counts as not known. Packs
 * without a price count only where none has one. `keepDear` keeps packs that a cheaper, larger purchase replaces: where storing costs, more is not better.
 */
export function readOffers(packs: readonly PackOffer[], keepDear = false): Offers | undefined {
    const valid = packs.flatMap((pack, index) => {
        const size = whole(pack.size);
        const cost = whole(pack.cost);
        return size !== undefined && size > 0n ? [{ index, size, cost: cost !== undefined && cost >= 0n ? cost : undefined }] : [];
    });
    const priced = valid.some(pack => pack.cost !== undefined);
    const bySize = new Map<bigint, Kind>();
    for (const { index, size, cost } of valid) {
        if (priced && cost === undefined) continue;
        const same = bySize.get(size);
        if (!same || (cost ?? 0n) < same.cost) bySize.set(size, { index, size, cost: cost ?? 0n });
    }
    const sorted = [...bySize.values()].sort(cheaperForItsSize);
    const best = sorted.slice(0, compared);
    const kinds = keepDear ? sorted : sorted.filter(kind => !best.some(other => ceilDiv(kind.size, other.size) * other.cost < kind.cost));
    if (kinds.length === 0) return undefined;
    const unit = kinds.reduce((divisor, kind) => gcd(divisor, kind.size), 0n);
    const coin = kinds.reduce((divisor, kind) => gcd(divisor, kind.cost), 0n) || 1n;
    return {
        offered: packs.length, priced, unit, coin,
        kinds: kinds.map(({ index, size, cost }) => ({ index, size: size / unit, cost: cost / coin }))
    };
}

function cheaperForItsSize(a: Kind, b: Kind): number {
    const difference = a.cost * b.size - b.cost * a.size;
    if (difference !== 0n) return difference < 0n ? -1 : 1;
    return a.size > b.size ? -1 : 1;
}

function whole(value: number | bigint | undefined): bigint | undefined {
    if (typeof value === 'bigint') return value;
    return value !== undefined && Number.isSafeInteger(value) ? BigInt(value) : undefined;
}

export function ceilDiv(a: bigint, b: bigint): bigint {
    return (a + b - 1n) / b;
}

export function gcd(a: bigint, b: bigint): bigint {
    while (b !== 0n) [a, b] = [b, a % b];
    return a;
}
