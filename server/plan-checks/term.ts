import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { CoverageFigures } from '../planning/coverage-figures.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import type { TermSupplies } from './term-supplies.js';

/** The figures of one class over its term. */
export interface ClassTerm {
    readonly group: ClassSheet;
    readonly schedule: ScheduleFigures;
    readonly supplies: TermSupplies;
    readonly coverage: CoverageFigures;
}

/** What the checks of the plan read. */
export interface Term {
    /** ISO date: what lies before it can no longer be changed. */
    readonly today: string;
    readonly classes: readonly ClassTerm[];
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
