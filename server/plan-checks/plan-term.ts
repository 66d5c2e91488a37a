import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { newPlanningCache } from '../planning/cache.js';
import { planCoverage } from '../planning/coverage.js';
import { termPlanOf } from '../planning/supplies/term-plan.js';
import { plannedClasses, type Term } from './term.js';
import { termSupplies } from './term-supplies.js';

/** The figures of every class, worked out from the sheets once. */
export function termOf(view: ProgrammeView, today: string): Term {
    const { programme } = view;
    const cache = newPlanningCache();
    return {
        today,
        classes: plannedClasses(view).map(group => {
            const wanted = { class: group.name };
            const schedule = termPlanOf(cache, programme).schedule(wanted);
            return { group, schedule, supplies: termSupplies(programme, group.name, schedule, today, cache), coverage: planCoverage(programme, wanted, { schedule }) };
        })
    };
}
