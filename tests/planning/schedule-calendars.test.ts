import { describe, expect, test } from 'vitest';
import type { Attachment, CalendarDays, CalendarFile } from '@haversack/language/attachments/attachment';
import { readCalendar } from '@haversack/language/attachments/calendar-file';
import { attachmentKey, gatherProgramme } from '@haversack/language/sheets/programme';
import { planSchedule } from '../../server/planning/schedule.js';
import { course, file, klass, off, on, range, uri } from './sheets.js';
import { kinds, planOf, timed, told, twoDays } from './schedule-sheets.js';

const lessons = (count: number) => Array.from({ length: count }, (_, i) => timed(`l${i + 1}`, [40]));
const from = (path: string, ...named: string[]) => ({ path, named, at: range() });
const calendar = (...events: [title: string, from: string, to: string][]): Attachment => ({
    state: 'calendar', calendar: { events: events.map(([title, first, last], i) => ({ uid: `${i}`, title, days: { from: first, to: last } })), remarks: [] }
});
const town = calendar(['Bridge day', '2026-09-10', '2026-09-10'], ['Harvest holiday', '2026-09-14', '2026-09-17'], ['Flea market', '2026-09-12', '2026-09-12']);

describe('days off from calendars', () => {
    test('are skipped, said in the week, and listed with whether they cost a meeting', () => {
        const plan = planOf(lessons(3), { ...twoDays, offFrom: [from('town.ics')], off: [off('2026-09-21', undefined, 'Dentist')] }, { 'town.ics': town });
        expect(told(plan)).toEqual(['Mon 7 Sep: l1', 'Thu 24 Sep: l2', 'Mon 28 Sep: l3']);
        expect(plan.weeks.map(w => w.remarks)).toEqual([
            ['Bridge day: no meeting on Thu 10 Sep.'],
            ['Harvest holiday: no meetings 14 to 17 September.', 'Dentist: no meeting on Mon 21 Sep.'], []
        ]);
        expect(plan.daysOff.map(d => [d.title, d.from, d.to, d.calendar, d.costs])).toEqual([
            ['Bridge day', '2026-09-10', '2026-09-10', 'town.ics', true], ['Flea market', '2026-09-12', '2026-09-12', 'town.ics', false],
            ['Harvest holiday', '2026-09-14', '2026-09-17', 'town.ics', true], ['Dentist', '2026-09-21', '2026-09-21', undefined, true]
        ]);
        expect(plan.trail.map(t => t.words)).toEqual([
            'Mondays and Thursdays, 7 September to 28 September 2026: 7 days', 'less 1 for “Bridge day”', 'less 2 for “Harvest holiday”', 'less 1 for “Dentist”', 'leaves 3 meeting days'
        ]);
        expect([plan.problems, plan.assumptions]).toEqual([[], []]);
    });
    test('only those that are named, however they are written', () => {
        const plan = planOf(lessons(3), { ...twoDays, offFrom: [from('town.ics', 'HOLIDAY', 'bridge')] }, { 'town.ics': town });
        expect(plan.daysOff.map(d => d.title)).toEqual(['Bridge day', 'Harvest holiday']);
        const misspelt = planOf(lessons(3), { ...twoDays, offFrom: [from('town.ics', 'Hollyday')] }, { 'town.ics': town });
        expect(misspelt.problems.map(p => [p.kind, p.message])).toEqual([[
            'calendar', 'No event of “town.ics” in these weeks has “Hollyday” in its title, so this line takes no day away. Compare the words with the titles in the calendar.'
        ]]);
    });
    test('a day that is taken twice is counted once', () => {
        const plan = planOf(lessons(2), { ...twoDays, off: [off('2026-09-10', '2026-09-14', 'Rest')], offFrom: [from('town.ics')] }, { 'town.ics': town });
        expect(plan.trail.map(t => t.words).slice(1)).toEqual(['less 2 for “Rest”', 'less 1 for “Harvest holiday”', 'leaves 2 meeting days']);
    });
    test('what goes on over New Year, or comes every year, is one stretch each time', () => {
        const read = readCalendar(['BEGIN:VCALENDAR', 'VERSION:2.0', 'BEGIN:VEVENT', 'UID:rest', 'DTSTART;VALUE=DATE:20261221', 'DTEND;VALUE=DATE:20270109',
            'RRULE:FREQ=YEARLY', 'SUMMARY:Winter rest', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n'));
        const plan = planOf(lessons(110), { ...twoDays, offFrom: [from('town.ics')] }, { 'town.ics': read });
        expect(plan.daysOff.map(d => [d.from, d.to])).toEqual([['2026-12-21', '2027-01-08']]);
        expect(planOf(lessons(210), { ...twoDays, offFrom: [from('town.ics')] }, { 'town.ics': read }).daysOff.map(d => [d.from, d.to])).toEqual(
            [['2026-12-21', '2027-01-08'], ['2027-12-21', '2028-01-08']]);
    });
});

describe('calendars that cannot be used', () => {
    const plan = (attachment?: Attachment) => planOf(lessons(2), { ...twoDays, offFrom: [from('town.ics')] }, attachment ? { 'town.ics': attachment } : {});
    test.each([
        ['never read', undefined, '“town.ics” has not been read.'],
        ['wrong', { state: 'wrong', message: '“town.ics” is not there.' }, '“town.ics” is not there.'],
        ['not a calendar', { state: 'framework', framework: { title: 'Outcomes', items: [], remarks: [] } }, '“town.ics” is not a calendar.']
    ] as [string, Attachment | undefined, string][])('%s: told at the line and in the brief, the rest is planned', (_, attachment, why) => {
        expect(plan(attachment)).toMatchObject({
            problems: [{ kind: 'calendar', message: `${why} The dates of the class “K” do not skip its days.`, place: { uri } }],
            assumptions: ['The dates do not skip the days off in “town.ics”, which could not be read: compare the two before you rely on a date.']
        });
        expect(told(plan(attachment))).toEqual(['Mon 7 Sep: l1', 'Thu 10 Sep: l2']);
    });
    test('events that are left out are told, the first few one by one', () => {
        const remarks = ['One.', 'Two.', 'Three.', 'Four.', 'Five.'];
        const broken = plan({ state: 'calendar', calendar: { events: [], remarks } });
        expect(broken.problems.map(p => p.message)).toEqual(['In “town.ics”: One.', 'In “town.ics”: Two.', 'In “town.ics”: Three.', 'In “town.ics”: 2 more could not be read and are left out.']);
    });
    test('a calendar that takes every day', () => {
        const always = calendar(['Closed', '2026-01-01', '9999-12-31']);
        expect(kinds(plan(always))).toEqual(['no-meeting-days']);
        expect(plan(always).weeks).toHaveLength(1);
    });
    test('hundreds of days off', () => {
        const days = Array.from({ length: 700 }, (_, i) => new Date(Date.UTC(2026, 8, 8 + i)).toISOString().slice(0, 10));
        const many = calendar(...days.map((d): [string, string, string] => [`Off ${d}`, d, d]));
        const far = plan(many);
        expect(days.at(-1)).toBe('2028-08-07');
        expect(far.weeks.map(w => [w.from, w.meetings.map(m => m.label)])).toEqual([['2026-09-07', ['Mon 7 Sep']], ['2028-08-10', ['Thu 10 Aug']]]);
        expect(far.trail).toHaveLength(15);
    });
});

test('what was worked out of a calendar is kept by whoever asks again', () => {
    const memo = new WeakMap<CalendarFile, Map<string, readonly CalendarDays[]>>();
    const attachment = calendar(['Fair', '2026-09-10', '2026-09-10']);
    const sheets = () => gatherProgramme([file(...lessons(2), course('c', ['l1', 'l2']), klass('k', 'c', 7, { ...twoDays, starts: on('2026-09-07'), offFrom: [from('town.ics')] }))],
        new Map([[attachmentKey(uri, 'town.ics'), attachment]]));
    const first = planSchedule(sheets(), {}, { calendars: memo });
    const kept = attachment.state === 'calendar' ? memo.get(attachment.calendar) : undefined;
    expect([...kept?.keys() ?? []]).toEqual(['2026-01-01 2026-12-31']);
    expect(planSchedule(sheets(), {}, { calendars: memo }).weeks.map(w => w.from)).toEqual(first.weeks.map(w => w.from));
    expect(kept?.size).toBe(1);
});
