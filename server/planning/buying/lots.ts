import { bestLots } from './lot-recurrence.js';
import type { Bought } from './lot-serving.js';
import { serve } from './lot-serving.js';
import { planStepwise } from './lot-stepwise.js';
import type { Block, WeeksInput } from './lot-weeks.js';
import { lastNeed, readBlocks, stillGood } from './lot-weeks.js';
import type { Offers, PackOffer } from './offers.js';
import { ceilDiv, readOffers } from './offers.js';
import { PackSolver } from './pack-solver.js';

export interface LotInput extends WeeksInput {
    /** Net need by week that orders must cover, in smallest units: stock, arrivals and safety stock are already counted. */
    demand: readonly bigint[];
    /** Whether an order can be there for the week; absent: always. */
    mayOrder?: readonly boolean[];
    /** What is bought for week i is good for weeks i to i + keepsWeeks - 1; absent: for ever. */
    keepsWeeks?: number;
    /** The day number of each week's first use. With `keepsDays`, what is bought for day d is good on days d to d + keepsDays - 1. */
    days?: readonly number[];
    keepsDays?: number;
    packs: readonly PackOffer[];
    /** Minor units for each order, the same or by week. */
    delivery?: bigint | readonly bigint[];
    /** Minor units for each smallest unit that is kept from one week to the next, the same or by week. */
    holding?: bigint | readonly bigint[];
    /** Where no pack is declared: every order is a multiple of it. Without it, exactly what is needed is bought. */
    packEach?: bigint;
}

export interface LotOrder {
    /** The week (from 0) that it must be there for. */
    week: number;
    /** Of each pack, in the order offered (exact up to 2^53). */
    counts: number[];
    /** Smallest units. */
    bought: bigint;
    /** Packs and delivery, minor units; absent where no pack has a price. */
    cost?: bigint;
    /** What of it is for delivery. */
    delivery: bigint;
    /** The weeks that use some of it. */
    covers: number[];
    /** What no week uses: left at the end, or gone off before. */
    unused: bigint;
}

export interface LotPlan {
    orders: LotOrder[];
    /** Packs, delivery and holding; absent where no pack has a price. */
    cost?: bigint;
    /** All that is bought and not used, what goes off before the end included. */
    leftOver: bigint;
    /** Demand that no order can serve in time and fresh. */
    uncovered: { week: number; demand: bigint }[];
    /** False where a limit on time left a better plan possible; the demand is covered all the same. */
    exact: boolean;
}

/** Sums above it are no longer whole in a double. */
const safe = BigInt(Number.MAX_SAFE_INTEGER) / 4n;

/**
 * What to buy for which week at the least total cost over the horizon: packs, a charge for each order, and holding where it costs.
 * Of equally cheap plans the one that leaves least over, then the one that buys latest (fewest units times weeks before the end of the
 * horizon, so that weeks are joined only where that is cheaper), then the one with the fewest orders, then the fewest packs. What a pack leaves over serves
 * later weeks while it keeps, oldest first.
 */
export function planLots(input: LotInput): LotPlan {
    return plan(input, bestPlan);
}

/** Each time that what is left is not enough, the cheapest packs for what is missing then: to compare with, and not claimed to be best. */
export function planWeekByWeek(input: LotInput): LotPlan {
    return plan(input, ({ solver, blocks, delivery }) => ({ bought: planStepwise(solver, blocks, delivery, 1), exact: false }));
}

interface Task {
    weeks: number;
    solver: PackSolver;
    blocks: Block[];
    total: bigint;
    /** For each block. */
    delivery: readonly bigint[];
    /** Of holding one smallest unit from each week to the end of the horizon; absent where holding costs nothing. */
    holdingFrom?: readonly bigint[];
}

interface Choice {
    bought: Bought[];
    exact: boolean;
}

function plan(input: LotInput, choose: (task: Task) => Choice): LotPlan {
    const { blocks, uncovered } = readBlocks(input, Array.isArray(input.delivery));
    const weeks = input.demand.length;
    const holdingFrom = holdingToEnd(input.holding, weeks);
    const declared = readOffers(input.packs, holdingFrom !== undefined);
    const lot = input.packEach !== undefined && input.packEach > 0n ? input.packEach : 1n;
    const offers = declared ?? readOffers([{ size: lot }])!;
    const delivery = blocks.map(block => chargeAt(input.delivery, block.week));
    const total = blocks.reduce((sum, block) => sum + block.demand, 0n);
    const { bought, exact } = total === 0n ? { bought: [], exact: true } : choose({ weeks, solver: new PackSolver(offers), blocks, total, delivery, holdingFrom });
    const served = serve(blocks, bought);
    let cost = holdingFrom ? holdingCost(blocks, bought, holdingFrom) : 0n;
    const orders = bought.map((order, i): LotOrder => {
        const charge = delivery[order.block]!;
        cost += order.cost + charge;
        const made: LotOrder = {
            week: blocks[order.block]!.week, counts: declared ? order.counts : [], bought: order.bought, delivery: charge, covers: served[i]!.covers, unused: served[i]!.unused
        };
        if (offers.priced) made.cost = order.cost + charge;
        return made;
    });
    return { orders, ...(offers.priced ? { cost } : {}), leftOver: served.reduce((sum, { unused }) => sum + unused, 0n), uncovered, exact };
}

function bestPlan(task: Task): Choice {
    const { solver, blocks, total, delivery, holdingFrom } = task;
    const charge = delivery[0]!;
    const varies = delivery.some(other => other !== charge);
    if (!varies && charge === 0n && solver.offers.kinds.length === 1) return { bought: justInTime(solver.offers, blocks), exact: true };
    const keeps = blocks[0]!.goodTo >= lastNeed(blocks.at(-1)!);
    if (!varies && charge > 0n && keeps && !holdingFrom) {
        // One order pays one charge and the cheapest packs for the whole need: no plan can pay less, and two orders pay a second charge.
        const cover = solver.cover(total);
        return { bought: [{ block: 0, ...cover }], exact: cover.exact };
    }
    return byRecurrence(task, varies, keeps) ?? { bought: byShortcut(task), exact: false };
}

/** Never dearer than week by week. */
function byShortcut({ solver, blocks, delivery, holdingFrom }: Task): Bought[] {
    const cost = (bought: Bought[]): bigint => bought.reduce((sum, order) => sum + order.cost + delivery[order.block]!, holdingFrom ? holdingCost(blocks, bought, holdingFrom) : 0n);
    const [joined, single] = [planStepwise(solver, blocks, delivery), planStepwise(solver, blocks, delivery, 1)];
    return cost(single) < cost(joined) ? single : joined;
}

function byRecurrence({ weeks, solver, blocks, total, delivery, holdingFrom }: Task, varies: boolean, keeps: boolean): Choice | undefined {
    const { unit, coin, kinds, offered } = solver.offers;
    const largest = kinds.reduce((most, kind) => (kind.size > most ? kind.size : most), 0n) * unit;
    const noCharge = !varies && delivery[0] === 0n;
    // Where nothing is bought before it is needed, tables for one week's need do; with one for the whole need, the cheapest packs for it
    // are a measure for every part of them.
    const whole = solver.tableUpTo(total + 2n * largest);
    const table = whole ?? (noCharge ? solver.tableUpTo(largestOf(blocks) + 2n * largest) : undefined);
    if (!table || !isSafe(solver.offers, total + largest, delivery, holdingFrom, weeks)) return undefined;
    const end = noCharge && keeps && !holdingFrom ? whole?.cover(Number(ceilDiv(total, unit))) : undefined;
    const anyTime = varies && keeps;
    const orders = bestLots({
        blocks, table, unit: Number(unit), largest: Number(largest), coin: Number(coin), weeks,
        delivery: delivery.map(Number), holding: blocks.map(block => Number(holdingFrom?.[block.week] ?? 0n)), anyTime, end
    });
    return orders && {
        bought: orders.map(({ block, x }) => ({
            block, counts: table.counts(x, offered), bought: BigInt(x) * unit, cost: BigInt(table.cost(x)) * coin, exact: true
        })),
        exact: anyTime || !varies
    };
}

/**
 * With one size of pack and no charge, buying each pack when it is first needed is best: any plan can put off each pack until
 * then, fresher and no dearer, and once all are put off nothing is left to choose.
 */
function justInTime({ kinds, unit, coin, offered }: Offers, blocks: readonly Block[]): Bought[] {
    const { index, size, cost } = kinds[0]!;
    const bought: Bought[] = [];
    let rest = 0n;
    let goodTo = -1;
    blocks.forEach((block, i) => {
        const usable = stillGood(rest, goodTo, block);
        if (usable >= block.demand) {
            rest -= block.demand;
            return;
        }
        const packs = ceilDiv(block.demand - usable, size * unit);
        const counts = new Array<number>(offered).fill(0);
        counts[index] = Number(packs);
        bought.push({ block: i, counts, bought: packs * size * unit, cost: packs * cost * coin, exact: true });
        rest = usable + packs * size * unit - block.demand;
        goodTo = block.goodTo;
    });
    return bought;
}

/** Whether a double holds every sum that the recurrence compares. */
function isSafe({ kinds, unit, coin }: Offers, most: bigint, delivery: readonly bigint[], holdingFrom: readonly bigint[] | undefined, weeks: number): boolean {
    const packs = kinds.reduce((sum, kind) => sum + kind.cost * (most / (kind.size * unit) + 1n), 0n) * coin;
    const charges = delivery.reduce((sum, charge) => sum + charge, 0n);
    return packs + charges + most * (holdingFrom?.[0] ?? 0n) * BigInt(weeks) < safe && most * BigInt(weeks + 1) < safe;
}

function largestOf(blocks: readonly Block[]): bigint {
    return blocks.reduce((most, block) => (block.demand > most ? block.demand : most), 0n);
}

/** A negative charge counts as none. */
function chargeAt(charge: bigint | readonly bigint[] | undefined, week: number): bigint {
    const cost = typeof charge === 'bigint' ? charge : charge?.[week] ?? 0n;
    return cost > 0n ? cost : 0n;
}

function holdingToEnd(holding: LotInput['holding'], weeks: number): bigint[] | undefined {
    if (holding === undefined || holding === 0n) return undefined;
    const toEnd = new Array<bigint>(weeks + 1).fill(0n);
    for (let week = weeks - 1; week >= 0; week--) toEnd[week] = toEnd[week + 1]! + chargeAt(holding, week);
    return toEnd[0] === 0n ? undefined : toEnd;
}

/** Held is what is bought and not used yet, week by week; what has gone off is held too. */
function holdingCost(blocks: readonly Block[], bought: readonly Bought[], holdingFrom: readonly bigint[]): bigint {
    const used = blocks.flatMap(block => block.needs).reduce((sum, need) => sum + need.demand * holdingFrom[need.week]!, 0n);
    return bought.reduce((sum, order) => sum + order.bought * holdingFrom[blocks[order.block]!.week]!, -used);
}
