import { Temporal } from 'temporal-polyfill';
import { CouldNotRun } from './could-not-run.js';

/** The day given as --today, or the machine's own: this and the editor's workspace are the only places that look at a clock. */
export function todayOf(option: string | undefined): string {
    if (option === undefined) return Temporal.Now.plainDateISO().toString();
    if (!/^\d{4}-\d{2}-\d{2}$/.test(option)) throw new CouldNotRun(`'${option}' is no day: write year-month-day, such as 2026-09-07.`);
    try {
        return Temporal.PlainDate.from(option, { overflow: 'reject' }).toString();
    } catch {
        throw new CouldNotRun(`There is no ${option} in the calendar.`);
    }
}

/** The moment at which something is written, ISO 8601; with --today, that day's first. */
export function momentOf(option: string | undefined): string {
    return option === undefined ? Temporal.Now.instant().round('second').toString() : `${todayOf(option)}T00:00:00Z`;
}
