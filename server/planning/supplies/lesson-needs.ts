import { dayOfIso } from '@haversack/language/attachments/day-numbers';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { Amount, LessonSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { comesWhole, inMeasure, measureOf, remeasure, type Measure } from '../amounts.js';
import { Reading } from '../cache.js';
import { useOf, type Use } from '../demand.js';
import { needLines, type NeedLine } from '../needs.js';
import { fractionOf, lcm, ratioOf, type Ratio } from './ratio.js';
import { factsOf, type ThingFacts } from './thing-facts.js';

/** A need line of one thing; the line asks for `n`/`d` of the measure's unit each time, `d` being that of the thing. */
export interface CountedLine {
    line: NeedLine;
    n: bigint;
    /** Alike for lines that need their amount equally often for the same people. */
    per: string;
}

export interface ThingNeeds {
    name: string;
    thing: ThingSheet;
    use: Use;
    measure: Measure;
    d: bigint;
    lines: CountedLine[];
    /** Every line is optional. */
    optional: boolean;
    inKit?: boolean;
}

/** What a lesson asks for, before anybody is counted. */
export interface LessonNeeds {
    lesson: LessonSheet;
    things: ThingNeeds[];
    /** Some line offers a choice, which hangs on what a class has: then `things` is empty. */
    choice: boolean;
    /** Names of all things that are offered as alternatives. */
    options: readonly string[];
    /** Some line could not be counted. */
    incomplete: boolean;
}

/** Need lines of lessons and the facts of things in numbers, read once for each version of a lesson and of the inventory. */
export class NumberReader {
    /** By name, of the newest version. */
    private readonly lessons = new Map<string, LessonNeeds>();
    private readonly measures = new WeakMap<ThingSheet, Measure>();
    private readonly days = new Map<string, number | undefined>();
    private readonly facts = new WeakMap<ThingSheet, { measure: Measure; facts: ThingFacts }>();
    private readonly amounts = new WeakMap<ThingSheet, Map<string, Ratio | undefined>>();

    constructor(private readonly programme: Programme) {}

    of(lesson: LessonSheet): LessonNeeds {
        let needs = this.lessons.get(lesson.name);
        if (needs?.lesson !== lesson) this.lessons.set(lesson.name, needs = this.read(lesson));
        return needs;
    }

    /** The day number of an ISO date. */
    dayOf(date: string): number | undefined {
        let day = this.days.get(date);
        if (day === undefined && !this.days.has(date)) this.days.set(date, day = dayOfIso(date));
        return day;
    }

    factsOf(thing: ThingSheet, measure: Measure): ThingFacts {
        const known = this.facts.get(thing);
        if (known && sameMeasure(known.measure, measure)) return known.facts;
        const facts = factsOf(thing, measure);
        this.facts.set(thing, { measure, facts });
        return facts;
    }

    private read(lesson: LessonSheet): LessonNeeds {
        const lines = needLines(lesson, new Reading(this.programme));
        if (lines.some(({ need }) => need.options.length > 1)) {
            const options = lines.flatMap(({ need }) => (need.options.length > 1 ? need.options.map(({ thing }) => thing.name) : []));
            return { lesson, things: [], choice: true, options, incomplete: true };
        }
        const things = new Map<string, ThingNeeds>();
        const counted = lines.filter(line => this.add(line, things));
        return { lesson, things: [...things.values()], choice: false, options: none, incomplete: counted.length < lines.length };
    }

    /** False for a line that cannot be counted. */
    private add(line: NeedLine, things: Map<string, ThingNeeds>): boolean {
        const name = line.need.options[0]?.thing.name ?? '';
        const thing = name === '' ? undefined : thingNamed(this.programme, name);
        if (!thing) return false;
        const { amount } = line.need;
        const measure = this.measureOf(thing, amount);
        let each = this.amount(thing, amount, measure);
        if (!each) return false;
        const known = things.get(name);
        if (!known) {
            things.set(name, { name, thing, use: useOf(thing, measure), measure, d: each.d, lines: [{ line, n: each.n, per: perKey(line) }], optional: line.need.optional, inKit: line.need.inKit });
            return true;
        }
        if (!sameMeasure(known.measure, measure)) {
            const same = remeasure(fractionOf(each), measure, known.measure);
            if (!same) return false;
            each = ratioOf(same);
        }
        const d = lcm(known.d, each.d);
        if (d !== known.d) for (const one of known.lines) one.n *= d / known.d;
        known.d = d;
        known.lines.push({ line, n: each.n * (d / each.d), per: perKey(line) });
        known.optional &&= line.need.optional;
        known.inKit = eitherClaim(known.inKit, line.need.inKit);
        return true;
    }

    /** One object a thing, unless it says nothing of its unit and the amount has to. */
    private measureOf(thing: ThingSheet, seen: Amount | undefined): Measure {
        let own = this.measures.get(thing);
        if (!own) {
            own = measureOf(thing);
            if (own.is === 'pieces') own = pieces;
            this.measures.set(thing, own);
        }
        return own === pieces && thing.kind === 'material' && seen?.unit !== undefined ? measureOf(thing, seen) : own;
    }

    private amount(thing: ThingSheet, amount: Amount | undefined, measure: Measure): Ratio | undefined {
        if (!amount) return comesWhole(measure) ? { n: 1n, d: 1n } : undefined;
        let known = this.amounts.get(thing);
        if (!known) this.amounts.set(thing, known = new Map());
        const key = amount.unit === undefined ? amount.value : `${amount.value} ${amount.unit}`;
        if (!known.has(key)) {
            const value = inMeasure(amount, measure);
            known.set(key, value && ratioOf(value));
        }
        return known.get(key);
    }
}

const none: readonly string[] = [];
const pieces: Measure = { is: 'pieces' };

export function sameMeasure(a: Measure, b: Measure): boolean {
    return a === b || (a.is === b.is && (a.is !== 'measured' || b.is !== 'measured' || a.unit === b.unit));
}

/** True where either says so, undefined where neither says anything. */
export function eitherClaim(a: boolean | undefined, b: boolean | undefined): boolean | undefined {
    return a === undefined ? b : b === undefined ? a : a || b;
}

function perKey({ need, game }: NeedLine): string {
    const { per } = need;
    if (per?.who !== 'group') return per?.who ?? 'class';
    if (per.size !== undefined) return `group of ${per.size}`;
    return game ? `table ${game.players?.from} ${game.players?.to}` : 'group';
}
