import Papa from 'papaparse';
import type { SupplyFigures } from '../planning/supply-figures.js';
import { suppliesOf, whatToBuy } from './supplies-lines.js';

/** The headings, in order. */
export const shoppingColumns = ['Order by', 'Needed by', 'Week', 'Thing', 'Short in all', 'Buy', 'Left over', 'Cost', 'Currency', 'From', 'Serves weeks', 'Remark'] as const;

/**
 * A cell that a spreadsheet would read as a formula (OWASP, "CSV Injection": = + - @ and tab or carriage return first, their
 * full-width forms too, also after blanks and characters that nobody sees) begins with an apostrophe instead.
 */
const formula = /^(?:[\s\p{Cc}\p{Cf}]*[=+\-@＝＋－＠]|[\s\0]*[\t\r])/u;

/**
 * What to buy as CSV (RFC 4180: CRLF, quotes doubled), one line an order, the earliest last day to order first. Begins with a byte order
 * mark, since spreadsheets otherwise take the text for another encoding.
 */
export function shoppingList(supplies: SupplyFigures, week?: number): string {
    const rows = suppliesOf(supplies, week).orders.map(order => [
        order.orderBy ?? '', order.neededBy ?? '', String(order.week), order.title, order.net.text,
        whatToBuy(order), order.leftOver?.text ?? '', order.cost ? amountOf(order.cost.text, order.cost.currency) : '', order.cost?.currency ?? '',
        order.source, order.covers.join(' '), [order.late?.words, order.joined].filter(Boolean).join('; ')
    ]);
    return `\ufeff${Papa.unparse([[...shoppingColumns], ...rows.map(row => row.map(safe))], { newline: '\r\n' })}\r\n`;
}

function safe(cell: string): string {
    return formula.test(cell) ? `'${cell}` : cell;
}

/** The number alone, so that a spreadsheet can add it up. */
function amountOf(text: string, currency: string): string {
    return text.replace(currency, '').trim();
}
