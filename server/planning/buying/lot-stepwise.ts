import type { Bought } from './lot-serving.js';
import type { Block } from './lot-weeks.js';
import { lastNeed, stillGood } from './lot-weeks.js';
import type { PackSolver } from './pack-solver.js';

/** So many weeks ahead are tried for one order. */
const ahead = 12;

interface Way {
    cost: bigint;
    bought: bigint;
    rest: bigint;
    order?: Bought;
    before?: Way;
}

/**
 * A good plan in little time: of all ways to come to a week only the cheapest is kept, and an order is the cheapest set of packs for
 * some weeks to come (one, where `most` is 1 or no charge makes joining worth it).
 */
export function planStepwise(solver: PackSolver, blocks: readonly Block[], delivery: readonly bigint[], most = ahead): Bought[] {
    const best: (Way | undefined)[] = [{ cost: 0n, bought: 0n, rest: 0n }];
    const atOnce = delivery.some(charge => charge > 0n) ? most : 1;
    const put = (block: number, way: Way): void => {
        const known = best[block];
        if (!known || way.cost < known.cost || (way.cost === known.cost && way.bought < known.bought)) best[block] = way;
    };
    blocks.forEach((block, i) => {
        const way = best[i];
        if (!way) return;
        if (block.demand <= way.rest) {
            put(i + 1, { ...way, rest: i + 1 < blocks.length ? way.rest - block.demand : 0n });
            return;
        }
        let need = -way.rest;
        for (let to = i; to < blocks.length && to < i + atOnce; to++) {
            const last = blocks[to]!;
            if (lastNeed(last) > block.goodTo) break;
            need += last.demand;
            const cover = solver.cover(need);
            const next = follow(blocks, i, way.rest + cover.bought);
            put(next.block, {
                cost: way.cost + cover.cost + delivery[i]!, bought: way.bought + cover.bought, rest: next.rest, order: { block: i, ...cover }, before: way
            });
        }
    });
    const orders: Bought[] = [];
    for (let way = best[blocks.length]; way; way = way.before) if (way.order) orders.unshift(way.order);
    return orders;
}

/** The next block that what is there does not serve whole, and what of it is still good for it. */
function follow(blocks: readonly Block[], from: number, stock: bigint): { block: number; rest: bigint } {
    const { goodTo } = blocks[from]!;
    let rest = stock - blocks[from]!.demand;
    for (let block = from + 1; block < blocks.length; block++) {
        const usable = stillGood(rest, goodTo, blocks[block]!);
        if (usable < blocks[block]!.demand) return { block, rest: usable };
        rest -= usable;
    }
    return { block: blocks.length, rest: 0n };
}
