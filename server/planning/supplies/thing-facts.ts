import type { Money, Pack, Range, ThingSheet } from '@haversack/language/sheets/sheet';
import { allowances, comesWhole, inMeasure, type Measure } from '../amounts.js';
import { readMoney, type Sum } from '../buying/money.js';
import type { Lead } from '../buying/order-days.js';
import { ratioOf, type Ratio } from './ratio.js';

/** A pack in the measure of its thing. */
export interface PackFact {
    size: Ratio;
    cost?: Sum;
    /** As declared; a book is its own pack. */
    pack?: Pack;
    at: Range;
}

/** What the inventory says of buying a thing, in numbers of one measure. */
export interface ThingFacts {
    /** One unit of it is a whole thing. */
    whole: boolean;
    spare?: Ratio;
    loss?: Ratio;
    safety?: Ratio;
    /** Those that can be compared: of several currencies only the first named. */
    packs: PackFact[];
    currency?: string;
    delivery?: Sum;
    lead: Lead;
    keepsDays?: number;
    remarks: string[];
}

/** Longer than it takes anything to arrive or to go off. */
const longestSpan = 3650;

export function factsOf(thing: ThingSheet, measure: Measure): ThingFacts {
    const facts: ThingFacts = { whole: comesWhole(measure), packs: [], lead: { days: 0 }, remarks: [] };
    if (thing.kind === 'print') return facts;
    if (thing.kind === 'book') {
        const cost = thing.cost && readMoney(thing.cost);
        return thing.cost ? { ...facts, currency: cost?.currency, packs: [{ size: { n: 1n, d: 1n }, cost, at: thing.cost.at }] } : facts;
    }
    const { spare, loss } = allowances(thing);
    const safety = thing.safetyStock && inMeasure(thing.safetyStock, measure);
    const all = thing.packs.flatMap((pack): PackFact[] => {
        const size = inMeasure(pack.amount, measure);
        return size?.gt(0) ? [{ size: ratioOf(size), cost: pack.cost && readMoney(pack.cost), pack, at: pack.at }] : [];
    });
    const currency = all.find(pack => pack.cost)?.cost?.currency;
    const packs = all.filter(pack => !pack.cost || pack.cost.currency === currency);
    if (packs.length < all.length) facts.remarks.push(`Packs are compared in ${currency} only: prices in other currencies are left out.`);
    if (all.length < thing.packs.length) facts.remarks.push('A pack whose size cannot be counted like the needs is left out.');
    return {
        ...facts,
        spare: spare && ratioOf(spare),
        loss: loss && ratioOf(loss),
        safety: safety?.gt(0) ? ratioOf(safety) : undefined,
        packs,
        currency,
        delivery: delivery(thing.delivery),
        lead: { days: daysOf(thing.arrives?.days) ?? 0, working: thing.arrives?.working },
        keepsDays: daysOf(thing.keeps?.days)
    };
}

function delivery(money: Money | undefined): Sum | undefined {
    const sum = money && readMoney(money);
    return sum && sum.minor > 0n ? sum : undefined;
}

function daysOf(days: number | undefined): number | undefined {
    return days !== undefined && Number.isFinite(days) ? Math.min(Math.max(0, Math.floor(days)), longestSpan) : undefined;
}
