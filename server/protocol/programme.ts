/** Requests beyond the Language Server Protocol: the programme as a tree, the things of a week, and another order of a course's lessons. */
import type { BriefRefusal } from './pages.js';

/** A place in a file; line and UTF-16 character counted from 0. */
export interface SourcePlace {
    uri: string;
    line: number;
    character: number;
}

export interface Titled {
    name: string;
    title: string;
}

/** Problems of the lines that belong to something: errors and warnings, hints left out. */
export interface ProblemCounts {
    errors: number;
    warnings: number;
}

export interface ProgrammesParams {
    /** The class whose days are told; where a course or programme has none of this name, its first. */
    class?: string;
    /** Hash of the answer that the client has. */
    known?: string;
}

export interface ProgrammesAnswer {
    hash: string;
    programmes: ProgrammeNode[];
}

/** The answer would be the one that the client has. */
export interface ProgrammesUnchanged {
    unchanged: true;
}

export interface ProgrammeNode {
    /** The same from one answer to the next. */
    key: string;
    title: string;
    courses: CourseNode[];
    /** Lessons that no course lists. */
    otherLessons: LessonNode[];
    classes: ClassNode[];
    adaptations: AdaptationNode[];
}

interface DeclaredNode extends Titled {
    at: SourcePlace;
    problems: ProblemCounts;
}

export interface CourseNode extends DeclaredNode {
    edition?: string;
    /** The class whose days its lessons have; absent where no class is taught it. */
    class?: Titled;
    units: UnitNode[];
}

export interface UnitNode extends Titled {
    at: SourcePlace;
    /** Its lessons' among them. */
    problems: ProblemCounts;
    lessons: LessonNode[];
}

/**
 * `taught`: at the meetings named. `no-day`: the term has none left for it. `left-out`: by an adaptation. `not-planned`: no plan has it, because no
 * class is taught its course or it stands in none. `unknown`: no file declares it.
 */
export type LessonStanding = 'taught' | 'no-day' | 'left-out' | 'not-planned' | 'unknown';

export interface LessonNode extends Titled {
    /** Absent where no file declares it. */
    at?: SourcePlace;
    /** Its line in the course; absent where it stands in none. */
    line?: SourcePlace;
    draft: boolean;
    /** Sum of its parts, as it is written. */
    minutes: number;
    problems: ProblemCounts;
    standing: LessonStanding;
    /** The meetings at which it or a piece of it is taught, in order: week from 1, "Mon 14 Sep" or "Day 2". */
    meetings: { week: number; label: string }[];
    /** Why it has no day or is left out, in words. */
    why?: string;
    /** What adaptations change for the class, in words; of a lesson that is left out the change that does it. */
    changes: string[];
}

export interface ClassNode extends DeclaredNode {
    learners?: number;
    course?: string;
}

export interface AdaptationNode extends DeclaredNode {
    /** Title of its course, and of the class where it is for one alone. */
    course?: string;
    forClass?: string;
    /** Each change in words; `idle` says why it changes nothing. */
    changes: { says: string; at: SourcePlace; idle?: string }[];
}

/** Which week's things are wanted: of the programme that is named or has the file, else of the first. */
export interface WeekParams {
    programme?: string;
    uri?: string;
    line?: number;
    /** Without it, the class at `line`, else the first. */
    class?: string;
    /** From 1. Without it, the week of the lesson at `line`; else `otherwise`, else the week it is, or the next with meetings. */
    week?: number;
    otherwise?: number;
    /** Asks for week and minutes alone. */
    brief?: boolean;
}

export interface WeekAnswer {
    programme: string;
    class?: Titled;
    /** Of all programmes, each with its own. */
    classes: (Titled & { programme: string; programmeTitle: string })[];
    course: string;
    /** The file of the course, and where it ends: a class can be written below it. */
    courseFile?: Titled & SourcePlace;
    week: number;
    weeks: number;
    /** ISO date of the first meeting; absent in plain weeks. */
    from?: string;
    /** "Mon 14 Sep to Wed 16 Sep 2026". */
    dates?: string;
    minutes: number;
    groups: { source: string; title: string; things: GatherThing[] }[];
    buy: BuyThing[];
}

/** Why there is no week; `empty` where there is no lesson at all. */
export interface WeekRefusal extends BriefRefusal {
    empty: boolean;
}

/** A thing to fetch for the week. */
export interface GatherThing extends Titled {
    at: SourcePlace;
    /** "20", "1.2 kg". */
    amount: string;
    days: string[];
    lessons: string[];
    optional: boolean;
    /** Titles of what would do instead. */
    or: string[];
    atHand?: string;
    missing?: string;
    remark?: string;
}

export interface BuyThing extends Titled {
    at: SourcePlace;
    /** "2 packs of 500 g at 2.00 EUR", or how much is missing. */
    what: string;
    /** "needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep". */
    when: string;
    cost?: string;
    /** Why it is too late, in words. */
    late?: string;
    /** True where it is for a later week and has to be ordered now. */
    ahead: boolean;
}

/** A lesson as a course lists it, or without a line one that is to be put there. */
export interface LessonLine {
    name: string;
    line?: SourcePlace;
}

/** Where lessons are to stand. `lesson`: in the place of that one. `unit`: at its end. */
export type MoveTarget = { by: 'up' | 'down' } | { lesson: { name: string; line: SourcePlace } } | { unit: { name: string; line: SourcePlace } };

export interface MoveLessonsParams {
    lessons: LessonLine[];
    to: MoveTarget;
}

/**
 * The edit of the course's file, empty where they stand there already; `lines` are those of the moved lessons afterwards, from 0. `held`: what the lines
 * from the first to the last of the edits read as, without line ends: a file that nobody has open may be another by now.
 */
export interface MoveLessonsAnswer {
    uri: string;
    version: number;
    edits: { range: { start: { line: number; character: number }; end: { line: number; character: number } }; newText: string }[];
    lines: number[];
    held: HeldLines;
}

/** Lines of a file, the first of them counted from 0. */
export interface HeldLines {
    from: number;
    lines: string[];
}

/** Answered with a ProgrammesAnswer, or ProgrammesUnchanged. */
export const programmesRequest = 'haversack/programmes';
/** Answered with a WeekAnswer, or a WeekRefusal. */
export const weekRequest = 'haversack/week';
/** Answered with a MoveLessonsAnswer, or a BriefRefusal. Nothing is changed by asking. */
export const moveLessonsRequest = 'haversack/moveLessons';

export type { BriefRefusal };
