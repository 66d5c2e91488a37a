import { Temporal } from 'temporal-polyfill';

/** A day as it is given to the library, checked. @throws RangeError for what is no ISO 8601 date of the calendar */
export function dayOf(today: string): string {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(today)) throw new RangeError(`'${today}' is no day: write year-month-day, such as 2026-09-07.`);
    return Temporal.PlainDate.from(today, { overflow: 'reject' }).toString();
}
