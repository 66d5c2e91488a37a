/** Random programmes and random stacks of changes, good and bad. */
import fc from 'fast-check';
import type { AdaptationSheet, Added, Change, PartMention, Side, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, FileSheet, GameSheet, LessonSheet, MaterialSheet, PartSheet } from '@haversack/language/sheets/sheet';
import { activity, consumable, course, file, game, klass, lesson, measured, meets, mention, need, on, part, range, reusable, step } from './sheets.js';

export interface RandomLesson {
    parts: { minutes: number | undefined; thing: string | undefined; kind: PartSheet['kind']; names: string; back: number }[];
    needs: [thing: string, amount: number][];
    follows: number[];
    objectives: [does: 'introduces' | 'practises' | 'checks', name: string][];
}

export interface RandomProgramme {
    lessons: RandomLesson[];
    /** Lessons of the course, by number; the others stand in no course. */
    taught: number[];
    changes: Change[][];
}

const things = ['bean', 'lentil', 'rope', 'cube', 'nothing'];
const inventory: (MaterialSheet | GameSheet)[] = [
    consumable('bean', { ...measured('g'), standIns: [{ thing: mention('lentil'), give: '3', replaces: '2', at: range() }] }), consumable('lentil', measured('kg')),
    reusable('rope'), reusable('cube'), game('grocer', [need('bean', '20 g', 'group'), need('cube', '2', 'pair')], [2, 4])
];
const partNames = ['a', 'b', 'c', 'd', 'closing', 'grocer', 'a-part-2'];
const most = 7;

const thing = fc.constantFrom(...things);
const minutes = fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 0, max: 30 }) }, { weight: 1, arbitrary: fc.constant(undefined) });
const randomLesson: fc.Arbitrary<RandomLesson> = fc.record({
    parts: fc.array(fc.record({
        minutes, thing: fc.option(thing, { nil: undefined }), kind: fc.constantFrom<PartSheet['kind'][]>('activity', 'activity', 'activity', 'game', 'practice', 'warm-up', 'checkpoint'),
        names: thing, back: fc.integer({ min: 0, max: 4 })
    }), { minLength: 2, maxLength: 4 }),
    needs: fc.array(fc.tuple(thing, fc.integer({ min: 1, max: 40 })), { maxLength: 3 }),
    follows: fc.array(fc.integer({ min: 1, max: most }), { maxLength: 2 }),
    objectives: fc.array(fc.tuple(fc.constantFrom<('introduces' | 'practises' | 'checks')[]>('introduces', 'practises', 'checks'), fc.constantFrom('o1', 'o2')), { maxLength: 2 })
});

/** Numbers past the last are lessons that nobody has written. */
const name = fc.oneof({ weight: 12, arbitrary: fc.integer({ min: 1, max: 4 }) }, { weight: 1, arbitrary: fc.integer({ min: 5, max: most + 1 }) }).map(n => mention(`l${n}`));
const partOf: fc.Arbitrary<PartMention> = fc.tuple(name, fc.constantFrom('a', 'a', 'a', 'b', 'b', 'b', 'c', ...partNames)).map(([own, one]) => ({ lesson: own, part: mention(one), at: range() }));
const side = fc.constantFrom<Side[]>('after', 'before');
const time = fc.integer({ min: 0, max: 60 });
const someThing = thing.map(mention);
const added: fc.Arbitrary<Added> = fc.record({
    steps: fc.array(thing.map(one => step('do', `Take the {${one}}.`)), { maxLength: 1 }), introduces: fc.array(fc.constant('o1').map(mention), { maxLength: 1 }),
    practises: fc.constant([]), checks: fc.array(fc.constant('o2').map(mention), { maxLength: 1 }), needs: fc.array(thing.map(one => need(one, '2', 'pair')), { maxLength: 1 }),
    cautions: fc.constant([]), words: fc.constant([]), parts: fc.array(fc.constantFrom('a', 'sing').map(one => activity(one, [], { minutes: 4 })), { maxLength: 1 })
});

export const randomChange: fc.Arbitrary<Change> = fc.oneof(
    fc.record({ does: fc.constant('skip lesson' as const), lesson: name }),
    fc.record({ does: fc.constant('skip activity' as const), activity: partOf }),
    fc.record({
        does: fc.constant('swap thing' as const), thing: someThing, forThing: someThing, ratio: fc.constantFrom(undefined, { give: '2', replaces: '1' }, { give: '1/3', replaces: '0' }),
        within: fc.option(fc.record({ lesson: name, part: fc.option(fc.constantFrom(...partNames).map(mention), { nil: undefined }) }), { nil: undefined })
    }),
    fc.record({ does: fc.constant('swap lesson' as const), lesson: name, forLesson: name }),
    fc.record({ does: fc.constant('swap activity' as const), activity: partOf, forActivity: partOf }),
    fc.record({ does: fc.constant('move lesson' as const), lesson: name, side, anchor: name }),
    fc.record({ does: fc.constant('move activity' as const), activity: partOf, side, anchor: partOf }),
    fc.record({ does: fc.constant('split lesson' as const), lesson: name, after: fc.constantFrom('a', 'b', ...partNames).map(mention) }),
    fc.record({ does: fc.constant('split activity' as const), activity: partOf, minutes: time }),
    fc.record({ does: fc.constant('join lessons' as const), lesson: name, others: fc.array(name, { maxLength: 3 }) }),
    fc.record({ does: fc.constant('join activities' as const), activity: partOf, others: fc.array(partOf, { maxLength: 2 }) }),
    fc.record({ does: fc.constant('insert lesson' as const), lesson: name, side, anchor: name }),
    fc.record({ does: fc.constant('insert activity' as const), activity: partOf, side, anchor: partOf }),
    fc.record({ does: fc.constant('retime lesson' as const), lesson: name, minutes: time }),
    fc.record({ does: fc.constant('retime activity' as const), activity: partOf, minutes: time }),
    fc.record({ does: fc.constant('add to lesson' as const), lesson: name, side: fc.option(side, { nil: undefined }), anchor: fc.option(fc.constantFrom(...partNames).map(mention), { nil: undefined }), added }),
    fc.record({ does: fc.constant('add to activity' as const), activity: partOf, added })
);

export const randomProgramme: fc.Arbitrary<RandomProgramme> = fc.record({
    lessons: fc.oneof({ weight: 9, arbitrary: fc.array(randomLesson, { minLength: 4, maxLength: most }) }, { weight: 1, arbitrary: fc.array(randomLesson, { minLength: 1, maxLength: 2 }) }),
    taught: fc.oneof({ weight: 6, arbitrary: fc.constantFrom<number[][]>([1, 2, 3, 4], [4, 3, 1, 2, 5], [1, 2, 3]) }, { weight: 1, arbitrary: fc.array(fc.integer({ min: 1, max: most }), { maxLength: most }) }),
    changes: fc.array(fc.array(randomChange, { minLength: 1, maxLength: 5 }), { maxLength: 3 })
});

/** In a file that declares nothing else, `from` lines from its top. */
export function lessonSheet(random: RandomLesson, n: number): LessonSheet {
    const parts = random.parts.map(({ minutes: time, thing: own, kind, names, back }, i) => {
        const asks = own === undefined ? [] : [need(own, '3', 'pair')];
        const letter = partNames[i]!;
        if (kind === 'game') return part('game', 'grocer', { minutes: time });
        const unsure = kind === 'checkpoint' ? { unsure: { then: 'repeat' as const, activity: mention(partNames[back] ?? 'a'), when: 'today' as const, at: range() } } : {};
        return part(kind, letter, { minutes: time, needs: asks, steps: [step('do', `Use the {${names}}.`)], ...unsure });
    });
    const objectives = (does: string) => random.objectives.filter(([word]) => word === does).map(([, objective]) => mention(objective));
    return lesson(`l${n}`, random.needs.map(([own, amount]) => need(own, String(amount), 'pair')), parts, {
        uri: `file:///demo/l${n}.lesson`, follows: random.follows.map(other => mention(`l${other}`)),
        introduces: objectives('introduces'), practises: objectives('practises'), checks: objectives('checks')
    });
}

export function written(change: Change): WrittenChange {
    return { ...change, head: range(), at: range() };
}

export function adaptationSheets(changes: Change[][]): AdaptationSheet[] {
    return changes.map((lines, i): AdaptationSheet => ({
        kind: 'adaptation', name: `adaptation-${i}`, title: `Adaptation ${i}`, uri: 'file:///demo/z.course', at: range(), whole: range(), of: mention('year'),
        ...(i % 2 === 1 && { forClass: mention('k') }), changes: lines.map(written), notes: []
    }));
}

export const dated: Partial<ClassSheet> = { starts: on('2026-09-07'), meets: meets('mon', 'thu'), session: { minutes: 45, at: range() } };

/** Each lesson in a file of its own, so that one can be changed; the class k is adapted, the class m only by what is for all. */
export function filesOf(random: RandomProgramme): FileSheet[] {
    const lessons = random.lessons.map((one, i) => ({ ...file(lessonSheet(one, i + 1)), uri: `file:///demo/l${i + 1}.lesson` }));
    const year = course('year', [...new Set(random.taught)].filter(n => n <= random.lessons.length + 1).map(n => `l${n}`), {});
    const shared = { ...dated, sharesWith: [mention('k')] };
    const rest = file(...inventory, year, klass('k', 'year', 7, dated), klass('m', 'year', 5, shared));
    return [...lessons, { ...rest, adaptations: adaptationSheets(random.changes) }];
}

export function programmeOf(files: readonly FileSheet[]): Programme {
    return gatherProgramme(files);
}
