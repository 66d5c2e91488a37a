import type Fraction from 'fraction.js';
import type { LessonSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { amountText, remeasure, spared, sparedSteps, type Measure } from './amounts.js';
import { isUsedUp, type Demand, type LessonDemand, type Use } from './demand.js';
import { largest, sum } from './exact.js';
import type { TrailStep } from './figure.js';
import type { Meeting } from './schedule-figures.js';
import type { Taught } from './supplies/pieces.js';
import { quoted } from '@haversack/language/facts/wording';

/** One lesson of a week with the meeting it is taught at and what it needs. */
export interface TaughtLesson {
    lesson: LessonSheet;
    meeting: Meeting;
    /** Whole, or which of its parts. */
    taught: Taught;
    demand: LessonDemand;
}

interface Asked extends TaughtLesson {
    own: Demand;
    /** In the measure of the week's first lesson. */
    amount: Fraction;
}

/** What one week needs of one thing, spares and rounding included. */
export interface WeekNeed {
    thing: ThingSheet;
    use: Use;
    measure: Measure;
    value: Fraction;
    /** Before spares and losses. */
    plain: Fraction;
    trail: TrailStep[];
    optional: boolean;
    parts: string[];
    /** Names of what would do instead. */
    or: string[];
    inKit?: boolean;
    uses: { lesson: LessonSheet; meeting: Meeting }[];
    /** What was left out, in whole sentences. */
    problems: string[];
}

/** All things of one week, in the order in which its lessons first ask for them. */
export function weekNeeds(taught: readonly TaughtLesson[]): Map<string, WeekNeed> {
    const names = new Set(taught.flatMap(t => [...t.demand.things.keys()]));
    const needs = new Map<string, WeekNeed>();
    for (const name of names) {
        const need = weekNeed(name, taught);
        if (need) needs.set(name, need);
    }
    return needs;
}

/** What a week's lessons ask of one thing, before spares, and the lessons that could not be added. */
function asked(name: string, taught: readonly TaughtLesson[]): { counted: Asked[]; left: Asked[]; plain: Fraction } | undefined {
    const all = taught.flatMap((t): Asked[] => {
        const own = t.demand.things.get(name);
        return own ? [{ ...t, own, amount: own.amount }] : [];
    });
    const first = all[0]?.own;
    if (!first) return undefined;
    const counted: Asked[] = [];
    const left: Asked[] = [];
    for (const one of all) {
        const amount = remeasure(one.own.amount, one.own.measure, first.measure);
        if (amount) counted.push({ ...one, amount });
        else left.push(one);
    }
    const amounts = counted.map(one => one.amount);
    return { counted, left, plain: together(amounts, first.use) };
}

/**
 * The amount with its trail, the union of parts, and where and when it is used: reusable = the largest lesson's need, consumable and copies =
 * the sum; then spares, then whole things.
 */
function weekNeed(name: string, taught: readonly TaughtLesson[]): WeekNeed | undefined {
    const found = asked(name, taught);
    const first = found?.counted[0]?.own;
    if (!found || !first) return undefined;
    const { counted, left, plain } = found;
    const { thing, use, measure } = first;
    const trail = counted.flatMap(one => one.own.trail.map(step => ({ ...step, words: `${quoted(one.lesson.title)}, ${one.meeting.label}: ${step.words}` })));
    if (counted.length > 1) {
        const text = amountText(plain, measure);
        trail.push({ words: isUsedUp(use) ? `used up, so all ${counted.length} lessons together: ${text}` : `handed back, so the largest of ${counted.length} lessons: ${text}` });
    }
    return {
        thing, use, measure, plain,
        value: spared(plain, thing, measure),
        trail: [...trail, ...sparedSteps(plain, thing, measure), ...optionalStep(counted, first)],
        parts: partsUnion(thing, counted.map(one => one.own)),
        or: [...new Set(counted.flatMap(one => one.own.or))],
        ...flagsOf(counted),
        uses: counted.map(({ lesson, meeting }) => ({ lesson, meeting })),
        problems: left.map(one => `In ${quoted(one.lesson.title)}, ${amountText(one.own.amount, one.own.measure)} of ${quoted(thing.title)
        } is left out: it cannot be added to ${amountText(first.amount, measure)}.`)
    };
}

/** How much of the need is optional, where some of it is not. */
function optionalStep(counted: readonly Asked[], { thing, use, measure }: Demand): TrailStep[] {
    const amounts = counted.flatMap(one => remeasure(one.own.required, one.own.measure, measure) ?? []);
    const all = spared(together(counted.map(one => one.amount), use), thing, measure);
    const required = spared(together(amounts, use), thing, measure);
    if (!required.gt(0) || !all.gt(required)) return [];
    return [{ words: `${amountText(all.sub(required), measure)} of it optional: ${amountText(required, measure)} without` }];
}

function together(amounts: readonly Fraction[], use: Use): Fraction {
    return isUsedUp(use) ? sum(amounts) : largest(amounts);
}

/** The parts that are enough, in the order the material declares them; none where some lesson asks for the whole thing. */
function partsUnion(thing: ThingSheet, demands: readonly Demand[]): string[] {
    if (demands.some(d => d.whole)) return [];
    const named = new Set(demands.flatMap(d => d.parts));
    const declared = thing.kind === 'material' ? thing.parts.map(p => p.name) : [];
    return [...declared.filter(p => named.has(p)), ...[...named].filter(p => !declared.includes(p))];
}

function flagsOf(counted: readonly Asked[]): Pick<WeekNeed, 'optional' | 'inKit'> {
    return { optional: counted.every(one => one.own.optional), inKit: claim(counted.map(one => one.own.inKit)) };
}

function claim(flags: readonly (boolean | undefined)[]): boolean | undefined {
    const said = flags.filter(flag => flag !== undefined);
    return said.length > 0 ? said.includes(true) : undefined;
}
