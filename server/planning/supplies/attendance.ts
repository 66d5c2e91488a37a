import { timesFor, type NeedLine } from '../needs.js';
import type { Crowd } from '../people.js';
import { isUsedUp } from '../demand.js';
import { eitherClaim, type CountedLine, type LessonNeeds, type ThingNeeds } from './lesson-needs.js';
import type { Piece } from './pieces.js';
import { most } from './ratio.js';

/** What one lesson needs of one thing: `n`/`d` of the measure's unit. What does not hang on who is there stands in the needs that all classes share. */
export class LeanDemand {
    constructor(
        private readonly needs: Omit<ThingNeeds, 'lines'> & { lines: readonly { line: NeedLine }[] }, readonly n: bigint,
        /** Of what is handed back, by crowd, where there is more than one. */
        readonly perCrowd?: readonly bigint[]
    ) {}

    get name(): string { return this.needs.name; }
    get thing(): ThingNeeds['thing'] { return this.needs.thing; }
    get use(): ThingNeeds['use'] { return this.needs.use; }
    get measure(): ThingNeeds['measure'] { return this.needs.measure; }
    get d(): bigint { return this.needs.d; }
    get optional(): boolean { return this.needs.optional; }
    get inKit(): boolean | undefined { return this.needs.inKit; }
    get lines(): readonly { line: NeedLine }[] { return this.needs.lines; }
}

/** Who is there. Classes with the same people share one, and with it what each lesson needs. */
export class Attendance {
    private readonly times = new Map<string, readonly bigint[]>();
    /** By name of the lesson, of its newest version. */
    private readonly demands = new Map<string, { needs: LessonNeeds; demands: readonly LeanDemand[] }>();
    private readonly clocks: readonly (string | undefined)[];

    constructor(readonly crowds: readonly Crowd[]) {
        this.clocks = crowds.map(({ clock }) => clock);
    }

    /** In the order in which the lesson first asks for each thing; without a choice only. */
    demandsOf(needs: LessonNeeds, piece?: Piece): readonly LeanDemand[] {
        if (piece) return needs.things.flatMap(thing => this.countPiece(thing, piece));
        const { name } = needs.lesson;
        let known = this.demands.get(name);
        if (known?.needs !== needs) this.demands.set(name, known = { needs, demands: needs.things.map(thing => this.count(thing)) });
        return known.demands;
    }

    private countPiece(thing: ThingNeeds, piece: Piece): LeanDemand[] {
        const usedUp = isUsedUp(thing.use);
        const lines = thing.lines.filter(({ line }) => piece.takes(line, thing.name, usedUp));
        if (lines.length === 0) return [];
        const inKit = lines.reduce<boolean | undefined>((claim, { line }) => eitherClaim(claim, line.need.inKit), undefined);
        return [this.count({ ...thing, lines, optional: lines.every(({ line }) => line.need.optional), inKit })];
    }

    private count(needs: ThingNeeds): LeanDemand {
        const { lines, use } = needs;
        const first = lines[0]!;
        const single = this.crowds.length === 1;
        if (single && lines.length === 1) return new LeanDemand(needs, first.n * this.timesOf(first)[0]!);
        const usedUp = isUsedUp(use);
        const perCrowd = usedUp ? this.added(lines) : this.mostAtOnce(lines);
        const n = single ? perCrowd[0]! : usedUp ? perCrowd.reduce((sum, amount) => sum + amount, 0n) : atOnce(perCrowd, this.clocks);
        return new LeanDemand(needs, n, single || usedUp ? undefined : perCrowd);
    }

    private added(lines: readonly CountedLine[]): bigint[] {
        const sums = this.crowds.map(() => 0n);
        for (const line of lines) this.timesOf(line).forEach((times, i) => { sums[i]! += line.n * times; });
        return sums;
    }

    /** By crowd, of the parts of the lesson the one that uses most; lines of one part are in use together. */
    private mostAtOnce(lines: readonly CountedLine[]): bigint[] {
        const first = lines[0]!;
        if (lines.length === 1) return this.timesOf(first).map(times => first.n * times);
        return this.crowds.map((_, i) => {
            const slots = new Map<number, bigint>();
            for (const line of lines) slots.set(line.line.slot, (slots.get(line.line.slot) ?? 0n) + line.n * this.timesOf(line)[i]!);
            let largest = 0n;
            for (const amount of slots.values()) largest = most(largest, amount);
            return largest;
        });
    }

    private timesOf({ line, per }: CountedLine): readonly bigint[] {
        let times = this.times.get(per);
        if (!times) this.times.set(per, times = this.crowds.map(crowd => timesFor(line, crowd).times.n));
        return times;
    }
}

/** The rule of `atOnce` in people.ts: crowds of one hour add up, and so does a crowd without an hour; of different hours the largest counts. */
export function atOnce(perCrowd: readonly bigint[], clocks: readonly (string | undefined)[]): bigint {
    let always = 0n;
    const hours = new Map<string, bigint>();
    perCrowd.forEach((amount, i) => {
        const clock = clocks[i];
        if (clock === undefined) always += amount;
        else hours.set(clock, (hours.get(clock) ?? 0n) + amount);
    });
    let largest = 0n;
    for (const amount of hours.values()) largest = most(largest, amount);
    return always + largest;
}
