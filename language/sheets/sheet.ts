/**
 * A sheet is what one file says, as plain data (JSON-safe: no AST node, no class, no bigint). It is made once for
 * each version of a file. Names stay names: whoever reads a sheet looks them up in the programme (see programme.ts).
 */

import type { AdaptationSheet, ChangeMark } from './adaptation-sheet.js';

/** Zero-based line and UTF-16 character, end exclusive: the shape of a protocol range. */
export interface Range {
    start: { line: number; character: number };
    end: { line: number; character: number };
}

/** Where something stands. */
export interface Place {
    uri: string;
    range: Range;
}

/** A name as used at some place. */
export interface Mention {
    name: string;
    at: Range;
    /** The file of the line, where an adaptation has brought it into a sheet of another file. */
    uri?: string;
}

/** An exact number as text that `new Fraction()` of fraction.js reads: "20", "14.50", "1/2", "1 1/2". */
export type Exact = string;

/** `unit` is a unit of facts/units.ts or the material's own counted word; absent for plain pieces. */
export interface Amount {
    value: Exact;
    unit?: string;
    at: Range;
}

/** Money in the currency's major unit as written, exactly: 14.50 USD. */
export interface Money {
    value: Exact;
    currency: string;
    at: Range;
}

/** An ISO 8601 date as written, "2026-09-14"; it may not exist (a check says so). */
export interface WrittenDate {
    date: string;
    at: Range;
}

/**
 * A piece of prose: text in CommonMark inline notation, or a name that stood in braces. `starts` says where each line
 * of the text begins in the file.
 */
export type ProsePart = { text: string; starts?: Range['start'][] } | { name: string; at: Range };

/** Text over one or more lines; line breaks are kept as "\n" inside text parts. */
export interface Prose {
    parts: ProsePart[];
    at: Range;
}

/** What every declaration has. `title` is always filled (derived from the name where none is written). */
export interface Declared {
    name: string;
    title: string;
    uri: string;
    /** The name itself. */
    at: Range;
    /** The whole declaration with everything under it. */
    whole: Range;
}

export type Source = 'kit' | 'home' | 'shop' | 'library' | 'printed';

export interface Caution {
    /** A kind of facts/cautions.ts. */
    kind: string;
    kindAt?: Range;
    prose?: Prose;
    at: Range;
    adapted?: ChangeMark[];
    /** As of a mention. */
    uri?: string;
}

export interface Ages {
    /** Years; `to` is absent for "and up". */
    from: number;
    to?: number;
    at: Range;
}

export interface Pack {
    amount: Amount;
    cost?: Money;
    at: Range;
}

export interface Span {
    days: number;
    /** Monday to Friday only. */
    working?: boolean;
    at: Range;
}

export interface StandIn {
    thing: Mention;
    /** `give` of the stand-in does for `replaces` of the material. */
    give: Exact;
    replaces: Exact;
    at: Range;
}

export interface MaterialSheet extends Declared {
    kind: 'material';
    /** Absent when the writer has not said (a check tells). */
    use?: 'reusable' | 'consumable';
    useAt?: Range;
    /** Own counted word, as written: singular and plural. */
    counted?: { one: string; many: string; at: Range };
    /** A unit of facts/units.ts when the material is measured. */
    measured?: { unit: string; at: Range };
    parts: Mention[];
    /** Millimetres are not assumed: the unit is as written. */
    size?: { sides: Exact[]; unit: string; at: Range };
    packs: Pack[];
    arrives?: Span;
    keeps?: Span;
    /** Per cent, exact. */
    spare?: { percent: Exact; at: Range };
    loss?: { percent: Exact; at: Range };
    safetyStock?: Amount;
    delivery?: Money;
    source?: Source;
    /** The word itself, without `from`. */
    sourceAt?: Range;
    standIns: StandIn[];
    cautions: Caution[];
    ages?: Ages;
    /** Where it is kept. */
    kept?: Prose;
    notes: Prose[];
}

export interface PrintSheet extends Declared {
    kind: 'print';
    /** Pages a copy; 1 where nothing is said. */
    pages: number;
    twoSided: boolean;
    kept?: Prose;
    cautions: Caution[];
    notes: Prose[];
}

export interface BookSheet extends Declared {
    kind: 'book';
    edition?: string;
    source?: Source;
    cost?: Money;
    kept?: Prose;
    notes: Prose[];
}

export interface GameSheet extends Declared {
    kind: 'game';
    found?: { book: Mention; edition?: string; editionAt?: Range; chapter?: string; number?: string; page?: string; at: Range };
    players?: { from: number; to?: number; at: Range };
    kept?: Prose;
    needs: Need[];
    steps: Step[];
    cautions: Caution[];
}

export interface KitSheet extends Declared {
    kind: 'kit';
    holds: Held[];
    notes: Prose[];
}

/** A thing with an amount: in a kit, on hand, on order. */
export interface Held {
    thing: Mention;
    amount?: Amount;
    /** On order only. */
    arriving?: WrittenDate;
    at: Range;
}

export type Per =
    | { who: 'learner' | 'pair' | 'adult' | 'class' }
    /** `size` absent: the class's own groups. */
    | { who: 'group'; size?: number };

/** One line under `materials`. The first option is the thing itself, more come from `a or b`. */
export interface Need {
    options: { thing: Mention; parts: Mention[]; at?: Range }[];
    amount?: Amount;
    /** Absent: for the whole class (a check does not complain; the trail says so). */
    per?: Per;
    /** The in-kit flag as claimed; absent when no flag stands there. */
    inKit?: boolean;
    flagAt?: Range;
    optional: boolean;
    at: Range;
    adapted?: ChangeMark[];
    /** As of a mention. */
    uri?: string;
}

export type StepWord = 'about' | 'why' | 'do' | 'say' | 'ask' | 'expect' | 'watch' | 'help' | 'instead' | 'more' | 'note' | 'ready when' | 'show';

/** `show ten-frame 8 "Eight"`: a picture as written; language/pictures says what it shows or why it cannot. */
export interface PictureLine {
    picture: Mention;
    settings: { text: string; at: Range }[];
    title?: string;
}

export interface Step {
    word: StepWord;
    /** Empty where the word is `show`. */
    prose: Prose;
    show?: PictureLine;
    /** `expect` under `ask`, `help` under `watch`. */
    under: Step[];
    at: Range;
    adapted?: ChangeMark[];
    /** As of a mention. */
    uri?: string;
}

export type PartKind = 'warm-up' | 'activity' | 'game' | 'practice' | 'checkpoint';

export interface PracticeLine {
    /** The generator with its settings, as words: ["name", "numbers", "in", "places"], and numbers: [11, 99]. */
    words: string[];
    numbers: Exact[];
    at: Range;
}

export type Unsure =
    /** `of`: the lesson with the activity, where an adaptation has put it into another piece of the lesson. */
    | { then: 'repeat'; activity: Mention; of?: string; when: 'today' | 'tomorrow'; at: Range }
    | { then: 'repeat lesson'; when?: 'today' | 'tomorrow'; at: Range }
    | { then: 'revisit'; lessons: number; at: Range };

/** A timed part of a lesson. A game's name is the game it plays (a mention, not a declaration). */
export interface PartSheet {
    kind: PartKind;
    name: string;
    title: string;
    at: Range;
    /** Its first line. */
    head: Range;
    whole: Range;
    minutes?: number;
    steps: Step[];
    needs: Need[];
    cautions: Caution[];
    /** Practice only. */
    items?: number;
    /** The number of items as written. */
    itemsAt?: Range;
    practice?: PracticeLine[];
    /** Where an adaptation has split it: how many items the whole was to have, and how many of them come before; as many as the whole shows, where nothing is said. */
    piece?: { of?: number; before?: number };
    /** Checkpoint only. */
    unsure?: Unsure;
    adapted?: ChangeMark[];
    /** The file of its lines, where an adaptation has brought it into a lesson of another file. */
    uri?: string;
    /** What it was written as, where an adaptation has brought it into another lesson, named it anew or made it of several. */
    from?: { lesson: string; part: string }[];
}

export interface LessonSheet extends Declared {
    kind: 'lesson';
    draft: boolean;
    steps: Step[];
    follows: Mention[];
    introduces: Mention[];
    practises: Mention[];
    checks: Mention[];
    needs: Need[];
    notNeeded: Mention[];
    words: Mention[];
    cautions: Caution[];
    /** In the order of the file. */
    parts: PartSheet[];
    adapted?: ChangeMark[];
}

export interface ObjectiveSheet extends Declared {
    kind: 'objective';
    strand?: string;
    buildsOn: Mention[];
    alignsTo: { framework: Mention; code: string; at: Range }[];
    about?: Prose;
}

export interface FrameworkSheet extends Declared {
    kind: 'framework';
    from?: { path: string; at: Range };
}

export interface KitUse {
    kit: Mention;
    count: number;
    /** "1 per family", "1 per 4 learners", "3 in all". */
    per: { who: 'family' } | { who: 'learners'; of: number } | { who: 'all' };
    at: Range;
}

export interface UnitSheet {
    name: string;
    title: string;
    at: Range;
    whole: Range;
    about?: Prose;
    lessons: Mention[];
}

export interface CourseSheet extends Declared {
    kind: 'course';
    edition?: string;
    ages?: Ages;
    uses: KitUse[];
    units: UnitSheet[];
    about?: Prose;
}

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';

/** Learners who are taught together; a class without sections is one. `clock` is "9:30" where written. */
export interface SectionSheet {
    name: string;
    title: string;
    at: Range;
    learners?: number;
    adults?: number;
    groupsOf?: number;
    clock?: string;
}

export interface ClassSheet extends Declared {
    kind: 'class';
    teaches?: Mention;
    learners?: { count: number; at: Range };
    adults?: number;
    ages?: Ages;
    groupsOf?: number;
    sections: SectionSheet[];
    kits: { kit: Mention; count: number; at: Range }[];
    onHand: Held[];
    onOrder: Held[];
    starts?: WrittenDate;
    ends?: WrittenDate;
    meets: { day: Weekday; at: Range }[];
    session?: { minutes: number; at: Range };
    /** The most lessons at one meeting. */
    lessonsPerMeeting?: { count: number; at: Range };
    fixed: { lesson: Mention; on: WrittenDate; title?: string; at: Range }[];
    /** Classes that use the same cupboard. */
    sharesWith: Mention[];
    off: { from: WrittenDate; to?: WrittenDate; title?: string; at: Range }[];
    /** With `named`, only events whose title holds one of these count. */
    offFrom: { path: string; named: string[]; at: Range }[];
    catchUp?: { days: number; everyLessons: number; at: Range };
    present: { who: string; at: Range }[];
    log: { lesson: Mention; on: WrittenDate; at: Range }[];
    notes: Prose[];
}

/** Everything one file declares, in the order of the file within each kind. */
export interface FileSheet {
    uri: string;
    materials: MaterialSheet[];
    prints: PrintSheet[];
    books: BookSheet[];
    games: GameSheet[];
    kits: KitSheet[];
    lessons: LessonSheet[];
    objectives: ObjectiveSheet[];
    frameworks: FrameworkSheet[];
    courses: CourseSheet[];
    classes: ClassSheet[];
    adaptations: AdaptationSheet[];
    /** Words seen in lines that could not be read, so that nothing is called unused that may stand there. */
    unreadable: string[];
    /** Lines (from 0) that were reported as wrong in themselves: what they say is not certain. */
    brokenLines?: number[];
}

/** A thing that a need or a kit can name. */
export type ThingSheet = MaterialSheet | PrintSheet | BookSheet;

export type { AdaptationSheet };
