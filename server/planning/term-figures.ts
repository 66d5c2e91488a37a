import type { Place } from '@haversack/language/sheets/sheet';
import type { CoverageFigures } from './coverage-figures.js';
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
    /** ISO date; absent where nothing is to be marked as today. */
    today?: string;
}
