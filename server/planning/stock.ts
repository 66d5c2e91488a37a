import type Fraction from 'fraction.js';
import { amountText, comesWhole, figure, remeasure, type Measure } from './amounts.js';
import { readsPlainly, sensiblyDown } from './rounding.js';
import { dayLabel } from './calendar.js';
import type { Figure, TrailStep } from './figure.js';
import type { WeekNeed } from './gross.js';
import type { Plan } from './plan.js';
import { purchaseInWords } from './supplies/buying-words.js';
import { atHandIn, type Ledger } from './supplies/ledger.js';
import { fractionOf } from './supplies/ratio.js';
import { weeksInWords } from './supplies/order-figures.js';

/** What is there at the start of a week, and what is short of the week's need. */
export interface Stock {
    /** Undefined where nothing is known of the thing. */
    atHand?: Fraction;
    /** `atHand` as people say it, never more than there is. */
    said?: Fraction;
    atHandFigure?: Figure;
    missing?: Fraction;
    /** Orders that arrive too late for the week, in words. */
    onTheWay: string[];
    problems: string[];
}

/**
 * At hand for a week, from the ledger of the term = kits + on hand + orders that arrive by the week's first use, and what the lists of
 * earlier weeks say to buy, less what earlier weeks use up. Orders that are not written down are not counted on.
 */
export function stockOf(plan: Plan, week: number, need: WeekNeed): Stock {
    const { thing, measure } = need;
    const ledger = plan.term.ledger(thing.name);
    const slot = plan.term.cupboard.slotOfWeek(week);
    const problems = [...ledger?.holding.problems ?? []];
    if (!ledger) return { missing: need.value, onTheWay: [], problems };
    const inLedger = fractionOf({ n: atHandIn(ledger, slot), d: ledger.scale });
    const value = remeasure(inLedger, ledger.measure, measure);
    const bought = ledger.record.lots.some(({ period, unused, covers }) => ledger.periods[period]!.slot < slot
        && (ledger.handedBack || unused > 0n || covers.some(other => ledger.periods[other]!.slot >= slot)));
    const isKnown = ledger.holding.value !== undefined || bought || ledger.arrivals.some(arrival => arrival.slot <= slot);
    const atHand = isKnown ? value : undefined;
    const steps = atHand ? stepsTo(ledger, slot, plan) : [];
    if (atHand && bought) problems.push('What the lists of earlier weeks say to buy is counted as bought.');
    const waiting = ledger.holding.arrivals.filter((_, i) => !ledger.arrivals.some(({ index, slot: at }) => index === i && at <= slot)).filter(({ day }) => day);
    if (waiting.length > 0 && plan.week(week)?.from === undefined) {
        problems.push(`Without dates for the weeks, the order of “${thing.title}” is not counted on.`);
    }
    const said = atHand && saidAtHand(atHand, measure, ledger.holding.value);
    if (atHand && said && !said.equals(atHand)) steps.push({ words: `rounded down to ${amountText(said, measure)}` });
    const short = need.value.sub(atHand ?? 0);
    return {
        atHand,
        said: atHand && said,
        atHandFigure: atHand && figure(atHand, measure, steps, said),
        missing: short.gt(0) ? short : undefined,
        onTheWay: waiting.map(a => `${amountText(a.value, ledger.measure)} on order, arriving ${a.day ? dayLabel(a.day) : ''}`),
        problems
    };
}

/** Of whole things nobody has a part. */
export function toHave(short: Fraction, measure: Measure): Fraction {
    return comesWhole(measure) ? short.ceil() : short;
}

/** What the class wrote down itself is left as it was written. */
function saidAtHand(atHand: Fraction, measure: Measure, written: Fraction | undefined): Fraction {
    return written?.equals(atHand) && readsPlainly(atHand, measure) ? atHand : sensiblyDown(atHand, measure);
}

/** From what was there at the start to what is there now: written orders, purchases, use. */
function stepsTo(ledger: Ledger, slot: number, plan: Plan): TrailStep[] {
    const { record, periods, holding, handedBack, arrivals } = ledger;
    const text = (amount: bigint): string => amountText(fractionOf({ n: amount, d: ledger.scale }), ledger.measure);
    const weekOf = (period: number): number => plan.term.cupboard.slots[periods[period]!.slot]?.week ?? 0;
    const arrived = (at: (of: number) => boolean): TrailStep[] => arrivals.filter(arrival => at(arrival.slot)).map(({ index, value }) => {
        const { day, place } = holding.arrivals[index]!;
        return { words: `arrived ${day ? dayLabel(day) : ''}: ${text(value)}`, place };
    });
    const done = periods.findIndex(period => period.slot >= slot);
    const earlier = periods.slice(0, done < 0 ? periods.length : done).map((_, i) => i);
    const lots = record.lots.filter(lot => earlier.includes(lot.period));
    const total = (of: readonly bigint[]): bigint => earlier.reduce((sum, i) => sum + of[i]!, 0n);
    const inPacks = ledger.facts.packs.length > 0;
    const steps = [...holding.steps, ...arrived(at => at < slot)];
    if (inPacks || handedBack) {
        if (lots.length <= 3) {
            for (const lot of lots) {
                const amount = text(lot.bought);
                steps.push({ words: `${purchaseInWords(ledger, lot, amount)} bought for week ${weekOf(lot.period)}${inPacks ? `: ${amount}` : ''}` });
            }
        } else steps.push({ words: `bought for ${weeksInWords([...new Set(lots.map(lot => weekOf(lot.period)))])}: ${text(total(record.receipts))}` });
    }
    if (!handedBack && earlier.length > 0) {
        const beyond = (inPacks ? 0n : total(record.receipts));
        const without = total(record.unmet);
        const weeks = weeksInWords([...new Set(earlier.map(weekOf))]);
        steps.push({
            words: `used in ${weeks}: ${text(total(record.gross))}${beyond > 0n ? `, of which ${text(beyond)} had to be bought` : ''}${without > 0n ? `, of which ${text(without)} were not there` : ''}`
        });
    }
    const spoiled = record.spoiled.reduce((sum, amount, i) => (periods[i]!.slot <= slot ? sum + amount : sum), 0n);
    if (spoiled > 0n) steps.push({ words: `no longer good: ${text(spoiled)}` });
    return [...steps, ...arrived(at => at === slot)];
}
