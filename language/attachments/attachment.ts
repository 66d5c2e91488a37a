/** Files that a programme names beside its own: calendars with days off and frameworks of standards. Plain data. */

/** An event of a calendar, as far as it can take days away. Dates are ISO 8601; times carry their zone where one is known. */
export interface CalendarEvent {
    uid: string;
    title: string;
    /** The event's own text between BEGIN:VEVENT and END:VEVENT, from which its repetitions are worked out. */
    text: string;
}

export interface CalendarFile {
    /** The calendar's own name, where it has one. */
    title?: string;
    events: CalendarEvent[];
    /** Definitions of time zones that events name, as text. */
    zones: string[];
    /** Events that could not be read and are left out, in a teacher's words. */
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
    /** Why it cannot be used and what to do, in a teacher's words. */
    | { state: 'wrong'; message: string };
