import ICAL from 'ical.js';
import { Temporal } from 'temporal-polyfill';

/** What the UID of every event of ours ends in (RFC 5545, 3.8.4.7: globally unique). */
export const ownUids = '@plan.haversack.example';

/** An event of a calendar that was written earlier. Times as ISO 8601: a date, or a date and time as the clock on the wall shows it. */
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

/** Our own events in a calendar text, by UID; none where it is no calendar. Events that another program spoilt are passed over. */
export function readWritten(text: string | undefined): Map<string, WrittenEvent> {
    if (text === undefined) return new Map();
    const found = read(() => new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent')) ?? [];
    return new Map(found.flatMap(event => readEvent(event) ?? []).map(event => [event.uid, event]));
}

function readEvent(event: ICAL.Component): WrittenEvent | undefined {
    const value = (name: string): string | undefined => read(() => event.getFirstPropertyValue(name)?.toString());
    const uid = value('uid');
    const [start, end] = [local(value('dtstart')), local(value('dtend'))];
    const [stamp, modified] = [instant(value('dtstamp')), instant(value('last-modified'))];
    if (!uid?.endsWith(ownUids) || start === undefined || stamp === undefined) return undefined;
    const sequence = Number(value('sequence') ?? 0);
    return {
        uid, start, end, summary: value('summary') ?? '', description: value('description') ?? '', stamp, modified,
        sequence: Number.isSafeInteger(sequence) && sequence >= 0 ? sequence : 0, cancelled: value('status') === 'CANCELLED'
    };
}

function local(time: string | undefined): string | undefined {
    const plain = time?.replace(/Z$/, '');
    return plain !== undefined && read(() => Temporal.PlainDateTime.from(plain)) ? plain : undefined;
}

function instant(time: string | undefined): string | undefined {
    return time !== undefined && read(() => Temporal.Instant.from(time)) ? time : undefined;
}

/** Undefined for what the library cannot read. */
function read<T>(how: () => T): T | undefined {
    try {
        return how();
    } catch {
        return undefined;
    }
}
