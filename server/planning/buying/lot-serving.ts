import type { Block } from './lot-weeks.js';
import type { Cover } from './pack-solver.js';

/** What is bought at a block. */
export interface Bought extends Cover {
    block: number;
}

/** The weeks that use some of an order, and what no week uses. */
export interface Served {
    covers: number[];
    unused: bigint;
}

/** Uses up what was bought week by week, oldest first. */
export function serve(blocks: readonly Block[], bought: readonly Bought[]): Served[] {
    const served = bought.map(order => ({ covers: [] as number[], unused: order.bought }));
    let oldest = 0;
    let here = 0;
    blocks.forEach((block, i) => {
        while (here < bought.length && bought[here]!.block <= i) here++;
        for (const need of block.needs) {
            let missing = need.demand;
            for (let lot = oldest; lot < here && missing > 0n; lot++) {
                const from = served[lot]!;
                if (from.unused === 0n || blocks[bought[lot]!.block]!.goodTo < need.week) {
                    if (lot === oldest) oldest++;
                    continue;
                }
                const used = from.unused < missing ? from.unused : missing;
                from.unused -= used;
                missing -= used;
                from.covers.push(need.week);
            }
        }
    });
    return served;
}
