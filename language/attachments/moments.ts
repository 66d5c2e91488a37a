import ICAL from 'ical.js';
import type { RepeatRule } from './attachment.js';
import { existingDay } from './day-numbers.js';

/** A date or time as a calendar writes it (RFC 5545, 3.3.4 and 3.3.5). */
export interface Moment {
    /** Days since 1970-01-01. */
    day: number;
    /** Seconds of the day; absent for a date without a time. */
    time?: number;
    /** Time in UTC, as a trailing Z says. */
    utc: boolean;
}

/** Undefined for what is no date, or one that does not exist. */
export function readMoment(value: string): Moment | undefined {
    const parts = /^(\d{4})-?(\d{2})-?(\d{2})(?:T(\d{2}):?(\d{2}):?(\d{2})?(Z)?)?$/i.exec(value.trim());
    if (!parts) return undefined;
    const [year, month, day, hour, minute, second] = parts.slice(1, 7).map(Number) as [number, number, number, number, number, number];
    const number = existingDay(year, month, day);
    if (number === undefined) return undefined;
    if (parts[4] === undefined) return { day: number, utc: false };
    // 24:00 is not in the standard, but means what it says; a leap second counts as the one before it.
    if (hour > 24 || minute > 59 || second > 60) return undefined;
    return { day: number, time: hour * 3600 + minute * 60 + Math.min(59, second || 0), utc: parts[7] !== undefined };
}

/** A length of time in seconds (RFC 5545, 3.3.6); undefined for what is none. */
export function readDuration(value: string): number | undefined {
    try {
        const seconds = ICAL.Duration.fromString(value.trim().toUpperCase()).toSeconds();
        return Number.isSafeInteger(seconds) ? seconds : undefined;
    } catch {
        return undefined;
    }
}

const weekdayCodes = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
const mostEvery = 1_000_000_000;

/** An RRULE; undefined for what is none. `local` turns its last moment into the event's own time. */
export function readRule(value: string, local: (until: Moment) => number): RepeatRule | undefined {
    const parts = value.toUpperCase().split(';').map(part => part.trim()).filter(part => part !== '');
    const written = parts.find(part => part.startsWith('UNTIL='))?.slice('UNTIL='.length);
    const until = written === undefined ? undefined : readMoment(written);
    if (written !== undefined && until === undefined) return undefined;
    let recur: ICAL.Recur;
    try {
        recur = ICAL.Recur.fromString(parts.filter(part => !part.startsWith('UNTIL=')).join(';'));
    } catch {
        return undefined;
    }
    const { freq, interval, count, wkst, parts: by } = recur as unknown as { freq: RepeatRule['every'] | null; interval: number; count: number | null; wkst: number; parts: Record<string, (number | string)[] | undefined> };
    if (!freq) return undefined;
    const numbers = (name: string): number[] | undefined => by[name]?.map(Number);
    const rule: RepeatRule = {
        every: freq, interval: Math.min(mostEvery, Math.max(1, interval)), weekStart: (wkst + 5) % 7,
        ...(count !== null && { count: Math.max(1, count) }), ...(until && { until: local(until) })
    };
    const given: Partial<RepeatRule> = {
        seconds: numbers('BYSECOND')?.map(second => Math.min(59, second)), minutes: numbers('BYMINUTE'), hours: numbers('BYHOUR'),
        weekdays: by.BYDAY?.map(day => ({ day: weekdayCodes.indexOf(String(day).slice(-2)), nth: Number.parseInt(String(day), 10) || 0 })),
        monthDays: numbers('BYMONTHDAY'), yearDays: numbers('BYYEARDAY'), weeks: numbers('BYWEEKNO'), months: numbers('BYMONTH'), positions: numbers('BYSETPOS')
    };
    return Object.assign(rule, Object.fromEntries(Object.entries(given).filter(([, part]) => part !== undefined)));
}
