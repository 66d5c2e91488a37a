/** What holds for every plan, whatever the course and the class. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ClassSheet, LessonSheet, Unsure, Weekday } from '@haversack/language/sheets/sheet';
import type { ScheduleFigures, TaughtFigures } from '../../server/planning/schedule-figures.js';
import { meets, mention, off, on, part, range } from './sheets.js';
import { catchUp, fixed, perMeeting, planOf, session, timed, unsure } from './schedule-sheets.js';

const weekdays: readonly Weekday[] = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const iso = (n: number) => new Date(Date.UTC(2026, 8, 1 + n)).toISOString().slice(0, 10);
const date = fc.integer({ min: 0, max: 60 }).map(iso);
const asks: fc.Arbitrary<Unsure | undefined> = fc.constantFrom<((() => Unsure) | undefined)[]>(
    undefined, () => ({ then: 'repeat', activity: mention('a'), when: 'today', at: range() }), () => ({ then: 'repeat', activity: mention('b'), when: 'tomorrow', at: range() }),
    () => ({ then: 'repeat lesson', at: range() }), () => ({ then: 'repeat lesson', when: 'today', at: range() }), () => ({ then: 'revisit', lessons: 2, at: range() })
).map(make => make?.());
const minutes = fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 45 }) }, { weight: 1, arbitrary: fc.constant(undefined) });

interface Case {
    lessons: LessonSheet[];
    own: Partial<ClassSheet>;
}

/** `backwards` allows a lesson to follow any other, so that circles come up too. */
const cases = (backwards: boolean): fc.Arbitrary<Case> => fc.integer({ min: 1, max: 10 }).chain(count => fc.record({
    lessons: fc.tuple(...Array.from({ length: count }, (_, i) => fc.tuple(
        fc.array(minutes, { maxLength: 4 }), fc.array(fc.integer({ min: 1, max: backwards ? count : Math.max(1, i) }), { maxLength: 2 }), asks
    ).map(([times, before, closing]) => timed(`l${i + 1}`, times, {
        follows: before.filter(n => backwards || n <= i).map(n => mention(`l${n}`)),
        parts: [...timed('x', times).parts, ...(closing ? [part('checkpoint', 'closing', { minutes: 5, unsure: closing })] : [])]
    })))),
    own: fc.record({
        days: fc.uniqueArray(fc.constantFrom(...weekdays), { minLength: 1, maxLength: 4 }), start: fc.integer({ min: 0, max: 20 }).map(iso),
        end: fc.option(date, { nil: undefined }), length: fc.option(fc.constantFrom(30, 50, 90), { nil: undefined }), most: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
        rest: fc.option(fc.tuple(fc.integer({ min: 1, max: 2 }), fc.integer({ min: 1, max: 4 })), { nil: undefined }),
        free: fc.array(fc.tuple(date, date), { maxLength: 4 }), dates: fc.array(fc.tuple(fc.integer({ min: 1, max: 11 }), date), { maxLength: 3 }),
        log: fc.array(fc.tuple(fc.integer({ min: 1, max: 11 }), date), { maxLength: 4 })
    }).map(({ days, start, end, length, most, rest, free, dates, log }): Partial<ClassSheet> => ({
        meets: meets(...days), starts: on(start), ...(end && end >= start ? { ends: on(end) } : {}), ...(length ? session(length) : {}), ...(most ? perMeeting(most) : {}),
        ...(rest ? catchUp(...rest) : {}), off: free.map(([a, b]) => (a < b ? off(a, b) : off(b, a))), fixed: dates.map(([n, d]) => fixed(`l${n}`, d)), log: log.map(([n, d]) => unsure(`l${n}`, d))
    }))
}));

const meetings = (plan: ScheduleFigures) => plan.weeks.flatMap(w => w.meetings);
const isAgain = (t: TaughtFigures) => t.why === 'repeat' || t.why === 'revisit';
const holds = (backwards: boolean, check: (plan: ScheduleFigures, given: Case) => void) =>
    fc.assert(fc.property(cases(backwards), given => check(planOf(given.lessons, given.own), given)), { numRuns: 200 });

test.each([[false], [true]])('no lesson comes before what it follows has been taught to its end, circles apart (backwards: %s)', backwards => holds(backwards, (plan, { lessons }) => {
    const follows = new Map(lessons.map(l => [l.name, new Set(l.follows.map(f => f.name))]));
    const leadsTo = (from: string, to: string, seen = new Set<string>()): boolean => [...follows.get(from) ?? []].some(next =>
        next === to || (!seen.has(next) && leadsTo(next, to, seen.add(next))));
    const begun = new Map<string, number>();
    const ended = new Map<string, number>();
    meetings(plan).flatMap(m => m.taught).filter(t => !isAgain(t)).forEach((t, i) => {
        if (!begun.has(t.lesson)) begun.set(t.lesson, i);
        if (!t.parts || t.parts.at(-1) === (lessons.find(l => l.name === t.lesson)?.parts.length ?? 0) - 1) ended.set(t.lesson, i);
    });
    for (const [name, before] of follows) {
        for (const other of before) {
            if (!begun.has(name) || leadsTo(other, name)) continue;
            expect(ended.get(other) ?? Infinity).toBeLessThan(begun.get(name) ?? -1);
        }
    }
}));

test('every lesson is taught once, all its parts in order, or is reported; without an end none is', () => holds(true, (plan, { lessons, own }) => {
    const missing = plan.unplaced.map(u => u.lesson);
    expect(new Set(missing).size).toBe(missing.length);
    for (const { name, parts } of lessons) {
        const taught = meetings(plan).flatMap(m => m.taught).filter(t => t.lesson === name && !isAgain(t));
        const slots = taught.flatMap(t => t.parts ?? parts.map((_, i) => i));
        const all = parts.map((_, i) => i);
        if (missing.includes(name)) expect(slots).toEqual(all.slice(0, slots.length));
        else expect([taught.length > 0, slots]).toEqual([true, all]);
        expect(taught.map(t => t.piece?.number)).toEqual(taught.length > 1 || (missing.includes(name) && taught.length > 0) ? taught.map((_, i) => i + 1) : taught.map(() => undefined));
        expect(taught.every(t => !t.piece || t.piece.of >= t.piece.number)).toBe(true);
        if (!missing.includes(name) && taught.length > 1) expect(taught.at(-1)?.piece?.of).toBe(taught.length);
    }
    expect(missing.every(name => lessons.some(l => l.name === name))).toBe(true);
    if (!own.ends) expect(missing).toEqual([]);
}));

test('no meeting on a day off, on another weekday or outside the term; weeks run from Monday', () => holds(true, (plan, { own }) => {
    const days = meetings(plan).map(m => m.date);
    if (days[0] === undefined) {
        expect(plan.problems.map(p => p.kind)).toContain('no-meeting-days');
        return;
    }
    const dates = days.map(d => d ?? '');
    expect([...new Set(dates)].sort()).toEqual(dates);
    for (const day of dates) {
        expect(day >= (own.starts?.date ?? '') && day <= (own.ends?.date ?? '9999')).toBe(true);
        expect(own.meets?.map(m => m.day)).toContain(weekdays[new Date(`${day}T00:00Z`).getUTCDay()]);
        expect(own.off?.some(o => o.from.date <= day && day <= (o.to?.date ?? o.from.date))).toBe(false);
    }
    expect(plan.weeks.map(w => w.number)).toEqual(plan.weeks.map((_, i) => i + 1));
    const mondays = plan.weeks.map(w => new Set(w.meetings.map(m => Math.floor((Date.parse(`${m.date}T00:00Z`) / 864e5 + 3) / 7))));
    expect(mondays.every(m => m.size === 1)).toBe(true);
    expect(new Set(mondays.flatMap(m => [...m])).size).toBe(plan.weeks.length);
}));

test('no meeting is longer than the session or holds more lessons than allowed, but for a single long part and what is repeated at once', () => holds(true, (plan, { own, lessons }) => {
    const atOnce = (t: TaughtFigures, day: string | undefined) => t.why === 'repeat' && own.log?.find(l => l.at === t.because?.range)?.on.date === day;
    for (const meeting of meetings(plan)) {
        expect(meeting.minutes).toBe(meeting.taught.reduce((sum, t) => sum + t.minutes, 0));
        expect(meeting.lessons).toEqual([...new Set(meeting.taught.map(t => t.lesson))]);
        expect(meeting.free === undefined).toBe(meeting.taught.length > 0);
        const planned = meeting.taught.filter(t => !atOnce(t, meeting.date));
        const counted = planned.filter(t => !isAgain(t)).length;
        expect(counted).toBeLessThanOrEqual(own.lessonsPerMeeting?.count ?? (own.session ? Infinity : 1));
        const slots = planned.flatMap<unknown>(t => t.parts ?? lessons.find(l => l.name === t.lesson)?.parts ?? []);
        const total = planned.reduce((sum, t) => sum + t.minutes, 0);
        if (own.session && total > own.session.minutes) expect(slots).toHaveLength(1);
    }
}));

test('a fixed lesson is taught on its day or the line is reported; so is a line of the log that is not followed', () => holds(true, (plan, { own }) => {
    if (meetings(plan)[0]?.date === undefined) return;
    for (const line of own.fixed ?? []) {
        const kept = meetings(plan).some(m => m.date === line.on.date && m.taught.some(t => t.why === 'fixed' && t.because?.range === line.at));
        const reported = plan.problems.some(p => p.kind.startsWith('fixed-') && p.place.range === line.at);
        expect([kept, reported]).toEqual([!reported, !kept]);
    }
    const seen = new Set<string>();
    for (const line of own.log ?? []) {
        const key = `${line.lesson.name} ${line.on.date}`;
        if (seen.has(key)) continue;
        seen.add(key);
        const wasTaught = meetings(plan).some(m => m.date === line.on.date && m.lessons.includes(line.lesson.name));
        const isFollowed = meetings(plan).some(m => m.taught.some(t => isAgain(t) && t.because?.range === line.at));
        const reported = plan.problems.filter(p => p.place.range === line.at).map(p => p.kind);
        if (!wasTaught) expect(reported).toEqual(['log-not-taught']);
        else if (reported.length > 0) expect(reported).toEqual(['term-overrun']);
        else expect(isFollowed).toBe(true);
    }
}));

test('the same sheets give the same plan, as plain data; proposals bring what they say', () => holds(true, (plan, { lessons, own }) => {
    expect(planOf(lessons, own).weeks).toEqual(plan.weeks);
    const data = JSON.parse(JSON.stringify(plan)) as ScheduleFigures;
    expect(data).toEqual(JSON.parse(JSON.stringify(planOf(lessons, own))));
    expect(data).toEqual(plan);
    for (const { places, gives, givesUp } of plan.proposals) {
        expect(places).toBeGreaterThan(0);
        expect(places).toBeLessThanOrEqual(plan.unplaced.length);
        expect(`${gives}${givesUp}`).not.toMatch(/undefined|NaN|Infinity/);
    }
    expect(plan.problems.map(p => p.message).join(' ')).not.toMatch(/undefined|NaN|Infinity/);
}));
