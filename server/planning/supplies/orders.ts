import type { Sum } from '../buying/money.js';
import type { Cupboard } from './cupboard.js';
import type { Ledger } from './ledger.js';
import type { Lot } from './material-requirements.js';

/** One purchase in numbers; amounts in the ledger's own. */
export interface LedgerOrder {
    /** Stable over re-planning: thing and week. */
    id: string;
    ledger: Ledger;
    lot: Lot;
    /** Of the class's own weeks: the one that it must be there for, and all that it serves. */
    week: number;
    covers: number[];
    /** The weeks of the lot's own periods, one for one. */
    weeks: number[];
    neededBy?: string;
    /** Absent: bought on the day. */
    orderBy?: string;
    /** The week in which it must be ordered; 0 for before the first. */
    orderWeek: number;
    /** Packs and delivery; empty where no price is declared. */
    costs: Sum[];
}

export function ordersOf(ledger: Ledger, cupboard: Cupboard): LedgerOrder[] {
    const { record, periods, facts, name } = ledger;
    const weekOf = (period: number): number => cupboard.slots[periods[period]?.slot ?? -1]?.week ?? 0;
    if (record.lots.length === 0) return [];
    return record.lots.map((lot): LedgerOrder => {
        const neededBy = periods[lot.period]?.date;
        const week = weekOf(lot.period);
        const last = facts.lead.days > 0 && neededBy !== undefined ? cupboard.orderDay(neededBy, facts.lead) : undefined;
        const orderBy = last?.day;
        const weeks = lot.covers.map(weekOf);
        const costs: Sum[] = lot.cost !== undefined && facts.currency !== undefined ? [{ minor: lot.cost, currency: facts.currency }] : [];
        if (facts.delivery && (lot.cost === undefined || facts.delivery.currency !== facts.currency)) costs.push(facts.delivery);
        return {
            id: `${name}@${week}${cupboard.members.length === 1 ? '' : countBefore(lot, record.lots, weekOf)}`, ledger, lot, week, weeks, covers: cupboard.members.length === 1 ? weeks : [...new Set(weeks)], neededBy, orderBy, costs,
            orderWeek: last?.week ?? Math.max(0, week - Math.ceil(facts.lead.days / 7))
        };
    });
}

/** An order is late when its last day has passed and the need has not. */
export function isLate({ orderBy, neededBy }: Pick<LedgerOrder, 'orderBy' | 'neededBy'>, today: string | undefined): boolean {
    return today !== undefined && orderBy !== undefined && neededBy !== undefined && orderBy < today && today <= neededBy;
}

/** In calendar weeks of several classes two orders may fall to one week of one class. */
function countBefore(lot: Lot, lots: readonly Lot[], weekOf: (period: number) => number): string {
    const same = lots.filter(other => other.period < lot.period && weekOf(other.period) === weekOf(lot.period)).length;
    return same === 0 ? '' : `.${same + 1}`;
}
