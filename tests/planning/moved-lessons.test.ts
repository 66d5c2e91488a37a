/** Lines typed above lessons: what is kept must be what a plan made anew gives, places and all. */
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { FileSheet } from '@haversack/language/sheets/sheet';
import { readProgramme } from '../../server/cli/read-programme.js';
import { newPlanningCache, type PlanningCache } from '../../server/planning/cache.js';
import { planCoverage } from '../../server/planning/coverage.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { activity, course, file, klass, lesson, meets, mention, need, on, range, reusable } from './sheets.js';

const today = '2026-10-05';

function linesDown<T>(value: T, lines: number): T {
    if (Array.isArray(value)) return value.map(one => linesDown(one as unknown, lines)) as T;
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, own]: [string, unknown]) => [key, key === 'line' && typeof own === 'number' ? own + lines : linesDown(own, lines)])) as T;
}

function withFile(programme: Programme, sheet: FileSheet): Programme {
    return gatherProgramme([...programme.files.values()].map(one => (one.uri === sheet.uri ? sheet : one)), programme.attachments);
}

function kept(cache: PlanningCache, programme: Programme, wanted: { class: string }) {
    const terms = termPlanOf(cache, programme);
    const schedule = terms.schedule(wanted);
    return { schedule, coverage: terms.coverage(wanted), supplies: planSupplies(programme, wanted, { cache, schedule, today }) };
}

function anew(programme: Programme, wanted: { class: string }) {
    const schedule = planSchedule(programme, wanted);
    return { schedule, coverage: planCoverage(programme, wanted, { schedule }), supplies: planSupplies(programme, wanted, { schedule, today }) };
}

let year: Programme;
beforeAll(async () => {
    year = (await readProgramme(fileURLToPath(new URL('../../examples/year', import.meta.url)))).view.programme;
});

test('lessons of the year example, moved again and again, with and without another amount', () => {
    const files = [...year.files.values()].filter(({ lessons }) => lessons.length > 0);
    const edits = fc.array(fc.record({ file: fc.nat(files.length - 1), lines: fc.integer({ min: 0, max: 3 }), amount: fc.option(fc.integer({ min: 1, max: 400 }).map(String), { nil: undefined }) }), { minLength: 1, maxLength: 4 });
    const names = [...year.classes.keys()];
    fc.assert(fc.property(edits, fc.constantFrom(...names), (all, name) => {
        const cache = newPlanningCache();
        let now = year;
        kept(cache, now, { class: name });
        for (const { file: index, lines, amount } of all) {
            const sheet = linesDown(now.files.get(files[index]!.uri)!, lines);
            now = withFile(now, amount === undefined ? sheet : {
                ...sheet, lessons: sheet.lessons.map(one => ({ ...one, needs: one.needs.map((need, i) => (i === 0 && need.amount ? { ...need, amount: { ...need.amount, value: amount } } : need)) }))
            });
            kept(cache, now, { class: name });
        }
        expect(kept(cache, now, { class: name })).toEqual(anew(now, { class: name }));
    }), { numRuns: 12 });
}, 60_000);

test.each([true, false])('what a coverage tells in words leads to the new lines, too, and so does a schedule (%s)', fitsBadly => {
    const uri = 'file:///demo/a.lesson';
    const sheets = file(lesson('a', [need('cube', '90', 'class')], [activity('x', [], { minutes: fitsBadly ? 200 : 20 })], { introduces: [mention('o')] }), lesson('b'));
    const lessons: FileSheet = { ...sheets, uri, lessons: sheets.lessons.map(one => ({ ...one, uri })) };
    const rest: FileSheet = {
        ...file(reusable('cube'), course('c', ['a', 'b']), klass('k', 'c', 7, { starts: on('2026-10-05'), ends: on(fitsBadly ? '2026-10-05' : '2026-10-30'), meets: meets('mon'), session: { minutes: 45, at: range() } })),
        uri: 'file:///demo/rest.course'
    };
    const aim: FileSheet = { ...file(), uri: 'file:///demo/o.kit', objectives: [{ ...lesson('o'), kind: 'objective', buildsOn: [], alignsTo: [] }] };
    const first = gatherProgramme([lessons, rest, aim]);
    const cache = newPlanningCache();
    const before = kept(cache, first, { class: 'k' });
    expect([...before.schedule.problems, ...before.schedule.unplaced].some(({ place }) => place.uri === uri)).toBe(fitsBadly);
    expect(before.coverage.gaps.some(({ place }) => place.uri === uri)).toBe(true);
    const moved = withFile(first, linesDown(lessons, 2));
    expect(kept(cache, moved, { class: 'k' })).toEqual(anew(moved, { class: 'k' }));
});

test('a line above a lesson counts no thing again', () => {
    const above = [...year.files.values()].find(({ lessons }) => lessons.some(({ needs }) => needs.length > 0))!;
    const cache = newPlanningCache();
    const wanted = { class: [...year.classes.keys()][0]! };
    const term = termPlanOf(cache, year).term(wanted);
    const { schedule } = term.plan;
    const ledgers = term.names().map(name => term.ledger(name));
    const moved = withFile(year, linesDown(above, 1));
    const again = termPlanOf(cache, moved).term(wanted);
    expect(again.names().map(name => again.ledger(name)).every((ledger, i) => ledger === ledgers[i])).toBe(true);
    expect(again.plan.schedule).not.toEqual(schedule);
});
