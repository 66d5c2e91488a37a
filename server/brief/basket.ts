/** What a purchase is made of, in sentences that the week's brief and the term share. */
import type { MoneyFigure, PackCount, Quantity } from '../planning/supply-figures.js';
import { sentence } from './sentences.js';
import { words } from './words.js';

export interface Basket {
    packsToBuy?: PackCount[];
    cost?: MoneyFigure;
    delivery?: MoneyFigure;
    /** The weeks it serves. */
    covers?: number[];
    leftOver?: Quantity;
    late?: { days: number; words: string };
    /** Why one order serves several weeks. */
    joined?: string;
}

/** "week 4", "weeks 4 and 5", "weeks 1, 2 and 4", "weeks 4 to 7" */
export function weeksInWords(weeks: readonly number[]): string {
    const [first, last] = [weeks[0], weeks[weeks.length - 1]];
    if (first === undefined || last === undefined) return '';
    if (weeks.length === 1) return `week ${first}`;
    if (weeks.length > 2 && last - first === weeks.length - 1) return `weeks ${first} to ${last}`;
    return `weeks ${weeks.slice(0, -1).join(', ')} and ${last}`;
}

/** "5 days too late: the last day to order was Fri 18 Sep." */
export function lateWords({ late }: Basket): string | undefined {
    return late && sentence(late.words);
}

/** "Costs 7.30 EUR, of it 2.50 EUR for delivery. Covers weeks 4 and 5; left over: 190 g." */
export function basketFacts({ cost, delivery, covers = [], leftOver, joined }: Basket): string | undefined {
    const price = cost && `${words.cost} ${cost.text}${delivery ? `, of it ${delivery.text} for delivery` : ''}`;
    const serves = [
        covers.length > 1 && joined === undefined && `${words.covers} ${weeksInWords(covers)}`,
        leftOver && !/^0(?:\.0+)?$/.test(leftOver.exact) && `${words.leftOver}: ${leftOver.text}`
    ].filter(Boolean).join('; ');
    // "One order for weeks 4 and 5" says what it covers.
    return [price, joined, serves].filter(fact => fact).map(fact => sentence(fact ?? '')).join(' ') || undefined;
}

/** All of it, a sentence a line. */
export function basketInWords(basket: Basket): string[] {
    const { packsToBuy = [] } = basket;
    return [lateWords(basket), packsToBuy.length > 0 ? `${words.toBuy}: ${packsToBuy.map(pack => pack.text).join(', ')}.` : undefined, basketFacts(basket)].filter(told => told !== undefined);
}
