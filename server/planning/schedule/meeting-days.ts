import { isoOfDay, weekdayOf } from '@haversack/language/attachments/day-numbers';
import { weekdayNames } from '@haversack/language/facts/day-names';
import { listing, quoted } from '@haversack/language/facts/wording';
import { dayAndMonth, longDay } from './day-words.js';
import type { DaysOff } from './days-off.js';
import type { Term } from './term.js';

/** A class that has not met for so many days has its days off wrong. */
const longestGap = 5 * 366;

/** The days on which a class can meet, in order. Days are counted from 1970-01-01. */
export interface DaySource {
    /** The first day after this one; undefined where there is none. `before` is where the last one stood. */
    after(before: number | undefined): number | undefined;
}

/** Days without dates: 0, 1, 2 and so on. */
export const plainDays: DaySource = { after: before => (before === undefined ? 0 : before + 1) };

/** Weekdays of a term less the days off. Long stretches off are stepped over whole, so that no calendar can stall the engine. */
export class MeetingDays implements DaySource {
    constructor(readonly term: Term, readonly off: DaysOff) {}

    after(before: number | undefined): number | undefined {
        const from = before === undefined ? this.term.start : before + 1;
        const last = Math.min(this.term.last, from + longestGap);
        for (let day = from; day <= last; day++) {
            if (!this.term.weekdays[weekdayOf(day)]) continue;
            const end = this.off.endOfStretch(day);
            if (end === undefined) return day;
            day = end;
        }
        return undefined;
    }

    /** Why the class does not meet on a day, to stand behind "because"; undefined where it does. */
    whyNot(day: number): string | undefined {
        const { start, end, last, weekdays } = this.term;
        if (day < start) return `the class starts only on ${longDay(start)}`;
        if (end !== undefined && day > end) return `the class ends on ${longDay(end)}`;
        if (day > last) return 'that is too far ahead to plan';
        if (!weekdays[weekdayOf(day)]) return `that is a ${weekdayNames[weekdayOf(day)]}, and the class meets on ${weekdaysInWords(weekdays)}`;
        const off = this.off.on(day);
        return off && `that day is off: ${quoted(off.title)}`;
    }

    count(): number {
        let count = 0;
        for (let day = this.after(undefined); day !== undefined; day = this.after(day)) count += 1;
        return count;
    }
}

/** "Mondays, Tuesdays and Thursdays". */
export function weekdaysInWords(weekdays: readonly boolean[]): string {
    return listing(weekdayNames.filter((_, i) => weekdays[i]).map(name => `${name}s`));
}

/** "7 September to 18 December 2026". */
export function termInWords(from: number, to: number): string {
    const years = [from, to].map(day => isoOfDay(day).slice(0, 4));
    return `${dayAndMonth(from)}${years[0] === years[1] ? '' : ` ${years[0]}`} to ${dayAndMonth(to)} ${years[1]}`;
}
