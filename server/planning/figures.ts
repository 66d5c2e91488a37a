/**
 * What the engine computes, as plain JSON-safe data: what the brief, the hover, the command line and the exports show.
 * Amounts are exact text (see Exact in the sheets) beside a form for people; nobody downstream computes a quantity.
 */
import type { Ages, Caution, Exact, Place, Prose, Source, StepWord, Unsure } from '@haversack/language/sheets/sheet';
import type { Picture } from '@haversack/language/pictures/picture';
import type { Figure } from './figure.js';
import type { Meeting, TaughtFigures, Unplaced } from './schedule-figures.js';
import type { MoneyFigure, PackCount, Quantity } from './supply-figures.js';

/** A change that an adaptation made, beside what it changed. */
export interface ChangeFigures {
    /** "10 min instead of 15". */
    says: string;
    because?: Prose;
    /** The line of the adaptation. */
    place: Place;
    /** Title of the adaptation. */
    adaptation: string;
}

/** A picture of a `show` line, with its text equivalent; or why it cannot be drawn. */
export interface PictureFigures {
    picture?: Picture;
    /** What the picture shows, in words. */
    text: string;
    title?: string;
    place: Place;
}

export interface PracticeItemFigures {
    /** A `?` in it is the place of the answer where `room` is `gap`. */
    ask: string;
    answer: string;
    picture?: PictureFigures;
    /** Another right name of its number, “four hundred and eighteen” for “four hundred eighteen”; and how many words that is, where words are counted. */
    alsoSaid?: { name: string; words?: number };
    /** How the answer is written down: in place of the `?`, as a number behind what is asked, or in words on a line of their own. */
    room?: 'gap' | 'number' | 'line';
}

/** Practices of one lesson to be written on, or further items of them. */
export interface PracticeSheetFigures {
    lesson: { name: string; title: string; place: Place };
    /** True where the items are further ones, beyond those of the brief. */
    further: boolean;
    practices: {
        name: string;
        title: string;
        /** Its lines in words: "name numbers 11 to 99". */
        lines: string[];
        /** The number of the first item, from 1; further items are counted on. */
        first: number;
        items: PracticeItemFigures[];
        /** How many different items there can be. */
        possible: number;
        /** What its `show` lines show. */
        pictures: PictureFigures[];
        place: Place;
    }[];
}

export interface PeopleFigures {
    learners: number;
    adults: number;
    pairs: number;
    /** Sizes of the class's own groups, as even as possible: [3, 2, 2]. */
    groups: number[];
    /** The same in words with how it was counted: "7 learners: 4 pairs; groups of 3, 2 and 2". */
    text: string;
    /** What had to be assumed, in whole sentences: "No class is declared: one learner, one kit and four lessons a week." */
    assumptions: string[];
}

/** One thing to have at the table this week. */
export interface ThingFigures {
    name: string;
    title: string;
    kind: 'material' | 'print' | 'book';
    use: 'reusable' | 'consumable' | 'print' | 'book';
    place: Place;
    amount: Figure;
    parts: { name: string; title: string }[];
    /** Labels of the meetings it is needed at: ["Mon 14 Sep", "Wed 16 Sep"]. */
    days: string[];
    lessons: { name: string; title: string }[];
    optional: boolean;
    /** For `a or b`: the others that would do, titles. */
    or: string[];
    source: Source;
    /** Where it is kept, as declared. */
    kept?: Prose;
    /** What the kits and the cupboard hold of it at the start of the week; absent when nothing is known. */
    atHand?: Figure;
    /** What is still missing; absent when nothing is. */
    missing?: Figure;
    isNew: boolean;
    cautions: CautionFigures[];
    notes: Prose[];
    /** Prints: "7 copies of 2 pages: 14 pages, 7 sheets two-sided". */
    remark?: string;
}

export interface CautionFigures {
    kind: string;
    /** The kind in a word or two: "Small parts". */
    title?: string;
    /** The usual caution as a sentence. */
    text: string;
    prose?: Prose;
    thing?: string;
    place: Place;
    /** Set where it, or what it adds, was worked out and not declared: from what, in words ("10 x 10 x 10 mm; the youngest learners are 4"). */
    computed?: string;
    /** Set where the ages in the room make it serious: why and what to do, a sentence. */
    serious?: string;
    changes?: ChangeFigures[];
}

export interface BuyFigures {
    name: string;
    title: string;
    place: Place;
    missing: Figure;
    /** "packs of 100 at 14.50 USD", as declared. */
    packs: string[];
    source: Source;
    /** ISO date of the first meeting that needs it, and the last day to order given its lead time. */
    neededBy?: string;
    orderBy?: string;
    /** In words for people: "needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep". */
    when: string;
    /** What to put in the basket; absent where no packs are declared. */
    packsToBuy?: PackCount[];
    /** Packs and delivery; absent where a price is not declared. */
    cost?: MoneyFigure;
    /** Numbers of the weeks that this order serves, the first included. */
    covers?: number[];
    /** What the packs bring beyond what those weeks need. */
    leftOver?: Quantity;
    /** Set when `today` is after the last day to order and the need is still to come. */
    late?: { days: number; words: string };
    /** Why one order serves several weeks. */
    joined?: string;
}

export interface StepFigures {
    word: StepWord;
    prose: Prose;
    place: Place;
    under: StepFigures[];
    /** Where the word is `show`. */
    picture?: PictureFigures;
    changes?: ChangeFigures[];
}

export interface PartFigures {
    kind: 'warm-up' | 'activity' | 'game' | 'practice' | 'checkpoint';
    name: string;
    title: string;
    minutes?: number;
    /** Minutes from the start of the lesson; absent after a part without minutes. */
    startsAt?: number;
    steps: StepFigures[];
    cautions: CautionFigures[];
    /** Amounts of this part's own needs in words: "20 gram cubes for each pair: 80". */
    needs: { title: string; name: string; amount: Figure; each: string; place: Place; changes?: ChangeFigures[] }[];
    changes?: ChangeFigures[];
    game?: {
        /** "Table games for measuring, edition 3, chapter “Weighing”, number 12". */
        rules?: string;
        players?: string;
        /** How many sets or tables play at once: "3 groups of 2 to 3 play at once". */
        tables?: string;
        kept?: Prose;
        place?: Place;
        steps: StepFigures[];
    };
    items?: number;
    /** The lines that its items are made from, in words. */
    practice?: string[];
    /** The computed items in order, each with its answer. */
    practiceItems?: PracticeItemFigures[];
    /** "Repeat “Two mystery bags” tomorrow." */
    unsure?: string;
    unsureAs?: Unsure;
    place: Place;
}

export interface LessonFigures {
    name: string;
    title: string;
    place: Place;
    draft: boolean;
    meeting: string;
    date?: string;
    /** "part 1 of 2" where the meeting holds only a piece of the lesson; `parts` are those of the piece. */
    piece?: { number: number; of: number };
    /** What brought it here, other than its turn: a fixed day, or that the children were unsure. A part that is repeated stands alone. */
    why?: TaughtFigures['why'];
    /** The same in words: "again: the children were unsure on Thu 10 Sep". */
    remark?: string;
    /** Sum of the parts; the flag says that some part has no minutes. */
    minutes: number;
    minutesIncomplete: boolean;
    aim: Prose[];
    steps: StepFigures[];
    objectives: { does: 'introduces' | 'practises' | 'checks'; name: string; title: string; place?: Place }[];
    follows: { name: string; title: string }[];
    words: string[];
    needs: { title: string; name: string; amount: Figure; each: string; place: Place; optional: boolean; changes?: ChangeFigures[] }[];
    changes?: ChangeFigures[];
    notNeeded: { name: string; title: string }[];
    cautions: CautionFigures[];
    parts: PartFigures[];
}

/** Titles for every name that stands in braces in this week's prose. */
export interface NameFigures {
    title: string;
    kind: 'material' | 'print' | 'book' | 'game' | 'lesson' | 'objective' | 'word';
    place?: Place;
    /** A short fact for a tooltip: "this week 80, at hand 60". */
    fact?: string;
}

export interface WeekBrief {
    course: { name: string; title: string; place?: Place };
    class?: { name: string; title: string; place: Place };
    week: number;
    weeks: number;
    from?: string;
    to?: string;
    people: PeopleFigures;
    assumptions: string[];
    remarks: string[];
    meetings: Meeting[];
    minutes: number;
    /** By where a thing comes from, in the order kit, home, shop, library, printed; empty groups left out. */
    fetch: { source: Source; title: string; things: ThingFigures[] }[];
    /** What no lesson of the week uses though families may ask for it. Kit pieces name their kit and the week they come back in. */
    stayOnShelf: { name: string; title: string; place: Place; why: string; kind?: 'material' | 'book'; kit?: { name: string; title: string; place: Place }; nextWeek?: number }[];
    /** `after`: the day of the last meeting that uses it, in words; absent where the week has no days. */
    putAway: { name: string; title: string; place: Place; why: string; after?: string }[];
    buy: BuyFigures[];
    cautions: CautionFigures[];
    lessons: LessonFigures[];
    /** Next week at a glance; absent in the last week. */
    next?: { week: number; from?: string; lessons: { name: string; title: string; place: Place }[]; newThings: { title: string; amount: Figure; source: Source }[]; order: BuyFigures[] };
    /** Lessons for which the term has no day left. */
    unplaced?: Unplaced[];
    names: Record<string, NameFigures>;
    /** The adaptations that this class is taught with, and lessons of the course that they leave out at this point of the term. */
    adapted?: {
        adaptations: { name: string; title: string; place: Place }[];
        /** `before`: name of the lesson that now stands where it stood; absent at the end of the term. */
        leftOut: { name: string; title: string; place: Place; change: ChangeFigures; before?: string }[];
    };
    /** Ages in the room, the youngest first, as declared. */
    ages?: Ages;
}

export type { Ages, Caution, Exact, Place, Prose, Source, StepWord, Unsure };
