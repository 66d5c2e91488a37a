import type { Attachment, CalendarDays, CalendarEvent, CalendarFile, Repeating, RepeatRule } from './attachment.js';
import { readComponents, readLine, textOf } from './content-lines.js';
import { dayOfIso, firstDay, isoOfDay, lastDay, secondsADay } from './day-numbers.js';
import { readEvent, type ReadEvent } from './read-event.js';
import { repetitions, timesAYear, type Effort } from './repetitions.js';
import { TimeZones } from './time-zones.js';

/** What was worked out of calendars before: held by whoever asks again and again. */
export type CalendarMemo = WeakMap<CalendarFile, Map<string, readonly CalendarDays[]>>;

/** A year's repetitions of a whole calendar, and how much may be tried to find them: far above any town's, so that a term stays quick to plan. */
const mostTimesAYear = 50_000;
const mostTriesAYear = 2_000_000;
const triesAYear = 366;
/** How far a rule that ends after so many times is followed. */
const yearsCounted = 200;
const daysAYear = 366;
/** The longest stretch that is looked at in one go. */
const mostDays = 20 * daysAYear;
const mostRemarks = 12;
/** An event that ends in the last minute of a day ends with the day: some programs cannot write midnight. */
const lastMinute = 60;

/** Reads a calendar (iCalendar, RFC 5545): its events as far as they take whole days away. */
export function readCalendar(text: string): Attachment {
    const { calendars, ownLines, events, zones } = readComponents(text);
    if (calendars === 0) return { state: 'wrong', message: noCalendar(text) };
    const remarks: string[] = [];
    const clocks = new TimeZones(zones);
    const read = events.flatMap(component => readEvent(component, clocks, remarks) ?? []);
    const calendar: CalendarFile = { events: daysOf(withoutOldVersions(read), remarks), remarks };
    const title = ownLines.flatMap(line => readLine(line) ?? []).find(({ name }) => name === 'X-WR-CALNAME' || name === 'NAME')?.value;
    if (title) calendar.title = textOf(title);
    if (events.length === 0) remarks.push('It holds no events.');
    if (remarks.length > mostRemarks) remarks.splice(mostRemarks, remarks.length, `There are ${remarks.length - mostRemarks} more like these.`);
    return { state: 'calendar', calendar };
}

/**
 * The days that a calendar takes away between two ISO dates, both inclusive, sorted by first day: one entry for each time
 * that an event happens, cut off at the two dates, whatever its title. At most 20 years from `from` on are looked at.
 */
export function daysOffIn(calendar: CalendarFile, from: string, to: string, memo?: CalendarMemo): readonly CalendarDays[] {
    const known = memo?.get(calendar);
    const key = `${from} ${to}`;
    const kept = known?.get(key);
    if (kept) return kept;
    const days = expand(calendar, from, to);
    if (known) known.set(key, days);
    else memo?.set(calendar, new Map([[key, days]]));
    return days;
}

function expand(calendar: CalendarFile, from: string, to: string): CalendarDays[] {
    const first = dayOfIso(from);
    const last = dayOfIso(to);
    if (first === undefined || last === undefined) return [];
    const end = Math.min(last, first + mostDays - 1);
    const found: CalendarDays[] = [];
    const take = ({ title, uid }: CalendarEvent, begin: number, until: number): void => {
        if (begin <= end && until >= first) found.push({ from: isoOfDay(Math.max(begin, first)), to: isoOfDay(Math.min(until, end)), title, uid });
    };
    for (const event of calendar.events) {
        if (event.days) take(event, dayOfIso(event.days.from) ?? lastDay, dayOfIso(event.days.to) ?? firstDay);
        if (event.repeats) for (const days of repeatedDays(event.repeats, first, end)) take(event, ...days);
    }
    return found.sort((a, b) => compare(a.from, b.from) || compare(a.to, b.to) || compare(a.title, b.title));
}

function compare(a: string, b: string): number {
    return a < b ? -1 : a > b ? 1 : 0;
}

/** Each time that the event happens between two days: its first and last whole day. */
function repeatedDays({ start, lasts, wholeDays, rules, also, except }: Repeating, first: number, last: number): [number, number][] {
    const from = first * secondsADay - lasts;
    const to = (last + 1) * secondsADay;
    // What a calendar may ask for in a year is limited when it is read, so that this effort is enough for any that was.
    const effort: Effort = { left: Number.POSITIVE_INFINITY };
    const times = new Set([start, ...also].filter(time => time >= from && time <= to));
    for (const rule of rules) for (const time of repetitions(rule, start, from, to, effort, wholeDays)) times.add(time);
    const without = new Set(except);
    return [...times].filter(time => !without.has(Math.floor(time / secondsADay))).flatMap(time => {
        const days = wholeDaysOf(time, lasts);
        return days ? [days] : [];
    });
}

/** First and last of the days that are covered from 00:00 to 24:00. */
function wholeDaysOf(start: number, lasts: number): [number, number] | undefined {
    const first = Math.max(firstDay, Math.ceil(start / secondsADay));
    const last = Math.min(lastDay, Math.floor((start + lasts + lastMinute) / secondsADay) - 1);
    return first <= last ? [first, last] : undefined;
}

/** Of several versions of one event the newest; events that share an identifier for no good reason all stay. */
function withoutOldVersions(events: readonly ReadEvent[]): ReadEvent[] {
    const keyOf = ({ uid, insteadOf }: ReadEvent): string => `${uid} ${insteadOf ?? ''}`;
    const newest = new Map<string, number>();
    for (const event of events) newest.set(keyOf(event), Math.max(event.sequence, newest.get(keyOf(event)) ?? 0));
    return events.filter(event => event.uid === '' || event.sequence === newest.get(keyOf(event)));
}

function daysOf(events: readonly ReadEvent[], remarks: string[]): CalendarEvent[] {
    const replaced = new Map<string, number[]>();
    for (const { uid, insteadOf } of events) {
        if (insteadOf === undefined) continue;
        const days = replaced.get(uid);
        if (days) days.push(insteadOf);
        else replaced.set(uid, [insteadOf]);
    }
    const limits = new Limits();
    const kept = events.flatMap((event, index): CalendarEvent[] => {
        if (event.cancelled || event.lasts < secondsADay - lastMinute) return [];
        const called = { uid: event.uid || `event-${index + 1}`, title: event.title };
        if (event.insteadOf !== undefined || event.rules.length + event.also.length === 0) {
            const days = wholeDaysOf(event.start, event.lasts);
            return days && !event.except.includes(days[0]) ? [{ ...called, days: { from: isoOfDay(days[0]), to: isoOfDay(days[1]) } }] : [];
        }
        if (event.lasts > daysAYear * secondsADay) {
            remarks.push(`'${event.title}' lasts longer than a year and repeats; it is left out.`);
            return [];
        }
        const rules = limits.take(event);
        if (!rules) return [];
        return [{ ...called, repeats: { start: event.start, lasts: event.lasts, wholeDays: event.wholeDays, rules, also: event.also, except: [...event.except, ...replaced.get(event.uid) ?? []] } }];
    });
    if (limits.refused > 0) remarks.push(`${limits.refused === 1 ? `'${limits.firstRefused}' repeats` : `${limits.refused} events, '${limits.firstRefused}' first, repeat`} too often to be planned with and ${limits.refused === 1 ? 'is' : 'are'} left out.`);
    return kept;
}

/** Lets no calendar ask for more repetitions than can be worked out quickly. */
class Limits {
    refused = 0;
    firstRefused = '';
    private times = mostTimesAYear;
    private tries = mostTriesAYear;
    private readonly counting: Effort = { left: 1_000_000 };

    /** The event's rules, each with its last moment in place of a count; undefined when they ask too much. */
    take(event: ReadEvent): RepeatRule[] | undefined {
        const each = event.rules.map(rule => Math.min(timesAYear(rule, event.wholeDays), rule.count ?? Number.POSITIVE_INFINITY));
        const times = each.reduce((sum, most) => sum + most, 0);
        const tries = each.reduce((sum, most) => sum + Math.max(triesAYear, most), 0);
        const rules = times <= this.times && tries <= this.tries && this.counting.left > 0 ? event.rules.map(rule => this.counted(rule, event)) : undefined;
        if (!rules || this.counting.left <= 0) {
            this.firstRefused ||= event.title;
            this.refused++;
            return undefined;
        }
        this.times -= times;
        this.tries -= tries;
        return rules;
    }

    private counted(rule: RepeatRule, { start, wholeDays }: ReadEvent): RepeatRule {
        if (rule.count === undefined) return rule;
        let until = start;
        for (const time of repetitions(rule, start, start, start + yearsCounted * daysAYear * secondsADay, this.counting, wholeDays)) until = time;
        return { ...rule, count: undefined, until };
    }
}

function noCalendar(text: string): string {
    if (/^\s*$/.test(text)) return 'The file is empty. Save the calendar again.';
    if (/^\s*<(?:!doctype|html|\?xml)/i.test(text)) return 'This is a web page and not a calendar. On the page, look for a link to the calendar itself (iCalendar, .ics) and save that.';
    return 'This is not a calendar: it has no line BEGIN:VCALENDAR. Save the calendar again as iCalendar (.ics).';
}
