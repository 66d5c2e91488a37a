/**
 * The calendars that we write, against RFC 5545 (sections named at each test) and against ical.js, a reader that shares nothing with the
 * writer (ical-generator).
 */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { scheduleCalendar } from '@haversack/server/exports/calendar';
import { meeting, order, schedule, taught } from '../exports/figures.js';

const september = { title: 'Shed', now: '2026-09-01T08:00:00Z' };
/** Half a character becomes the replacement sign, as in UTF-8. */
const wellFormed = (text: string): string => Buffer.from(text).toString();
const events = (text: string) => new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
const property = (event: ICAL.Event, name: string): string | undefined => event.component.getFirstPropertyValue(name)?.toString();
const anyTitle = fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'binary' }), fc.constantFrom('A, B; C\\ D', '\nBEGIN:VEVENT\n', 'é'.repeat(200), '\u202eright to left', '"quoted": yes'));

describe('RFC 5545', () => {
    test('3.1: lines end with CRLF and are no longer than 75 octets, and no character is cut in two', () => {
        fc.assert(fc.property(anyTitle, anyTitle, (title, off) => {
            const text = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a', title))], { daysOff: [{ from: '2026-09-08', to: '2026-09-09', title: off, costs: true }] }), september);
            expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
            expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
            for (const line of text.split('\r\n')) {
                expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
                expect(wellFormed(line)).toBe(line);
            }
        }));
    });

    test('3.3.11: what a title says comes back to the letter, control characters apart', () => {
        fc.assert(fc.property(anyTitle, title => {
            const [event] = events(scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a', title))]), september));
            expect(event?.summary).toBe(wellFormed(title).replace(/[\p{Cc}\u2028\u2029]+/gu, ' ').trim());
        }));
    });

    test('3.6.1: the end of an all-day event is the day after its last', () => {
        // The RFC's own example: 28 June to 8 July 2007 inclusive.
        const [, off] = events(scheduleCalendar(schedule([meeting('2007-06-27', 'Wed 27 Jun', taught('a'))], { daysOff: [{ from: '2007-06-28', to: '2007-07-08', title: 'Festival', costs: true }] }), september));
        expect(off?.startDate.toString()).toBe('2007-06-28');
        expect(off?.endDate.toString()).toBe('2007-07-09');
        expect(off?.duration.toString()).toBe('P11D');
    });

    test('3.6 and 3.6.1: every required property, once', () => {
        const text = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'), taught('b'))]), { ...september, orders: [order('Beans')] });
        const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
        for (const name of ['prodid', 'version']) expect(calendar.getAllProperties(name)).toHaveLength(1);
        expect(events(text)).toHaveLength(3);
        for (const { component } of events(text)) {
            for (const name of ['uid', 'dtstamp', 'dtstart', 'sequence', 'last-modified']) expect(component.getAllProperties(name), name).toHaveLength(1);
        }
    });
});

describe('a re-import updates', () => {
    const before = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a')), meeting('2026-09-08', 'Tue 8 Sep', taught('b'))]), september);
    const later = { title: 'Shed', now: '2026-09-20T08:00:00Z' };

    test('a lesson that moves keeps its UID and gets a higher number', () => {
        const after = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a')), meeting('2026-09-10', 'Thu 10 Sep', taught('b'))]), later);
        const [, old] = events(before);
        const moved = events(after).find(event => event.uid === old?.uid);
        expect(moved?.startDate.toString()).toBe('2026-09-10');
        expect(moved!.sequence).toBeGreaterThan(old!.sequence);
    });

    test('written over the earlier file, what did not change keeps number and stamp, what is gone is called off', () => {
        const after = events(scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'))]), { ...later, before }));
        const [a, b] = events(before);
        expect(after.map(event => event.uid)).toEqual([a!.uid, b!.uid]);
        expect(property(after[0]!, 'dtstamp')).toBe(property(a!, 'dtstamp'));
        expect(after[0]!.sequence).toBe(a!.sequence);
        expect(property(after[1]!, 'status')).toBe('CANCELLED');
        expect(after[1]!.sequence).toBeGreaterThan(b!.sequence);
        expect(after[1]!.startDate.toString()).toBe('2026-09-08');
    });

    test('the same plan written twice over is the same file', () => {
        const plan = schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a', 'A, b; c\\d', { remark: 'again: unsure' }))], { daysOff: [{ from: '2026-09-09', to: '2026-09-09', title: 'Fair', costs: true }] });
        const hours = [{ name: 'am', title: 'Morning', clock: '9:30' }];
        const once = scheduleCalendar(plan, { ...september, hours, orders: [order('Beans')] });
        expect(scheduleCalendar(plan, { ...later, hours, orders: [order('Beans')], before: once })).toBe(once);
    });

    test('someone else’s events in the earlier file are not ours to call off, and what is no calendar is nothing', () => {
        const foreign = before.replaceAll('@plan.haversack.example', '@elsewhere.example');
        expect(events(scheduleCalendar(schedule([]), { ...later, before: foreign }))).toHaveLength(0);
        expect(events(scheduleCalendar(schedule([]), { ...later, before: 'BEGIN:VCALENDAR\r\nBROKEN' }))).toHaveLength(0);
    });

    test.each([
        ['a stamp without a zone', (text: string) => text.replaceAll(/DTSTAMP:(\w+)Z/g, 'DTSTAMP:$1')],
        ['a stamp that is no time', (text: string) => text.replaceAll(/DTSTAMP:\w+/g, 'DTSTAMP:yesterday')],
        ['a first day that is no date', (text: string) => text.replaceAll(/DTSTART;VALUE=DATE:\d+/g, 'DTSTART;VALUE=DATE:soon')],
        ['a first day that does not exist', (text: string) => text.replaceAll(/DTSTART;VALUE=DATE:\d+/g, 'DTSTART;VALUE=DATE:20269999')]
    ])('an event of ours that another program gave %s is written anew', (_, spoil) => {
        const plan = schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'))]);
        expect(spoil(before)).not.toBe(before);
        const [event, ...more] = events(scheduleCalendar(plan, { ...later, before: spoil(before) }));
        expect(event?.startDate.toString()).toBe('2026-09-07');
        expect(property(event!, 'dtstamp')).toBe('2026-09-20T08:00:00Z');
        // What cannot be read cannot be called off, or keeps what could be read of it.
        expect(more.every(({ component }) => component.getFirstPropertyValue('status') === 'CANCELLED')).toBe(true);
    });

    test('a lesson that another program wrote in UTC is called off at the time it had on the clock', () => {
        const hours = [{ name: 'am', title: 'Morning', clock: '9:30' }];
        const timed = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'))]), { ...september, hours });
        const inUtc = timed.replaceAll(/(DT(?:START|END)):(\w+)\r/g, '$1:$2Z\r');
        expect(inUtc).not.toBe(timed);
        const [gone] = events(scheduleCalendar(schedule([]), { ...later, before: inUtc }));
        expect(property(gone!, 'status')).toBe('CANCELLED');
        expect(gone!.startDate.toString()).toBe('2026-09-07T09:30:00');
    });

    test('UIDs are all different: pieces, repeats, sections and classes', () => {
        const plan = schedule([
            meeting('2026-09-07', 'Mon 7 Sep', taught('a', 'A', { piece: { number: 1, of: 2 } })), meeting('2026-09-08', 'Tue 8 Sep', taught('a', 'A', { piece: { number: 2, of: 2 } })),
            meeting('2026-09-09', 'Wed 9 Sep', taught('a', 'A', { why: 'repeat' }), taught('a', 'A', { why: 'repeat' }))
        ]);
        const hours = [{ name: 'am', title: 'Morning', clock: '9:30' }, { name: 'pm', title: 'Afternoon', clock: '13:00' }];
        const all = [...events(scheduleCalendar(plan, { ...september, hours })), ...events(scheduleCalendar({ ...plan, class: 'barn' }, { ...september, hours }))].map(event => event.uid);
        expect(all).toHaveLength(16);
        expect(new Set(all).size).toBe(16);
    });
});

describe('hours', () => {
    test('sections with an hour are timed, lessons of one meeting one after the other, in local time', () => {
        const text = scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'), taught('b', 'B', { minutes: 20 }))]), { ...september, hours: [{ name: 'am', title: 'Morning', clock: '9:30' }] });
        expect(events(text).map(event => `${event.startDate.toString()} to ${event.endDate.toString()}`)).toEqual(['2026-09-07T09:30:00 to 2026-09-07T10:00:00', '2026-09-07T10:00:00 to 2026-09-07T10:20:00']);
    });

    test('an hour that no clock shows makes an all-day event', () => {
        const [event] = events(scheduleCalendar(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a'))]), { ...september, hours: [{ name: 'am', title: 'Morning', clock: '25:00' }] }));
        expect(event?.startDate.isDate).toBe(true);
    });

    test('a plan without dates has no events', () => {
        expect(events(scheduleCalendar(schedule([meeting(undefined, 'Day 1', taught('a'))]), september))).toHaveLength(0);
    });
});
