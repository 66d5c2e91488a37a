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

export function isDate(date: string): boolean {
    const [year, month, day] = date.split('-').map(Number) as [number, number, number];
    return year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

/** Gregorian, as ISO 8601 dates are. */
function daysIn(year: number, month: number): number {
    if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
    return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Month and day the other way round, or the last day of the month. */
function dateMeant(date: string): string | undefined {
    const [year, month, day] = date.split('-') as [string, string, string];
    const turned = `${year}-${day}-${month}`;
    if (Number(month) > 12) return isDate(turned) ? turned : undefined;
    if (Number(year) < 1 || Number(month) < 1) return undefined;
    return `${year}-${month}-${Number(day) < 1 ? '01' : daysIn(Number(year), Number(month))}`;
}
