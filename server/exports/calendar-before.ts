import ICAL from 'ical.js';

/** An event of a calendar that was written earlier. Times as ISO 8601: a date, or a local date and time. */
export interface WrittenEvent {
    uid: string;
    start: string;
    end?: string;
    summary: string;
    description: string;
    /** ISO 8601 instants. */
    stamp: string;
    modified?: string;
    sequence: number;
    cancelled: boolean;
}

/** Our own events in a calendar text, by UID; none where it cannot be read. */
export function readWritten(text: string | undefined): Map<string, WrittenEvent> {
    const events = new Map<string, WrittenEvent>();
    if (text === undefined) return events;
    try {
        for (const event of new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent')) {
            const written = readEvent(event);
            if (written) events.set(written.uid, written);
        }
    } catch {
        // Not a calendar: then nothing of it is kept.
        return new Map();
    }
    return events;
}

function readEvent(event: ICAL.Component): WrittenEvent | undefined {
    const value = (name: string): string | undefined => event.getFirstPropertyValue(name)?.toString();
    const [uid, start, stamp] = [value('uid'), value('dtstart'), value('dtstamp')];
    if (!uid?.endsWith('@plan.haversack.example') || !start || !stamp) return undefined;
    const sequence = Number(value('sequence') ?? 0);
    return {
        uid, start, end: value('dtend'), summary: value('summary') ?? '', description: value('description') ?? '', stamp, modified: value('last-modified'),
        sequence: Number.isSafeInteger(sequence) && sequence >= 0 ? sequence : 0, cancelled: value('status') === 'CANCELLED'
    };
}
