import type { Programme } from '@haversack/language/sheets/programme';
import type { Wanted } from '../audience.js';
import { moneyFigure, perLearner, sumsByCurrency } from '../buying/money.js';
import { newPlanningCache, type PlanningCache } from '../cache.js';
import { demandOf } from '../demand.js';
import type { ScheduleFigures } from '../schedule-figures.js';
import type { CostFigures, SupplyFigures } from '../supply-figures.js';
import { listing, once, quoted } from '@haversack/language/facts/wording';
import type { ClassTerm } from './class-term.js';
import { orderFigures } from './order-figures.js';
import type { LedgerOrder } from './orders.js';
import { recordFigures } from './record-figures.js';
import { clashFigures, shortageFigures } from './shortage-figures.js';
import { termPlanOf } from './term-plan.js';

export interface SuppliesOptions {
    /** ISO date; without it nothing is late. */
    today?: string;
    /** A schedule of the same programme, class and course. */
    schedule?: ScheduleFigures;
    /** Kept by the caller from one plan to the next. */
    cache?: PlanningCache;
}

/**
 * Stock and buying over the whole term: the material-requirements record of every material, what to buy in which packs by when,
 * meetings that are short, days on which classes of one cupboard clash, and what it costs. Where classes share a cupboard, stock, needs, orders
 * and costs are those of all of them, told by the weeks of the class asked for. Never throws.
 */
export function planSupplies(programme: Programme, wanted: Wanted = {}, options: SuppliesOptions = {}): SupplyFigures {
    const term = termPlanOf(options.cache ?? newPlanningCache(), programme).term(wanted, options.schedule);
    const { plan, cupboard } = term;
    const { audience, schedule } = plan;
    const { today } = options;
    const ledgers = term.names().flatMap(name => term.ledger(name) ?? []);
    const orders = term.orders();
    const others = cupboard.members.slice(1).flatMap(member => member.audience.class ?? []);
    const learners = cupboard.members.reduce((sum, member) => sum + member.audience.people.figures.learners, 0);
    return {
        course: audience.course?.name,
        class: audience.class?.name,
        classTitle: audience.class && listing([audience.class, ...others].map(({ title }) => title)),
        sharedWith: others.map(({ name, title }) => ({ name, title })),
        learners, today,
        weeks: schedule.weeks.map(({ number, from, to }) => ({ number, from, to })),
        things: ledgers.filter(({ thing }) => thing.kind === 'material').map(ledger => recordFigures(ledger, term.ordersFor(ledger.name), cupboard)),
        orders: orders.map(order => orderFigures(order, today)),
        shortages: term.shortages().map(shortage => shortageFigures(shortage, term)),
        clashes: term.clashes().map(clashFigures),
        costs: costFigures(orders, learners),
        assumptions: once([
            ...schedule.assumptions, ...sharedSentence(term), ...cupboard.assumptions, ...uncounted(term, options.cache),
            ...ledgers.flatMap(({ holding }) => holding.problems),
            ...(schedule.weeks.some(({ from }) => from === undefined) ? ledgers.filter(({ holding }) => holding.arrivals.some(({ day }) => day))
                .map(({ thing }) => `Without dates for the weeks, the order of ${quoted(thing.title)} is not counted on.`) : [])
        ])
    };
}

function costFigures(orders: readonly LedgerOrder[], learners: number): CostFigures {
    const weeks = [...new Set(orders.map(({ week }) => week))].sort((a, b) => a - b);
    const term = sumsByCurrency(orders.flatMap(({ costs }) => costs));
    const unpriced = orders.filter(({ lot }) => lot.cost === undefined).map(({ ledger: { thing: { name, title } } }) => [name, { name, title }] as const);
    return {
        byWeek: weeks.map(week => ({ week, money: sumsByCurrency(orders.filter(order => order.week === week).flatMap(({ costs }) => costs)).map(moneyFigure) }))
            .filter(({ money }) => money.length > 0),
        term: term.map(moneyFigure),
        perLearner: term.flatMap(sum => perLearner(sum, learners) ?? []).map(moneyFigure),
        unpriced: [...new Map(unpriced).values()]
    };
}

function sharedSentence({ cupboard: { members } }: ClassTerm): string[] {
    const others = members.slice(1).map(({ audience }) => quoted(audience.class?.title ?? ''));
    return others.length === 0 ? [] : [`The cupboard is shared with ${listing(others)}: stock, needs, orders and costs are those of all of them.`];
}

/** Lines that could not be counted are told by the demand that is made with its reasons. */
function uncounted({ plan, holdings }: ClassTerm, cache: PlanningCache = newPlanningCache()): string[] {
    return plan.incompleteLessons().flatMap(lesson => demandOf(lesson, holdings, cache).assumptions);
}
