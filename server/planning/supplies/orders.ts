import type { Sum } from '../buying/money.js';
import type { Cupboard } from './cupboard.js';
import type { Ledger } from './ledger.js';
import type { Lot } from './material-requirements.js';

/** One purchase in numbers; amounts in the ledger's own. There are thousands: what is read only where one is shown is worked out then. */
export class LedgerOrder {
    constructor(
        readonly ledger: Ledger, readonly lot: Lot, private readonly cupboard: Cupboard,
        /** Of the class's own weeks the one that it must be there for. */
        readonly week: number,
        readonly neededBy: string | undefined,
        /** Absent: bought on the day. */
        readonly orderBy: string | undefined,
        /** The week in which it must be ordered; 0 for before the first. */
        readonly orderWeek: number
    ) {}

    /** Stable over re-planning: thing and week. */
    get id(): string {
        return `${this.ledger.name}@${this.week}${this.cupboard.members.length === 1 ? '' : countBefore(this.ledger, this.lot, this.week, this.cupboard)}`;
    }

    /** The weeks of the lot's own periods, one for one. */
    get weeks(): number[] {
        return this.lot.covers.map(period => weekOf(this.ledger, period, this.cupboard));
    }

    /** Of the class's own weeks all that it serves. */
    get covers(): number[] {
        return this.cupboard.members.length === 1 ? this.weeks : [...new Set(this.weeks)];
    }

    /** Packs and delivery; empty where no price is declared. */
    get costs(): Sum[] {
        return costsOf(this.ledger, [this.lot]);
    }
}

export function ordersOf(ledger: Ledger, cupboard: Cupboard): LedgerOrder[] {
    const { record, periods, facts: { lead } } = ledger;
    return record.lots.map(lot => {
        const neededBy = periods[lot.period]?.date;
        const week = weekOf(ledger, lot.period, cupboard);
        const last = lead.days > 0 && neededBy !== undefined ? cupboard.orderDay(neededBy, lead) : undefined;
        return new LedgerOrder(ledger, lot, cupboard, week, neededBy, last?.day, last?.week ?? Math.max(0, week - Math.ceil(lead.days / 7)));
    });
}

/** What lots of one ledger cost together, one sum a currency. */
export function costsOf({ facts: { currency, delivery } }: Ledger, lots: readonly Lot[]): Sum[] {
    let packs: bigint | undefined;
    let delivered = 0n;
    for (const { cost } of lots) {
        if (cost !== undefined && currency !== undefined) packs = (packs ?? 0n) + cost;
        if (delivery && (cost === undefined || delivery.currency !== currency)) delivered += delivery.minor;
    }
    const costs: Sum[] = packs !== undefined && currency !== undefined ? [{ minor: packs, currency }] : [];
    return delivery && delivered > 0n ? [...costs, { minor: delivered, currency: delivery.currency }] : costs;
}

function weekOf({ periods }: Ledger, period: number, { slots }: Cupboard): number {
    return slots[periods[period]?.slot ?? -1]?.week ?? 0;
}

/** An order is late when its last day has passed and the need has not. */
export function isLate({ orderBy, neededBy }: Pick<LedgerOrder, 'orderBy' | 'neededBy'>, today: string | undefined): boolean {
    return today !== undefined && orderBy !== undefined && neededBy !== undefined && orderBy < today && today <= neededBy;
}

/** In calendar weeks of several classes two orders may fall to one week of one class. */
function countBefore(ledger: Ledger, lot: Lot, week: number, cupboard: Cupboard): string {
    const same = ledger.record.lots.filter(other => other.period < lot.period && weekOf(ledger, other.period, cupboard) === week).length;
    return same === 0 ? '' : `.${same + 1}`;
}
