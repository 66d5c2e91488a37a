import type { Kind, Offers } from './offers.js';
import { ceilDiv, gcd } from './offers.js';
import { PackTable, othersAtMost } from './pack-table.js';
import type { LargeCover } from './remainder-paths.js';
import { RemainderPaths } from './remainder-paths.js';

/** Branches looked at over the life of one solver, so that no list of needs can stall it. */
const mostBranches = 60_000;

/** Needs and sizes that a table does not hold (all in multiples of the offers' unit and coin). */
export class LargeNeeds {
    #paths?: RemainderPaths;
    #pathsTried = false;
    #branches = mostBranches;

    constructor(private readonly offers: Offers) {}

    cover(need: bigint): LargeCover {
        if (!this.#pathsTried) {
            this.#pathsTried = true;
            this.#paths = RemainderPaths.of(this.offers);
        }
        const found = this.#paths?.cover(need);
        if (found?.exact) return found;
        const filled = better(fillUp(need, this.offers), found);
        return coverByFewer(need, this.offers, filled) ?? this.#branch(need, filled);
    }

    /** Depth first, cheapest for its size first, leaving out what cannot beat the best found so far. */
    #branch(need: bigint, start: LargeCover): LargeCover {
        const { kinds, offered } = this.offers;
        let best = start;
        const largestFrom = kinds.map((_, i) => kinds.slice(i).reduce((most, kind) => (kind.size > most ? kind.size : most), 0n));
        const taken = kinds.map(() => 0n);
        const visit = (i: number, rest: bigint, bought: bigint, cost: bigint, packs: bigint): void => {
            if (rest <= 0n) {
                const total = best.counts.reduce((sum, n) => sum + n, 0n);
                if (cost < best.cost || (cost === best.cost && (bought < best.bought || (bought === best.bought && packs < total)))) {
                    best = { counts: countsOf(kinds, taken, offered), bought, cost, exact: true };
                }
                return;
            }
            const kind = kinds[i];
            if (this.#branches-- <= 0 || !kind) return;
            const atLeast = cost + ceilDiv(rest * kind.cost, kind.size);
            if (atLeast > best.cost) return;
            if (atLeast === best.cost && best.bought === need) {
                const total = best.counts.reduce((sum, n) => sum + n, 0n);
                if (packs + ceilDiv(rest, largestFrom[i]!) >= total) return;
            }
            const isLast = i === kinds.length - 1;
            for (let count = ceilDiv(rest, kind.size); count >= 0n && this.#branches > 0; count--) {
                if (isLast && count * kind.size < rest) break;
                taken[i] = count;
                const amount = count * kind.size;
                visit(i + 1, rest - amount, bought + amount, cost + count * kind.cost, packs + count);
            }
            taken[i] = 0n;
        };
        visit(0, need, 0n, 0n, 0n);
        return { ...best, exact: this.#branches > 0 };
    }
}

/** As many as fit of the pack that is cheapest for its size, and for the rest the cheapest packs of one kind. */
function fillUp(need: bigint, { kinds, offered }: Offers): LargeCover {
    const best = kinds[0]!;
    const full = need / best.size;
    const rest = need - full * best.size;
    const choices = kinds.map((kind, i): LargeCover => {
        const more = ceilDiv(rest, kind.size);
        const taken = kinds.map((_, j) => (j === 0 ? full : 0n) + (j === i ? more : 0n));
        return { counts: countsOf(kinds, taken, offered), bought: full * best.size + more * kind.size, cost: full * best.cost + more * kind.cost, exact: false };
    });
    return choices.reduce((a, b) => better(a, b));
}

/**
 * With a purchase at hand, a pack that costs more for its size than the best one is held to a small number: all that it costs
 * more must stay within what that purchase costs above the pure price of the need. That may leave so few packs that a table holds them.
 */
function coverByFewer(need: bigint, offers: Offers, known: LargeCover): LargeCover | undefined {
    const best = offers.kinds[0]!;
    const room = known.cost * best.size - best.cost * need;
    const others = offers.kinds.slice(1).flatMap(kind => {
        const dearer = kind.cost * best.size - best.cost * kind.size;
        if (dearer > room) return [];
        const byTurns = best.size / gcd(kind.size, best.size) - 1n;
        const byCost = dearer > 0n ? room / dearer : byTurns;
        return [{ kind, most: (byCost < byTurns ? byCost : byTurns) * kind.size }];
    });
    const kinds: Kind[] = [best, ...others.map(other => other.kind)];
    const apart = others.reduce((total, other) => total + other.most, 0n);
    const together = othersAtMost(kinds);
    const most = apart < together ? apart : together;
    const full = need > most ? (need - most) / best.size : 0n;
    const rest = need - full * best.size;
    const table = PackTable.of({ ...offers, kinds }, rest);
    if (!table) return undefined;
    const x = table.cover(Number(rest));
    const counts = table.counts(x, offers.offered).map(BigInt);
    counts[best.index]! += full;
    return { counts, bought: full * best.size + BigInt(x), cost: full * best.cost + BigInt(table.cost(x)), exact: true };
}

function countsOf(kinds: readonly Kind[], taken: readonly bigint[], offered: number): bigint[] {
    const counts = new Array<bigint>(offered).fill(0n);
    kinds.forEach((kind, i) => { counts[kind.index]! += taken[i]!; });
    return counts;
}

function better(a: LargeCover, b: LargeCover | undefined): LargeCover {
    if (!b || a.cost < b.cost) return a;
    if (b.cost < a.cost) return b;
    return a.bought <= b.bought ? a : b;
}
