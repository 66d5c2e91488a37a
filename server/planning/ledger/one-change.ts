import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Wanted } from '../audience.js';
import { newPlanningCache, type PlanningCache } from '../cache.js';
import type { LedgerFigures } from '../ledger-figures.js';
import { termPlanOf } from '../supplies/term-plan.js';
import { compareTerms } from './compare-terms.js';

/** What one change alone makes of a class's term: with all changes of the class, and with all but this one. */
export function changeAlone(programme: Programme, wanted: Wanted, change: WrittenChange, cache: PlanningCache): Pick<LedgerFigures, 'meetings' | 'supplies' | 'money'> {
    const without = new Map(programme.adaptations);
    for (const adaptation of adaptationsFor(programme, wanted)) {
        if (adaptation.changes.includes(change)) without.set(adaptation.name, { ...adaptation, changes: adaptation.changes.filter(other => other !== change) });
    }
    const fresh: PlanningCache = { ...newPlanningCache(), demands: cache.demands };
    return compareTerms(termPlanOf(fresh, { ...programme, adaptations: without }).term(wanted), termPlanOf(cache, programme).term(wanted));
}
