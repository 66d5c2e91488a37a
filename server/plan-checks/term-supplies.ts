import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import { measureOf } from '../planning/amounts.js';
import type { PlanningCache } from '../planning/cache.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import type { ClashFigures, OrderFigures, ShortageFigures, ThingRecord } from '../planning/supply-figures.js';
import type { ClassTerm as Ledgers } from '../planning/supplies/class-term.js';
import { orderFigures } from '../planning/supplies/order-figures.js';
import { isLate } from '../planning/supplies/orders.js';
import { recordFigures } from '../planning/supplies/record-figures.js';
import { clashFigures, shortageFigures } from '../planning/supplies/shortage-figures.js';
import type { MeetingShortage } from '../planning/supplies/shortages.js';
import { termPlanOf } from '../planning/supplies/term-plan.js';
import { isPast } from './words.js';

/** Only what is needed by a day can be late. */
export type LateOrder = OrderFigures & { neededBy: string };

/** Of the stock and buying of one class, what there is something to be said of as of a day; figures are made for no more. */
export interface TermSupplies {
    /** Classes that use the cupboard, by name; orders and clashes are those of all of them. */
    cupboard: readonly string[];
    /** The first purchase of each thing that is too late if it is made today. */
    late: readonly LateOrder[];
    /** Meetings to come that are short of a reusable thing, where no order mends it: of each thing the first, and how many there are. */
    shortages: readonly { first: ShortageFigures; meetings: number }[];
    /** Days to come on which classes of one cupboard clash. */
    clashes: readonly ClashFigures[];
    record(thing: string): ThingRecord | undefined;
    /** Whether any of it is noted as being there, used in the course or not. */
    holds(thing: string): boolean;
    ordersFor(thing: string): readonly OrderFigures[];
}

/** Each part is worked out when first asked for. */
export function termSupplies(programme: Programme, group: string, schedule: ScheduleFigures, today: string, cache: PlanningCache): TermSupplies {
    const term = termPlanOf(cache, programme).term({ class: group }, schedule);
    const once = <T>(work: () => T): (() => T) => {
        let made: { value: T } | undefined;
        return () => (made ??= { value: work() }).value;
    };
    const late = once(() => firstOfEach(term.late(today), ({ ledger }) => ledger.name).map(({ first }): LateOrder => ({ ...orderFigures(first, today), neededBy: first.neededBy! })));
    const shortages = once(() => shortagesToTell(term, today));
    const clashes = once(() => term.clashes().filter(({ date }) => !isPast(date, today)).map(clashFigures));
    return {
        cupboard: term.cupboard.members.flatMap(({ audience }) => audience.class?.name ?? []).sort(),
        get late() { return late(); },
        get shortages() { return shortages(); },
        get clashes() { return clashes(); },
        record(thing) {
            const ledger = term.ledger(thing);
            return ledger?.thing.kind === 'material' ? recordFigures(ledger, term.ordersFor(thing), term.cupboard) : undefined;
        },
        holds(thing) {
            const sheet = thingNamed(programme, thing);
            return sheet !== undefined && (term.holdings.of(thing, measureOf(sheet)).value?.gt(0) ?? false);
        },
        ordersFor: thing => term.ordersFor(thing).map(order => orderFigures(order, today))
    };
}

function shortagesToTell(term: Ledgers, today: string): TermSupplies['shortages'] {
    const open = term.shortages().filter(shortage => !isPast(shortage.uses[0]!.at.meeting.date, today) && !isMended(shortage, today));
    return firstOfEach(open, ({ ledger }) => ledger.name).map(({ first, count }) => ({ first: shortageFigures(first, term), meetings: count }));
}

/** Where nothing can be bought, an order has no packs. */
function isMended({ order, ledger }: MeetingShortage, today: string): boolean {
    return order !== undefined && ledger.facts.packs.length > 0 && !isLate(order, today);
}

function firstOfEach<T>(list: readonly T[], nameOf: (one: T) => string): { first: T; count: number }[] {
    const groups = new Map<string, { first: T; count: number }>();
    for (const one of list) {
        const known = groups.get(nameOf(one));
        if (known) known.count++;
        else groups.set(nameOf(one), { first: one, count: 1 });
    }
    return [...groups.values()];
}
