import type { AdaptationSheet, WrittenChange } from '../sheets/adaptation-sheet.js';
import type { Programme } from '../sheets/programme.js';
import type { CourseSheet, Place, Range } from '../sheets/sheet.js';

/** One change as it was made, or why it could not be. */
export interface AppliedChange {
    adaptation: AdaptationSheet;
    change: WrittenChange;
    place: Place;
    /** In words for a teacher: "“Market sums” is left out". */
    says: string;
    /** Why it changes nothing: "the course does not teach it". Absent where it was made. */
    idle?: string;
    /** The name of the line that this is about, where it is about one. */
    idleAt?: Range;
    /** It changes nothing because it names what the programme does not have: that is told at the name itself. */
    unknown?: boolean;
    /** Names of lessons of the adapted course that it touched; empty where a lesson is left out. */
    touched: string[];
}

/** A course as one class is taught it. */
export interface Adapted {
    /** The same programme but for the lessons and the course that changed: every sheet that nothing changed is the very same object. */
    programme: Programme;
    course: CourseSheet;
    /** The course as it is written. */
    base: CourseSheet;
    /** Every change of every adaptation, in the order in which they were made. */
    changes: AppliedChange[];
    /** For each lesson of the adapted course, the names of the lessons of the course it was made of: its own, or those joined; both pieces of a split lesson name the whole. */
    madeOf: ReadonlyMap<string, readonly string[]>;
    /** Lessons of the course that are not taught, each with the change that left it out. */
    leftOut: ReadonlyMap<string, AppliedChange>;
}
