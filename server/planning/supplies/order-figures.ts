import { moneyFigure, moneyText } from '../buying/money.js';
import { planWeekByWeek } from '../buying/lots.js';
import type { TrailStep } from '../figure.js';
import type { OrderFigures } from '../supply-figures.js';
import { listing } from '@haversack/language/facts/wording';
import { lateFigure, packCounts, purchaseInWords, whenInWords } from './buying-words.js';
import type { Ledger } from './ledger.js';
import type { LedgerOrder } from './orders.js';
import { Quantities } from './quantities.js';

export function orderFigures(order: LedgerOrder, today: string | undefined, words = new Quantities(order.ledger)): OrderFigures {
    const { ledger, lot, costs } = order;
    const { thing, facts, record, periods } = ledger;
    const net = netOf(order);
    const [cost] = costs;
    return {
        id: order.id, name: thing.name, title: thing.title, place: { uri: thing.uri, range: thing.at }, source: ledger.source,
        week: order.week, covers: order.covers,
        net: words.needed(net.reduce((sum, { amount }) => sum + amount, 0n), netTrail(order, words)),
        bought: words.there(lot.bought, [{ words: `${purchaseInWords(ledger, lot, words.text(lot.bought))}: ${words.text(lot.bought)}` }]),
        leftOver: lot.unused > 0n ? words.rest(lot.unused) : undefined,
        packs: packCounts(ledger, lot),
        cost: cost && lot.cost !== undefined ? moneyFigure(cost) : undefined,
        delivery: facts.delivery && moneyFigure(facts.delivery),
        neededBy: order.neededBy, orderBy: order.orderBy, orderWeek: order.orderWeek,
        late: lateFigure(order, today),
        when: whenInWords(order, periods[lot.period]?.first.at.meeting.label),
        joined: joinedWords(order, record.lack)
    };
}

/** What of the lack of each period the order serves. */
export function netOf({ ledger: { record }, lot }: LedgerOrder): { period: number; amount: bigint }[] {
    let rest = lot.bought - lot.unused;
    const all = lot.covers.map(period => ({ period, amount: record.lack[period] ?? 0n }));
    const more = all.reduce((sum, { amount }) => sum + amount, 0n) - rest;
    // What an older order left over serves the first of its weeks too, what a newer one brings the last.
    if (more > 0n && all[0] && all.length > 0) {
        const older = oldStockFor(record, lot);
        all[0].amount -= older < all[0].amount ? older : 0n;
    }
    return all.map(({ period, amount }) => {
        const taken = amount < rest ? amount : rest;
        rest -= taken;
        return { period, amount: taken };
    });
}

/** What earlier orders have left for the period that this one comes in. */
function oldStockFor({ lots, lack }: Ledger['record'], lot: LedgerOrder['lot']): bigint {
    const before = lots.filter(({ period }) => period < lot.period);
    const served = lack.slice(0, lot.period).reduce((sum, amount) => sum + amount, 0n);
    const useful = before.reduce((sum, { bought, unused }) => sum + bought - unused, 0n);
    return useful > served ? useful - served : 0n;
}

function netTrail(order: LedgerOrder, words: Quantities): TrailStep[] {
    const { ledger } = order;
    const { record, periods, safety } = ledger;
    const weekOf = (period: number): number => order.weeks[order.lot.covers.indexOf(period)] ?? order.week;
    const steps = netOf(order).flatMap(({ period, amount }): TrailStep[] => {
        if (amount === 0n) return [];
        const first = periods[period]?.first;
        const line = first?.demand.lines[0]?.line;
        return [{ words: `week ${weekOf(period)}: ${words.text(amount)} of ${words.text(record.gross[period] ?? 0n)} needed`, place: line && { uri: line.uri, range: line.need.at } }];
    });
    if (safety > 0n) steps.push({ words: `${words.text(safety)} stay in reserve` });
    return steps;
}

/** Nothing to say of an order for one week. */
function joinedWords({ ledger, lot, covers }: LedgerOrder, lack: readonly bigint[]): string | undefined {
    if (covers.length < 2) return undefined;
    const { facts, scale } = ledger;
    const demand = netOf({ ledger, lot } as LedgerOrder);
    const packs = facts.packs.map(({ size, cost }) => ({ size: size.n * (scale / size.d), cost: cost?.minor }));
    const delivery = facts.delivery && (facts.currency === undefined || facts.delivery.currency === facts.currency) ? facts.delivery.minor : undefined;
    const first = planWeekByWeek({ demand: [demand[0]?.amount ?? 0n], packs, delivery }).orders[0];
    if (packs.length > 0 && first && first.bought >= lot.bought) return `what is not used then serves ${weeksInWords(covers.slice(1))} too`;
    const apart = planWeekByWeek({ demand: lack.map((_, period) => demand.find(own => own.period === period)?.amount ?? 0n), packs, delivery });
    const less = apart.cost !== undefined && lot.cost !== undefined ? apart.cost - lot.cost : 0n;
    const saving = less > 0n && facts.currency !== undefined ? `: ${moneyText({ minor: less, currency: facts.currency })} less than week by week` : '';
    return `one order for ${weeksInWords(covers)}${saving}`;
}

/** "week 3", "weeks 3 and 5", "weeks 3 to 6", "5 weeks from 3 to 11". */
export function weeksInWords(weeks: readonly number[]): string {
    const [first, last] = [weeks[0], weeks[weeks.length - 1]];
    if (weeks.length === 1) return `week ${first}`;
    if (weeks.length > 2 && (last ?? 0) - (first ?? 0) === weeks.length - 1) return `weeks ${first} to ${last}`;
    return weeks.length <= 4 ? `weeks ${listing(weeks.map(String))}` : `${weeks.length} weeks from ${first} to ${last}`;
}
