import { dayLabel, readDay } from '../planning/calendar.js';

/** "Mon 14 Sep"; the text itself where it is no date. */
export function dayInWords(date: string): string {
    const day = readDay(date);
    return day ? dayLabel(day) : date;
}
