/** Days in words. A day is counted as in language/attachments/day-numbers.ts: whole days since 1970-01-01. */
import { civilDate, weekdayOf } from '@haversack/language/attachments/day-numbers';
import { monthNames, shortName, weekdayNames } from '@haversack/language/facts/day-names';


/** "Mon 14 Sep". */
export function shortDay(day: number): string {
    const date = civilDate(day);
    return `${shortName(weekdayNames[weekdayOf(day)])} ${date.day} ${shortName(monthNames[date.month - 1])}`;
}

/** "Monday 14 September 2026". */
export function longDay(day: number): string {
    const { year } = civilDate(day);
    return `${weekdayNames[weekdayOf(day)]} ${dayAndMonth(day)} ${year}`;
}

/** "14 September". */
export function dayAndMonth(day: number): string {
    const date = civilDate(day);
    return `${date.day} ${monthNames[date.month - 1]}`;
}

/** "23 to 27 November", "30 November to 4 December", "12 November", both days included. */
export function daysInWords(from: number, to: number): string {
    if (from === to) return dayAndMonth(from);
    const [a, b] = [civilDate(from), civilDate(to)];
    return `${a.month === b.month && a.year === b.year ? a.day : dayAndMonth(from)} to ${dayAndMonth(to)}`;
}
