/** Solvers that try everything, to hold the engine's choices against. */
import type { PackOffer } from '../../server/planning/buying/packs.js';

/** Compared place by place; the first difference decides. */
export function less(a: readonly number[], b: readonly number[]): boolean {
    const at = a.findIndex((value, i) => value !== b[i]);
    return at >= 0 && a[at]! < b[at]!;
}

/** Every choice of counts that covers the need and of which no pack can be left out: [cost, bought, packs] of the best. */
export function bestPacks(need: number, packs: readonly PackOffer[]): number[] {
    let best: number[] | undefined;
    const visit = (i: number, cost: number, bought: number, count: number): void => {
        const { size, cost: price = 0 } = packs[i]!;
        for (let n = 0; ; n++) {
            const all = [cost + n * Number(price), bought + n * Number(size), count + n];
            if (i + 1 < packs.length) visit(i + 1, all[0]!, all[1]!, all[2]!);
            else if (all[1]! >= need && (!best || less(all, best))) best = all;
            if (all[1]! >= need) return;
        }
    };
    visit(0, 0, 0, 0);
    return best!;
}

export interface SmallLots {
    demand: number[];
    packs: { size: number; cost: number }[];
    mayOrder: boolean[];
    /** Weeks that a purchase is good for. */
    keeps: number;
    delivery: number;
}

/** Every purchase in every week, used oldest first: [cost, bought, units times weeks to the end, orders, packs] of the best. */
export function bestLotsByTrying({ demand, packs, mayOrder, keeps, delivery }: SmallLots): number[] | undefined {
    const weeks = demand.length;
    const total = demand.reduce((sum, d) => sum + d, 0);
    const most = total + Math.max(...packs.map(pack => pack.size));
    const purchases: { amount: number; cost: number; count: number }[] = [];
    const combine = (i: number, amount: number, cost: number, count: number): void => {
        const pack = packs[i];
        if (!pack) {
            const same = purchases.find(p => p.amount === amount);
            if (!same) purchases.push({ amount, cost, count });
            else if (less([cost, count], [same.cost, same.count])) Object.assign(same, { cost, count });
            return;
        }
        for (let n = 0; amount + n * pack.size < most; n++) combine(i + 1, amount + n * pack.size, cost + n * pack.cost, count + n);
    };
    combine(0, 0, 0, 0);
    let best: number[] | undefined;
    const visit = (week: number, stock: { left: number; goodTo: number }[], so: number[]): void => {
        if (best && so[0]! > best[0]!) return;
        if (week === weeks) {
            if (!best || less(so, best)) best = so;
            return;
        }
        for (const { amount, cost, count } of purchases) {
            if (amount > 0 && !mayOrder[week]) continue;
            const lots = [...stock.filter(lot => lot.goodTo >= week), ...(amount > 0 ? [{ left: amount, goodTo: week + keeps - 1 }] : [])].map(lot => ({ ...lot }));
            let need = demand[week]!;
            for (const lot of lots) {
                const used = Math.min(lot.left, need);
                lot.left -= used;
                need -= used;
            }
            if (need > 0) continue;
            const order = amount > 0 ? 1 : 0;
            visit(week + 1, lots.filter(lot => lot.left > 0), [
                so[0]! + cost + order * delivery, so[1]! + amount, so[2]! + amount * (weeks - week), so[3]! + order, so[4]! + count
            ]);
        }
    };
    visit(0, [], [0, 0, 0, 0, 0]);
    return best;
}
