/** What is kept of a term from one version of the programme to the next: as much as may be, and nothing that another version gives otherwise. */
import { describe, expect, test } from 'vitest';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, FileSheet, LessonSheet, Need, PartSheet } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import { planCoverage } from '../../server/planning/coverage.js';
import { planSchedule } from '../../server/planning/schedule.js';
import type { ClassPlan } from '../../server/planning/supplies/class-plan.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import {
    activity, adaptation, amount, consumable, course, file, game, held, klass, lesson, material, measured, meets, mention, need, on, pack, part, prose, range, reusable, section
} from './sheets.js';

const at = (uri: string, ...sheets: Parameters<typeof file>): FileSheet => {
    const own = { ...file(...sheets), uri };
    return { ...own, lessons: own.lessons.map(one => ({ ...one, uri })) };
};
const objective = (name: string) => ({ ...lesson(name), kind: 'objective' as const, buildsOn: [], alignsTo: [] });
const inventory: FileSheet = {
    ...at('file:///demo/a.kit', consumable('bean', { ...measured('g'), packs: [pack('500 g', '2.10')] }), reusable('cube'), reusable('rope'), reusable('button'), material('salt', { use: undefined })),
    objectives: [objective('o'), objective('p')]
};
const log = (...names: string[]) => ({ log: names.map((name, i) => ({ lesson: mention(name), on: on(`2026-09-0${7 + i}`), at: range() })) });
const group = (name = 'k', more: Partial<ClassSheet> = {}) => klass(name, 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), onHand: [held('cube', '5')], ...more });

const one = lesson('l1', [need('cube', '3', 'class'), need('bean', '100 g', 'class')], [activity('x', [], { steps: [] }), part('checkpoint', 'end')], { introduces: [mention('o')] });
const two = lesson('l2', [need('cube', '4', 'class')], [], { practises: [mention('o')], checks: [mention('p')] });
const three = lesson('l3', [need('bean', '50 g', 'class')]);
const four = lesson('l4', [need('bean', '20 g', 'class'), need('cube', '9', 'class')]);
const all = [one, two, three, four];
const yearOf = (...classes: ClassSheet[]) => at('file:///demo/y.course', course('c', ['l1', 'l2', 'l3', 'l4']), ...classes);
const lessonFile = (lessons: readonly LessonSheet[]) => at('file:///demo/l.lesson', ...lessons);
const programmeOf = (lessons: readonly LessonSheet[], year = yearOf(group())) => gatherProgramme([inventory, lessonFile(lessons), year]);

const k = { class: 'k' };
/** The lesson as another version of its file says it. */
const edited = (lessons: readonly LessonSheet[], name: string, edit: (own: LessonSheet) => Partial<LessonSheet>) => lessons.map(own => (own.name === name ? { ...own, ...edit(own) } : own));
const withNeed = (which: number, more: Partial<Need>) => ({ needs }: LessonSheet): Partial<LessonSheet> => ({ needs: needs.map((own, i) => (i === which ? { ...own, ...more } : own)) });

function told(programme: Programme, cache = newPlanningCache(), wanted: { class: string } = k) {
    const terms = termPlanOf(cache, programme);
    const schedule = terms.schedule(wanted);
    return { schedule, coverage: terms.coverage(wanted), supplies: planSupplies(programme, wanted, { cache, schedule, today: '2026-09-01' }) };
}
function anew(programme: Programme, wanted: { class: string } = k) {
    const schedule = planSchedule(programme, wanted);
    return { schedule, coverage: planCoverage(programme, wanted, { schedule }), supplies: planSupplies(programme, wanted, { schedule, today: '2026-09-01' }) };
}

describe('counting one lesson again tells whose numbers are others than before', () => {
    const recounted = (edit: (own: LessonSheet) => Partial<LessonSheet>, own = group(), lessons = all, name = 'l1') => {
        const first = programmeOf(lessons, yearOf(own));
        const { plan } = termPlanOf(newPlanningCache(), first).term(k);
        const next = edited(lessons, name, edit);
        const second = programmeOf(next, yearOf(own));
        const changed = plan.recount(second.lessons.get(name)!, second);
        const fresh = termPlanOf(newPlanningCache(), second).term(k).plan;
        const uses = (of: ClassPlan) => of.names().map(thing => [thing, of.uses.get(thing)!.map(({ at: { index, lesson: { name: of } }, demand: { n, d, optional, inKit, measure, perCrowd } }) => [index, of, n, d, optional, inKit, measure, perCrowd])]);
        expect(uses(plan)).toEqual(uses(fresh));
        expect(plan.programme).toBe(second);
        expect(plan.occurrences.filter(({ lesson: taught }) => taught.name === name).every(({ lesson: taught }) => taught === second.lessons.get(name))).toBe(true);
        return changed;
    };
    test.each<[string, (own: LessonSheet) => Partial<LessonSheet>, string[]]>([
        ['nothing but where it stands', withNeed(0, { at: range() }), []],
        ['the same for others: 3 for the class of 7 is 3', withNeed(0, { per: undefined }), []],
        ['another amount', withNeed(0, { amount: amount('4') }), ['cube']],
        ['for each pair', withNeed(1, { per: { who: 'pair' } }), ['bean']],
        ['a part of a whole', withNeed(1, { amount: amount('1/3 kg') }), ['bean']],
        ['a third where a half was', withNeed(1, { amount: amount('100/3 g') }), ['bean']],
        ['optional', withNeed(0, { optional: true }), ['cube']],
        ['in the kit', withNeed(0, { inKit: false }), ['cube']],
        ['gone', ({ needs }) => ({ needs: needs.slice(1) }), ['cube']],
        ['all gone', () => ({ needs: [] }), ['cube', 'bean']],
        ['one more', ({ needs }) => ({ needs: [need('rope', '1'), ...needs] }), ['rope']],
        ['another thing', ({ needs }) => ({ needs: [need('rope', '3', 'class'), needs[1]!] }), ['rope', 'cube']],
        ['the other way round', ({ needs }) => ({ needs: [...needs].reverse() }), []]
    ])('%s', (_, edit, names) => {
        expect(recounted(edit)).toEqual(names);
    });
    test('the same number of another unit, and of another measure', () => {
        const salted = (text: string) => [lesson('l1', [need('salt', text, 'class')]), two, three, four];
        expect(recounted(withNeed(0, { amount: amount('3 kg') }), group(), salted('3 g'))).toEqual(['salt']);
        expect(recounted(withNeed(0, { amount: amount('3') }), group(), salted('3 g'))).toEqual(['salt']);
        expect(recounted(withNeed(0, { amount: amount('3 g') }), group(), salted('3 g'))).toEqual([]);
    });
    test('the same at once, of other sections: five for the class, or one for each of five and four', () => {
        const sections = group('k', { sections: [section('a', 5, '9:00'), section('b', 4, '10:00')] });
        const each = [lesson('l1', [need('cube', '5', 'class')]), two, three, four];
        expect(recounted(withNeed(0, { amount: amount('1'), per: { who: 'learner' } }), sections, each)).toEqual(['cube']);
        expect(recounted(withNeed(0, { at: range() }), sections, each)).toEqual([]);
    });
    test('a lesson that is taught twice, at both meetings; each name once', () => {
        expect(recounted(withNeed(0, { amount: amount('4') }), group('k', log('l1')))).toEqual(['cube']);
        expect(recounted(() => ({ needs: [need('rope', '1')] }), group('k', log('l1')))).toEqual(['rope', 'cube', 'bean']);
    });
    test('the first that uses a thing, one between two, and the last', () => {
        const bare = (name: string) => lesson(name);
        for (const name of ['l1', 'l2', 'l4']) {
            const lessons = all.map(own => (own.name === name ? bare(name) : own));
            expect(recounted(() => ({ needs: [need('rope', '1'), need('bean', '5 g', 'class')] }), group(), lessons, name)).toEqual(['rope', 'bean']);
        }
    });
    test('what comes first is named first', () => {
        const { plan } = termPlanOf(newPlanningCache(), programmeOf(all)).term(k);
        expect(plan.names()).toEqual(['cube', 'bean']);
        const again = edited(all, 'l1', ({ needs }) => ({ needs: [need('rope', '1'), needs[1]!] }));
        plan.recount(again[0]!, programmeOf(again));
        expect(plan.names()).toEqual(['rope', 'bean', 'cube']);
        expect([plan.weeksOf('bean'), plan.weeksOf('cube'), plan.weeksOf('rope'), plan.weeksOf('gone')]).toEqual([[1, 3, 4], [2, 4], [1], []]);
    });
    test('a week with two meetings that use a thing is told once; where a thing may be chosen, too', () => {
        const choosing = [one, lesson('l2', [need('cube or button', '4', 'class')]), lesson('l3', [need('rope or button', '4', 'class')]), lesson('l4', [need('button', '2')])];
        const { plan } = termPlanOf(newPlanningCache(), programmeOf(choosing, yearOf(group('k', { meets: meets('mon', 'tue', 'thu') })))).term(k);
        expect([plan.weeksOf('cube'), plan.weeksWithChoiceOf('button'), plan.weeksWithChoiceOf('rope'), plan.weeksWithChoiceOf('bean')]).toEqual([[1], [1], [1], []]);
        expect(plan.incompleteLessons().map(({ name }) => name)).toEqual(['l2', 'l3']);
    });
    test('a lesson with something that cannot be counted is told of once, however often it is taught', () => {
        const odd = [lesson('l1', [need('bean', '1 cup')]), two, three, four];
        const { plan } = termPlanOf(newPlanningCache(), programmeOf(odd, yearOf(group('k', log('l1'))))).term(k);
        expect([plan.occurrences.map(({ lesson: { name } }) => name), plan.incompleteLessons().map(({ name }) => name)]).toEqual([['l1', 'l1', 'l2', 'l3', 'l4'], ['l1']]);
    });
});

describe('a choice counts as where its reasons are told', () => {
    const sheets = (own: Partial<ClassSheet>, ...needs: Need[]) => gatherProgramme([inventory, at('file:///demo/l.lesson', lesson('l', needs, [activity('x', [need('bean', '5 g', 'learner', { inKit: true })])])), at('file:///demo/y.course', course('c', ['l']), group('k', own))]);
    const uses = (programme: Programme) => Object.fromEntries([...termPlanOf(newPlanningCache(), programme).term(k).plan.uses].map(([name, [use]]) => {
        const { n, d, perCrowd, optional, inKit, lines } = use!.demand;
        return [name, { n, d, perCrowd, optional, inKit, lines: lines.length }];
    }));
    test('one crowd', () => {
        expect(uses(sheets({}, need('cube or button', '3', 'pair', { optional: true }), need('salt', '1/3 g', 'class')))).toEqual({
            cube: { n: 12n, d: 1n, perCrowd: undefined, optional: true, inKit: undefined, lines: 1 }, salt: { n: 1n, d: 3n, perCrowd: undefined, optional: false, inKit: undefined, lines: 1 },
            bean: { n: 35n, d: 1n, perCrowd: undefined, optional: false, inKit: true, lines: 1 }
        });
    });
    test('two crowds, whose parts of a whole need a common one: half a rope for each pair is 3/2 and 2', () => {
        const sections = (one: string, other: string) => ({ sections: [section('a', 5, one), section('b', 8, other)] });
        const needs = [need('cube or button', '1', 'class'), need('rope', '1/2', 'pair')];
        expect(uses(sheets(sections('9:00', '10:00'), ...needs))).toMatchObject({ rope: { n: 4n, d: 2n, perCrowd: [3n, 4n] }, cube: { n: 1n, perCrowd: [1n, 1n] }, bean: { n: 65n, perCrowd: undefined } });
        expect(uses(sheets(sections('9:00', '9:00'), ...needs))).toMatchObject({ rope: { n: 7n, d: 2n, perCrowd: [3n, 4n] }, cube: { n: 2n, perCrowd: [1n, 1n] } });
        const thirds = [need('cube or button', '1', 'class'), need('rope', '1/3', 'pair'), need('rope', '1/2', 'learner')];
        // 3 x 1/3 + 5 x 1/2 = 7/2; 4 x 1/3 + 8 x 1/2 = 16/3: in sixths 21 and 32.
        expect(uses(sheets(sections('9:00', '10:00'), ...thirds))).toMatchObject({ rope: { n: 32n, d: 6n, perCrowd: [21n, 32n] } });
    });
});

describe('the next version of a file of lessons', () => {
    const year = yearOf(group(), group('m', { meets: meets('tue'), sharesWith: [mention('k')] }));
    const before = programmeOf(all, year);
    const after = (lessons: readonly LessonSheet[]) => gatherProgramme([...before.files.values()].map(sheet => (sheet.uri.endsWith('l.lesson') ? lessonFile(lessons) : sheet)));
    const kept = (next: Programme, first = before) => {
        const cache = newPlanningCache();
        const was = told(first, cache);
        const terms = termPlanOf(cache, first);
        const [term, others] = [terms.term(k), terms.term({ class: 'm' })];
        const [beans, cubes] = [term.ledger('bean'), term.ledger('cube')];
        const is = told(next, cache);
        expect(is).toEqual(anew(next));
        expect(told(next, cache, { class: 'm' })).toEqual(anew(next, { class: 'm' }));
        const again = termPlanOf(cache, next).term(k);
        expect(again.programme).toBe(next);
        return {
            schedule: is.schedule === was.schedule, coverage: is.coverage === was.coverage, term: again === term, other: termPlanOf(cache, next).term({ class: 'm' }) === others,
            bean: again.ledger('bean') === beans, cube: again.ledger('cube') === cubes
        };
    };
    const everything = { schedule: true, coverage: true, term: true, other: true, bean: true, cube: true };
    const nothing = { schedule: false, coverage: false, term: false, other: false, bean: false, cube: false };

    test('the same once more keeps everything, and so does a text that decides on nothing', () => {
        expect(kept(before)).toEqual(everything);
        expect(kept(after(all))).toEqual(everything);
        expect(kept(after(edited(all, 'l1', () => ({ words: [mention('heavy')], steps: [{ word: 'do', prose: prose('Sing.'), under: [], at: range() }] }))))).toEqual(everything);
    });
    test('another amount counts that thing again, and nothing else', () => {
        expect(kept(after(edited(all, 'l1', withNeed(1, { amount: amount('150 g') }))))).toEqual({ ...everything, bean: false });
        expect(kept(after(edited(all, 'l4', withNeed(1, { amount: amount('1') }))))).toEqual({ ...everything, cube: false });
    });
    test('a lesson in other lines is led to there, and no thing is counted again', () => {
        expect(kept(after(edited(all, 'l1', () => ({ at: range() }))))).toEqual({ ...everything, schedule: false, coverage: false });
    });
    test.each<[string, (own: LessonSheet) => Partial<LessonSheet>]>([
        ['its title', () => ({ title: 'Another' })], ['a draft', () => ({ draft: true })], ['what it follows', () => ({ follows: [mention('l2')] })], ['what it introduces', () => ({ introduces: [mention('p')] })],
        ['what it practises', () => ({ practises: [mention('p')] })], ['what it checks', () => ({ checks: [mention('o')] })], ['one part less', ({ parts }) => ({ parts: parts.slice(1) })],
        ...([['its kind', { kind: 'game' }], ['its name', { name: 'y' }], ['its title', { title: 'Another' }], ['its minutes', { minutes: 50 }], ['its turning back', { unsure: { then: 'repeat', activity: mention('x'), when: 'tomorrow', at: range() } }]] as [string, Partial<PartSheet>][])
            .map(([what, more]): [string, (own: LessonSheet) => Partial<LessonSheet>] => [`of a part ${what}`, ({ parts }) => ({ parts: parts.map((own, i) => (i === 0 ? { ...own, ...more } : own)) })])
    ])('days and coverage are made anew for %s', (_, edit) => {
        expect(kept(after(edited(all, 'l1', edit)))).toMatchObject({ schedule: false, coverage: false, term: false });
    });
    test.each<[string, (own: LessonSheet) => Partial<LessonSheet>]>([
        ['the lesson', () => ({ at: range() })], ['what it introduces', () => ({ introduces: [mention('o')] })], ['a part', ({ parts }) => ({ parts: parts.map(own => ({ ...own, at: range(), head: range() })) })]
    ])('where %s stands is told anew', (_, edit) => {
        expect(kept(after(edited(all, 'l1', edit)))).toMatchObject({ schedule: false, coverage: false, bean: true, cube: true });
    });
    test('one lesson more, less, under another name or in another order begins anew', () => {
        expect(kept(after([...all, lesson('l5')]))).toEqual(nothing);
        expect(kept(after(all.slice(0, 3)))).toEqual(nothing);
        expect(kept(after(all.map(own => (own === two ? { ...own, name: 'l9' } : own))))).toEqual(nothing);
        expect(kept(after([two, one, three, four]))).toEqual(nothing);
    });
    test('so does whatever changes beside the lessons', () => {
        const files = [...before.files.values()];
        const others = (uri: string, next: FileSheet) => gatherProgramme(files.map(sheet => (sheet.uri.endsWith(uri) ? next : sheet)));
        expect(kept(others('a.kit', { ...inventory, materials: inventory.materials.map(own => ({ ...own, packs: [pack('50 g', '1.00')] })) }))).toEqual(nothing);
        expect(kept(others('y.course', yearOf(group('k', { meets: meets('wed') }), group('m', { sharesWith: [mention('k')] }))))).toEqual(nothing);
        expect(kept(gatherProgramme([...files, at('file:///demo/z.lesson', lesson('l9'))]))).toEqual(nothing);
        expect(kept(gatherProgramme(files.filter(sheet => !sheet.uri.endsWith('a.kit'))))).toEqual(nothing);
        expect(kept(others('l.lesson', { ...lessonFile(all), games: [game('shop', [])] }))).toEqual(nothing);
        expect(kept(gatherProgramme(files, new Map([['x', { kind: 'calendar', path: 'x', uri: 'x' } as never]])))).toEqual(nothing);
    });
    test('an attachment that is read anew begins anew', () => {
        const attachment = (): Programme['attachments'] => new Map([['x', { kind: 'calendar', path: 'x', uri: 'x' } as never]]);
        const files = [...before.files.values()];
        const first = gatherProgramme(files, attachment());
        const is = kept(gatherProgramme(files, attachment()), first);
        expect(is).toEqual(nothing);
        expect(kept(gatherProgramme(files, first.attachments), first)).toEqual(everything);
        expect(kept(gatherProgramme(files), first)).toEqual(nothing);
    });
    test('a lesson that another file declares first is not the one that is taught', () => {
        const twice = (lessons: readonly LessonSheet[]) => gatherProgramme([...before.files.values(), at('file:///demo/m.lesson', ...lessons)]);
        expect(kept(twice(edited(all, 'l1', withNeed(0, { amount: amount('90') }))), twice(all))).toEqual(everything);
    });
});

describe('classes side by side', () => {
    const terms = (...classes: ClassSheet[]) => {
        const plan = termPlanOf(newPlanningCache(), programmeOf(all, yearOf(...classes)));
        return (name: string) => plan.term({ class: name });
    };
    test('with as many learners share what each lesson needs, others do not', () => {
        const term = terms(group(), group('m', { meets: meets('tue') }), group('n', { learners: { count: 9, at: range() } }), group('q', { groupsOf: 2 }));
        const demand = (name: string) => term(name).plan.uses.get('cube')![0]!.demand;
        expect([demand('k') === demand('m'), demand('k') === demand('n'), demand('k') === demand('q')]).toEqual([true, false, false]);
        expect([term('k').plan.numbers === term('n').plan.numbers]).toEqual([true]);
    });
    test('a term is made once, and again for another schedule; it is the same plan that the other class counts with', () => {
        const first = programmeOf(all, yearOf(group(), group('m', { sharesWith: [mention('k')] })));
        const plan = termPlanOf(newPlanningCache(), first);
        const term = plan.term(k);
        expect(plan.term(k)).toBe(term);
        expect(plan.term({ class: 'm' }).plan).toBe(term.cupboard.members[1]);
        expect(plan.term({ class: 'm' }).cupboard.members[1]).toBe(term.plan);
        const other = plan.term(k, planSchedule(first, k));
        expect(other).not.toBe(term);
        expect(other.plan).not.toBe(term.plan);
        expect([plan.schedule(k) === plan.schedule(k), plan.coverage(k) === plan.coverage(k), plan.taught(k) === first]).toEqual([true, true, true]);
    });
    test('one that an adaptation reaches has numbers and needs of its own', () => {
        const own = adaptation('own', { of: mention('c'), forClass: mention('k'), changes: [{ does: 'skip lesson', lesson: mention('l2'), head: range(), at: range() }] });
        const sheets = gatherProgramme([inventory, lessonFile(all), at('file:///demo/y.course', course('c', ['l1', 'l2', 'l3', 'l4']), group(), group('m'), own)]);
        const plan = termPlanOf(newPlanningCache(), sheets);
        const [adapted, plain] = [plan.term(k), plan.term({ class: 'm' })];
        expect([adapted, plain].map(term => term.plan.occurrences.map(({ lesson: { name } }) => name))).toEqual([['l1', 'l3', 'l4'], ['l1', 'l2', 'l3', 'l4']]);
        expect(adapted.plan.numbers).not.toBe(plain.plan.numbers);
        expect([adapted.programme === sheets, plan.taught({ class: 'm' }) === sheets, plan.taught(k) === adapted.programme]).toEqual([false, true, true]);
    });
});
