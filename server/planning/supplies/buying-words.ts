import { dayOfIso } from '@haversack/language/attachments/day-numbers';
import { unitNamed } from '@haversack/language/facts/units';
import type { Amount, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { moneyFigure, moneyText } from '../buying/money.js';
import { readExact } from '../exact.js';
import type { OrderFigures, PackCount } from '../supply-figures.js';
import { counted } from '@haversack/language/facts/wording';
import { shortDay } from '../schedule/day-words.js';
import type { Ledger } from './ledger.js';
import type { Lot } from './material-requirements.js';
import { isLate, type LedgerOrder } from './orders.js';

/** "packs of 100 at 14.50 USD", as declared. */
export function packsInWords(thing: ThingSheet): string[] {
    if (thing.kind !== 'material') return [];
    return thing.packs.map(p => `packs of ${packSize(p.amount, thing)}${p.cost ? ` at ${p.cost.value} ${p.cost.currency}` : ''}`);
}

/** The number as declared, never in another unit, since it stands so on the pack: "25 sheets", "1 sheet". */
function packSize({ value, unit }: Amount, { counted: own }: MaterialSheet): string {
    if (unit === undefined) return value;
    const known = unitNamed(unit);
    const isOwn = own && [own.one, own.many].some(word => word.toLowerCase() === unit.toLowerCase());
    const [one, many] = isOwn ? [own.one, own.many] : known ? [known.symbol, known.plural] : [unit, unit];
    const size = readExact(value);
    return `${value} ${size?.gt(0) && size.lte(1) ? one : many}`;
}

/** The packs of one purchase; empty where none are declared. */
export function packCounts({ thing, facts }: Ledger, { counts }: Lot): PackCount[] {
    return counts.flatMap((count, i): PackCount[] => {
        const fact = facts.packs[i];
        if (!fact || count === 0) return [];
        const cost = fact.cost && { minor: fact.cost.minor * BigInt(count), currency: fact.cost.currency };
        return [{
            count,
            text: `${packsOf(count, fact, thing)}${fact.cost ? ` at ${moneyText(fact.cost)}` : ''}`,
            cost: cost && moneyFigure(cost),
            place: { uri: thing.uri, range: fact.at }
        }];
    });
}

/** "2 packs of 500 g and 1 pack of 2 kg"; the amount itself where no packs are declared. */
export function purchaseInWords(ledger: Ledger, lot: Lot, amount: string): string {
    const packs = lot.counts.flatMap((count, i) => {
        const fact = ledger.facts.packs[i];
        return fact && count > 0 ? [packsOf(count, fact, ledger.thing)] : [];
    });
    return packs.length > 0 ? packs.join(' and ') : amount;
}

function packsOf(count: number, { pack }: Ledger['facts']['packs'][number], thing: ThingSheet): string {
    return pack && thing.kind === 'material' ? `${counted(count, 'pack')} of ${packSize(pack.amount, thing)}` : counted(count, 'copy', 'copies');
}

/** "needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep". */
export function whenInWords({ ledger: { facts: { lead } }, neededBy, orderBy }: LedgerOrder, label: string | undefined): string {
    const needed = dayIn(neededBy);
    const by = dayIn(orderBy);
    const span = counted(lead.days, lead.working ? 'working day' : 'day');
    const arrives = lead.days > 0 ? `; arrives in ${span}, so order ${by === undefined ? `at least ${span} before` : `by ${shortDay(by)}`}` : '';
    return `needed ${needed === undefined ? `on ${label ?? 'this week'}` : shortDay(needed)}${arrives}`;
}

export function lateFigure(order: LedgerOrder, today: string | undefined): OrderFigures['late'] {
    const by = dayIn(order.orderBy);
    const now = dayIn(today);
    if (by === undefined || now === undefined || !isLate(order, today)) return undefined;
    return { days: now - by, words: `${counted(now - by, 'day')} too late: the last day to order was ${shortDay(by)}` };
}

function dayIn(date: string | undefined): number | undefined {
    return date === undefined ? undefined : dayOfIso(date);
}
