/** What must hold of any course and any changes to it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adaptCourse, adaptedFor } from '@haversack/language/adapting/adapt-course';
import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { Adapted } from '@haversack/language/adapting/adapted';
import { AdaptingMemo } from '@haversack/language/adapting/memo';
import { apportioned } from '@haversack/language/adapting/retime';
import type { Change } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { FileSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { planWeek } from '../../server/planning/week.js';
import { adaptationSheets, filesOf, lessonSheet, programmeOf, randomChange, randomProgramme, type RandomProgramme } from './adapting-random.js';

const runs = { numRuns: 150 };
const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
const namesOf = ({ course: { units } }: Adapted) => units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
const lessonsOf = (adapted: Adapted): LessonSheet[] => [...new Set(namesOf(adapted))].flatMap(name => adapted.programme.lessons.get(name) ?? []);
const minutesOf = (lessons: readonly LessonSheet[]) => lessons.flatMap(({ parts }) => parts).reduce((sum, { minutes = 0 }) => sum + minutes, 0);
const coursed = (programme: Programme) => [...new Set(programme.courses.get('year')!.units.flatMap(({ lessons }) => lessons.map(({ name }) => name)))];
const adaptAll = (random: RandomProgramme) => {
    const programme = programmeOf(filesOf(random));
    return { programme, adapted: adaptCourse(programme, programme.courses.get('year')!, adaptationsFor(programme, { class: 'k' })) };
};

describe('any changes to any course', () => {
    test('each is made or idle with a reason, and every lesson of the course is taught, in another, or left out by one of them', () => {
        fc.assert(fc.property(randomProgramme, random => {
            const { programme, adapted } = adaptAll(random);
            expect(adapted.changes).toHaveLength(random.changes.flat().length);
            for (const { says, idle, touched } of adapted.changes) {
                expect(says).not.toBe('');
                expect(idle).not.toBe('');
                if (idle !== undefined) expect(touched).toEqual([]);
            }
            const names = namesOf(adapted);
            expect(new Set(names).size).toBe(names.length);
            expect([...adapted.madeOf.keys()]).toEqual(names);
            const made = new Set([...adapted.madeOf.values()].flat());
            for (const name of coursed(programme)) expect(made.has(name)).toBe(!adapted.leftOut.has(name));
            for (const { touched } of adapted.changes) for (const name of touched) expect(names).toContain(name);
            for (const [name, change] of adapted.leftOut) {
                expect(adapted.changes).toContain(change);
                expect(programme.lessons.has(name) || coursed(programme).includes(name)).toBe(true);
            }
        }), runs);
    });
    test('nothing of the programme is changed in place, and the same gives the same', () => {
        fc.assert(fc.property(randomProgramme, random => {
            const files = filesOf(random);
            const before = JSON.stringify(files);
            const programme = programmeOf(files);
            const year = programme.courses.get('year')!;
            const changes = adaptationsFor(programme, { class: 'k' });
            const once = adaptCourse(programme, year, changes);
            expect(JSON.stringify(files)).toBe(before);
            const twice = adaptCourse(programme, year, changes);
            expect(twice.course).toEqual(once.course);
            expect(lessonsOf(twice)).toEqual(lessonsOf(once));
            expect(twice.changes).toEqual(once.changes);
        }), runs);
    });
    test('lessons that no change touches are the very same, and where nothing changes the programme is', () => {
        fc.assert(fc.property(randomProgramme, random => {
            const { programme, adapted } = adaptAll(random);
            const touched = new Set(adapted.changes.flatMap(change => change.touched));
            for (const name of namesOf(adapted)) {
                const own = programme.lessons.get(name);
                const followsOthers = JSON.stringify(adapted.programme.lessons.get(name)?.follows) !== JSON.stringify(own?.follows);
                if (!touched.has(name) && !followsOthers) expect(adapted.programme.lessons.get(name)).toBe(own);
            }
            if (adapted.changes.every(({ idle }) => idle !== undefined)) {
                expect(adapted.programme).toBe(programme);
                expect(adapted.course).toBe(programme.courses.get('year'));
            }
        }), runs);
    });
    test('with a memo an unrelated change of the programme keeps every sheet', () => {
        fc.assert(fc.property(randomProgramme, random => {
            const memo = new AdaptingMemo();
            const files = filesOf(random);
            const before = adaptedFor(programmeOf(files), { class: 'k' }, memo);
            const after = adaptedFor(programmeOf([...files, { ...files[0]!, uri: 'file:///demo/zz.lesson', lessons: [{ ...lessonSheet(random.lessons[0]!, 99), uri: 'file:///demo/zz.lesson' }] }]), { class: 'k' }, memo);
            expect(after?.course).toBe(before?.course);
            for (const name of before ? namesOf(before) : []) expect(after!.programme.lessons.get(name)).toBe(before!.programme.lessons.get(name));
        }), runs);
    });
    test('moving, splitting and joining neither make nor lose a minute; what is brought in adds its own', () => {
        const kept: Change['does'][] = ['move lesson', 'move activity', 'split lesson', 'split activity', 'join lessons', 'join activities'];
        fc.assert(fc.property(randomProgramme, fc.array(randomChange.filter(({ does }) => kept.includes(does)), { minLength: 1, maxLength: 8 }), (random, changes) => {
            const { programme, adapted } = adaptAll({ ...random, changes: [changes] });
            expect(minutesOf(lessonsOf(adapted))).toBe(minutesOf(coursed(programme).flatMap(name => programme.lessons.get(name) ?? [])));
        }), runs);
        fc.assert(fc.property(randomProgramme, randomChange.filter(({ does }) => does.startsWith('insert')), (random, change) => {
            const { programme, adapted } = adaptAll({ ...random, changes: [[change]] });
            const before = minutesOf(coursed(programme).flatMap(name => programme.lessons.get(name) ?? []));
            if (change.does === 'insert lesson' && adapted.changes[0]!.idle === undefined) expect(minutesOf(lessonsOf(adapted))).toBe(before + minutesOf([programme.lessons.get(change.lesson.name)!]));
            else expect(minutesOf(lessonsOf(adapted))).toBeGreaterThanOrEqual(before);
        }), runs);
    });
    test('names of parts are one of each in a lesson, games apart', () => {
        fc.assert(fc.property(randomProgramme, random => {
            for (const { parts } of lessonsOf(adaptAll(random).adapted)) {
                const names = parts.filter(({ kind }) => kind !== 'game').map(({ name }) => name);
                expect(new Set(names).size).toBe(names.length);
            }
        }), runs);
    });
    test('minutes are shared in whole numbers near the old shares, and none is lost', () => {
        fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 90 }), { minLength: 1, maxLength: 8 }), fc.integer({ min: 0, max: 240 }), (shares, more) => {
            const whole = shares.length + more;
            const found = apportioned(whole, shares);
            expect(found.reduce((sum, one) => sum + one, 0)).toBe(whole);
            expect(found.every(one => Number.isInteger(one) && one >= 1)).toBe(true);
            const sum = shares.reduce((all, one) => all + one, 0);
            // The quota rule of apportionment (largest remainders keep it): each share is its exact part rounded down or up, unless that is nothing.
            const quotas = shares.map(share => (sum === 0 ? whole / shares.length : (whole * share) / sum));
            if (quotas.every(quota => quota >= 1)) found.forEach((one, i) => expect(Math.abs(one - quotas[i]!)).toBeLessThan(1));
        }), { numRuns: 1000 });
    });
});

describe('the plan of an adapted class', () => {
    test('no lesson comes before what it follows has been taught, circles apart', () => {
        fc.assert(fc.property(randomProgramme, random => {
            const { programme, adapted } = adaptAll(random);
            const plan = planSchedule(programme, { class: 'k' });
            if (plan.problems.some(({ kind }) => kind === 'circle')) return;
            const order = plan.weeks.flatMap(week => week.meetings.flatMap(meeting => meeting.taught.filter(({ why }) => why !== 'repeat' && why !== 'revisit').map(({ lesson }) => lesson)));
            for (const { name, follows } of lessonsOf(adapted)) {
                const first = order.indexOf(name);
                for (const { name: before } of follows) if (order.includes(before)) expect(order.lastIndexOf(before)).toBeLessThan(first);
            }
            expect(new Set(order)).toEqual(new Set(lessonsOf(adapted).map(({ name }) => name).filter(name => !plan.unplaced.some(({ lesson }) => lesson === name))));
            // What follows a lesson of the course waits for all that is made of it.
            for (const name of namesOf(adapted)) {
                for (const { name: before } of programme.lessons.get(name)?.follows ?? []) {
                    const pieces = [...adapted.madeOf].filter(([own, of]) => of.includes(before) && own !== name && !of.includes(name)).map(([own]) => own);
                    const isOwn = adapted.madeOf.get(name)?.[0] === name && (adapted.madeOf.get(name)?.length ?? 0) === 1;
                    if (isOwn) for (const piece of pieces) if (order.includes(piece)) expect(order.lastIndexOf(piece)).toBeLessThan(order.indexOf(name));
                }
            }
        }), runs);
    });
    test('no two pieces of a lesson share a meeting, whatever a meeting has room for', () => {
        let shared = 0;
        fc.assert(fc.property(randomProgramme, fc.constantFrom({ session: { minutes: 90, at: nowhere } }, { lessonsPerMeeting: { count: 4, at: nowhere } }), (random, pace) => {
            const { programme, adapted } = adaptAll(random);
            const classes = new Map([...programme.classes].map(([name, sheet]) => [name, { ...sheet, session: undefined, lessonsPerMeeting: undefined, log: [], ...pace }]));
            for (const { meetings } of planSchedule({ ...programme, classes }, { class: 'k' }).weeks) {
                for (const { lessons } of meetings) {
                    const wholes = [...new Set(lessons)].map(name => adapted.madeOf.get(name)!);
                    if (wholes.length > 1) shared += 1;
                    expect(new Set(wholes.flat()).size).toBe(wholes.flat().length);
                }
            }
        }), runs);
        expect(shared).toBeGreaterThan(0);
    });
    test('after any edits a kept term is the same as a fresh one, classes of one cupboard included', () => {
        const edits = fc.array(fc.tuple(fc.nat({ max: 6 }), fc.constantFrom('moved', 'amount', 'minutes', 'part gone', 'title')), { minLength: 1, maxLength: 4 });
        fc.assert(fc.property(randomProgramme, edits, (random, list) => {
            const cache = newPlanningCache();
            let files = filesOf(random);
            look(programmeOf(files), cache);
            for (const [n, edit] of list) {
                files = edited(files, n % random.lessons.length, edit);
                const programme = programmeOf(files);
                expect(look(programme, cache)).toEqual(look(programme, newPlanningCache()));
            }
        }), { numRuns: 60 });
    });
});

/** Everything that a class's term shows. */
function look(programme: Programme, cache: ReturnType<typeof newPlanningCache>): unknown {
    return ['k', 'm'].map(name => {
        const terms = termPlanOf(cache, programme);
        const schedule = terms.schedule({ class: name });
        const { lessons, objectives, gaps, assumptions } = terms.coverage({ class: name });
        return JSON.parse(JSON.stringify([schedule, lessons, objectives, gaps, assumptions, planSupplies(programme, { class: name }, { cache, schedule }), planWeek(programme, { class: name, week: 1 }, { cache, schedule })])) as unknown;
    });
}

function edited(files: readonly FileSheet[], n: number, edit: string): FileSheet[] {
    return files.map((one, i) => (i === n ? { ...one, lessons: one.lessons.map(lesson => editedLesson(lesson, edit)) } : one));
}

function editedLesson(lesson: LessonSheet, edit: string): LessonSheet {
    switch (edit) {
        case 'moved': {
            const text = JSON.stringify(lesson, (_, value: unknown) => (isPosition(value) ? { ...value, line: value.line + 100 } : value));
            return JSON.parse(text) as LessonSheet;
        }
        case 'amount': return { ...lesson, needs: lesson.needs.map(own => ({ ...own, amount: own.amount && { ...own.amount, value: String(Number(own.amount.value) + 1) } })) };
        case 'minutes': return { ...lesson, parts: lesson.parts.map(own => ({ ...own, minutes: (own.minutes ?? 0) + 1 })) };
        case 'part gone': return { ...lesson, parts: lesson.parts.slice(1) };
        default: return { ...lesson, title: `${lesson.title} again` };
    }
}

function isPosition(value: unknown): value is { line: number; character: number } {
    return typeof value === 'object' && value !== null && 'line' in value && 'character' in value;
}

test('an adaptation without changes is no change at all', () => {
    fc.assert(fc.property(randomProgramme, random => {
        const programme = programmeOf(filesOf({ ...random, changes: [] }));
        const year = programme.courses.get('year')!;
        const adapted = adaptCourse(programme, year, adaptationSheets([[], []]));
        expect(adapted.programme).toBe(programme);
        expect(adapted.course).toBe(year);
        expect(adapted.leftOut.size).toBe(0);
        expect(adaptedFor(programme, { class: 'k' })).toBeUndefined();
    }), { numRuns: 50 });
});
