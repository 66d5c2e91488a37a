import { amountText } from './amounts.js';
import type { Plan } from './plan.js';
import { clashFigures } from './supplies/shortage-figures.js';
import { amountIn, usesIn } from './supplies/ledger.js';
import { fractionOf } from './supplies/ratio.js';
import { listing, quoted } from '@haversack/language/facts/wording';

/**
 * What the other classes of a shared cupboard mean for a week, in whole sentences: days on which it does not hold enough for all of them, and
 * what they use up beside the class. Empty for a class with a cupboard of its own.
 */
export function sharedWeek(plan: Plan, week: number): string[] {
    const { term } = plan;
    const { from, to } = plan.week(week) ?? {};
    if (term.cupboard.members.length < 2 || from === undefined || to === undefined) return [];
    const clashes = term.clashes().filter(({ date }) => from <= date && date <= to).map(clash => {
        const { meeting, title, classes, atHand, missing } = clashFigures(clash);
        return `${meeting}: ${missing.text} of ${quoted(title)} ${missing.text === '1' ? 'is' : 'are'} missing: ${listing(classes.map(c => `${c.needed.text} for ${quoted(c.title)}`))}, ${atHand.text} at hand.`;
    });
    const others = [...plan.needs(week).values()].flatMap(({ thing }) => usedByOthers(plan, week, thing.name));
    return [...clashes, ...others];
}

function usedByOthers({ term }: Plan, week: number, name: string): string[] {
    const ledger = term.ledger(name);
    const slot = term.cupboard.slotOfWeek(week);
    const period = ledger?.handedBack === false ? ledger.periods.find(one => one.slot === slot) : undefined;
    if (!ledger || !period) return [];
    const { measure, thing } = ledger;
    return term.cupboard.members.slice(1).flatMap(other => {
        const amounts = usesIn(period).filter(({ at }) => at.plan === other).map(use => fractionOf(amountIn(use, measure)));
        const [first, ...more] = amounts;
        if (!first) return [];
        const total = more.reduce((sum, amount) => sum.add(amount), first);
        return [`${quoted(other.audience.class?.title ?? '')} uses ${amountText(total, measure)} of ${quoted(thing.title)} this week too, from the same cupboard.`];
    });
}
