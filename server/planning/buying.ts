import type { Figure } from './figure.js';
import type { BuyFigures } from './figures.js';
import type { Plan } from './plan.js';
import { isBought } from './sources.js';
import { packsInWords, whenInWords } from './supplies/buying-words.js';
import { orderFigures } from './supplies/order-figures.js';
import type { LedgerOrder } from './supplies/orders.js';
import { weekThing, type WeekThing } from './things.js';

/**
 * What to buy or order for a week: the purchases that the term's ledgers place in it, in the packs that are cheapest over all the weeks that
 * they serve. What is wholly optional is not bought, nor what comes from home or the library, unless packs are declared and some is known to be there.
 */
export function buyList(plan: Plan, things: readonly WeekThing[], week: number, today?: string): BuyFigures[] {
    return things.flatMap(thing => plan.term.ordersFor(thing.figures.name).filter(order => order.week === week).map(order => buy(order, thing, today)));
}

/**
 * What later weeks have to have ordered now: it must be ordered by, or is needed at, next week's first meeting, so that it cannot wait for
 * next week's brief. Without dates only next week's is told.
 */
export function orderNow(plan: Plan, current: number, today?: string): BuyFigures[] {
    const next = plan.week(current + 1);
    if (!next) return [];
    const pressing = plan.term.orders().filter(order => order.week > current && presses(order, next.from, next.meetings[0]?.label));
    const weeks = [...new Set(pressing.map(({ week }) => week))].filter(week => next.from !== undefined || week === current + 1);
    return weeks.flatMap(week => [...plan.needs(week).values()].flatMap(need => {
        const own = pressing.filter(order => order.week === week && order.ledger.name === need.thing.name);
        return own.length > 0 ? own.map(order => buy(order, weekThing(plan, week, need), today)) : [];
    }));
}

function presses({ orderBy, neededBy, ledger: { facts, periods }, lot }: LedgerOrder, nextFrom: string | undefined, firstMeeting: string | undefined): boolean {
    if (nextFrom === undefined || neededBy === undefined) return facts.lead.days > 0 || periods[lot.period]?.first.at.meeting.label === firstMeeting;
    return (orderBy ?? neededBy) <= nextFrom;
}

function buy(order: LedgerOrder, { figures, need, stock }: WeekThing, today: string | undefined): BuyFigures {
    const { packs, cost, covers, leftOver, late, net, joined } = orderFigures(order, today);
    return {
        name: figures.name,
        title: figures.title,
        place: figures.place,
        missing: missingOf(figures, need, stock) ?? net,
        packs: packsInWords(need.thing),
        source: figures.source,
        neededBy: order.neededBy,
        orderBy: order.orderBy,
        when: `${whenInWords(order, need.uses[0]?.meeting.label)}${stock.onTheWay.map(words => `; ${words}`).join('')}`,
        packsToBuy: packs.length > 0 ? packs : undefined,
        cost, covers, leftOver, late, joined
    };
}

/** Absent where only the reserve, or another class of the cupboard, needs more. */
function missingOf(figures: WeekThing['figures'], { thing }: WeekThing['need'], { atHand }: WeekThing['stock']): Figure | undefined {
    return isBought(thing, figures.source, atHand !== undefined) ? figures.missing : undefined;
}
