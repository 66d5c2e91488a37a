import { dayOfIso, daysInMonth } from '../attachments/day-numbers.js';
import type { FileSheet, WrittenDate } from '../sheets/sheet.js';
import type { Check } from './check.js';
import { changeTo } from './fixes.js';

export const noSuchDate: Check = {
    code: 'no-such-date', severity: 'error', title: 'A date that does not exist',
    explains: 'Dates are written as year, month and day, such as 2026-09-07, and this one is in no calendar: the month has fewer days, or there is no such month. Nothing can be planned from it.',
    wrong: 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-31\n  meets mon',
    right: 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-30\n  meets mon',
    *find(file) {
        for (const { date, at } of datesIn(file)) {
            if (isDate(date)) continue;
            const meant = dateMeant(date);
            yield { message: `There is no ${date} in the calendar${meant ? `; was ${meant} meant?` : '. Write year-month-day, such as 2026-09-07.'}`, at, fixes: meant ? [changeTo(file.uri, at, meant)] : [] };
        }
    }
};

function datesIn(file: FileSheet): WrittenDate[] {
    return file.classes.flatMap(({ starts, ends, off, onOrder, fixed, log }) => [
        ...(starts ? [starts] : []), ...(ends ? [ends] : []), ...fixed.map(({ on }) => on), ...off.flatMap(({ from, to }) => (to ? [from, to] : [from])),
        ...onOrder.flatMap(({ arriving }) => (arriving ? [arriving] : [])), ...log.map(({ on }) => on)
    ]);
}

/** True for a date as ISO 8601 writes it that exists. */
export function isDate(date: string): boolean {
    return dayOfIso(date) !== undefined;
}

/** Month and day the other way round, or the last day of the month. */
function dateMeant(date: string): string | undefined {
    const [year, month, day] = date.split('-') as [string, string, string];
    const turned = `${year}-${day}-${month}`;
    if (Number(month) > 12) return isDate(turned) ? turned : undefined;
    if (Number(year) < 1 || Number(month) < 1) return undefined;
    return `${year}-${month}-${Number(day) < 1 ? '01' : daysInMonth(Number(year), Number(month))}`;
}
