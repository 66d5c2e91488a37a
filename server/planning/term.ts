import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Declared } from '@haversack/language/sheets/sheet';
import { adaptedTerm } from './adapted-term.js';
import type { Wanted } from './audience.js';
import { adaptingOf, type PlanningCache } from './cache.js';
import type { ScheduleFigures } from './schedule-figures.js';
import { planSupplies } from './supplies/plan-supplies.js';
import { termPlanOf } from './supplies/term-plan.js';
import { allLeftOut } from './nothing-taught.js';
import type { TermFigures } from './term-figures.js';

/** Everything of a class's term: days, stock and buying, coverage. `today` decides what is late. */
export function planTerm(programme: Programme, wanted: Wanted, { schedule, today, cache }: { schedule: ScheduleFigures; today: string; cache: PlanningCache }): TermFigures {
    const adapted = adaptedFor(programme, { class: schedule.class, course: schedule.course }, adaptingOf(cache));
    return {
        schedule, today,
        supplies: planSupplies(programme, wanted, { today, schedule, cache }), coverage: termPlanOf(cache, programme).coverage(wanted),
        course: titled(programme.courses.get(schedule.course ?? '')),
        class: titled(programme.classes.get(schedule.class ?? '')),
        ...(adapted && { adapted: adaptedTerm(adapted), nothingTaught: allLeftOut(adapted) })
    };
}

function titled(declared: Declared | undefined): TermFigures['course'] {
    return declared && { title: declared.title, place: { uri: declared.uri, range: declared.at } };
}
