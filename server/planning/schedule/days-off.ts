import type { CalendarFile, Attachment } from '@haversack/language/attachments/attachment';
import { daysOffIn, type CalendarMemo } from '@haversack/language/attachments/calendar-file';
import { civilDate, dayNumber, dayOfIso, isoOfDay } from '@haversack/language/attachments/day-numbers';
import { attachmentKey } from '@haversack/language/sheets/programme';
import type { ClassSheet, Place } from '@haversack/language/sheets/sheet';
import type { ScheduleProblem } from '../schedule-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';

/** Days without meetings, both included, counted from 1970-01-01. */
export interface Stretch {
    from: number;
    to: number;
    title: string;
    /** The class's line that takes them away. */
    place: Place;
    /** Path of the calendar as written. */
    calendar?: string;
}

/** One `off from` line whose calendar can be read. */
interface CalendarLine {
    path: string;
    named: readonly string[];
    calendar: CalendarFile;
    place: Place;
}

/** Calendars are read for so many years of a term: no town plans further, and an event that repeats every minute has no end. */
const mostYears = 20;
/** Remarks of one calendar that are told one by one. */
const toldRemarks = 3;

/**
 * The class's own days off and those of its calendars. Calendars are read a year at a time, when a day of that year is asked
 * for: a repeating event has no last day.
 */
export class DaysOff {
    readonly problems: ScheduleProblem[] = [];
    readonly assumptions: string[] = [];
    private readonly own: Stretch[] = [];
    private readonly calendars: CalendarLine[] = [];
    private readonly fromCalendars: Stretch[] = [];
    private readonly firstYear: number;
    private nextYear: number;
    /** By first day. */
    private all: Stretch[] = [];
    /** Disjoint and sorted, whoever takes them. */
    private taken: { from: number; to: number }[] = [];

    constructor(sheet: ClassSheet, attachments: ReadonlyMap<string, Attachment>, start: number, private readonly memo?: CalendarMemo) {
        this.firstYear = civilDate(start).year;
        this.nextYear = this.firstYear;
        this.readOwn(sheet);
        this.readCalendars(sheet, attachments);
        this.join();
    }

    /** The last day of the stretch without meetings that holds this day; undefined for a day that is not off. */
    endOfStretch(day: number): number | undefined {
        this.readUntil(day);
        let low = 0;
        let high = this.taken.length - 1;
        while (low <= high) {
            const middle = (low + high) >> 1;
            const stretch = this.taken[middle]!;
            if (stretch.to < day) low = middle + 1;
            else if (stretch.from > day) high = middle - 1;
            else return stretch.to;
        }
        return undefined;
    }

    /** What takes a day away. */
    on(day: number): Stretch | undefined {
        this.readUntil(day);
        return this.all.find(s => s.from <= day && day <= s.to);
    }

    /** All stretches that touch these days, by first day. */
    between(from: number, to: number): Stretch[] {
        this.readUntil(to);
        return this.all.filter(s => s.from <= to && s.to >= from);
    }

    /** The class's own stretches, and those of its calendars that touch these days, by first day. */
    listed(from: number, to: number): Stretch[] {
        this.readUntil(to);
        return this.all.filter(s => s.calendar === undefined || (s.from <= to && s.to >= from));
    }

    /** A line that asks for events by title and finds none between these days is very likely misspelt. */
    unmatched(from: number, to: number): ScheduleProblem[] {
        return this.calendars.flatMap((line): ScheduleProblem[] => {
            if (line.named.length === 0 || this.fromCalendars.some(s => s.place === line.place && s.from <= to && s.to >= from)) return [];
            return [{
                kind: 'calendar', place: line.place,
                message: `No event of ${quoted(line.path)} in these weeks has ${listing(line.named.map(quoted), 'or')} in its title, so this line takes no day away. Compare the words with the titles in the calendar.`
            }];
        });
    }

    private readOwn(sheet: ClassSheet): void {
        for (const line of sheet.off) {
            const from = dayOfIso(line.from.date);
            const to = line.to ? dayOfIso(line.to.date) : from;
            if (from !== undefined && to !== undefined && from <= to) {
                this.own.push({ from, to, title: line.title ?? (from === to ? 'Day off' : 'Days off'), place: { uri: sheet.uri, range: line.at } });
                continue;
            }
            const dates = [line.from.date, ...(line.to ? [line.to.date] : [])].join(' to ');
            const why = from !== undefined && to !== undefined ? 'the last day stands before the first' : 'such a date does not exist';
            this.assumptions.push(`The days off ${line.title ? `${quoted(line.title)} ` : ''}from ${dates} are left out: ${why}.`);
        }
    }

    private readCalendars(sheet: ClassSheet, attachments: ReadonlyMap<string, Attachment>): void {
        for (const { path, named, at } of sheet.offFrom) {
            const place = { uri: sheet.uri, range: at };
            const attachment = attachments.get(attachmentKey(sheet.uri, path));
            if (attachment?.state === 'calendar') {
                this.calendars.push({ path, named: named.filter(word => word.trim() !== ''), calendar: attachment.calendar, place });
                this.tellRemarks(path, attachment.calendar.remarks, place);
                continue;
            }
            const why = attachment?.state === 'wrong' ? attachment.message
                : attachment ? `${quoted(path)} is not a calendar.`
                    : `${quoted(path)} has not been read.`;
            this.problems.push({ kind: 'calendar', message: `${why} The dates of the class ${quoted(sheet.title)} do not skip its days.`, place });
            this.assumptions.push(`The dates do not skip the days off in ${quoted(path)}, which could not be read: compare the two before you rely on a date.`);
        }
    }

    private tellRemarks(path: string, remarks: readonly string[], place: Place): void {
        const more = remarks.length - toldRemarks;
        for (const remark of remarks.slice(0, toldRemarks)) this.problems.push({ kind: 'calendar', message: `In ${quoted(path)}: ${remark}`, place });
        if (more > 0) this.problems.push({ kind: 'calendar', message: `In ${quoted(path)}: ${more} more could not be read and ${more === 1 ? 'is' : 'are'} left out.`, place });
    }

    private readUntil(day: number): void {
        if (this.calendars.length === 0) return;
        const year = Math.min(civilDate(day).year, this.firstYear + mostYears - 1);
        if (year < this.nextYear) return;
        for (; this.nextYear <= year; this.nextYear++) this.readYear(this.nextYear);
        this.join();
    }

    private readYear(year: number): void {
        const first = dayNumber(year, 1, 1);
        const from = isoOfDay(first);
        const to = isoOfDay(dayNumber(year, 12, 31));
        for (const line of this.calendars) {
            for (const days of daysOffIn(line.calendar, from, to, this.memo)) {
                if (line.named.length > 0 && !line.named.some(word => days.title.toLowerCase().includes(word.toLowerCase()))) continue;
                const stretch = { from: dayOfIso(days.from) ?? NaN, to: dayOfIso(days.to) ?? NaN, title: days.title, place: line.place, calendar: line.path };
                if (stretch.from <= stretch.to) this.add(stretch, first);
            }
        }
    }

    /** What goes on over New Year comes with both years and is one stretch. */
    private add(stretch: Stretch, newYear: number): void {
        const before = stretch.from > newYear ? undefined : this.fromCalendars
            .find(s => s.place === stretch.place && s.title === stretch.title && s.from <= stretch.from && s.to >= stretch.from - 1);
        if (before && newYear > dayNumber(this.firstYear, 1, 1)) before.to = Math.max(before.to, stretch.to);
        else this.fromCalendars.push(stretch);
    }

    private join(): void {
        this.all = [...this.own, ...this.fromCalendars].sort((a, b) => a.from - b.from);
        this.taken = [];
        for (const { from, to } of this.all) {
            const before = this.taken[this.taken.length - 1];
            if (before && from <= before.to + 1) before.to = Math.max(before.to, to);
            else this.taken.push({ from, to });
        }
    }
}
