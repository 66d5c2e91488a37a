import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { daysOffIn, readCalendar, type CalendarMemo } from '@haversack/language/attachments/calendar-file';
import type { CalendarFile } from '@haversack/language/attachments/attachment';

// Nothing here is timed; a rule that ran on without end would meet the limit of the test.
vi.setConfig({ testTimeout: 120_000 });

const inCalendar = (...lines: string[]): string => ['BEGIN:VCALENDAR', ...lines, 'END:VCALENDAR'].join('\r\n');
const event = (...lines: string[]): string[] => ['BEGIN:VEVENT', 'UID:x', ...lines, 'END:VEVENT'];

function calendar(text: string): CalendarFile {
    const read = readCalendar(text);
    if (read.state !== 'calendar') throw new Error(JSON.stringify(read));
    return read.calendar;
}

const days = (file: CalendarFile, from = '2026-09-01', to = '2027-08-31'): string[] => daysOffIn(file, from, to).map(found => (found.from === found.to ? found.from : `${found.from}/${found.to}`));

/** A calendar of the kind that towns publish, with a little of everything. */
const town = inCalendar('VERSION:2.0', 'PRODID:-//Example town//EN', 'X-WR-CALNAME:Example town', 'METHOD:PUBLISH',
    'BEGIN:VTIMEZONE', 'TZID:Town', 'BEGIN:STANDARD', 'DTSTART:20071104T020000', 'RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU', 'TZOFFSETFROM:-0400', 'TZOFFSETTO:-0500', 'END:STANDARD',
    'BEGIN:DAYLIGHT', 'DTSTART:20070311T020000', 'RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU', 'TZOFFSETFROM:-0500', 'TZOFFSETTO:-0400', 'END:DAYLIGHT', 'END:VTIMEZONE',
    ...event('SUMMARY:Harvest day', 'DTSTART;VALUE=DATE:20261005', 'RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=1MO', 'BEGIN:VALARM', 'TRIGGER:-PT15M', 'DURATION:PT5M', 'END:VALARM', 'DESCRIPTION:Bring a coat\\, and\\nsomething warm to dr', ' ink.'),
    ...event('SUMMARY:Snow days', 'DTSTART;TZID=Town:20270118T000000', 'DTEND;TZID=Town:20270120T000000', 'RRULE:FREQ=MONTHLY;COUNT=2;BYMONTHDAY=18', 'EXDATE:20270218T050000Z'),
    ...event('SUMMARY:Flood', 'DTSTART;VALUE=DATE:20270301', 'DURATION:P3D', 'STATUS:CONFIRMED'),
    'BEGIN:VTODO', 'UID:t', 'DUE;VALUE=DATE:20261001', 'END:VTODO', 'BEGIN:VJOURNAL', 'DTSTART;VALUE=DATE:20261002', 'END:VJOURNAL');

describe('what towns publish', () => {
    test('is read with all that it holds besides', () => {
        const file = calendar(town);
        expect(file.title).toBe('Example town');
        expect(file.remarks).toEqual([]);
        expect(days(file)).toEqual(['2026-10-05', '2027-01-18/2027-01-19', '2027-03-01/2027-03-03']);
    });

    test.each([
        ['lines that end in LF', town.replace(/\r\n/g, '\n')], ['lines that end in CR', town.replace(/\r\n/g, '\r')], ['a byte order mark', `\uFEFF${town}`], ['lines folded everywhere', town.split('\r\n').map(line => line.replace(/.{3}(?=.)/gu, '$&\r\n ')).join('\r\n')],
        ['two calendars', `${town}\r\n${inCalendar()}`], ['lines that are none', town.replace(/SUMMARY/g, 'nonsense without a sign\r\n\r\n===\r\nSUMMARY')], ['names in small letters', town.replace(/^[A-Z-]+/gm, name => name.toLowerCase())],
        ['properties of its own', town.replace(/SUMMARY/g, 'X-TOWN;X-COLOUR="red:blue;x":yes\r\nSUMMARY')], ['the end missing', town.slice(0, town.lastIndexOf('END:VCALENDAR'))], ['no identifiers', town.replace(/UID:x\r\n/g, '')]
    ])('with %s', (_, text) => {
        expect(days(calendar(text))).toEqual(['2026-10-05', '2027-01-18/2027-01-19', '2027-03-01/2027-03-03']);
    });

    test('an event that is cancelled, or that newer words of the same event cancel, takes no day', () => {
        expect(days(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005', 'STATUS:CANCELLED'))))).toEqual([]);
        expect(days(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005'), ...event('DTSTART;VALUE=DATE:20261005', 'SEQUENCE:1', 'STATUS:CANCELLED'))))).toEqual([]);
    });

    test('one identifier for different events loses none of them', () => {
        expect(days(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005'), ...event('DTSTART;VALUE=DATE:20261012'))))).toEqual(['2026-10-05', '2026-10-12']);
    });

    test('what is asked for again is not worked out again', () => {
        const memo: CalendarMemo = new WeakMap();
        const file = calendar(town);
        expect(daysOffIn(file, '2026-09-01', '2027-08-31', memo)).toBe(daysOffIn(file, '2026-09-01', '2027-08-31', memo));
        expect(daysOffIn(file, '2026-09-01', '2026-12-31', memo)).toHaveLength(1);
    });

    test('days are cut off at the first and last that are asked for', () => {
        const long = calendar(inCalendar(...event('DTSTART;VALUE=DATE:00010101', 'DTEND;VALUE=DATE:99991231')));
        expect(days(long, '2026-10-05', '2026-10-07')).toEqual(['2026-10-05/2026-10-07']);
        expect(days(long, '9999-12-29', '9999-12-31')).toEqual(['9999-12-29/9999-12-30']);
        expect(days(long, 'never', '2026-02-30')).toEqual([]);
    });
});

describe('what is left out is told', () => {
    test.each([
        [['DTSTART;VALUE=DATE:20261005', 'DTEND;VALUE=DATE:20261005', 'SUMMARY:Nothing'], '\'Nothing\' on 2026-10-05 ends before it begins and is left out.'],
        [['DTSTART:20261005T100000', 'DTEND:20261004T100000', 'SUMMARY:Back'], '\'Back\' on 2026-10-05 ends before it begins and is left out.'],
        [['DTSTART;VALUE=DATE:20261005', 'DURATION:-P2D', 'SUMMARY:Back'], '\'Back\' on 2026-10-05 ends before it begins and is left out.'],
        [['DTSTART;VALUE=DATE:20261005', 'DURATION:two days', 'SUMMARY:Long'], '\'Long\' on 2026-10-05 has an end that cannot be read and is left out.'],
        [['DTSTART;VALUE=DATE:20260231', 'SUMMARY:Never'], '\'Never\' has \'20260231\' where its first day should stand and is left out.'],
        [['SUMMARY:Some day'], '\'Some day\' has no first day and is left out.'],
        [['DTSTART;VALUE=DATE:20261005', 'RRULE:FREQ=OFTEN', 'SUMMARY:Again'], 'How \'Again\' repeats cannot be read: only 2026-10-05 counts.'],
        [['DTSTART;VALUE=DATE:20261005', 'RRULE:FREQ=SECONDLY', 'SUMMARY:Tick'], '\'Tick\' repeats too often to be planned with and is left out.'],
        [['DTSTART;VALUE=DATE:20261005', 'DURATION:P2Y', 'DTEND;VALUE=DATE:20281005', 'RRULE:FREQ=DAILY', 'SUMMARY:Age'], '\'Age\' lasts longer than a year and repeats; it is left out.']
    ])('%s', (lines, remark) => {
        expect(calendar(inCalendar(...event(...lines))).remarks).toEqual([remark]);
    });

    test('an event in which the file breaks off', () => {
        const text = inCalendar(...event('DTSTART;VALUE=DATE:20261005'), ...event('SUMMARY:Half', 'DTSTART;VALUE=DATE:20261012'));
        const file = calendar(text.slice(0, text.lastIndexOf('END:VEVENT')));
        expect(file.remarks).toEqual(['\'Half\' breaks off in the middle and is left out.']);
        expect(days(file)).toEqual(['2026-10-05']);
    });

    test('not more than can be read', () => {
        const file = calendar(inCalendar(...Array.from({ length: 500 }, () => event('SUMMARY:Some day')).flat()));
        expect(file.remarks).toHaveLength(13);
        expect(file.remarks.at(-1)).toBe('There are 488 more like these.');
    });

    test.each([['', 'is empty'], ['\n \n', 'is empty'], ['<!DOCTYPE html><html>', 'web page'], ['PK\u0003\u0004', 'not a calendar'], ['{"a":1}', 'not a calendar'], ['BEGIN:VCARD\nEND:VCARD', 'not a calendar']])('%j is no calendar', (text, says) => {
        const read = readCalendar(text);
        expect(read.state).toBe('wrong');
        expect(read.state === 'wrong' && read.message).toContain(says);
    });
});

describe('calendars that are made to keep one busy', () => {
    const rules = ['FREQ=SECONDLY', 'FREQ=MINUTELY;BYDAY=MO', 'FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30', 'FREQ=HOURLY;INTERVAL=24', 'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30', 'FREQ=WEEKLY;BYMONTH=2;BYMONTHDAY=31', 'FREQ=MONTHLY;BYDAY=5MO;BYMONTHDAY=1',
        'FREQ=YEARLY;BYMONTH=4;BYDAY=1MO;BYMONTHDAY=15,16', 'FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6', 'FREQ=YEARLY;BYDAY=53MO;BYMONTH=2', 'FREQ=YEARLY;BYYEARDAY=366;INTERVAL=3', 'FREQ=DAILY;COUNT=1000000000', 'FREQ=YEARLY;COUNT=5;BYMONTH=2;BYMONTHDAY=30',
        'FREQ=SECONDLY;COUNT=10', 'FREQ=DAILY;INTERVAL=999999999999999', 'FREQ=MONTHLY;BYSETPOS=366;BYDAY=MO', `FREQ=DAILY;BYHOUR=${Array.from({ length: 24 }, (_, i) => i).join()};BYMINUTE=${Array.from({ length: 60 }, (_, i) => i).join()};BYSECOND=${Array.from({ length: 60 }, (_, i) => i).join()}`];

    test.each(rules.flatMap(rule => ['00010101', '19700101', '20261005', '99991231'].flatMap(start => [[rule.slice(0, 60), start, rule, 'VALUE=DATE', 'DURATION:P1D'], [rule.slice(0, 60), `${start}T000000`, rule, 'TZID=America/New_York', 'DURATION:PT36H']] as const)))('%s from %s', (_, start, rule, param, duration) => {
        const file = calendar(inCalendar(...event(`DTSTART;${param}:${start}`, duration, `RRULE:${rule}`)));
        expect(daysOffIn(file, '2026-01-01', '2036-12-31').length).toBeLessThanOrEqual(11 * 366);
        expect(daysOffIn(file, '0001-01-01', '9999-12-31').length).toBeLessThanOrEqual(20 * 366);
    });

    test('thirty thousand events', () => {
        const many = (...lines: string[]): CalendarFile => calendar(inCalendar(event(...lines).join('\n').concat('\n').repeat(30_000)));
        const once = many('DTSTART;VALUE=DATE:20261005');
        expect(daysOffIn(once, '2026-10-01', '2026-10-31')).toHaveLength(30_000);
        const often = many('DTSTART;VALUE=DATE:20200101', 'RRULE:FREQ=DAILY', 'SUMMARY:Daily');
        expect(daysOffIn(often, '2026-10-01', '2027-09-30').length).toBeLessThan(60_000);
        expect(often.remarks).toEqual([expect.stringMatching(/^29\d{3} events, 'Daily' first, repeat too often to be planned with and are left out\.$/)]);
        const never = many('DTSTART;VALUE=DATE:00010101', 'RRULE:FREQ=YEARLY;COUNT=3;BYMONTH=2;BYMONTHDAY=30');
        expect(daysOffIn(never, '2026-10-01', '2027-09-30')).toEqual([]);
    });

    test('ten thousand beginnings, one in another, and as many ends of nothing', () => {
        for (const name of ['VEVENT', 'VCALENDAR', 'VALARM', 'VTIMEZONE', 'STANDARD']) {
            const read = readCalendar(`BEGIN:VCALENDAR\n${`BEGIN:${name}\nDTSTART:20261005\n`.repeat(10_000)}${`END:${name}\n`.repeat(10_000)}END:NOTHING\n`.repeat(1) + 'END:VEVENT\n'.repeat(10_000));
            expect(read.state).toBe('calendar');
        }
    });

    test('a zone whose clocks change every second', () => {
        const zone = ['BEGIN:VTIMEZONE', 'TZID:Mad', 'BEGIN:STANDARD', 'DTSTART:19700101T000000', 'RRULE:FREQ=SECONDLY', 'TZOFFSETFROM:-0400', 'TZOFFSETTO:-0500', 'END:STANDARD', 'END:VTIMEZONE'];
        const events = Array.from({ length: 2000 }, (_, index) => event('DTSTART;TZID=Mad:20261005T000000', `DTEND:2026${String((index % 12) + 1).padStart(2, '0')}07T000000Z`)).flat();
        expect(calendar(inCalendar(...zone, ...events)).events.length).toBeLessThanOrEqual(2000);
    });

    test('one line of four million letters, and a million folds', () => {
        expect(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005', `SUMMARY:${'\u{1F393}'.repeat(2_000_000)}`))).events[0]!.title).toBe(`${'\u{1F393}'.repeat(200)}…`);
        expect(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005', `SUMMARY:${'x\r\n '.repeat(1_000_000)}`))).events).toHaveLength(1);
        expect(calendar(inCalendar(...event(`DTSTART;${'X="'.repeat(100_001)}:20261005`))).events).toHaveLength(0);
        expect(calendar(inCalendar(...event('DTSTART;VALUE=DATE:20261005', `EXDATE:${'20261005,'.repeat(200_000)}`, `RDATE:${'20261006,'.repeat(200_000)}`))).events).toHaveLength(1);
    });

    const anyLine = fc.oneof(fc.constantFrom(...town.split('\r\n')), fc.string({ maxLength: 40 }), fc.constantFrom('RRULE:FREQ=DAILY;UNTIL=', 'DTSTART:', 'DTSTART;TZID=:20261005T000000', 'EXDATE:,', 'RDATE;VALUE=PERIOD:20261005T000000/PT24H', 'RECURRENCE-ID:20261005', 'BEGIN:VEVENT', 'END:VEVENT', 'BEGIN:', 'END', ':', ';', ' x', 'DURATION:P', 'DTEND:20261005T250000', 'SUMMARY:\\', 'TZOFFSETTO:x'));

    test('any truncation and any edit is read without an error', () => {
        const tried = (text: string): void => {
            const read = readCalendar(text);
            if (read.state === 'calendar') {
                const found = daysOffIn(read.calendar, '2026-01-01', '2028-12-31');
                for (const { from, to } of found) expect(from <= to && from >= '2026-01-01' && to <= '2028-12-31').toBe(true);
                expect(found.map(({ from }) => from)).toEqual(found.map(({ from }) => from).sort());
                expect(JSON.parse(JSON.stringify(read))).toEqual(read);
            } else {
                expect(read.state === 'wrong' && read.message).toMatch(/\.$/);
            }
        };
        fc.assert(fc.property(fc.integer({ min: 0, max: town.length }), fc.integer({ min: 0, max: 60 }), fc.string({ maxLength: 12 }), (at, less, more) => tried(town.slice(0, at) + more + town.slice(at + less))), { numRuns: 1500 });
        fc.assert(fc.property(fc.integer({ min: 0, max: town.length }), at => tried(town.slice(0, at))), { numRuns: 500 });
        fc.assert(fc.property(fc.array(anyLine, { maxLength: 40 }), lines => tried(inCalendar(...lines))), { numRuns: 1500 });
    });
});
