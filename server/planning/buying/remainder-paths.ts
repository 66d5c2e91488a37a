import type { Offers } from './offers.js';
import { gcd } from './offers.js';

/** In multiples of the offers' unit and coin; counts in the order offered. */
export interface LargeCover {
    counts: bigint[];
    bought: bigint;
    cost: bigint;
    exact: boolean;
}

/** Room (24 bytes and a pack each) and time for the paths. */
const mostRemainders = 1_100_000n;
const mostSteps = 12_000_000n;

/**
 * For each remainder that an amount leaves when divided by the size of the pack cheapest for its size, the other packs that reach it at
 * the least extra cost: shortest paths from remainder to remainder. An amount then costs its pure price and that extra. Right for
 * every need that is not smaller than what those other packs hold together, and a lower bound for all (the group problem of integer programming).
 */
export class RemainderPaths {
    readonly #extra: Float64Array;
    /** Packs saved against the best pack's number, times its size. */
    readonly #fewer: Float64Array;
    readonly #held: Float64Array;
    readonly #last: Uint16Array;
    readonly #size: number;

    static of(offers: Offers): RemainderPaths | undefined {
        const best = offers.kinds[0]!;
        const safe = BigInt(Number.MAX_SAFE_INTEGER) / 4n;
        const largest = offers.kinds.reduce((most, kind) => (kind.size > most ? kind.size : most), 0n);
        if (best.size > mostRemainders || best.size * BigInt(offers.kinds.length) > mostSteps) return undefined;
        if (best.size * best.cost > safe || (best.size + largest) * best.cost > safe || best.size * largest > safe) return undefined;
        return new RemainderPaths(offers);
    }

    private constructor(private readonly offers: Offers) {
        const best = offers.kinds[0]!;
        const size = Number(best.size);
        this.#size = size;
        this.#extra = new Float64Array(size).fill(Infinity);
        this.#fewer = new Float64Array(size);
        this.#held = new Float64Array(size);
        this.#last = new Uint16Array(size);
        this.#extra[0] = 0;
        // Filling up with the best pack alone wastes less than one of them.
        const atMost = best.size * best.cost;
        offers.kinds.forEach((kind, i) => {
            const extra = kind.cost * best.size - best.cost * kind.size;
            if (i > 0 && i < 65_536 && extra <= atMost) this.#relax(i, Number(kind.size), Number(extra), Number(atMost));
        });
    }

    /** Twice round each circle of remainders that steps of one pack make. */
    #relax(kind: number, step: number, extra: number, atMost: number): void {
        const size = this.#size;
        const circles = Number(gcd(BigInt(step), BigInt(size)));
        const stride = step % size;
        if (stride === 0) return;
        const turns = 2 * (size / circles);
        for (let circle = 0; circle < circles; circle++) {
            let from = circle;
            for (let turn = 0; turn < turns; turn++) {
                const to = from + stride >= size ? from + stride - size : from + stride;
                const cost = this.#extra[from]! + extra;
                if (cost <= this.#extra[to]! && cost <= atMost) {
                    const fewer = this.#fewer[from]! + size - step;
                    const held = this.#held[from]! + step;
                    const before = cost < this.#extra[to]! || fewer < this.#fewer[to]! || (fewer === this.#fewer[to]! && held < this.#held[to]!);
                    if (before) {
                        this.#extra[to] = cost;
                        this.#fewer[to] = fewer;
                        this.#held[to] = held;
                        this.#last[to] = kind;
                    }
                }
                from = to;
            }
        }
    }

    /** Exact where the path fits into the need; else the best of those that do, if any. */
    cover(need: bigint): LargeCover | undefined {
        const { kinds } = this.offers;
        const best = kinds[0]!;
        const price = Number(best.cost);
        const start = Number(need % best.size);
        let cheapest = Infinity;
        let fitting = Infinity;
        let over: number | undefined;
        // A round of remainders holds them all, and one further round costs one more best pack.
        for (let more = 0; more < this.#size; more++) {
            const remainder = (start + more) % this.#size;
            const cost = this.#extra[remainder]! + more * price;
            if (cost < cheapest) cheapest = cost;
            if (cost < fitting && BigInt(this.#held[remainder]!) <= need + BigInt(more)) {
                fitting = cost;
                over = more;
            }
            if (over !== undefined && ((more + 1) * price > cheapest || (more + 1) * price >= fitting)) break;
        }
        if (over === undefined) return undefined;
        const amount = need + BigInt(over);
        return { ...this.#purchase(amount), exact: fitting === cheapest && this.#isLeast(start, over, cheapest, price) };
    }

    /** Whether no smaller amount at the same cost was passed by because its packs hold too much. */
    #isLeast(start: number, over: number, cheapest: number, price: number): boolean {
        for (let more = 0; more < over; more++) {
            if (this.#extra[(start + more) % this.#size]! + more * price === cheapest) return false;
        }
        return true;
    }

    #purchase(amount: bigint): Omit<LargeCover, 'exact'> {
        const { kinds, offered } = this.offers;
        const best = kinds[0]!;
        const counts = new Array<bigint>(offered).fill(0n);
        let rest = amount;
        let cost = 0n;
        let remainder = Number(amount % best.size);
        while (remainder !== 0) {
            const kind = kinds[this.#last[remainder]!]!;
            counts[kind.index]!++;
            rest -= kind.size;
            cost += kind.cost;
            remainder = Number(((BigInt(remainder) - kind.size) % best.size + best.size) % best.size);
        }
        const full = rest / best.size;
        counts[best.index]! += full;
        return { counts, bought: amount, cost: cost + full * best.cost };
    }
}
