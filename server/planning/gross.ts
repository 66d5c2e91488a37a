import type Fraction from 'fraction.js';
import type { LessonSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { amountText, remeasure, withSpares, type Measure } from './amounts.js';
import { isUsedUp, type Demand, type LessonDemand, type Use } from './demand.js';
import { largest, sum } from './exact.js';
import type { Meeting, TrailStep } from './figures.js';
import { quoted } from './wording.js';

/** One lesson of a week with the meeting it is taught at and what it needs. */
export interface TaughtLesson {
    lesson: LessonSheet;
    meeting: Meeting;
    demand: LessonDemand;
}

/** What one week needs of one thing, spares and rounding included. */
export interface WeekNeed {
    thing: ThingSheet;
    use: Use;
    measure: Measure;
    value: Fraction;
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

/** Reusable: the largest lesson's need. Consumable and copies: the sum. Parts: the union. Then spares, then whole things. */
export function weekNeed(name: string, taught: readonly TaughtLesson[]): WeekNeed | undefined {
    const problems: string[] = [];
    const asked = taught.flatMap(t => {
        const demand = t.demand.things.get(name);
        return demand ? [{ ...t, own: demand }] : [];
    });
    const first = asked[0]?.own;
    if (!first) return undefined;
    const { thing, use, measure } = first;
    const amounts: Fraction[] = [];
    const counted: typeof asked = [];
    for (const one of asked) {
        const amount = remeasure(one.own.amount, one.own.measure, measure);
        if (amount) {
            amounts.push(amount);
            counted.push(one);
        } else {
            problems.push(`In ${quoted(one.lesson.title)}, ${amountText(one.own.amount, one.own.measure)} of ${quoted(thing.title)
                } is left out: it cannot be added to ${amountText(first.amount, measure)}.`);
        }
    }
    const trail = counted.flatMap(one => one.own.trail.map(step => ({ ...step, words: `${quoted(one.lesson.title)}, ${one.meeting.label}: ${step.words}` })));
    const plain = isUsedUp(use) ? sum(amounts) : largest(amounts);
    if (amounts.length > 1) {
        const text = amountText(plain, measure);
        trail.push({ words: isUsedUp(use) ? `used up, so all ${amounts.length} lessons together: ${text}` : `handed back, so the largest of ${amounts.length} lessons: ${text}` });
    }
    const spared = withSpares(plain, thing, measure);
    return {
        thing, use, measure,
        value: spared.value,
        trail: [...trail, ...spared.steps],
        optional: counted.every(one => one.own.optional),
        parts: partsUnion(thing, counted.map(one => one.own)),
        or: [...new Set(counted.flatMap(one => one.own.or))],
        inKit: claim(counted.map(one => one.own.inKit)),
        uses: counted.map(({ lesson, meeting }) => ({ lesson, meeting })),
        problems
    };
}

/** The parts that are enough, in the order the material declares them; none where some lesson asks for the whole thing. */
function partsUnion(thing: ThingSheet, demands: readonly Demand[]): string[] {
    if (demands.some(d => d.whole)) return [];
    const named = new Set(demands.flatMap(d => d.parts));
    const declared = thing.kind === 'material' ? thing.parts.map(p => p.name) : [];
    return [...declared.filter(p => named.has(p)), ...[...named].filter(p => !declared.includes(p))];
}

function claim(flags: readonly (boolean | undefined)[]): boolean | undefined {
    const said = flags.filter(flag => flag !== undefined);
    return said.length > 0 ? said.includes(true) : undefined;
}
