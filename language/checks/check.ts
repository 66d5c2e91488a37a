import type { FileSheet, Place, Range } from '../sheets/sheet.js';
import type { ProgrammeView } from './programme-view.js';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** A change to text. The range of an insertion is worked out from the document when the fix is taken. */
export type Edit =
    | { uri: string; replace: Range; text: string }
    /**
     * New lines after a line (past the end: after the last). They begin in the column of the line `like`, by default the
     * same line, `deeper` levels further in. Where the first of them already stands alone below `like` and no further down than
     * `until`, as an empty `materials` does, the others go under it instead.
     */
    | { uri: string; afterLine: number; like?: number; deeper: number; lines: string[]; until?: number }
    /** Takes whole lines away, from the first to the last. */
    | { uri: string; removeLines: [number, number] };

export interface Fix {
    /** What it does, as a menu entry: "Add 'spring-scale' to the inventory". */
    title: string;
    edits: Edit[];
    /** True for the mend that is most likely meant; at most one for each problem. */
    preferred?: boolean;
}

export interface Finding {
    /** What is wrong and what to do, in a teacher's words. */
    message: string;
    at: Range;
    related?: { message: string; place: Place }[];
    fixes?: Fix[];
    /** Shows the text faded: nothing uses it. */
    unused?: boolean;
    /** Where it weighs otherwise than most of its kind. */
    severity?: Severity;
    /** Problems of other codes, at or within these places, that have the same cause: they are not told as well. */
    instead?: readonly { code: string; at: Range }[];
}

export interface Problem extends Finding {
    code: string;
    severity: Severity;
    uri: string;
}

/** What the reference says about a code. */
export interface Explained {
    /** Stable: settings and people's notes name it. */
    code: string;
    severity: Severity;
    /** A short heading: "A need without an amount". */
    title: string;
    /** One paragraph: what it means, why it matters, what to do. */
    explains: string;
    /** A few lines that call it forth, and the same lines mended. */
    wrong: string;
    right: string;
    /** Texts of the calendars and frameworks that the examples name, by path. */
    beside?: Readonly<Record<string, string>>;
    /** The same file as the former edition has it, with which the examples are compared. */
    former?: string;
    /** The day on which the examples are read (ISO date), where that matters. */
    on?: string;
}

/** A rule of the language beyond grammar and names. Pure: sheets in, findings out, in one file at a time. */
export interface Check extends Explained {
    /** True where it tells of something that is still missing: only a hint in a lesson marked `draft`. */
    missing?: boolean;
    find(file: FileSheet, view: ProgrammeView): Iterable<Finding>;
}
