import type Fraction from 'fraction.js';
import { amountText, remeasure } from '../amounts.js';
import { moneyFigure, moneyText, type Sum } from '../buying/money.js';
import { readsPlainly, sensiblyUp } from '../rounding.js';
import type { LedgerFigures, SupplyChange } from '../ledger-figures.js';
import type { ScheduleFigures } from '../schedule-figures.js';
import type { ClassTerm } from '../supplies/class-term.js';
import type { Ledger } from '../supplies/ledger.js';
import { fractionOf } from '../supplies/ratio.js';
import { needOf, termNeed } from '../supplies/record-figures.js';

type Compared = Pick<LedgerFigures, 'meetings' | 'supplies' | 'money'>;

/** One class's term twice, before its changes and with them: meetings, things whose amount differs, and money, each currency by itself. */
export function compareTerms(before: ClassTerm, after: ClassTerm): Compared {
    const names = new Set([...before.names(), ...after.names()]);
    return {
        meetings: meetings(before.plan.schedule, after.plan.schedule),
        supplies: [...names].flatMap(name => supplyChange(side(before, name), side(after, name)) ?? []),
        money: money(before.costs(), after.costs())
    };
}

function meetings(before: ScheduleFigures, after: ScheduleFigures): LedgerFigures['meetings'] {
    const [then, now] = [taughtDays(before), taughtDays(after)];
    return { before: then.length, after: now.length, lastBefore: then.at(-1)?.date, lastAfter: now.at(-1)?.date };
}

function taughtDays({ weeks }: ScheduleFigures): { date?: string }[] {
    return weeks.flatMap(week => week.meetings).filter(({ taught }) => taught.length > 0);
}

interface Side {
    term: ClassTerm;
    ledger: Ledger;
}

function side(term: ClassTerm, name: string): Side | undefined {
    const ledger = term.ledger(name);
    return ledger && needOf(ledger) > 0n ? { term, ledger } : undefined;
}

/** Undefined where the amount is the same. */
function supplyChange(before: Side | undefined, after: Side | undefined): SupplyChange | undefined {
    const shown = (after ?? before)?.ledger.thing;
    if (!shown) return undefined;
    const difference = before && after ? differenceInWords(before.ledger, after.ledger) : before ? 'no longer needed' : 'new';
    if (difference === undefined) return undefined;
    const figure = (one: Side | undefined): SupplyChange['before'] => one && termNeed(one.ledger, one.term.cupboard);
    return { name: shown.name, title: shown.title, place: { uri: shown.uri, range: shown.at }, before: figure(before), after: figure(after), difference };
}

/** "40 fewer", "1.2 kg more": of the amounts as they are told, so that the three fit together. */
function differenceInWords(before: Ledger, after: Ledger): string | undefined {
    const former = remeasure(toldNeed(before), before.measure, after.measure);
    if (!former) return 'in another unit';
    const now = toldNeed(after);
    if (former.equals(now)) return undefined;
    const difference = now.sub(former).abs();
    const inFormer = readsPlainly(difference, after.measure) ? undefined : remeasure(difference, after.measure, before.measure);
    return `${inFormer ? amountText(inFormer, before.measure) : amountText(difference, after.measure)} ${now.gt(former) ? 'more' : after.measure.is === 'measured' ? 'less' : 'fewer'}`;
}

function toldNeed(ledger: Ledger): Fraction {
    const value = fractionOf({ n: needOf(ledger), d: ledger.scale });
    return readsPlainly(value, ledger.measure) ? value : sensiblyUp(value, ledger.measure);
}

function money(before: readonly Sum[], after: readonly Sum[]): LedgerFigures['money'] {
    const currencies = [...new Set([...before, ...after].map(({ currency }) => currency))].sort();
    return currencies.map(currency => {
        const [then, now] = [before, after].map(sums => sums.find(sum => sum.currency === currency));
        const minor = (now?.minor ?? 0n) - (then?.minor ?? 0n);
        const amount = moneyText({ minor: minor < 0n ? -minor : minor, currency });
        return {
            currency, before: then && moneyFigure(then), after: now && moneyFigure(now),
            difference: minor === 0n ? 'the same' : `${amount} ${minor < 0n ? 'less' : 'more'}`
        };
    });
}
