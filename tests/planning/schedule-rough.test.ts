/** Whatever stands in a class, a plan comes out, soon and without an error. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Attachment } from '@haversack/language/attachments/attachment';
import { mention, off, on, part, range } from './sheets.js';
import { fixed, planOf, timed, unsure } from './schedule-sheets.js';

const number = fc.constantFrom(0, 1, 3, -2, 2.5, Number.NaN, Infinity, -Infinity, 1e12, Number.MAX_SAFE_INTEGER);
const date = fc.constantFrom('2026-09-07', '2026-09-10', '2026-02-30', '2026-13-45', '', 'soon', '0000-01-01', '0001-01-01', '9999-12-31', '-000001-01-01', '20260907');
const name = fc.constantFrom('a', 'b', 'gone', '', '__proto__', 'toString', 'constructor');
const weekday = fc.constantFrom('mon', 'thu', 'sun', 'someday') as fc.Arbitrary<'mon'>;
const attachment: fc.Arbitrary<Attachment | undefined> = fc.constantFrom<Attachment | undefined>(
    undefined, { state: 'wrong', message: 'It is not there.' }, { state: 'framework', framework: { title: '', items: [], remarks: [] } },
    { state: 'calendar', calendar: { events: [{ uid: '', title: '', days: { from: 'x', to: '' } }, { uid: '', title: 'Turned', days: { from: '2026-09-10', to: '2026-09-07' } }, { uid: 'a', title: 'All', days: { from: '0001-01-01', to: '9999-12-31' } }], remarks: [''] } }
);

test('any class', () => {
    fc.assert(fc.property(fc.record({
        starts: date, ends: fc.option(date), meets: fc.array(weekday, { maxLength: 4 }), session: number, count: number, rest: fc.tuple(number, number), minutes: fc.array(number, { maxLength: 3 }),
        revisit: number, free: fc.array(fc.tuple(date, fc.option(date, { nil: undefined })), { maxLength: 3 }), dates: fc.array(fc.tuple(name, date), { maxLength: 3 }), log: fc.array(fc.tuple(name, date), { maxLength: 3 }),
        named: fc.array(fc.constantFrom('', ' ', 'all', 'x'), { maxLength: 2 }), calendar: attachment, before: fc.array(name, { maxLength: 3 })
    }), given => {
        const lessons = ['a', 'b', 'a'].map(n => timed(n, given.minutes, {
            follows: given.before.map(mention), parts: [...timed(n, given.minutes).parts, part('checkpoint', 'closing', { minutes: undefined, unsure: { then: 'revisit', lessons: given.revisit, at: range() } })]
        }));
        const plan = planOf(lessons, {
            starts: on(given.starts), ends: given.ends === null ? undefined : on(given.ends), meets: given.meets.map(day => ({ day, at: range() })), session: { minutes: given.session, at: range() },
            lessonsPerMeeting: { count: given.count, at: range() }, catchUp: { days: given.rest[0], everyLessons: given.rest[1], at: range() }, off: given.free.map(([a, b]) => off(a, b)),
            fixed: given.dates.map(([n, d]) => fixed(n, d)), log: given.log.map(([n, d]) => unsure(n, d)), offFrom: [{ path: 'town.ics', named: given.named, at: range() }]
        }, given.calendar ? { 'town.ics': given.calendar } : {});
        const placed = plan.weeks.flatMap(w => w.meetings.flatMap(m => m.taught)).filter(t => t.why !== 'repeat' && t.why !== 'revisit').map(t => t.lesson);
        expect(new Set([...placed, ...plan.unplaced.map(u => u.lesson)])).toEqual(new Set(['a', 'b']));
        expect(JSON.stringify({ ...plan, assumptions: [] })).not.toMatch(/undefined|NaN|Infinity/);
    }), { numRuns: 500 });
});
