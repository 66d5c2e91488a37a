import type { Place } from '@haversack/language/sheets/sheet';
import type { CoverageFigures } from '../../planning/coverage-figures.js';
import type { ScheduleFigures } from '../../planning/schedule-figures.js';
import type { SupplyFigures } from '../../planning/supply-figures.js';

/** All that the term view shows, planned for one class and one day. */
export interface TermFigures {
    schedule: ScheduleFigures;
    supplies: SupplyFigures;
    coverage: CoverageFigures;
    /** Titles for the head of the page. */
    course?: { title: string; place?: Place };
    class?: { title: string; place?: Place };
    /** ISO date; absent where nothing is to be marked as today. */
    today?: string;
}
