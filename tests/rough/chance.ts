/** Chance that repeats itself: the same seed gives the same cases. Every test prints its seed; HAVERSACK_SEED sets it. */

/** True under `npm run rough`: all cases; else the sample that `npm test` takes. */
export const everything = process.env['HAVERSACK_ROUGH'] !== undefined;

export const seed = Number(process.env['HAVERSACK_SEED'] ?? 20_260_901);

/** How many cases: all of them, or the sample; HAVERSACK_CASES sets the number when a failure is looked into. */
export const cases = (all: number, sample: number): number => Number(process.env['HAVERSACK_CASES'] ?? (everything ? all : sample));

export class Chance {
    private state: number;

    constructor(from = seed) {
        this.state = from >>> 0;
    }

    /** From 0 to below 1: the generator known as Mulberry32; from memory. */
    next(): number {
        this.state = (this.state + 0x6d2b79f5) >>> 0;
        let mixed = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
    }

    /** A whole number from 0 to below `end`. */
    below(end: number): number {
        return Math.floor(this.next() * end);
    }

    one<T>(of: readonly T[]): T {
        return of[this.below(of.length)]!;
    }

    happens(in100: number): boolean {
        return this.next() * 100 < in100;
    }
}

/** How often each kind of case was tried, for the line that a test prints. */
export class Tally {
    private readonly counts = new Map<string, number>();

    add(kind: string, times = 1): void {
        this.counts.set(kind, (this.counts.get(kind) ?? 0) + times);
    }

    get total(): number {
        return [...this.counts.values()].reduce((sum, count) => sum + count, 0);
    }

    toString(): string {
        return [...this.counts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([kind, count]) => `${kind} ${count}`).join(', ');
    }
}

/** Milliseconds that this process has worked: unlike a clock's, they do not grow while the machine is busy with something else. */
export function worked(): number {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
}
