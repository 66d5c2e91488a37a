import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { newPlanningCache } from '../planning/cache.js';
import { termPlanOf } from '../planning/supplies/term-plan.js';
import { plannedClasses, type Term } from './term.js';
import { termSupplies } from './term-supplies.js';

/** The figures of every class, worked out from the sheets once. */
export function termOf(view: ProgrammeView, today: string): Term {
    const { programme } = view;
    const cache = newPlanningCache();
    const terms = termPlanOf(cache, programme);
    return {
        today,
        classes: plannedClasses(view).map(group => {
            const wanted = { class: group.name };
            const schedule = terms.schedule(wanted);
            return { group, schedule, supplies: termSupplies(programme, group.name, schedule, today, cache), coverage: terms.coverage(wanted) };
        })
    };
}
