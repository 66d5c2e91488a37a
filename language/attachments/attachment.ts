/** Files that a programme names beside its own: calendars with days off and frameworks of standards. Plain data. */

/** How often something repeats: the parts of an RRULE (RFC 5545, 3.3.10), times in the event's own zone. */
export interface RepeatRule {
    every: 'SECONDLY' | 'MINUTELY' | 'HOURLY' | 'DAILY' | 'WEEKLY' | 'MONTHLY' | 'YEARLY';
    interval: number;
    count?: number;
    /** The last moment, in wall-clock seconds since 1970-01-01. */
    until?: number;
    /** 0 Monday to 6 Sunday. */
    weekStart: number;
    seconds?: number[];
    minutes?: number[];
    hours?: number[];
    /** `nth` counts within the month or year, from its end when negative; 0 is every one. */
    weekdays?: { day: number; nth: number }[];
    monthDays?: number[];
    yearDays?: number[];
    weeks?: number[];
    months?: number[];
    positions?: number[];
}

/** An event that happens again and again. Times are wall-clock seconds since 1970-01-01 in the event's own zone. */
export interface Repeating {
    start: number;
    /** Seconds by the clock on the wall, more than 0. */
    lasts: number;
    /** Has dates and no times. */
    wholeDays: boolean;
    rules: RepeatRule[];
    /** Further times at which it begins. */
    also: number[];
    /** Days (since 1970-01-01) on which it does not begin. */
    except: number[];
}

/** An event of a calendar that takes whole days away, once or repeatedly. Dates are ISO 8601. */
export interface CalendarEvent {
    uid: string;
    title: string;
    /** An event that happens once: its days, both inclusive. */
    days?: { from: string; to: string };
    repeats?: Repeating;
}

export interface CalendarFile {
    /** The calendar's own name, where it has one. */
    title?: string;
    events: CalendarEvent[];
    /** What could not be read and is left out, in a teacher's words. */
    remarks: string[];
}

/** Whole days that a calendar takes away, both inclusive. */
export interface CalendarDays {
    from: string;
    to: string;
    title: string;
    uid: string;
}

/** An item of a framework (CFItem of 1EdTech CASE 1.0) with the items under it in their order. */
export interface FrameworkItem {
    identifier: string;
    /** humanCodingScheme. */
    code?: string;
    /** fullStatement. */
    statement: string;
    /** CFItemType. */
    type?: string;
    children: FrameworkItem[];
}

export interface FrameworkFile {
    /** Title of the document. */
    title: string;
    items: FrameworkItem[];
    /** What was left out or mended while reading, in a teacher's words. */
    remarks: string[];
}

export type Attachment =
    | { state: 'calendar'; calendar: CalendarFile }
    | { state: 'framework'; framework: FrameworkFile }
    /** Why it cannot be used and what to do, in a teacher's words. `near`: addresses of files that may be meant, where it is missing. */
    | { state: 'wrong'; message: string; near?: string[] };
