import type { Block } from './lot-weeks.js';
import { lastNeed } from './lot-weeks.js';
import type { PackTable } from './pack-table.js';

/** All amounts and costs as whole numbers that a double holds exactly. */
export interface LotProblem {
    blocks: readonly Block[];
    table: PackTable;
    /** Smallest units in one unit of the table; the largest pack in smallest units; minor units in one coin of the table. */
    unit: number;
    largest: number;
    coin: number;
    /** Weeks of the horizon. */
    weeks: number;
    /** For each block: the charge for an order, and the cost of holding one smallest unit from then to the end. */
    delivery: readonly number[];
    holding: readonly number[];
    /** Orders also where enough is left: for charges that vary. Only for what keeps to the end. */
    anyTime: boolean;
    /**
     * The cheapest amount for the whole need, in units of the table, where its cost alone decides: things that keep to the end, no charge and no
     * holding. Buying pack by pack when each is needed reaches it, so a part of a plan of which the rest up to it is dearer than the least is dropped.
     */
    end?: number;
}

export interface PlannedOrder {
    block: number;
    /** In units of the table. */
    x: number;
}

/** A way to come to a block with so much left that is still good for it. What is compared stands in the order of weight. */
interface Way {
    cost: number;
    bought: number;
    /** Units times weeks from each purchase to the end: less is later buying. */
    early: number;
    orders: number;
    packs: number;
    rest: number;
    order?: PlannedOrder;
    before?: Way;
}

/** Ways tried before the recurrence gives up. */
const mostSteps = 2_000_000;

/**
 * The recurrence of Wagner and Whitin (1958) over order weeks, with the cost of packs in place of a price for each unit and with what
 * packs leave over carried on. Undefined where it would take too long.
 *
 * Prices are the same in every week, so an order (or, without a charge, a single pack) that the weeks up to the next chance
 * do not need can wait until then, fresher and no dearer. So some best plan orders only when what is left is not enough; the older stock is
 * then used up or gone off before the next chance, and all that is left comes from one order. One number tells the stock. A way
 * that leaves more and is no worse in the order of weight beats another, since whatever goes on from the one goes on from the other.
 * Where charges vary from week to week an order may come early for a low charge (`anyTime`).
 */
export function bestLots(problem: LotProblem): PlannedOrder[] | undefined {
    const { blocks } = problem;
    const ways: (Map<number, Way> | undefined)[] = new Array<undefined>(blocks.length + 1).fill(undefined);
    const walk = new Walk(problem, ways);
    if (walk.amounts() > mostSteps) return undefined;
    ways[0] = new Map([[0, { cost: 0, bought: 0, early: 0, orders: 0, packs: 0, rest: 0 }]]);
    for (let block = 0; block < blocks.length; block++) {
        for (const way of unbeaten(ways[block])) if (!walk.orderFrom(block, way)) return undefined;
        ways[block] = undefined;
    }
    let best: Way | undefined;
    for (const way of ways.at(-1)?.values() ?? []) if (!best || compare(way, best) < 0) best = way;
    const orders: PlannedOrder[] = [];
    for (let way = best; way?.order; way = way.before) orders.unshift(way.order);
    return orders;
}

class Walk {
    readonly #sums: number[] = [0];
    readonly #holds: boolean;
    readonly #bySingle: boolean;
    readonly #endCost: number;
    /** For each block: the last that its order serves whole, and what it still serves of the next. */
    readonly #whole: number[];
    readonly #part: number[];
    #steps = 0;

    constructor(private readonly p: LotProblem, private readonly ways: (Map<number, Way> | undefined)[]) {
        const { blocks, delivery, holding } = p;
        for (const block of blocks) this.#sums.push(this.#sums.at(-1)! + Number(block.demand));
        this.#endCost = p.end === undefined ? 0 : p.table.cost(p.end);
        this.#holds = holding.some(cost => cost > 0);
        this.#bySingle = delivery.every(charge => charge === 0);
        const last = blocks.map(lastNeed);
        let whole = 0;
        this.#whole = blocks.map((block, i) => {
            whole = Math.max(whole, i);
            while (whole + 1 < blocks.length && last[whole + 1]! <= block.goodTo) whole++;
            return whole;
        });
        this.#part = blocks.map((block, i) => (blocks[this.#whole[i]! + 1]?.needs ?? [])
            .reduce((sum, need) => (need.week <= block.goodTo ? sum + Number(need.demand) : sum), 0));
    }

    /** Amounts to look at if there were one way to each block. */
    amounts(): number {
        const { blocks, unit, largest } = this.p;
        return blocks.reduce((sum, _, block) => sum + ((this.#bySingle ? 0 : this.#useful(block) - this.#demand(block)) + largest) / unit, 0);
    }

    /** All orders worth thinking of at a block; false when there are too many. */
    orderFrom(block: number, way: Way): boolean {
        const { table, unit, coin, largest, end } = this.p;
        const need = Math.max(0, this.#demand(block) - way.rest);
        const useful = Math.max(need, this.#useful(block) - way.rest);
        if (this.p.anyTime && need === 0) this.#pass(block, way);
        const to = (this.#bySingle ? need : useful) + largest - 1;
        const left = end === undefined ? 0 : end - way.bought / unit;
        const toSpend = this.#endCost - way.cost / coin;
        for (let x = Math.max(1, Math.ceil(need / unit)); x * unit <= to; x++) {
            if (++this.#steps > mostSteps) return false;
            const isWorthIt = end !== undefined ? x <= left && table.cost(x) + table.cost(left - x) === toSpend
                : this.#holds ? table.cost(x) < Infinity : table.isWorthIt(x);
            if (!isWorthIt) continue;
            this.#order(block, way, x);
            if (!this.#holds && end === undefined && x * unit >= useful) break;
        }
        return true;
    }

    #order(block: number, way: Way, x: number): void {
        const { table, unit, coin, blocks, weeks, delivery, holding, anyTime } = this.p;
        const amount = x * unit;
        const whole = this.#whole[block]!;
        let next = block + 1;
        let rest = way.rest + amount - this.#demand(block);
        while (next <= whole && rest >= this.#demand(next) && !anyTime) rest -= this.#demand(next++);
        if (next === blocks.length) rest = 0;
        else if (next > whole) rest = Math.min(rest, this.#part[block]!);
        const cost = way.cost + table.cost(x) * coin + delivery[block]! + amount * holding[block]!;
        const known = this.ways[next]?.get(rest);
        if (known && known.cost < cost) return;
        this.#reach(next, known, {
            cost, bought: way.bought + amount, early: way.early + amount * (weeks - blocks[block]!.week),
            orders: way.orders + 1, packs: way.packs + table.packs(x), rest, order: { block, x }, before: way
        });
    }

    /** On to the next week without an order. */
    #pass(block: number, way: Way): void {
        const next = block + 1;
        const rest = next === this.p.blocks.length ? 0 : way.rest - this.#demand(block);
        this.#reach(next, this.ways[next]?.get(rest), { ...way, rest });
    }

    #reach(block: number, known: Way | undefined, way: Way): void {
        if (!known || compare(way, known) < 0) (this.ways[block] ??= new Map<number, Way>()).set(way.rest, way);
    }

    /** What weeks can use of an order at a block. */
    #useful(block: number): number {
        return this.#sums[this.#whole[block]! + 1]! + this.#part[block]! - this.#sums[block]!;
    }

    #demand(block: number): number {
        return this.#sums[block + 1]! - this.#sums[block]!;
    }
}

function unbeaten(ways: ReadonlyMap<number, Way> = new Map<number, Way>()): Way[] {
    if (ways.size < 2) return [...ways.values()];
    const sorted = [...ways.values()].sort((a, b) => compare(a, b) || b.rest - a.rest);
    let most = -1;
    return sorted.filter(({ rest }) => {
        const leavesMore = rest > most;
        if (leavesMore) most = rest;
        return leavesMore;
    });
}

function compare(a: Way, b: Way): number {
    return a.cost - b.cost || a.bought - b.bought || a.early - b.early || a.orders - b.orders || a.packs - b.packs;
}
