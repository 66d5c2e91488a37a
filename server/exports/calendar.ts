import ical, { ICalEventStatus, ICalEventTransparency, type ICalEventData } from 'ical-generator';
import { Temporal } from 'temporal-polyfill';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import type { OrderFigures } from '../planning/supply-figures.js';
import { ownUids, readWritten, type WrittenEvent } from './calendar-before.js';
import { pieceInWords } from './schedule-lines.js';
import { whatToBuy } from './supplies-lines.js';
import { onOneLine } from '../markdown/one-line.js';

/** A section of the class with the hour at which it meets, "9:30". */
export interface SectionHour {
    name: string;
    title: string;
    clock: string;
}

/** The sections that say when they meet. */
export function sectionHours(sections: readonly { name: string; title: string; clock?: string }[]): SectionHour[] {
    return sections.flatMap(({ name, title, clock }) => (clock === undefined ? [] : [{ name, title, clock }]));
}

/** Why a plan cannot be a calendar; undefined where it can. */
export function withoutDates({ weeks, assumptions }: ScheduleFigures): string | undefined {
    return weeks.every(({ from }) => from === undefined) ? `A calendar needs dates, and this plan has none: ${assumptions.join(' ')}` : undefined;
}

export interface CalendarOptions {
    title: string;
    /** When it is written: ISO 8601 instant, "2026-09-01T08:00:00Z". */
    now: string;
    /** Meetings of a section with an hour are timed (local time, no zone); without any, they last the day. */
    hours?: readonly SectionHour[];
    orders?: readonly OrderFigures[];
    /** The file written last time: what did not change keeps its stamp and number, what is gone is called off. */
    before?: string;
}

interface Entry extends Pick<ICalEventData, 'start' | 'end' | 'allDay' | 'floating' | 'summary' | 'description' | 'transparency' | 'status'> {
    id: string;
}

/** Sequence numbers are minutes since then, so that a later export always counts as the newer one (RFC 5545, 3.8.7.4). */
const countedFrom = Temporal.Instant.from('2026-01-01T00:00:00Z');

/**
 * The term as iCalendar (RFC 5545): an event for each lesson, or piece of one, at each meeting, one for each stretch of days off that costs a
 * meeting, and one on the last day of each order. An event is named by class, course, lesson and piece: a lesson that moves keeps its UID,
 * so that a re-import updates it. Plans without dates give a calendar without events.
 */
export function scheduleCalendar(schedule: ScheduleFigures, options: CalendarOptions): string {
    const stamp = Temporal.Instant.from(options.now).round('second');
    const number = Math.max(0, Math.floor(countedFrom.until(stamp).total('minutes')));
    const before = readWritten(options.before);
    const calendar = ical({ name: options.title, prodId: { company: 'Haversack', product: 'Plan', language: 'EN' } });
    const entries = [...lessonEvents(schedule, options.hours ?? []), ...offEvents(schedule), ...orderEvents(schedule, options.orders ?? [])];
    for (const entry of entries) {
        const kept = before.get(entry.id);
        const same = kept !== undefined && sameAs(entry, kept);
        calendar.createEvent({
            ...entry,
            stamp: same ? Temporal.Instant.from(kept.stamp) : stamp,
            lastModified: same ? Temporal.Instant.from(kept.modified ?? kept.stamp) : stamp,
            sequence: same ? kept.sequence : Math.max(number, (kept?.sequence ?? -1) + 1)
        });
    }
    const written = new Set(entries.map(e => e.id));
    for (const gone of before.values()) {
        if (written.has(gone.uid)) continue;
        calendar.createEvent({
            id: gone.uid, start: dayOrTime(gone.start), end: gone.end === undefined ? undefined : dayOrTime(gone.end), allDay: isDay(gone.start), floating: !isDay(gone.start), summary: gone.summary,
            status: ICalEventStatus.CANCELLED, stamp: gone.cancelled ? Temporal.Instant.from(gone.stamp) : stamp,
            lastModified: gone.cancelled ? Temporal.Instant.from(gone.modified ?? gone.stamp) : stamp,
            sequence: gone.cancelled ? gone.sequence : Math.max(number, gone.sequence + 1)
        });
    }
    // The last line ends like every other (RFC 5545, 3.1); the library leaves that off.
    return `${calendar.toString().trimEnd()}\r\n`;
}

function lessonEvents(schedule: ScheduleFigures, hours: readonly SectionHour[]): Entry[] {
    const times = new Map<string, number>();
    const sections: (SectionHour | undefined)[] = hours.length > 0 ? [...hours] : [undefined];
    return schedule.weeks.flatMap(week => week.meetings.flatMap(meeting => {
        const { date } = meeting;
        if (date === undefined) return [];
        let minute = 0;
        return meeting.taught.flatMap(one => {
            // The piece of a split lesson, or the how-manieth time the whole of it or a repeat is taught.
            const what = `${one.lesson}.${one.why === 'repeat' || one.why === 'revisit' ? 'again' : one.piece?.number ?? 1}`;
            const time = (times.get(what) ?? 0) + 1;
            times.set(what, time);
            const from = minute;
            minute += one.minutes;
            return sections.map((section): Entry => ({
                id: uid(schedule, [what, ...(time > 1 ? [String(time)] : []), ...(section ? [section.name] : [])]),
                ...(section ? timed(date, section.clock, from, one.minutes || schedule.session || 60) : wholeDay(date, date)),
                summary: onOneLine(`${pieceInWords({ ...one, remark: undefined })}${section ? ` (${section.title})` : ''}`),
                description: [`Week ${week.number}`, one.remark, one.minutes > 0 ? `${one.minutes} min` : undefined].flatMap(line => (line ? [onOneLine(line)] : [])).join('\n')
            }));
        });
    }));
}

function offEvents(schedule: ScheduleFigures): Entry[] {
    return schedule.daysOff.filter(off => off.costs).map(off => ({
        id: uid(schedule, ['off', off.from, off.to]), ...wholeDay(off.from, off.to), summary: onOneLine(`No meeting: ${off.title}`),
        transparency: ICalEventTransparency.TRANSPARENT
    }));
}

function orderEvents(schedule: ScheduleFigures, orders: readonly OrderFigures[]): Entry[] {
    return orders.flatMap(order => (order.orderBy === undefined ? [] : [{
        id: uid(schedule, ['order', order.id]), ...wholeDay(order.orderBy, order.orderBy),
        summary: onOneLine(`Last day to order: ${order.title}`),
        description: [whatToBuy(order), order.when, order.late?.words].flatMap(line => (line ? [onOneLine(line)] : [])).join('\n'),
        transparency: ICalEventTransparency.TRANSPARENT
    }]));
}

/** Names are lower-case words with hyphens, so dots and the class's and course's names make it one of a kind. */
function uid({ class: className, course }: ScheduleFigures, parts: readonly string[]): string {
    return `${[className ?? 'no-class', course ?? 'no-course', ...parts].map(part => part.replace(/[^\p{L}\p{N}.-]+/gu, '-')).join('.')}${ownUids}`;
}

/** The end of an all-day event is the day after (RFC 5545, 3.6.1). */
function wholeDay(from: string, to: string): Pick<Entry, 'start' | 'end' | 'allDay'> {
    return { start: Temporal.PlainDate.from(from), end: Temporal.PlainDate.from(to).add({ days: 1 }), allDay: true };
}

function timed(date: string, clock: string, after: number, minutes: number): Pick<Entry, 'start' | 'end' | 'allDay' | 'floating'> {
    const [hour = 0, minute = 0] = clock.split(/[:.]/).map(Number);
    if (!(hour < 24 && minute < 60)) return wholeDay(date, date);
    const start = Temporal.PlainDate.from(date).toPlainDateTime({ hour, minute }).add({ minutes: after });
    return { start, end: start.add({ minutes }), allDay: false, floating: true };
}

function sameAs(entry: Entry, before: WrittenEvent): boolean {
    return !before.cancelled && String(entry.start) === before.start && String(entry.end) === before.end && entry.summary === before.summary && (entry.description ?? '') === before.description;
}

function isDay(text: string): boolean {
    return text.length === 10;
}

function dayOrTime(text: string): Temporal.PlainDate | Temporal.PlainDateTime {
    return isDay(text) ? Temporal.PlainDate.from(text) : Temporal.PlainDateTime.from(text);
}
