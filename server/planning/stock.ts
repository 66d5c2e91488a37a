import Fraction from 'fraction.js';
import { amountText, comesWhole, figure, type Measure } from './amounts.js';
import { readsPlainly, sensiblyDown } from './rounding.js';
import { before, dayLabel, readDay } from './calendar.js';
import { isUsedUp } from './demand.js';
import type { Figure, TrailStep } from './figure.js';
import type { WeekNeed } from './gross.js';
import type { Plan } from './plan.js';
import { isBought, sourceOf } from './sources.js';
import { listing } from './wording.js';

/** What is there at the start of a week, and what is short of the week's need. */
export interface Stock {
    /** Undefined where nothing is known of the thing. */
    atHand?: Fraction;
    /** `atHand` as people say it, never more than there is. */
    said?: Fraction;
    atHandFigure?: Figure;
    missing?: Fraction;
    /** Orders that arrive too late for the start of the week, in words. */
    onTheWay: string[];
    problems: string[];
}

/**
 * At hand at the start of a week = kits + on hand + orders that arrived before its first meeting, less what earlier weeks use
 * up; never below nothing. Orders that are not written down are not counted on. What the lists of earlier weeks say to buy is, where it is
 * handed back: so a week's list and the look-ahead of the week before it agree.
 */
export function stockOf(plan: Plan, week: number, need: WeekNeed): Stock {
    const { thing, measure } = need;
    const holding = plan.holdings.of(thing.name, measure);
    const problems = [...holding.problems];
    const steps = [...holding.steps];
    let atHand = holding.value;
    let waiting = holding.arrivals.filter(a => a.day !== undefined);
    const arrive = (number: number): void => {
        const from = plan.week(number)?.from;
        const monday = from === undefined ? undefined : readDay(from);
        if (!monday) return;
        const late: typeof waiting = [];
        for (const arrival of waiting) {
            if (!arrival.day || !before(arrival.day, monday)) late.push(arrival);
            else {
                atHand = (atHand ?? new Fraction(0)).add(arrival.value);
                steps.push({ words: `arrived ${dayLabel(arrival.day)}: ${amountText(arrival.value, measure)}`, place: arrival.place });
            }
        }
        waiting = late;
    };
    const earlier = plan.weeksOf(thing.name).filter(number => number < week);
    if (!isUsedUp(need.use)) {
        const heldByKit = plan.holdings.kitsWith(thing.name).length > 0;
        let bought = false;
        for (const number of earlier) {
            arrive(number);
            const gross = plan.gross(thing.name, number, measure);
            if (!gross || gross.optional || !isBought(thing, sourceOf({ thing, inKit: gross.inKit }, heldByKit), atHand !== undefined)) continue;
            const there: Fraction = atHand ?? new Fraction(0);
            if (!gross.value.gt(there)) continue;
            const missing = toHave(gross.value.sub(there), measure);
            atHand = there.add(missing);
            bought = true;
            steps.push({ words: `${amountText(missing, measure)} ${missing.gt(1) ? 'were' : 'was'} to be bought for week ${number}` });
        }
        if (bought) problems.push('What the lists of earlier weeks say to buy and is handed back is counted as bought.');
    } else if (atHand || waiting.length > 0) {
        const used: number[] = [];
        let total = new Fraction(0);
        let bought = new Fraction(0);
        for (const number of earlier) {
            arrive(number);
            const gross = plan.gross(thing.name, number, measure)?.value;
            if (!gross) continue;
            used.push(number);
            total = total.add(gross);
            const there = atHand ?? new Fraction(0);
            if (gross.gt(there)) bought = bought.add(gross.sub(there));
            if (atHand) atHand = there.gt(gross) ? there.sub(gross) : new Fraction(0);
        }
        if (used.length > 0) steps.push(usedStep(used, total, bought, measure));
    }
    arrive(week);
    if (waiting.length > 0 && plan.week(week)?.from === undefined) {
        problems.push(`Without dates for the weeks, the order of “${thing.title}” is not counted on.`);
    }
    const said = atHand && saidAtHand(atHand, measure, holding.value);
    if (atHand && said && !said.equals(atHand)) steps.push({ words: `rounded down to ${amountText(said, measure)}` });
    const short = need.value.sub(atHand ?? 0);
    return {
        atHand,
        said: atHand && said,
        atHandFigure: atHand && figure(atHand, measure, steps, said),
        missing: short.gt(0) ? short : undefined,
        onTheWay: waiting.map(a => `${amountText(a.value, measure)} on order, arriving ${a.day ? dayLabel(a.day) : ''}`),
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

function usedStep(weeks: readonly number[], total: Fraction, bought: Fraction, measure: Measure): TrailStep {
    const words = weeks.length === 1 ? `week ${weeks[0]}` : weeks.length <= 4 ? `weeks ${listing(weeks.map(String))}`
        : `${weeks.length} weeks from ${weeks[0]} to ${weeks[weeks.length - 1]}`;
    const beyond = bought.gt(0) ? `, of which ${amountText(bought, measure)} had to be bought` : '';
    return { words: `used in ${words}: ${amountText(total, measure)}${beyond}` };
}
