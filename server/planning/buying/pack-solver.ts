import type { Offers } from './offers.js';
import { ceilDiv } from './offers.js';
import { LargeNeeds } from './large-needs.js';
import { PackTable } from './pack-table.js';

/** What to buy. Counts stand in the order of the packs as offered. */
export interface Cover {
    counts: number[];
    /** Smallest units. */
    bought: bigint;
    /** Minor units; 0 where no pack has a price. */
    cost: bigint;
    /** False where a limit on time left a cheaper choice possible. */
    exact: boolean;
}

/** Covers one need after the other from the same packs, with what was learnt from earlier ones. */
export class PackSolver {
    #table?: PackTable;
    #noTableFrom?: bigint;
    #large?: LargeNeeds;

    constructor(readonly offers: Offers) {}

    /** The table for needs up to so many smallest units; undefined where it would grow too large. */
    tableUpTo(most: bigint): PackTable | undefined {
        const upTo = ceilDiv(most, this.offers.unit);
        if (this.#table && upTo <= BigInt(this.#table.upTo)) return this.#table;
        if (this.#noTableFrom !== undefined && upTo >= this.#noTableFrom) return undefined;
        const table = PackTable.of(this.offers, upTo);
        if (table) this.#table = table;
        else this.#noTableFrom = upTo;
        return table;
    }

    /** The cheapest purchase of at least `need` smallest units; of equally cheap ones the least, then the fewest packs. */
    cover(need: bigint): Cover {
        const { unit, coin, offered } = this.offers;
        if (need <= 0n) return { counts: new Array<number>(offered).fill(0), bought: 0n, cost: 0n, exact: true };
        const table = this.tableUpTo(need);
        if (table) {
            const x = table.cover(Number(ceilDiv(need, unit)));
            return { counts: table.counts(x, offered), bought: BigInt(x) * unit, cost: BigInt(table.cost(x)) * coin, exact: true };
        }
        this.#large ??= new LargeNeeds(this.offers);
        const { counts, bought, cost, exact } = this.#large.cover(ceilDiv(need, unit));
        return { counts: counts.map(Number), bought: bought * unit, cost: cost * coin, exact };
    }
}
