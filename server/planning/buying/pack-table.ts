import type { Kind, Offers } from './offers.js';
import { gcd } from './offers.js';

/** Room and time for one table: 24 MB, some tenths of a second. */
const mostEntries = 1_200_000;
const mostSteps = 60_000_000;

interface Small { size: number; cost: number; index: number }

/**
 * The least cost, and with it the fewest packs, of buying exactly x (in multiples of the offers' unit), for every x: the change-making
 * recurrence. Of any `s` other packs, some together hold a multiple of `s` (their running sums cannot all differ by more than
 * multiples of `s`), so with `s` the size of the pack that is cheapest for its size those can be exchanged for it at no loss: the others
 * never sum up to more than a bound, and beyond it every entry is the one a period before plus one such pack. So the table ends there.
 */
export class PackTable {
    readonly #kinds: readonly Small[];
    readonly #cost: Float64Array;
    readonly #packs: Float64Array;
    /** The least cost of buying more than x. */
    readonly #more: Float64Array;
    readonly #period: number;
    /** Entries above it repeat; infinite where the table was asked for less. */
    readonly #repeats: number;
    /** The largest amount that may be asked for. */
    readonly upTo: number;

    /** For amounts up to `upTo`; undefined where it would take too much room or time, or lose exactness. */
    static of({ kinds }: Offers, upTo: bigint): PackTable | undefined {
        const best = kinds[0]!;
        const largest = kinds.reduce((most, kind) => (kind.size > most ? kind.size : most), 0n);
        const repeats = othersAtMost(kinds) + best.size;
        const whole = repeats + best.size + 1n;
        const part = upTo + largest + 1n;
        const length = whole <= part ? whole : part;
        if (length > BigInt(mostEntries) || length * BigInt(kinds.length) > BigInt(mostSteps)) return undefined;
        const safe = BigInt(Number.MAX_SAFE_INTEGER) / 4n;
        if (kinds.some(({ size, cost }) => (length / size + 1n) * cost > safe)) return undefined;
        if (whole > part) return new PackTable(kinds, Number(length), Number(upTo), Infinity);
        const last = best.cost > 0n ? (safe / best.cost) * best.size : safe;
        if (upTo > last || upTo > safe) return undefined;
        return new PackTable(kinds, Number(length), Number(last < safe ? last : safe), Number(repeats));
    }

    private constructor(kinds: readonly Kind[], length: number, upTo: number, repeats: number) {
        this.#kinds = kinds.map(({ size, cost, index }) => ({ size: Number(size), cost: Number(cost), index }));
        this.#period = this.#kinds[0]!.size;
        this.#repeats = repeats;
        this.upTo = upTo;
        const cost = new Float64Array(length).fill(Infinity);
        const packs = new Float64Array(length);
        cost[0] = 0;
        for (const kind of this.#kinds) {
            const { size, cost: price } = kind;
            for (let x = size; x < length; x++) {
                const dearer = cost[x - size]! + price;
                if (dearer > cost[x]! || dearer === Infinity) continue;
                const count = packs[x - size]! + 1;
                if (dearer < cost[x]! || count < packs[x]!) {
                    cost[x] = dearer;
                    packs[x] = count;
                }
            }
        }
        this.#cost = cost;
        this.#packs = packs;
        this.#more = new Float64Array(length).fill(Infinity);
        for (let x = length - 2; x >= 0; x--) this.#more[x] = Math.min(this.#more[x + 1]!, cost[x + 1]!);
    }

    /** In multiples of the offers' coin; infinite where no packs sum up to x. */
    cost(x: number): number {
        const turns = this.#turns(x);
        return this.#cost[x - turns * this.#period]! + turns * this.#kinds[0]!.cost;
    }

    packs(x: number): number {
        const turns = this.#turns(x);
        return this.#packs[x - turns * this.#period]! + turns;
    }

    /** Whether packs sum up to x and buying more is never cheaper. */
    isWorthIt(x: number): boolean {
        const entry = x - this.#turns(x) * this.#period;
        return this.#cost[entry]! < Infinity && this.#cost[entry]! <= this.#more[entry]!;
    }

    /**
     * The amount to buy for a need: the first from it on that is worth it. All amounts before it are dearer than some
     * later one and it is no dearer than any, so it is the cheapest and, of equally cheap ones, the least.
     */
    cover(need: number): number {
        let x = need;
        while (!this.isWorthIt(x)) x++;
        return x;
    }

    /** How many of each pack as offered sum up to x. */
    counts(x: number, offered: number): number[] {
        const counts = new Array<number>(offered).fill(0);
        const turns = this.#turns(x);
        counts[this.#kinds[0]!.index]! += turns;
        let rest = x - turns * this.#period;
        while (rest > 0) {
            const kind = this.#kinds.find(({ size, cost }) => size <= rest
                && this.#cost[rest - size]! + cost === this.#cost[rest] && this.#packs[rest - size]! + 1 === this.#packs[rest]);
            if (!kind) break;
            counts[kind.index]!++;
            rest -= kind.size;
        }
        return counts;
    }

    #turns(x: number): number {
        return x > this.#repeats ? Math.ceil((x - this.#repeats) / this.#period) : 0;
    }
}

/** The most that packs other than the one cheapest for its size need sum up to. */
export function othersAtMost(kinds: readonly Kind[]): bigint {
    const best = kinds[0]!;
    const others = kinds.slice(1);
    const largest = others.reduce((most, kind) => (kind.size > most ? kind.size : most), 0n);
    const together = (best.size - 1n) * largest;
    const apart = others.reduce((total, kind) => total + (best.size / gcd(kind.size, best.size) - 1n) * kind.size, 0n);
    return together < apart ? together : apart;
}
