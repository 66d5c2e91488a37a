import type { Place } from '@haversack/language/sheets/sheet';
import type { CoverageFigures } from './coverage-figures.js';
import type { ChangeFigures, NameFigures } from './figures.js';
import type { ScheduleFigures } from './schedule-figures.js';
import type { SupplyFigures } from './supply-figures.js';

/** The whole term of one class, seen from one day. */
export interface TermFigures {
    schedule: ScheduleFigures;
    supplies: SupplyFigures;
    coverage: CoverageFigures;
    /** What it is called, for a heading; absent where there is none. */
    course?: { title: string; place?: Place };
    class?: { title: string; place?: Place };
    /** What the class is taught otherwise than the course has it; absent where no adaptation applies. */
    adapted?: AdaptedTerm;
    /** Who leaves out every lesson, where adaptations do. */
    nothingTaught?: string;
    /** ISO date; absent where nothing is to be marked as today. */
    today?: string;
}

export interface AdaptedTerm {
    adaptations: { name: string; title: string; place: Place }[];
    /** Lessons of the course that are not taught, in the order of the course. */
    leftOut: { name: string; title: string; place: Place; change: ChangeFigures }[];
    /** Lessons that are moved, brought in or changed as a whole, in the order in which they are taught. */
    lessons: { name: string; title: string; place: Place; changes: ChangeFigures[] }[];
    /** Titles for every name that stands in braces in a reason. */
    names: Record<string, NameFigures>;
}
