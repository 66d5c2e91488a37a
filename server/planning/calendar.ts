import { Temporal } from 'temporal-polyfill';
import { dayOfIso, dayNumber } from '@haversack/language/attachments/day-numbers';
import { shortDay } from './schedule/day-words.js';

export type Day = Temporal.PlainDate;

/** A date as ISO 8601 writes it, year 0001 to 9999; undefined for one that does not exist, such as 2026-02-30. */
export function readDay(text: string): Day | undefined {
    return dayOfIso(text) === undefined ? undefined : Temporal.PlainDate.from(text);
}

/** "Mon 14 Sep". */
export function dayLabel(day: Day): string {
    return shortDay(dayNumber(day.year, day.month, day.day));
}
