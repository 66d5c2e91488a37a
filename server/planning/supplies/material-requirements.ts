import { planLots } from '../buying/lots.js';
import { goodTo } from '../buying/lot-weeks.js';
import { ceilDiv } from '../buying/offers.js';
import type { PackOffer } from '../buying/packs.js';
import { least, most, type Ratio } from './ratio.js';

/** How orders are made up. Without packs exactly what is needed is ordered (lot for lot). */
export interface LotSizing {
    packs: readonly PackOffer[];
    /** Periods that an order may come for; absent: all. */
    mayOrder?: readonly boolean[];
    /** Minor units for each order. */
    delivery?: bigint;
    /** What comes for a period is good for so many periods, or for so many days from the day number of its period; not of what is handed back. */
    keepsWeeks?: number;
    keepsDays?: number;
    days?: readonly number[];
}

/** All amounts are whole numbers of one smallest unit; all lists have one entry a period, in the order of time. */
export interface RequirementsInput {
    /** What is asked for, before spares and losses. */
    gross: readonly bigint[];
    /** Orders already placed, by the period they are there for. */
    scheduled?: readonly bigint[];
    /** Before the first period. */
    onHand: bigint;
    /** What should still be there at the end of each period. */
    safety?: bigint;
    /** A spare marks the need up: 10 % more. A loss divides it: so much that the need is left when 10 % is lost. */
    spare?: Ratio;
    loss?: Ratio;
    /** Amounts come in multiples of it: so many smallest units are one whole thing. */
    whole?: bigint;
    /** What is handed back is there again for the next period; the need of a period is then the most at once. */
    handedBack?: boolean;
    /** Periods whose lack is ordered; the others take what is there. Absent: all. */
    ordered?: readonly boolean[];
    /** Asked for only where something is lacking. */
    lotSizing?: () => LotSizing;
    /** Periods from order to arrival. */
    leadWeeks?: number;
}

/** One order, with its period of arrival. */
export interface Lot {
    period: number;
    /** Of each pack, in the order offered; empty without packs. */
    counts: number[];
    bought: bigint;
    /** Packs and delivery, minor units; absent where no pack has a price. */
    cost?: bigint;
    delivery: bigint;
    /** Periods that use some of it. */
    covers: number[];
    /** What no period uses. */
    unused: bigint;
}

/** The record: on hand = on hand before + scheduled + receipts - gross + unmet - spoiled (of what is handed back without gross and unmet). */
export interface Requirements {
    gross: readonly bigint[];
    scheduled: readonly bigint[];
    /** Projected, at the end of each period. */
    onHand: readonly bigint[];
    /** max(0, gross + safety - on hand before - scheduled). */
    net: readonly bigint[];
    receipts: readonly bigint[];
    /** By the period in which they must be ordered. */
    releases: readonly bigint[];
    /** What had to be ordered before the first period. */
    overdue: bigint;
    /** What is asked for and neither there nor ordered. */
    unmet: readonly bigint[];
    /** What goes off before it is used, by the first period that cannot use it. */
    spoiled: readonly bigint[];
    /** What orders have to bring for each period when nothing is left over from packs. */
    lack: readonly bigint[];
    lots: Lot[];
}

/**
 * The material-requirements record of one thing: gross to net, lot sizes, lead-time offset.
 *
 * A receipt for a period serves that period's gross. The orders together bring at least the lack of every period by then;
 * which packs, and which periods share one order, `planLots` decides.
 */
export function materialRequirements(input: RequirementsInput): Requirements {
    const { onHand: opening, safety = 0n, handedBack = false } = input;
    const gross = input.gross.map(amount => allowed(amount, input));
    const scheduled = gross.map((_, i) => input.scheduled?.[i] ?? 0n);
    const isOrdered = (i: number): boolean => input.ordered?.[i] ?? true;
    const lack: bigint[] = [];
    const unmet: bigint[] = [];
    const stock: bigint[] = [];
    let there = opening;
    gross.forEach((wanted, i) => {
        there += scheduled[i]!;
        const missing = isOrdered(i) ? most(0n, wanted + safety - there) : 0n;
        there += missing;
        const taken = least(wanted, there);
        if (!handedBack) there -= taken;
        lack.push(missing);
        unmet.push(wanted - taken);
        stock.push(there);
    });
    if (lack.every(amount => amount === 0n)) {
        return { gross, scheduled, onHand: stock, net: lack, receipts: lack, releases: lack, overdue: 0n, unmet, spoiled: lack, lack, lots: [] };
    }
    const { keepsWeeks, keepsDays, ...lasting } = input.lotSizing?.() ?? { packs: [] };
    const keeps = handedBack || (keepsWeeks === undefined && keepsDays === undefined);
    const sizing: LotSizing = keeps ? lasting : { ...lasting, keepsWeeks, keepsDays };
    const lots = lotsFor(lack, sizing);
    const { left, spoiled, receipts } = leftOfLots(lack, lots, sizing);
    takeFromLeft(unmet, { left, lots, handedBack, keeps });
    const onHand = stock.map((amount, i) => amount + left[i]!);
    const net = gross.map((wanted, i) => (isOrdered(i) ? most(0n, wanted + safety - (i > 0 ? onHand[i - 1]! : opening) + spoiled[i]! - scheduled[i]!) : 0n));
    return { gross, scheduled, onHand, net, receipts, ...offset(receipts, input.leadWeeks ?? 0), unmet, spoiled, lack, lots };
}

function offset(receipts: readonly bigint[], leadWeeks: number): Pick<Requirements, 'releases' | 'overdue'> {
    if (leadWeeks === 0) return { releases: receipts, overdue: 0n };
    return { releases: receipts.map((_, i) => receipts[i + leadWeeks] ?? 0n), overdue: receipts.slice(0, leadWeeks).reduce((sum, amount) => sum + amount, 0n) };
}

/** What no order is placed for is met from what packs leave over, as far as no later period needs that. */
function takeFromLeft(
    unmet: bigint[], { left, lots, handedBack, keeps }: { left: bigint[]; lots: readonly Lot[]; handedBack: boolean; keeps: boolean }
): void {
    if (lots.length === 0 || !keeps) return;
    unmet.forEach((wanted, period) => {
        if (wanted === 0n) return;
        let taken = handedBack ? least(wanted, left[period]!) : left.slice(period).reduce(least, wanted);
        unmet[period]! -= taken;
        if (handedBack) return;
        for (let i = period; i < left.length; i++) left[i]! -= taken;
        const newest = lots.findLast(lot => lot.period <= period);
        for (const lot of lots) {
            const own = least(taken, lot.unused);
            if (own === 0n) continue;
            lot.unused -= own;
            taken -= own;
            // What a later one has too much makes up for what is taken of the one before it.
            const serves = lot.period <= period ? lot : newest;
            if (serves && !serves.covers.includes(period)) serves.covers = [...serves.covers, period].sort((a, b) => a - b);
        }
    });
}

/** Exact; whole things are rounded up. */
export function allowed(amount: bigint, { spare, loss, whole }: Pick<RequirementsInput, 'spare' | 'loss' | 'whole'>): bigint {
    if (!spare && !loss) return whole === undefined || whole === 1n ? amount : ceilDiv(amount, whole) * whole;
    let n = amount;
    let d = 1n;
    if (spare) [n, d] = [n * (spare.d + spare.n), d * spare.d];
    if (loss) [n, d] = [n * loss.d, d * (loss.d - loss.n)];
    const unit = whole ?? 1n;
    return ceilDiv(n, d * unit) * unit;
}

function lotsFor(lack: readonly bigint[], sizing: LotSizing): Lot[] {
    if (sizing.packs.length === 0) {
        return lack.flatMap((bought, period) => (bought > 0n ? [{ period, counts: [], bought, delivery: sizing.delivery ?? 0n, covers: [period], unused: 0n }] : []));
    }
    return planLots({ demand: lack, ...sizing }).orders.map(({ week, counts, bought, cost, delivery, covers, unused }): Lot => ({
        period: week, counts, bought, cost, delivery, covers, unused
    }));
}

/** What packs leave over at the end of each period: the oldest is used first, and what no longer keeps is dropped. */
function leftOfLots(lack: readonly bigint[], lots: readonly Lot[], sizing: LotSizing): { left: bigint[]; spoiled: bigint[]; receipts: bigint[] } {
    const left = lack.map(() => 0n);
    const spoiled = lack.map(() => 0n);
    const receipts = lack.map(() => 0n);
    if (lots.length === 0) return { left, spoiled, receipts };
    const goesOff = sizing.keepsWeeks !== undefined || sizing.keepsDays !== undefined;
    const good = goesOff ? goodTo({ demand: lack, keepsWeeks: sizing.keepsWeeks, keepsDays: sizing.keepsDays, days: sizing.days }) : undefined;
    for (const lot of lots) receipts[lot.period]! += lot.bought;
    // What comes for a later period never goes off before what came for an earlier one.
    const rest = [...receipts];
    let oldest = 0;
    let all = 0n;
    lack.forEach((wanted, period) => {
        for (; good && oldest < period && good[oldest]! < period; oldest++) {
            spoiled[period]! += rest[oldest]!;
            all -= rest[oldest]!;
        }
        all += receipts[period]!;
        let asked = least(wanted, all);
        all -= asked;
        for (; oldest <= period && asked >= rest[oldest]!; oldest++) asked -= rest[oldest]!;
        if (asked > 0n) rest[oldest]! -= asked;
        left[period] = all;
    });
    return { left, spoiled, receipts };
}
