import type { Source, ThingSheet } from '@haversack/language/sheets/sheet';
import { remeasure, type Measure } from '../amounts.js';
import { isUsedUp, type Use } from '../demand.js';
import type { Holding, Holdings } from '../holdings.js';
import { isBought, sourceOf } from '../sources.js';
import { atOnce } from './attendance.js';
import type { ThingUse } from './class-plan.js';
import type { Cupboard } from './cupboard.js';
import { eitherClaim, sameMeasure } from './lesson-needs.js';
import { materialRequirements, type Requirements } from './material-requirements.js';
import { fractionOf, lcm, most, ratioOf, type Ratio } from './ratio.js';
import type { ThingFacts } from './thing-facts.js';

/** A week of the cupboard in which the thing is used. */
export interface Period {
    slot: number;
    first: ThingUse;
    /** After the first. */
    more?: ThingUse[];
    /** Before spares and losses. */
    plain: Ratio;
    /** Every use is optional. */
    optional: boolean;
    inKit?: boolean;
    /** ISO date of the first use. */
    date?: string;
}

/** A written order that is counted on. */
export interface ArrivalAt {
    /** The slot that it is there for: the first whose first use (or first meeting) it does not miss; the number of slots for none. */
    slot: number;
    day: string;
    value: bigint;
    index: number;
}

/**
 * One thing of one cupboard over all weeks, in whole numbers of `1 / scale` of the measure's unit. Only weeks that use the thing stand in
 * the record; between them nothing changes but what arrives.
 */
export interface Ledger {
    name: string;
    thing: ThingSheet;
    use: Use;
    measure: Measure;
    scale: bigint;
    facts: ThingFacts;
    holding: Holding;
    heldByKit: boolean;
    source: Source;
    handedBack: boolean;
    periods: Period[];
    /** Uses in a unit that cannot be made into the measure's. */
    left: ThingUse[];
    opening: bigint;
    safety: bigint;
    arrivals: ArrivalAt[];
    /** Whether the lack of a period is bought or ordered. */
    ordered: boolean[];
    record: Requirements;
}

export function makeLedger(name: string, uses: readonly ThingUse[], cupboard: Cupboard, holdings: Holdings): Ledger {
    const first = uses[0]!.demand;
    const { thing, use, measure } = first;
    const left: ThingUse[] = [];
    const periods = periodsOf(uses, cupboard, measure, isUsedUp(use), left);
    const facts = cupboard.own.numbers.factsOf(thing, measure);
    const holding = holdings.of(name, measure);
    const heldByKit = holdings.kitsWith(name).length > 0;
    const scale = scaleOf(periods, facts, holding);
    const scaled = ({ n, d }: Ratio): bigint => (d === scale ? n : n * (scale / d));
    const arrivals = arrivalsFor(holding, periods, cupboard, scaled);
    const handedBack = !isUsedUp(use);
    const ordered = orderedIn(periods, { thing, holding, heldByKit, arrivals, handedBack });
    const opening = holding.value ? scaled(ratioOf(holding.value)) : 0n;
    const safety = facts.safety ? scaled(facts.safety) : 0n;
    const scheduled = periods.map(() => 0n);
    for (const arrival of arrivals) {
        const period = periods.findIndex(({ slot }) => slot >= arrival.slot);
        if (period >= 0) scheduled[period]! += arrival.value;
    }
    const sameCurrency = facts.delivery && (facts.currency === undefined || facts.delivery.currency === facts.currency);
    const record = materialRequirements({
        gross: periods.map(({ plain }) => scaled(plain)), scheduled, onHand: opening, safety, spare: facts.spare, loss: facts.loss,
        whole: facts.whole ? scale : undefined, handedBack, ordered,
        lotSizing: () => ({
            packs: facts.packs.map(({ size, cost }) => ({ size: scaled(size), cost: cost?.minor })),
            delivery: sameCurrency ? facts.delivery?.minor : undefined,
            ...keeping(facts.keepsDays, periods, cupboard)
        })
    });
    return {
        name, thing, use, measure, scale, facts, holding, heldByKit, handedBack, periods, left, opening, safety, arrivals, ordered, record,
        source: sourceOf({ thing, inKit: periods.reduce<boolean | undefined>((claim, { inKit }) => eitherClaim(claim, inKit), undefined) }, heldByKit)
    };
}

/** What is there at the start of a slot, and at the end of the one before. */
export function atHandIn({ periods, record, opening, arrivals }: Ledger, slot: number): bigint {
    const next = periods.findIndex(period => period.slot >= slot);
    const done = next < 0 ? periods.length : next;
    const before = done > 0 ? record.onHand[done - 1]! : opening;
    const since = done > 0 ? periods[done - 1]!.slot : -1;
    const spoiled = periods[done]?.slot === slot ? record.spoiled[done]! : 0n;
    return arrivals.reduce((sum, arrival) => (arrival.slot > since && arrival.slot <= slot ? sum + arrival.value : sum), before) - spoiled;
}

function periodsOf(uses: readonly ThingUse[], cupboard: Cupboard, measure: Measure, usedUp: boolean, left: ThingUse[]): Period[] {
    const single = cupboard.members.length === 1;
    const periods: Period[] = [];
    const bySlot = new Map<number, Period>();
    let last: Period | undefined;
    for (const use of uses) {
        const { demand, at: { meeting: { date } } } = use;
        const same = sameMeasure(demand.measure, measure);
        if (!same && !remeasure(fractionOf(demand), demand.measure, measure)) {
            left.push(use);
            continue;
        }
        const slot = cupboard.slotOf(use.at);
        const amount = same ? demand : amountIn(use, measure);
        // The uses of one class come in the order of time.
        const known = single ? (last?.slot === slot ? last : undefined) : bySlot.get(slot);
        if (!known) {
            last = { slot, first: use, more: undefined, plain: amount, optional: demand.optional, inKit: demand.inKit, date };
            periods.push(last);
            if (!single) bySlot.set(slot, last);
            continue;
        }
        if (known.more) known.more.push(use);
        else known.more = [use];
        known.optional &&= demand.optional;
        known.inKit = eitherClaim(known.inKit, demand.inKit);
        if (date !== undefined && known.date !== undefined && date < known.date) known.date = date;
        known.plain = usedUp ? sum(known.plain, amount) : larger(known.plain, amount);
    }
    if (single) return periods;
    if (!usedUp) for (const period of periods) period.plain = mostAtOnce(usesIn(period), measure);
    return periods.sort((a, b) => a.slot - b.slot);
}

export function usesIn({ first, more = [] }: Period): ThingUse[] {
    return [first, ...more];
}

export function amountIn({ demand }: ThingUse, measure: Measure): Ratio {
    if (sameMeasure(demand.measure, measure)) return demand;
    const value = remeasure(fractionOf(demand), demand.measure, measure);
    return value ? ratioOf(value) : { n: 0n, d: 1n };
}

function sum(a: Ratio, b: Ratio): Ratio {
    if (a.d === b.d) return { n: a.n + b.n, d: a.d };
    const d = lcm(a.d, b.d);
    return { n: a.n * (d / a.d) + b.n * (d / b.d), d };
}

function larger(a: Ratio, b: Ratio): Ratio {
    return b.n * a.d > a.n * b.d ? b : a;
}

export function largest(uses: readonly ThingUse[], measure: Measure): Ratio {
    return uses.map(use => amountIn(use, measure)).reduce(larger, { n: 0n, d: 1n });
}

/** Over the days, the most that all classes use at one hour. */
function mostAtOnce(uses: readonly ThingUse[], measure: Measure): Ratio {
    const days = new Map<string, ThingUse[]>();
    for (const use of uses) {
        const date = use.at.meeting.date ?? '';
        const day = days.get(date);
        if (day) day.push(use);
        else days.set(date, [use]);
    }
    return [...days.values()].map(day => togetherOn(day, measure)).reduce(larger, { n: 0n, d: 1n });
}

/**
 * What the classes of one day use at once. Of each class its largest lesson counts, crowd by crowd; crowds of one hour add up over
 * the classes, and so does one without an hour.
 */
export function togetherOn(uses: readonly ThingUse[], measure: Measure): Ratio {
    const d = uses.reduce((all, use) => lcm(all, amountIn(use, measure).d), 1n);
    const amounts: bigint[] = [];
    const clocks: (string | undefined)[] = [];
    for (const plan of new Set(uses.map(({ at }) => at.plan))) {
        const own = uses.filter(({ at }) => at.plan === plan);
        plan.audience.people.crowds.forEach(({ clock }, crowd) => {
            clocks.push(clock);
            amounts.push(own.reduce((largestOf, use) => {
                const { n, d: own } = amountIn(use, measure);
                const ofCrowd = use.demand.perCrowd && sameMeasure(use.demand.measure, measure) ? use.demand.perCrowd[crowd] ?? 0n : n;
                return most(largestOf, ofCrowd * (d / own));
            }, 0n));
        });
    }
    return { n: atOnce(amounts, clocks), d };
}

function scaleOf(periods: readonly Period[], facts: ThingFacts, { value, arrivals }: Holding): bigint {
    const marked = facts.whole ? 1n : (facts.spare?.d ?? 1n) * (facts.loss ? facts.loss.d - facts.loss.n : 1n);
    let scale = 1n;
    for (const { plain } of periods) scale = lcm(scale, plain.d);
    scale *= marked;
    for (const { size } of facts.packs) scale = lcm(scale, size.d);
    if (value) scale = lcm(scale, value.d);
    for (const arrival of arrivals) scale = lcm(scale, arrival.value.d);
    return facts.safety ? lcm(scale, facts.safety.d) : scale;
}

function arrivalsFor({ arrivals }: Holding, periods: readonly Period[], { slots }: Cupboard, scaled: (value: Ratio) => bigint): ArrivalAt[] {
    if (arrivals.length === 0) return [];
    const firstUse = new Map(periods.map(({ slot, date }) => [slot, date]));
    return arrivals.flatMap(({ day, value }, index) => {
        if (!day) return [];
        const iso = day.toString();
        const slot = slots.findIndex(({ from }, i) => (firstUse.get(i) ?? from ?? '') >= iso);
        return [{ slot: slot < 0 ? slots.length : slot, day: iso, value: scaled(ratioOf(value)), index }];
    });
}

/** What is wholly optional is not bought, nor what is asked for from home or the library, unless some is known to be there and packs are declared. */
function orderedIn(
    periods: readonly Period[], { thing, holding, heldByKit, arrivals, handedBack }: Pick<Ledger, 'thing' | 'holding' | 'heldByKit' | 'arrivals' | 'handedBack'>
): boolean[] {
    let known = holding.value !== undefined;
    return periods.map(({ slot, optional, inKit }) => {
        known ||= arrivals.some(arrival => arrival.slot <= slot);
        const ordered = !optional && isBought(thing, sourceOf({ thing, inKit }, heldByKit), known);
        known ||= handedBack && ordered;
        return ordered;
    });
}

/** Without dates a week is seven days. */
function keeping(keepsDays: number | undefined, periods: readonly Period[], { own: { numbers } }: Cupboard): { keepsDays?: number; days?: number[] } {
    if (keepsDays === undefined) return {};
    return { keepsDays: Math.max(1, keepsDays), days: periods.map(({ date, slot }) => (date === undefined ? undefined : numbers.dayOf(date)) ?? slot * 7) };
}
