import type { Adapted } from '@haversack/language/adapting/adapted';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import type { CoverageFigures } from '../planning/coverage-figures.js';
import type { EditionMemo } from '../planning/editions/matched.js';
import type { LedgerFigures } from '../planning/ledger-figures.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import type { AdaptedCourses } from './adapted-courses.js';
import type { TermSupplies } from './term-supplies.js';

/** The figures of one class over its term. */
export interface ClassTerm {
    readonly group: ClassSheet;
    /** The programme as the class is taught it: with the changes of its adaptations. */
    readonly taught: Programme;
    /** Absent where no adaptation applies. */
    readonly adapted?: Adapted;
    readonly schedule: ScheduleFigures;
    readonly supplies: TermSupplies;
    readonly coverage: CoverageFigures;
    /** What its adaptations make of the term, worked out when first asked for; undefined where none applies. */
    readonly ledger: LedgerFigures | undefined;
}

/** A programme as a former edition of one of its courses had it. */
export interface FormerEdition {
    readonly programme: Programme;
    /** What comparing with it has worked out already. */
    readonly memo: EditionMemo;
}

export interface FormerEditions {
    /** Undefined where it is not known, or not yet. */
    of(course: CourseSheet, edition: string): FormerEdition | undefined;
}

/** What the checks of the plan read. */
export interface Term {
    /** ISO date: what lies before it can no longer be changed. */
    readonly today: string;
    readonly classes: readonly ClassTerm[];
    /** What adaptations bring about. */
    readonly adapted: AdaptedCourses;
    /** What the programme was in former editions; absent where there is no way to look. */
    readonly former?: FormerEditions;
}

/**
 * The classes of which a plan says something certain: those that say what they are taught, how many they are and when they meet,
 * and that could be read whole, with their course. Of the others other checks speak.
 */
export function plannedClasses(view: ProgrammeView): ClassSheet[] {
    return [...view.programme.classes.values()].filter(group => {
        const course = group.teaches && view.programme.courses.get(group.teaches.name);
        const counted = group.learners ?? group.sections.some(({ learners }) => learners !== undefined);
        return course && counted !== undefined && counted !== false && group.starts && group.meets.length > 0 && !view.isBroken(group) && !view.isBroken(course);
    });
}
