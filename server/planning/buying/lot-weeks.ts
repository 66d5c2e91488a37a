/** Weeks in which an order may come, each with the demand that only it or an earlier one can serve. */

export interface WeeksInput {
    demand: readonly bigint[];
    mayOrder?: readonly boolean[];
    keepsWeeks?: number;
    days?: readonly number[];
    keepsDays?: number;
}

/** A week in which an order may come and the weeks up to the next such one. */
export interface Block {
    /** Its first week: when its order is there. */
    week: number;
    demand: bigint;
    /** The last week for which what comes in it is still good. */
    goodTo: number;
    /** Weeks of it that need something, in their order. */
    needs: { week: number; demand: bigint }[];
}

/**
 * The last week that what is bought for each week is good for; never earlier for a later week. What keeps less than a week is still
 * good for the week that it is bought for.
 */
export function goodTo({ demand, keepsWeeks, days, keepsDays }: WeeksInput): number[] {
    const last = demand.length - 1;
    if (keepsWeeks === undefined && keepsDays === undefined) return new Array<number>(demand.length).fill(last);
    const inWeeks = keepsWeeks === undefined || Number.isNaN(keepsWeeks) ? Infinity : Math.max(1, Math.floor(keepsWeeks));
    const inDays = keepsDays === undefined || Number.isNaN(keepsDays) ? Infinity : keepsDays;
    const good: number[] = [];
    let to = 0;
    for (let week = 0; week <= last; week++) {
        to = Math.max(to, week);
        const start = days?.[week];
        while (to < last && to + 1 - week < inWeeks && isNear(start, days?.[to + 1], inDays)) to++;
        good.push(to);
    }
    return good;
}

/** Without day numbers only weeks count. */
function isNear(start: number | undefined, day: number | undefined, keeps: number): boolean {
    return keeps === Infinity || start === undefined || day === undefined || day - start < keeps;
}

/**
 * Weeks that may order and serve some need; with `idle`, those that serve none too. `uncovered` is what no order can serve in time and
 * fresh: it is left out of the blocks. Negative demand counts as none.
 */
export function readBlocks(input: WeeksInput, idle: boolean): { blocks: Block[]; uncovered: { week: number; demand: bigint }[] } {
    const good = goodTo(input);
    const blocks: Block[] = [];
    const uncovered: { week: number; demand: bigint }[] = [];
    let from = -1;
    let block: Block | undefined;
    for (let week = 0; week < input.demand.length; week++) {
        if (input.mayOrder?.[week] ?? true) {
            from = week;
            block = undefined;
        }
        const demand = input.demand[week]!;
        const isNeeded = typeof demand === 'bigint' && demand > 0n;
        if (isNeeded && (from < 0 || good[from]! < week)) uncovered.push({ week, demand });
        else if (from >= 0 && (isNeeded || idle)) {
            if (!block) blocks.push(block = { week: from, demand: 0n, goodTo: good[from]!, needs: [] });
            if (isNeeded) {
                block.demand += demand;
                block.needs.push({ week, demand });
            }
        }
    }
    return { blocks, uncovered };
}

/** What a block can use of what is left from an earlier order. */
export function stillGood(rest: bigint, goodTo: number, block: Block): bigint {
    if (rest <= 0n || goodTo < block.week) return 0n;
    const useful = goodTo >= lastNeed(block) ? block.demand : block.needs.reduce((sum, need) => (need.week <= goodTo ? sum + need.demand : sum), 0n);
    return rest < useful ? rest : useful;
}

export function lastNeed(block: Block): number {
    return block.needs.at(-1)?.week ?? block.week;
}
