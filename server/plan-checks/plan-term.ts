import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { adaptingOf, newPlanningCache, type PlanningCache } from '../planning/cache.js';
import { planLedger } from '../planning/ledger.js';
import type { LedgerFigures } from '../planning/ledger-figures.js';
import { termPlanOf } from '../planning/supplies/term-plan.js';
import { AdaptedCourses } from './adapted-courses.js';
import { plannedClasses, type ClassTerm, type FormerEditions, type Term } from './term.js';
import { termSupplies } from './term-supplies.js';

/** The figures of every class, worked out from the sheets once. */
export function termOf(view: ProgrammeView, today: string, former?: FormerEditions): Term {
    const cache = newPlanningCache();
    return { today, classes: plannedClasses(view).map(group => classTermOf(group, view.programme, today, cache)), adapted: new AdaptedCourses(view, today), former };
}

/** The figures of one class. */
export function classTermOf(group: ClassSheet, programme: Programme, today: string, cache: PlanningCache): ClassTerm {
    const terms = termPlanOf(cache, programme);
    const wanted = { class: group.name };
    const schedule = terms.schedule(wanted);
    let ledger: { figures: LedgerFigures | undefined } | undefined;
    return {
        group, taught: terms.taught(wanted), adapted: adaptedFor(programme, wanted, adaptingOf(cache)), schedule, supplies: termSupplies(programme, group.name, schedule, today, cache), coverage: terms.coverage(wanted),
        get ledger() { return (ledger ??= { figures: planLedger(programme, wanted, { cache, today }) }).figures; }
    };
}
