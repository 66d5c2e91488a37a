import Fraction from 'fraction.js';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import { comesWhole, measureOf, remeasure, type Measure } from '../amounts.js';
import { readExact } from '../exact.js';
import type { Meeting } from '../schedule-figures.js';
import type { ThingUse } from './class-plan.js';
import type { Cupboard } from './cupboard.js';
import { atHandIn, largest, togetherOn, usesIn, type Ledger, type Period } from './ledger.js';
import { allowed } from './material-requirements.js';
import type { LedgerOrder } from './orders.js';
import { fractionOf, least, ratioOf, type Ratio } from './ratio.js';

/** A meeting of the own class that needs more of a reusable thing than there is, in the ledger's own numbers. */
export interface MeetingShortage {
    ledger: Ledger;
    /** All at one meeting; never empty. */
    uses: ThingUse[];
    slot: number;
    needed: bigint;
    atHand: bigint;
    /** The order that mends it. */
    order?: LedgerOrder;
}

/** A day on which the classes of one cupboard together need more than it holds. */
export interface DayClash {
    ledger: Ledger;
    date: string;
    uses: ThingUse[];
    needed: bigint;
    atHand: bigint;
}

/** Written orders count, those that are only planned do not. What is wholly optional is never short. */
export function shortagesOf(ledger: Ledger, orders: readonly LedgerOrder[], cupboard: Cupboard): MeetingShortage[] {
    const { record, periods, measure, ordered, handedBack, holding } = ledger;
    if (!handedBack || record.lack.every((lack, i) => lack === 0n && record.unmet[i] === 0n)) return [];
    const shortages: MeetingShortage[] = [];
    periods.forEach((period, i) => {
        if (period.optional || !(ordered[i] || holding.value !== undefined || ledger.arrivals.some(({ slot }) => slot <= period.slot))) return;
        for (const uses of meetingsOf(period, cupboard)) {
            const { meeting } = uses[0]!.at;
            const wanted = uses.filter(({ demand }) => !demand.optional);
            const needed = withAllowance(largest(wanted, measure), ledger);
            const atHand = writtenStock(ledger, meeting.date);
            if (needed > atHand) shortages.push({ ledger, uses: wanted, slot: period.slot, needed, atHand, order: lastBy(orders, i) });
        }
    });
    return shortages;
}

function lastBy(orders: readonly LedgerOrder[], period: number): LedgerOrder | undefined {
    for (let i = orders.length - 1; i >= 0; i--) if (orders[i]!.lot.period <= period) return orders[i];
    return undefined;
}

/** The own class's uses of a period, meeting by meeting. */
function meetingsOf(period: Period, { own, members }: Cupboard): ThingUse[][] {
    if (!period.more && members.length === 1) return [[period.first]];
    const byMeeting = new Map<Meeting, ThingUse[]>();
    for (const use of usesIn(period)) {
        if (use.at.plan !== own) continue;
        const known = byMeeting.get(use.at.meeting);
        if (known) known.push(use);
        else byMeeting.set(use.at.meeting, [use]);
    }
    return [...byMeeting.values()];
}

/** Days on which several classes use a thing at once and it is not enough for all of them together. */
export function clashesOf(ledger: Ledger, cupboard: Cupboard): DayClash[] {
    if (!ledger.handedBack || cupboard.members.length === 1) return [];
    return ledger.periods.flatMap(period => {
        const byDate = new Map<string, ThingUse[]>();
        for (const use of usesIn(period)) {
            const { date } = use.at.meeting;
            if (date !== undefined && !use.demand.optional) byDate.set(date, [...(byDate.get(date) ?? []), use]);
        }
        return [...byDate].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([date, uses]): DayClash[] => {
            const plans = [...new Set(uses.map(({ at }) => at.plan))];
            if (plans.length < 2) return [];
            const together = togetherOn(uses, ledger.measure);
            const alone = plans.map(plan => togetherOn(uses.filter(({ at }) => at.plan === plan), ledger.measure));
            if (alone.some(({ n, d }) => n * together.d >= together.n * d)) return [];
            const needed = withAllowance(together, ledger);
            const atHand = writtenStock(ledger, date);
            return needed > atHand && (ledger.holding.value !== undefined || atHand > 0n) ? [{ ledger, date, uses, needed, atHand }] : [];
        });
    });
}

export interface StandInStock {
    name: string;
    title: string;
    measure: Measure;
    /** In that measure. */
    wanted: Ratio;
    atHand: Ratio;
    enough: boolean;
}

/** What may stand in for what is missing, with how much of it is left over beside its own use; `ledgerOf` knows the stand-ins that lessons use too, `stockOf` what is there of others. */
export function standInsFor(
    { thing, measure, scale }: Ledger, slot: number, missing: bigint, programme: Programme, ledgerOf: (name: string) => Ledger | undefined, stockOf: (name: string, measure: Measure) => Fraction | undefined
): StandInStock[] {
    if (thing.kind !== 'material') return [];
    return thing.standIns.flatMap((standIn): StandInStock[] => {
        const other = thingNamed(programme, standIn.thing.name);
        const give = readExact(standIn.give);
        const replaces = readExact(standIn.replaces);
        if (!other || !give || !replaces?.gt(0)) return [];
        const own = ledgerOf(other.name);
        const into = own?.measure ?? measureOf(other);
        const value = fractionOf({ n: missing, d: scale });
        const exact = (remeasure(value, measure, into) ?? value).mul(give).div(replaces);
        const wanted = ratioOf(comesWhole(into) ? exact.ceil() : exact);
        const free = own ? { n: freeIn(own, slot), d: own.scale } : ratioOf(stockOf(other.name, into) ?? new Fraction(0));
        return [{ name: other.name, title: other.title, measure: into, wanted, atHand: free, enough: free.n * wanted.d >= wanted.n * free.d }];
    });
}

/** What a week leaves free: of what is handed back, what its own lessons do not use; of what is used up, the least that is there from then on. */
function freeIn(ledger: Ledger, slot: number): bigint {
    const there = atHandIn(ledger, slot);
    if (!ledger.handedBack) return ledger.periods.reduce((all, { slot: other }, i) => (other < slot ? all : least(all, ledger.record.onHand[i]!)), there);
    const used = ledger.periods.findIndex(period => period.slot === slot);
    const free = there - (used < 0 ? 0n : ledger.record.gross[used]!);
    return free > 0n ? free : 0n;
}

export function withAllowance({ n, d }: Ratio, { facts, scale }: Ledger): bigint {
    return allowed(d === scale ? n : n * (scale / d), { spare: facts.spare, loss: facts.loss, whole: facts.whole ? scale : undefined });
}

/** Opening stock and written orders that have come by the day; without dates none is counted on. */
function writtenStock({ opening, arrivals }: Ledger, date: string | undefined): bigint {
    return arrivals.reduce((sum, arrival) => (date !== undefined && arrival.day <= date ? sum + arrival.value : sum), opening);
}
