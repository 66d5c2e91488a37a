import type { PackOffer } from './offers.js';
import { readOffers } from './offers.js';
import { PackSolver } from './pack-solver.js';

export type { PackOffer } from './offers.js';

export interface Purchase {
    /** How many of each pack, in the order offered (exact up to 2^53). */
    counts: number[];
    /** Smallest units. */
    bought: bigint;
    /** Minor units; absent where no pack has a price. */
    cost?: bigint;
    /** False only where a limit on time left a cheaper choice possible; the need is covered all the same. */
    exact: boolean;
}

/**
 * The cheapest packs that hold at least `need` smallest units: of equally cheap choices the one that leaves least over, then the
 * one with the fewest packs. Packs without a price are used only where none has one, and then the least left over decides.
 * Undefined where no pack has a whole size above 0.
 */
export function cheapestPacks(need: bigint, packs: readonly PackOffer[]): Purchase | undefined {
    const offers = readOffers(packs);
    if (!offers) return undefined;
    const { counts, bought, cost, exact } = new PackSolver(offers).cover(need);
    return { counts, bought, ...(offers.priced ? { cost } : {}), exact };
}
