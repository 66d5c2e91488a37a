import { Temporal } from 'temporal-polyfill';
import type { ClassSheet, Weekday } from '@haversack/language/sheets/sheet';
import { quoted } from './wording.js';

export type Day = Temporal.PlainDate;

const weekdayOrder: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const weekdayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const monthNames = [
    'January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'
];
/** A schedule that finds no meeting for so long has its days off wrong. */
const horizonYears = 100;

/** A date as ISO 8601 writes it; undefined for one that does not exist, such as 2026-02-30. */
export function readDay(text: string): Day | undefined {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined;
    try {
        return Temporal.PlainDate.from(text);
    } catch {
        return undefined;
    }
}

export function before(a: Day, b: Day): boolean {
    return Temporal.PlainDate.compare(a, b) < 0;
}

/** The Monday of the date's ISO week. */
export function mondayOf(day: Day): Day {
    return day.subtract({ days: day.dayOfWeek - 1 });
}

/** "Mon 14 Sep". */
export function dayLabel(day: Day): string {
    return `${weekdayNames[day.dayOfWeek - 1]} ${day.day} ${monthNames[day.month - 1]?.slice(0, 3)}`;
}

/** "23 to 27 November", "30 November to 4 December", "12 November". */
export function daysInWords(from: Day, to: Day): string {
    const long = (day: Day): string => `${day.day} ${monthNames[day.month - 1]}`;
    if (from.equals(to)) return long(from);
    return `${from.month === to.month && from.year === to.year ? from.day : long(from)} to ${long(to)}`;
}

export interface DaysOff {
    title: string;
    from: Day;
    to: Day;
}

/** The class's own days off; a line whose dates do not exist or stand the wrong way round is left out, with a sentence. */
export function daysOff(sheet: ClassSheet): { off: DaysOff[]; problems: string[] } {
    const off: DaysOff[] = [];
    const problems: string[] = [];
    for (const line of sheet.off) {
        const from = readDay(line.from.date);
        const to = line.to ? readDay(line.to.date) : from;
        const title = line.title ?? 'Days off';
        if (from && to && !before(to, from)) off.push({ title, from, to });
        else {
            const dates = [line.from.date, ...(line.to ? [line.to.date] : [])].join(' to ');
            problems.push(`The days off ${line.title ? `${quoted(line.title)} ` : ''}from ${dates} are left out: ${
                from && to ? 'the last day stands before the first' : 'such a date does not exist'}.`);
        }
    }
    return { off, problems };
}

export function weekdaysOf(sheet: ClassSheet): ReadonlySet<number> {
    return new Set(sheet.meets.map(m => weekdayOrder.indexOf(m.day) + 1).filter(n => n > 0));
}

function meetsOn(day: Day, weekdays: ReadonlySet<number>): boolean {
    return weekdays.has(day.dayOfWeek);
}

function offOn(day: Day, off: readonly DaysOff[]): DaysOff | undefined {
    return off.find(o => !before(day, o.from) && !before(o.to, day));
}

/**
 * The first `count` meeting days from `start` on. Shorter than `count` where a hundred years of days off leave no more:
 * long stretches off are stepped over whole, so that no calendar can stall the engine.
 */
export function meetingDays(start: Day, weekdays: ReadonlySet<number>, off: readonly DaysOff[], count: number): Day[] {
    const days: Day[] = [];
    const last = start.add({ years: horizonYears });
    let day = start;
    while (days.length < count && weekdays.size > 0 && before(day, last)) {
        const free = offOn(day, off);
        if (free) {
            day = free.to.add({ days: 1 });
            continue;
        }
        if (meetsOn(day, weekdays)) days.push(day);
        day = day.add({ days: 1 });
    }
    return days;
}

/** What was off from `from` to `to`, in a sentence for each stretch that cost a meeting. */
export function offRemarks(from: Day, to: Day, weekdays: ReadonlySet<number>, off: readonly DaysOff[]): string[] {
    const remarks: string[] = [];
    for (const stretch of off) {
        const first = before(stretch.from, from) ? from : stretch.from;
        const last = before(stretch.to, to) ? stretch.to : to;
        if (before(last, first)) continue;
        let costs = first.until(last).days >= 6;
        for (let day = first; !costs && !before(last, day); day = day.add({ days: 1 })) costs = meetsOn(day, weekdays);
        if (!costs) continue;
        const single = stretch.from.equals(stretch.to);
        remarks.push(single
            ? `${stretch.title}: no meeting on ${dayLabel(stretch.from)}.`
            : `${stretch.title}: no meetings ${daysInWords(stretch.from, stretch.to)}.`);
    }
    return remarks;
}
