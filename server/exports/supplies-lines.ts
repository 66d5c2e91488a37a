/** What the text, the Markdown, the shopping list and the calendar say of stock and buying alike. */
import type { ClashFigures, MoneyFigure, OrderFigures, ShortageFigures, SupplyFigures } from '../planning/supply-figures.js';

/** Of the whole term, or of one week of it; orders in the order in which somebody acts on them. */
export function suppliesOf({ orders, shortages, clashes, weeks }: SupplyFigures, week: number | undefined): Pick<SupplyFigures, 'orders' | 'shortages' | 'clashes'> {
    if (week === undefined) return { orders: inOrder(orders), shortages, clashes };
    const { from, to } = weeks.find(({ number }) => number === week) ?? {};
    return {
        orders: inOrder(orders.filter(order => order.week === week)), shortages: shortages.filter(shortage => shortage.week === week),
        clashes: clashes.filter(({ date }) => from !== undefined && to !== undefined && from <= date && date <= to)
    };
}

/** By last day to order, then by day of need, then by title. */
function inOrder(orders: readonly OrderFigures[]): OrderFigures[] {
    const key = (order: OrderFigures): string => order.orderBy ?? order.neededBy ?? '';
    return [...orders].sort((a, b) => compare(key(a), key(b)) || a.week - b.week || compare(a.title, b.title));
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}

/** "2 packs of 100 at 14.50 USD and 1 pack of 20", or the amount alone where nothing is said of packs. */
export function whatToBuy({ packs, bought }: OrderFigures): string {
    return packs.map(({ text }) => text).join(' and ') || bought.text;
}

/** "80 needed, 60 at hand, 20 missing". */
export function shortageLine({ needed, atHand, missing }: ShortageFigures): string {
    return `${needed.text} needed, ${atHand.text} at hand, ${missing.text} missing`;
}

/** "4 for Shed and 3 for Barn, 6 at hand, 1 missing". */
export function clashLine({ classes, atHand, missing }: ClashFigures): string {
    return `${classes.map(({ needed, title }) => `${needed.text} for ${title}`).join(' and ')}, ${atHand.text} at hand, ${missing.text} missing`;
}

/** "12.00 EUR and 29.00 USD": currencies are never added to one another. */
export function moneyLine(sums: readonly MoneyFigure[]): string {
    return sums.map(({ text }) => text).join(' and ') || 'nothing';
}
