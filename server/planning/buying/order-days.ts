import type { Day } from '../calendar.js';

/** Days that something takes from order to arrival. */
export interface Lead {
    days: number;
    /** Monday to Friday without days off, where true. */
    working?: boolean;
}

/** Further back nobody orders; a calendar that is all days off ends here. */
const furthestBack = 36_525;

/**
 * The last day to order so that the thing is there on the day of need: so many days before it, or the day from which so many working
 * days lie before it. Undefined where there is no such day within a hundred years.
 */
export function lastDayToOrder(needed: Day, { days, working = false }: Lead, isOff: (day: Day) => boolean = () => false): Day | undefined {
    const lead = Number.isFinite(days) ? Math.max(0, Math.ceil(days)) : days > 0 ? Infinity : 0;
    if (lead > furthestBack) return undefined;
    try {
        if (!working) return needed.subtract({ days: lead });
        let day = needed;
        let left = lead;
        for (let back = 0; left > 0; back++) {
            if (back >= furthestBack) return undefined;
            day = day.subtract({ days: 1 });
            if (day.dayOfWeek <= 5 && !isOff(day)) left--;
        }
        return day;
    } catch (error) {
        // Dates end (about 270,000 years ago and hence).
        if (error instanceof RangeError) return undefined;
        throw error;
    }
}
