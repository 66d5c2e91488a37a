import type { RepeatRule } from './attachment.js';
import { readLine, textOf, type Component, type ContentLine } from './content-lines.js';
import { isoOfDay, secondsADay } from './day-numbers.js';
import { readDuration, readMoment, readRule, type Moment } from './moments.js';
import type { TimeZones } from './time-zones.js';

/** An event as its lines say it. Times are wall-clock seconds since 1970-01-01 in the zone in which it begins. */
export interface ReadEvent {
    uid: string;
    title: string;
    start: number;
    /** Seconds; 0 for an event that takes no time. */
    lasts: number;
    /** Has dates and no times. */
    wholeDays: boolean;
    cancelled: boolean;
    sequence: number;
    rules: RepeatRule[];
    also: number[];
    /** Days on which it does not begin. */
    except: number[];
    /** The day of the repetition that this event replaces. */
    insteadOf?: number;
}

const longestTitle = 200;
const wanted = /^(?:UID|SUMMARY|DTSTART|DTEND|DURATION|RRULE|RDATE|EXDATE|RECURRENCE-ID|STATUS|SEQUENCE)[;:]/i;

/** Reads one VEVENT (RFC 5545, 3.6.1). What cannot be used goes to `remarks`, in a teacher's words; the event is then undefined or has less to say. */
export function readEvent(component: Component, zones: TimeZones, remarks: string[]): ReadEvent | undefined {
    const lines = component.lines.filter(line => wanted.test(line)).flatMap(line => readLine(line) ?? []);
    const first = (name: string): ContentLine | undefined => lines.find(line => line.name === name);
    const all = (name: string): ContentLine[] => lines.filter(line => line.name === name);
    const summary = first('SUMMARY');
    const title = (summary && shortened(textOf(summary.value))) || 'Untitled event';
    if (!component.whole) {
        remarks.push(`'${title}' breaks off in the middle and is left out.`);
        return undefined;
    }
    const startLine = first('DTSTART');
    const start = startLine && momentOf(startLine);
    if (!startLine || !start) {
        remarks.push(`'${title}' has ${startLine ? `'${startLine.value.slice(0, 40)}' where its first day should stand` : 'no first day'} and is left out.`);
        return undefined;
    }
    const zone = zoneOf(startLine, start);
    const wholeDays = start.time === undefined;
    const clock = (moment: Moment, line: ContentLine): number => inZone(moment, zoneOf(line, moment), zone, zones);
    const begins = start.day * secondsADay + (start.time ?? 0);
    const lasts = lengthOf(begins, wholeDays, first('DTEND'), first('DURATION'), clock);
    if (lasts === undefined || lasts < 0 || (wholeDays && lasts === 0)) {
        remarks.push(`'${title}' on ${isoOfDay(start.day)} ${lasts === undefined ? 'has an end that cannot be read' : 'ends before it begins'} and is left out.`);
        return undefined;
    }
    const rules = all('RRULE').map(line => readRule(line.value, until => untilOf(until, wholeDays, moment => clock(moment, { ...line, params: {} }))));
    if (rules.includes(undefined)) remarks.push(`How '${title}' repeats cannot be read: only ${isoOfDay(start.day)} counts.`);
    const replaced = first('RECURRENCE-ID');
    const replacedMoment = replaced && momentOf(replaced);
    return {
        uid: first('UID')?.value ?? '', title, start: begins, lasts, wholeDays,
        cancelled: first('STATUS')?.value.toUpperCase() === 'CANCELLED', sequence: Number.parseInt(first('SEQUENCE')?.value ?? '0', 10) || 0,
        rules: rules.filter(rule => rule !== undefined),
        also: momentsIn(all('RDATE')).map(({ moment, line }) => (moment.time === undefined ? moment.day * secondsADay + (start.time ?? 0) : clock(moment, line))),
        except: momentsIn(all('EXDATE')).map(({ moment, line }) => Math.floor(clock(moment, line) / secondsADay)),
        ...(replaced && replacedMoment && { insteadOf: Math.floor(clock(replacedMoment, replaced) / secondsADay) })
    };
}

/** A title that stands in plans and messages; whole letters only. */
function shortened(title: string): string {
    return title.length <= longestTitle ? title : `${Array.from(title.slice(0, 2 * longestTitle)).slice(0, longestTitle).join('')}…`;
}

/** A date, where the line says that it gives dates: then a time behind it counts for nothing. */
function momentOf({ params, value }: ContentLine): Moment | undefined {
    const moment = readMoment(value.split('/')[0]!);
    return moment && params.VALUE?.toUpperCase() === 'DATE' ? { day: moment.day, utc: false } : moment;
}

function momentsIn(lines: readonly ContentLine[]): { moment: Moment; line: ContentLine }[] {
    return lines.flatMap(line => line.value.split(',').flatMap(value => {
        const moment = momentOf({ ...line, value });
        return moment ? [{ moment, line }] : [];
    }));
}

/** The name of a time's zone; undefined for a date, or a time that is the same on every clock. */
function zoneOf({ params }: ContentLine, moment: Moment): string | undefined {
    return moment.time === undefined ? undefined : moment.utc ? 'UTC' : params.TZID;
}

/** A time on the clocks of another zone. Without a zone on either side the figures stay as they are. */
function inZone(moment: Moment, from: string | undefined, to: string | undefined, zones: TimeZones): number {
    const seconds = moment.day * secondsADay + (moment.time ?? 0);
    if (from === undefined || to === undefined || from === to) return seconds;
    return zones.toLocal(zones.toUtc(seconds, from), to);
}

/** An end without a time holds to the end of its day; so does any end of an event without times. */
function untilOf(until: Moment, wholeDays: boolean, clock: (moment: Moment) => number): number {
    return wholeDays || until.time === undefined ? (until.day + 1) * secondsADay - 1 : clock(until);
}

/** Seconds by the clock on the wall. DTEND is the first moment after the event; without one a date lasts a day and a time no time. */
function lengthOf(begins: number, wholeDays: boolean, end: ContentLine | undefined, duration: ContentLine | undefined, clock: (moment: Moment, line: ContentLine) => number): number | undefined {
    if (end) {
        const moment = momentOf(end);
        if (!moment) return undefined;
        return wholeDays ? moment.day * secondsADay - begins : clock(moment, end) - begins;
    }
    if (!duration) return wholeDays ? secondsADay : 0;
    const seconds = readDuration(duration.value);
    return wholeDays && seconds !== undefined ? Math.floor(seconds / secondsADay) * secondsADay : seconds;
}
