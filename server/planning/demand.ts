import Fraction from 'fraction.js';
import type { LessonSheet, Need, ThingSheet } from '@haversack/language/sheets/sheet';
import { amountText, comesWhole, inMeasure, measureOf, remeasure, spared, writtenAs, type Measure } from './amounts.js';
import { keptDemand, type PlanningCache, type Reading } from './cache.js';
import { largest, sum } from './exact.js';
import type { TrailStep } from './figure.js';
import type { ThingFigures } from './figures.js';
import type { Holdings } from './holdings.js';
import { eachInWords, needLines, placeOf, timesFor, type NeedLine } from './needs.js';
import { atOnce, type Crowd } from './people.js';
import type { Piece } from './supplies/pieces.js';
import { listing, quoted } from '@haversack/language/facts/wording';

export type Use = ThingFigures['use'];

/** One need line, counted for everybody. */
export interface LineDemand {
    line: NeedLine;
    thing: ThingSheet;
    measure: Measure;
    /** For the whole class: at once of what is handed back, in all of what is used up. */
    amount: Fraction;
    perCrowd: Fraction[];
    /** "20 for each pair". */
    each: string;
    /** One step a crowd. */
    steps: TrailStep[];
    choice?: TrailStep;
}

/** What one lesson needs of one thing. */
export interface Demand {
    thing: ThingSheet;
    use: Use;
    measure: Measure;
    amount: Fraction;
    trail: TrailStep[];
    /** `amount` without what is optional. */
    required: Fraction;
    optional: boolean;
    parts: string[];
    /** Some line asks for the whole thing, not for parts of it. */
    whole: boolean;
    /** Titles of what would do instead. */
    or: string[];
    /** What the writer claims: true or false where some line says so. */
    inKit?: boolean;
    /** Of what is handed back: at once, by crowd. */
    perCrowd: Fraction[];
    lines: NeedLine[];
}

export interface LessonDemand {
    lines: LineDemand[];
    things: ReadonlyMap<string, Demand>;
    /** What was left out, in whole sentences. */
    assumptions: string[];
}

/** What a material is used as where the writer has not said: measured goods are used up, pieces are handed back. */
export function useOf(thing: ThingSheet, measure: Measure): Use {
    if (thing.kind !== 'material') return thing.kind;
    return thing.use ?? (measure.is === 'measured' && measure.unit.dimension !== 'length' ? 'consumable' : 'reusable');
}

/** Consumables and copies are used up and add; reusables and books are handed back. */
export function isUsedUp(use: Use): boolean {
    return use === 'consumable' || use === 'print';
}

/**
 * What one lesson needs for these people: reusable = the most that any part of it uses, consumable = the sum. Of a piece of a lesson
 * `lines` are still all, `things` what the piece needs.
 */
export function demandOf(lesson: LessonSheet, holdings: Holdings, cache: PlanningCache, piece?: Piece): LessonDemand {
    const key = piece ? `${holdings.key} ${piece.key}` : holdings.key;
    return keptDemand(cache, holdings.programme, lesson, key, reading => compute(lesson, holdings, reading, piece));
}

function compute(lesson: LessonSheet, holdings: Holdings, reading: Reading, piece: Piece | undefined): LessonDemand {
    const crowds = holdings.audience.people.crowds;
    const assumptions: string[] = [];
    const lines: LineDemand[] = [];
    const asked = needLines(lesson, reading);
    const taken: LineDemand[] = [];
    const found = new Map<NeedLine, LineDemand | string | undefined>();
    // What has no alternative takes from the cupboard first.
    for (const line of [...asked.filter(l => l.need.options.length < 2), ...asked.filter(l => l.need.options.length >= 2)]) {
        const one = chosen(line, taken, holdings, reading);
        found.set(line, one);
        if (one && typeof one !== 'string') taken.push(one);
    }
    for (const line of asked) {
        const one = found.get(line);
        if (typeof one === 'string') assumptions.push(`In ${quoted(lesson.title)}, ${one}`);
        else if (one) lines.push(one);
    }
    const byThing = new Map<string, LineDemand[]>();
    for (const line of lines) {
        const { name } = line.thing;
        if (piece && !piece.takes(line.line, name, isUsedUp(useOf(line.thing, line.measure)))) continue;
        byThing.set(name, [...(byThing.get(name) ?? []), line]);
    }
    const things = new Map<string, Demand>();
    for (const [name, own] of byThing) {
        const demand = together(own, crowds, problem => assumptions.push(`In ${quoted(lesson.title)}, ${problem}`));
        if (demand) things.set(name, demand);
    }
    return { lines, things, assumptions };
}

/**
 * The line for the first of its options that is at hand in full, else the one that is short of least, the first written where two are
 * alike; a sentence where none counts. What the lines before it have `taken` is not at hand any more.
 */
function chosen(line: NeedLine, taken: readonly LineDemand[], holdings: Holdings, reading: Reading): LineDemand | string | undefined {
    const { options: written } = line.need;
    // A name that could not be read is empty; the file's own errors speak of it.
    if (written.every(o => o.thing.name === '')) return undefined;
    const options = written.map((_, i) => countLine(line, i, holdings.audience.people.crowds, reading));
    const usable = options.filter(o => typeof o !== 'string');
    const [first] = usable;
    if (!first) return options.find(o => typeof o === 'string');
    if (written.length < 2) return first;
    reading.holdings(holdings.audiences);
    const short = usable.map(option => ({ option, share: shortShare(option, taken, holdings) }));
    const least = short.reduce((best, one) => (one.share.lt(best.share) ? one : best), { option: first, share: short[0]?.share ?? new Fraction(1) });
    const isHeld = usable.some(o => holdings.atStart(o.thing.name, o.measure)?.gt(0));
    const why = least.share.equals(0) ? 'because it is at hand'
        : least.share.lt(1) ? 'because least of it is missing'
            : `the first named, because none is ${isHeld ? 'left' : 'at hand'}`;
    const words = `${listing(usable.map(o => o.thing.title), 'or')}: ${least.option.thing.title}, ${why}`;
    return { ...least.option, choice: { words, place: placeOf(line) } };
}

/** The part of an option that would be missing, from 0 to 1. What is handed back is in use only with lines of the same part. */
function shortShare({ line, thing, measure, amount }: LineDemand, taken: readonly LineDemand[], holdings: Holdings): Fraction {
    if (!amount.gt(0)) return new Fraction(0);
    const usedUp = isUsedUp(useOf(thing, measure));
    const before = taken.filter(t => t.thing.name === thing.name && (usedUp || t.line.slot === line.slot))
        .flatMap(t => remeasure(t.amount, t.measure, measure) ?? []);
    const missing = spared(sum(before).add(amount), thing, measure).sub(holdings.atStart(thing.name, measure) ?? 0);
    const share = missing.div(amount);
    return share.lte(0) ? new Fraction(0) : share.gt(1) ? new Fraction(1) : share;
}

function countLine(line: NeedLine, index: number, crowds: readonly Crowd[], reading: Reading): LineDemand | string {
    const { need } = line;
    const name = need.options[index]?.thing.name ?? '';
    const thing = reading.thing(name);
    if (!thing) return `“${name}” is not counted: no inventory declares it.`;
    const measure = measureOf(thing, need.amount);
    const one = need.amount ? inMeasure(need.amount, measure) : comesWhole(measure) ? new Fraction(1) : undefined;
    if (!one) return leftOut(need, thing, measure);
    const written = writtenAs(need.amount, one, measure);
    const where = line.game?.title ?? line.part?.title;
    const perCrowd: Fraction[] = [];
    const steps = crowds.map((crowd): TrailStep => {
        const { times, words } = timesFor(line, crowd);
        const total = one.mul(times);
        perCrowd.push(total);
        const room = [crowd.title, where].filter(word => word !== undefined).join(', ');
        const unwritten = need.amount ? '' : ' (no amount is written)';
        const between = written.times ? `${written.times(times)} = ` : '';
        const optional = need.optional ? ' (optional)' : '';
        return { words: `${room}${room && ': '}${written.text}${unwritten} x ${words} = ${between}${amountText(total, measure)}${optional}`, place: placeOf(line) };
    });
    const used = useOf(thing, measure);
    return {
        line, thing, measure, perCrowd, steps,
        amount: isUsedUp(used) ? sum(perCrowd) : atOnce(perCrowd, crowds),
        each: `${written.text} ${eachInWords(need.per)}`
    };
}

function leftOut(need: Need, thing: ThingSheet, measure: Measure): string {
    if (!need.amount) return `${quoted(thing.title)} is not counted: no amount is written.`;
    const written = `${need.amount.value}${need.amount.unit === undefined ? '' : ` ${need.amount.unit}`}`;
    const own = measure.is === 'measured' ? measure.unit.symbol : measure.is === 'counted' ? measure.many : 'whole pieces';
    return `${written} of ${quoted(thing.title)} is left out: it is counted in ${own}, and “${need.amount.unit ?? need.amount.value}” cannot be made into that.`;
}

function together(lines: readonly LineDemand[], crowds: readonly Crowd[], problem: (sentence: string) => void): Demand | undefined {
    const [first] = lines;
    if (!first) return undefined;
    const { thing, measure } = first;
    const use = useOf(thing, measure);
    const same: LineDemand[] = [];
    for (const line of lines) {
        const perCrowd = line.perCrowd.map(v => remeasure(v, line.measure, measure));
        if (perCrowd.every(v => v !== undefined)) same.push({ ...line, perCrowd });
        else problem(leftOut(line.line.need, thing, measure));
    }
    const count = isUsedUp(use) ? usedUp : handedBack;
    const counted = count(same, crowds, measure);
    const required = same.filter(l => !l.line.need.optional);
    const flags = same.map(l => l.line.need.inKit).filter(flag => flag !== undefined);
    const parts = same.map(l => l.line.need.options.find(o => o.thing.name === thing.name)?.parts.map(p => p.name) ?? []);
    const titles = same.flatMap(l => l.choice ? [l.choice] : []);
    return {
        thing, use, measure,
        amount: counted.amount,
        trail: [...titles, ...counted.trail],
        required: required.length === same.length ? counted.amount : count(required, crowds, measure).amount,
        optional: required.length === 0,
        parts: [...new Set(parts.flat())],
        whole: parts.some(p => p.length === 0),
        or: [...new Set(same.flatMap(l => l.line.need.options.map(o => o.thing.name)))].filter(n => n !== thing.name),
        inKit: flags.length > 0 ? flags.includes(true) : undefined,
        perCrowd: counted.perCrowd,
        lines: same.map(l => l.line)
    };
}

interface Counted {
    amount: Fraction;
    perCrowd: Fraction[];
    trail: TrailStep[];
}

function usedUp(lines: readonly LineDemand[], _crowds: readonly Crowd[], measure: Measure): Counted {
    const amount = sum(lines.flatMap(l => l.perCrowd));
    const trail = lines.flatMap(l => l.steps);
    if (trail.length > 1) trail.push({ words: `used up, so all together: ${amountText(amount, measure)}` });
    return { amount, perCrowd: [], trail };
}

function handedBack(lines: readonly LineDemand[], crowds: readonly Crowd[], measure: Measure): Counted {
    const slots = new Map<number, LineDemand[]>();
    for (const line of lines) slots.set(line.line.slot, [...(slots.get(line.line.slot) ?? []), line]);
    const trail: TrailStep[] = [];
    const perCrowd = crowds.map((_, i) => {
        const uses = [...slots.values()].map(own => ({ own, amount: sum(own.map(l => l.perCrowd[i] ?? new Fraction(0))) }));
        const most = largest(uses.map(u => u.amount));
        const busiest = uses.find(u => u.amount.equals(most));
        trail.push(...(busiest?.own.flatMap(l => l.steps[i] ?? []) ?? []));
        if ((busiest?.own.length ?? 0) > 1) trail.push({ words: `in use at the same time: ${amountText(most, measure)}` });
        return most;
    });
    const amount = atOnce(perCrowd, crowds);
    const most = crowds.length > 1 ? '' : `: ${amountText(amount, measure)}`;
    if (slots.size > 1) trail.push({ words: `handed back between the ${slots.size} parts that use it, so the most that any one uses${most}` });
    if (crowds.length > 1) trail.push({ words: `sections that meet at the same hour add up, others share: ${amountText(amount, measure)}` });
    return { amount, perCrowd, trail };
}
