import type { Place } from '@haversack/language/sheets/sheet';
import { sparedSteps } from '../amounts.js';
import { dayLabel, readDay } from '../calendar.js';
import type { Figure, TrailStep } from '../figure.js';
import type { RecordWeek, ThingRecord } from '../supply-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import { packsInWords } from './buying-words.js';
import type { ClassPlan, ThingUse } from './class-plan.js';
import type { Cupboard } from './cupboard.js';
import { amountIn, usesIn, type Ledger } from './ledger.js';
import { least, most, type Ratio } from './ratio.js';
import type { LedgerOrder } from './orders.js';
import { Quantities } from './quantities.js';

export function recordFigures(ledger: Ledger, orders: readonly LedgerOrder[], cupboard: Cupboard, words = new Quantities(ledger)): ThingRecord {
    const { thing, holding, facts, measure, safety, handedBack, opening } = ledger;
    return {
        name: thing.name, title: thing.title, place: { uri: thing.uri, range: thing.at }, use: handedBack ? 'reusable' : 'consumable', source: ledger.source,
        unit: measure.is === 'measured' ? measure.unit.symbol : measure.is === 'counted' ? measure.many : undefined,
        opening: holding.value ? words.there(opening, holding.steps) : undefined,
        safety: safety > 0n ? words.of(safety) : undefined,
        lead: facts.lead.days > 0 ? { days: facts.lead.days, working: facts.lead.working === true } : undefined,
        packs: packsInWords(thing),
        weeks: recordWeeks(ledger, orders, cupboard, words),
        need: termNeed(ledger, cupboard, words),
        runsOut: runsOut(ledger, cupboard, words),
        remarks: [...facts.remarks, ...remarksOf(ledger, words)]
    };
}

/** One row for each of the class's own weeks. */
function recordWeeks(ledger: Ledger, orders: readonly LedgerOrder[], { slots, own }: Cupboard, words: Quantities): RecordWeek[] {
    const { record, periods, arrivals, handedBack } = ledger;
    const rows = own.schedule.weeks.map(({ number }) => ({ week: number, gross: 0n, scheduled: 0n, onHand: ledger.opening, net: 0n, receipts: 0n, releases: 0n, unmet: 0n, spoiled: 0n }));
    const at = new Map(periods.map(({ slot }, i) => [slot, i]));
    let there = ledger.opening;
    slots.forEach(({ week }, slot) => {
        const row = rows[week - 1];
        const period = at.get(slot);
        const arrived = arrivals.reduce((sum, arrival) => (arrival.slot === slot ? sum + arrival.value : sum), 0n);
        there = period === undefined ? there + arrived : record.onHand[period]!;
        if (!row) return;
        row.scheduled += arrived;
        row.onHand = there;
        if (period === undefined) return;
        const gross = record.gross[period]!;
        row.gross = handedBack ? most(row.gross, gross) : row.gross + gross;
        row.net += record.net[period]!;
        row.receipts += record.receipts[period]!;
        row.unmet = handedBack ? most(row.unmet, record.unmet[period]!) : row.unmet + record.unmet[period]!;
        row.spoiled += record.spoiled[period]!;
    });
    for (const { orderWeek, lot } of orders) {
        const row = rows[orderWeek - 1];
        if (row) row.releases += lot.bought;
    }
    const none = words.of(0n);
    const quantity = (amount: bigint): RecordWeek['gross'] => (amount === 0n ? none : words.of(amount));
    return rows.map(({ week, gross, scheduled, onHand, net, receipts, releases, unmet, spoiled }): RecordWeek => ({
        week, gross: quantity(gross), scheduled: quantity(scheduled), onHand: words.rest(onHand), net: quantity(net), receipts: quantity(receipts), releases: quantity(releases),
        ...(unmet > 0n ? { unmet: quantity(unmet) } : {}), ...(spoiled > 0n ? { spoiled: quantity(spoiled) } : {})
    }));
}

/** What the term needs with spares and losses: of what is handed back the most at once. */
export function needOf({ record, handedBack }: Ledger): bigint {
    return record.gross.reduce((sum, amount) => (handedBack ? most(sum, amount) : sum + amount), 0n);
}

/** The lessons that ask, then what spares and losses make of it. */
export function termNeed(ledger: Ledger, { own }: Cupboard, words = new Quantities(ledger)): Figure {
    const { periods, handedBack, thing, measure } = ledger;
    const uses = periods.flatMap(usesIn);
    const steps = uses.map((use): TrailStep => ({ words: `${useInWords(use, own)}: ${textOf(amountIn(use, measure), ledger, words)}`, place: placeOf(use) }));
    const total = needOf(ledger);
    if (handedBack) {
        const plain = periods.reduce((all, period) => most(all, scaled(period.plain, ledger)), 0n);
        if (steps.length > 1) steps.push({ words: `handed back, so the most at once: ${words.text(plain)}` });
        return words.needed(total, [...steps, ...sparedSteps(words.value(plain), thing, measure)]);
    }
    const plain = periods.reduce((sum, period) => sum + scaled(period.plain, ledger), 0n);
    if (steps.length > 1) steps.push({ words: `used up, so all together: ${words.text(plain)}` });
    if (total !== plain) steps.push({ words: `with spares and losses, week by week: ${words.text(total)}` });
    return words.needed(total, steps);
}

/** "week 3, Mon 21 Sep, “Which is heavier?”"; of another class that shares the cupboard with its title. */
function useInWords({ at: { plan, week, meeting, lesson } }: ThingUse, own: ClassPlan): string {
    return `${plan === own ? '' : `${quoted(plan.audience.class?.title ?? '')}, `}week ${week.number}, ${meeting.label}, ${quoted(lesson.title)}`;
}

function textOf(amount: Ratio, ledger: Ledger, words: Quantities): string {
    return words.text(scaled(amount, ledger));
}

function scaled({ n, d }: Ratio, { scale }: Ledger): bigint {
    return n * (scale / d);
}

export function placeOf({ demand, at }: ThingUse): Place {
    const line = demand.lines[0]?.line;
    return line ? { uri: line.uri, range: line.need.at } : { uri: at.lesson.uri, range: at.lesson.at };
}

/** With stock and written orders alone; not told of what nobody has or buys. */
function runsOut(ledger: Ledger, { slots }: Cupboard, words: Quantities): ThingRecord['runsOut'] {
    const { periods, record, opening, arrivals, handedBack, ordered, holding } = ledger;
    let there = opening;
    let since = -1;
    for (const [i, period] of periods.entries()) {
        for (const arrival of arrivals) if (arrival.slot > since && arrival.slot <= period.slot) there += arrival.value;
        since = period.slot;
        const wanted = record.gross[i]!;
        const known = holding.value !== undefined || arrivals.some(({ slot }) => slot <= period.slot);
        if (wanted > there && !period.optional && (ordered[i] || known)) {
            const day = period.date === undefined ? undefined : readDay(period.date);
            const week = slots[period.slot]?.week ?? 0;
            return {
                week, date: period.date, place: placeOf(period.first),
                text: `${known ? 'not enough from' : 'none at hand in'} week ${week}${day ? ` (${dayLabel(day)})` : ''}${known ? ' on' : ''}: ${words.of(wanted - there).text} missing`
            };
        }
        if (!handedBack) there -= least(wanted, there);
    }
    return undefined;
}

function remarksOf({ facts, record, handedBack, left, thing, ordered }: Ledger, words: Quantities): string[] {
    const remarks = left.map(({ at }) => `In ${quoted(at.lesson.title)}, an amount of ${quoted(thing.title)} is left out: it cannot be added to the others.`);
    const spoiled = record.spoiled.reduce((sum, amount) => sum + amount, 0n);
    if (spoiled > 0n) remarks.push(`${words.text(spoiled)} of what is bought goes off before it is used.`);
    if (facts.keepsDays !== undefined && !handedBack) remarks.push('What is at hand already is counted as if it kept.');
    if (!ordered.some(Boolean) && record.unmet.some(amount => amount > 0n)) remarks.push('Asked for, not bought.');
    return remarks;
}
