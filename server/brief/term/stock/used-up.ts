import type { SupplyFigures, ThingRecord } from '../../../planning/supply-figures.js';
import { counted, stocked } from './line.js';

export interface UsedUp {
    runOut: ThingRecord[];
    /** None of it is at hand when it is first needed. */
    asNeeded: ThingRecord[];
    last: ThingRecord[];
    /** Neither counted nor bought: gathered, or asked of families. There is no line to draw. */
    uncounted: ThingRecord[];
}

/** What is used up, first what runs out first. */
export function usedUp(supplies: SupplyFigures): UsedUp {
    const consumable = supplies.things.filter(thing => thing.use === 'consumable' && thing.weeks.length > 0);
    const short = consumable.filter(thing => thing.runsOut).sort((a, b) => (a.runsOut?.week ?? 0) - (b.runsOut?.week ?? 0));
    const enough = consumable.filter(thing => !thing.runsOut);
    return {
        runOut: short.filter(thing => stocked(thing)), asNeeded: short.filter(thing => !stocked(thing)),
        last: enough.filter(thing => counted(thing)), uncounted: enough.filter(thing => !counted(thing))
    };
}
