/**
 * What differs between two editions of a programme for somebody who teaches it: plain JSON-safe data. Places of the old edition lie
 * in its own files, those of the new one in its.
 */
import type { Place } from '@haversack/language/sheets/sheet';

export interface EditionFigures {
    /** "Measure and Make, edition 3 beside edition 2". */
    title: string;
    /** "7 changes", or that nothing changed for a teacher. */
    summary: string;
    /** The courses that were compared; a side is absent where that edition does not have the course. */
    courses: { old?: EditionOfCourse; new?: EditionOfCourse }[];
    /** The class whose term was planned with either edition; absent where there is none. */
    class?: { name: string; title: string; /** "its adaptation “Shorter autumn” counted in"; absent where its term is planned without one, in either edition. */ adapted?: string };
    /** In the order in which somebody must do something differently; none where nothing changed for a teacher. */
    sections: EditionSection[];
    /** What each adaptation's changes meet in the new edition. */
    adaptations: ReappliedAdaptation[];
    assumptions: string[];
}

export interface EditionOfCourse {
    name: string;
    title: string;
    edition?: string;
    place: Place;
}

export type EditionSectionId = 'order' | 'lessons' | 'term' | 'objectives' | 'things' | 'course' | 'class';

export interface EditionSection {
    id: EditionSectionId;
    title: string;
    groups: EditionGroup[];
}

/** What differs in one lesson, thing, objective or course. Without a title: lines that stand by themselves. */
export interface EditionGroup {
    title?: string;
    old?: Place;
    new?: Place;
    differences: Difference[];
}

export type DifferenceKind =
    | 'lesson-added' | 'lesson-removed' | 'lesson-renamed' | 'lesson-moved' | 'unit' | 'minutes-in-all'
    | 'part-added' | 'part-removed' | 'part-renamed' | 'part-moved' | 'part-retimed' | 'minutes' | 'need' | 'reworded' | 'step-added' | 'step-removed' | 'steps-order'
    | 'practice' | 'if-unsure' | 'caution' | 'prerequisite' | 'word' | 'not-needed' | 'draft' | 'lesson-objective'
    | 'supply' | 'money' | 'days' | 'left-out'
    | 'objective-added' | 'objective-removed' | 'objective-renamed' | 'objective-taught' | 'objective-fact' | 'framework'
    | 'thing-added' | 'thing-removed' | 'thing-renamed' | 'thing-fact' | 'game' | 'kit' | 'course' | 'class';

export interface Difference {
    kind: DifferenceKind;
    /** For a teacher, in a sentence or less: "Gram cubes: 12 per pair instead of 10 per pair". */
    says: string;
    /** How sure it is and why, where it was recognised and not written: a renamed lesson. */
    why?: string;
    /** Both texts, where something was worded anew; one of them where a step came or went. */
    before?: string;
    after?: string;
    old?: Place;
    new?: Place;
}

export interface ReappliedAdaptation {
    name: string;
    title: string;
    /** Where it stands. */
    place: Place;
    /** The edition whose files it was read from: the new one, unless only the old one has it. */
    side: 'old' | 'new';
    /** The edition of the course that it says it was written against. */
    edition?: string;
    /** "3 of 5 changes apply as before, 1 with other names, 1 is in conflict". */
    summary: string;
    changes: ReappliedChange[];
}

/**
 * `clean`: what the change touches is the same in both editions. `moved`: it applies, to something that has another name now or stands
 * elsewhere. `done`: the new edition does it itself, so that the line is no longer needed. `conflict`: what it changes has itself changed.
 */
export interface ReappliedChange {
    outcome: 'clean' | 'moved' | 'done' | 'conflict';
    /** The line as it is written, in one line of the language. */
    line: string;
    place: Place;
    /** What the adaptation wants, in words: "“Long walk” takes 10 min". */
    wants: string;
    /** What the new edition did; absent where it is clean. */
    newEdition?: string;
    /** The line as it should now read; absent where it can stay as it is. */
    rewritten?: string;
    /** Names in the line to write anew, at their places in it. */
    renames: { at: Place['range']; text: string }[];
    /** Where it names what only the old edition has, or has under that name. */
    former: Place['range'][];
    /** Somebody has looked at it for the new edition (`as of edition 3`), so nothing needs to be done. */
    settled: boolean;
    /** What it is about in either edition. */
    old?: Place;
    new?: Place;
}
