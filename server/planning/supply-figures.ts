/** Stock and buying over the whole term: plain JSON-safe data. Amounts are exact text beside a form for people. */
import type { Exact, Place, Source } from '@haversack/language/sheets/sheet';
import type { Figure } from './figure.js';

/** An amount in a table, without a trail of its own. */
export interface Quantity {
    exact: Exact;
    text: string;
}

/** Whole minor units of an ISO 4217 currency: 1450 of USD is "14.50 USD". */
export interface MoneyFigure {
    minor: string;
    currency: string;
    text: string;
}

/** One week of a material-requirements record. */
export interface RecordWeek {
    week: number;
    gross: Quantity;
    /** Orders already placed that arrive for this week. */
    scheduled: Quantity;
    /** Projected on hand at the end of the week. */
    onHand: Quantity;
    net: Quantity;
    receipts: Quantity;
    /** What must be ordered in this week so that it arrives in time. */
    releases: Quantity;
    /** What is asked for and neither there nor bought: wholly optional, or from home and the library; absent where nothing is. */
    unmet?: Quantity;
    /** What is bought and goes off before it is used; absent where nothing does. */
    spoiled?: Quantity;
}

/** The material-requirements record of one thing. */
export interface ThingRecord {
    name: string;
    title: string;
    place: Place;
    use: 'reusable' | 'consumable';
    source: Source;
    unit?: string;
    /** What the kits and the cupboard hold before the first week, with its trail; absent when nothing is known. */
    opening?: Figure;
    safety?: Quantity;
    /** Days from order to arrival. */
    lead?: { days: number; working: boolean };
    /** "packs of 100 at 14.50 USD", as declared. */
    packs: string[];
    weeks: RecordWeek[];
    /** Need of the whole term, with the lessons it comes from. */
    need: Figure;
    /** The first week in which stock and written orders alone are not enough. */
    runsOut?: { week: number; date?: string; text: string; place?: Place };
    remarks: string[];
}

export interface PackCount {
    count: number;
    /** "3 packs of 500 g at 2.10 USD". */
    text: string;
    cost?: MoneyFigure;
    place: Place;
}

/** One order or purchase, with the weeks it serves. */
export interface OrderFigures {
    /** Stable over re-planning: thing and week. */
    id: string;
    name: string;
    title: string;
    place: Place;
    source: Source;
    /** The week that needs it first, and all weeks it serves. */
    week: number;
    covers: number[];
    /** What is missing, and what the packs bring. */
    net: Figure;
    bought: Figure;
    leftOver?: Quantity;
    packs: PackCount[];
    /** Packs and delivery; absent where a price is not declared. */
    cost?: MoneyFigure;
    delivery?: MoneyFigure;
    /** ISO dates: first meeting that needs it; last day to order given its lead time (absent: bought on the day). */
    neededBy?: string;
    orderBy?: string;
    /** The week in which it must be ordered; 0 for before the first. */
    orderWeek: number;
    /** Set when `today` is after the last day to order and the need is still to come. */
    late?: { days: number; words: string };
    /** "needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep". */
    when: string;
    /** Why one order serves several weeks: "one order for weeks 3 to 6: 2.10 USD less than week by week". */
    joined?: string;
}

export interface StandInFigures {
    name: string;
    title: string;
    /** "20 lentils in place of 20 beans: 60 at hand". */
    text: string;
    enough: boolean;
}

/** A reusable thing of which a meeting needs more than there is. */
export interface ShortageFigures {
    name: string;
    title: string;
    place: Place;
    week: number;
    date?: string;
    meeting: string;
    needed: Figure;
    atHand: Figure;
    missing: Figure;
    /** Lessons of the meeting that ask for it, with the line that does. */
    lessons: { name: string; title: string; place: Place }[];
    standIns: StandInFigures[];
    /** The order that would mend it, where one can come in time. */
    order?: string;
}

/** Two classes with one cupboard that meet on one day and together need more than it holds. */
export interface ClashFigures {
    name: string;
    title: string;
    place: Place;
    date: string;
    meeting: string;
    classes: { name: string; title: string; place: Place; needed: Quantity; lessons: string[] }[];
    together: Figure;
    atHand: Figure;
    missing: Figure;
}

export interface CostFigures {
    /** By the week that needs it; one entry a currency. */
    byWeek: { week: number; money: MoneyFigure[] }[];
    term: MoneyFigure[];
    perLearner: MoneyFigure[];
    /** What is to be bought without a price. */
    unpriced: { name: string; title: string }[];
}

export interface SupplyFigures {
    course?: string;
    class?: string;
    /** Title of the class and of those it shares the cupboard with. */
    classTitle?: string;
    sharedWith: { name: string; title: string }[];
    learners: number;
    today?: string;
    weeks: { number: number; from?: string; to?: string }[];
    things: ThingRecord[];
    orders: OrderFigures[];
    shortages: ShortageFigures[];
    clashes: ClashFigures[];
    costs: CostFigures;
    assumptions: string[];
}
