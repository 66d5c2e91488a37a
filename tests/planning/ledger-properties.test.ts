import fc from 'fast-check';
import { expect, test } from 'vitest';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Change } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import { planLedger } from '../../server/planning/ledger.js';
import { activity, adaptation, course, klass, lesson, meets, mention, on, programme, range } from './sheets.js';

const names = ['l1', 'l2', 'l3', 'l4', 'l5', 'l6'];
const objectives = ['o1', 'o2', 'o3'];

const someOf = (list: readonly string[]) => fc.subarray([...list], { maxLength: Math.min(1, list.length) }).map(chosen => chosen.map(mention));
const lessonNamed = (name: string, before: readonly string[]): fc.Arbitrary<LessonSheet> =>
    fc.record({ introduces: someOf(objectives), practises: someOf(objectives), checks: someOf(objectives), follows: someOf(before), minutes: fc.integer({ min: 1, max: 30 }) })
        .map(({ minutes, ...more }) => lesson(name, [], [activity('a', [], { minutes }), activity('b', [], { minutes: 5 })], more));
const lessons = fc.tuple(...[...names, 'extra'].map((name, i) => lessonNamed(name, names.slice(0, i))));

const named = fc.constantFrom(...names).map(mention);
const part = fc.record({ lesson: named, part: fc.constantFrom('a', 'b').map(mention) }).map(one => ({ ...one, at: range() }));
const side = fc.constantFrom('after' as const, 'before' as const);
const change: fc.Arbitrary<Change> = fc.oneof(
    named.map((one): Change => ({ does: 'skip lesson', lesson: one })),
    part.map((activity): Change => ({ does: 'skip activity', activity })),
    fc.tuple(named, side, named).map(([one, where, anchor]): Change => ({ does: 'move lesson', lesson: one, side: where, anchor })),
    fc.tuple(named, side).map(([anchor, where]): Change => ({ does: 'insert lesson', lesson: mention('extra'), side: where, anchor })),
    named.map((one): Change => ({ does: 'swap lesson', lesson: one, forLesson: mention('extra') })),
    named.map((one): Change => ({ does: 'split lesson', lesson: one, after: mention('a') })),
    fc.tuple(named, named).map(([one, other]): Change => ({ does: 'join lessons', lesson: one, others: [other] })),
    fc.tuple(named, fc.integer({ min: 1, max: 60 })).map(([one, minutes]): Change => ({ does: 'retime lesson', lesson: one, minutes })),
    fc.tuple(named, fc.constantFrom(...objectives), fc.constantFrom('introduces' as const, 'checks' as const)).map(([one, objective, does]): Change =>
        ({ does: 'add to lesson', lesson: one, added: { steps: [], introduces: [], practises: [], checks: [], needs: [], cautions: [], words: [], parts: [], [does]: [mention(objective)] } }))
);

function programmeOf(taught: LessonSheet[], changes: Change[]): Programme {
    const sheets = programme(
        ...taught, course('c', names), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon', 'thu') }),
        adaptation('a', { of: mention('c'), forClass: mention('k'), changes: changes.map(one => ({ ...one, head: range(), at: range() })) })
    );
    const declared = objectives.map((name): [string, ObjectiveSheet] => [name, { kind: 'objective', name, title: name, uri: 'file:///o', at: range(), whole: range(), buildsOn: [], alignsTo: [] }]);
    return { ...sheets, objectives: new Map(declared) };
}

/** What is so in a list of lessons: objectives asked for and not introduced, and those asked for too early. */
function state(list: readonly LessonSheet[]): { missing: Set<string>; early: Set<string> } {
    const missing = new Set<string>();
    const early = new Set<string>();
    for (const objective of objectives) {
        const has = (one: LessonSheet, does: 'introduces' | 'practises' | 'checks'): boolean => one[does].some(({ name }) => name === objective);
        const first = list.findIndex(one => has(one, 'introduces'));
        const asks = list.flatMap((one, i) => (has(one, 'practises') || has(one, 'checks') ? [i] : []));
        if (asks.length > 0 && first < 0) missing.add(objective);
        if (first >= 0 && asks.some(i => i < first)) early.add(objective);
    }
    return { missing, early };
}

/** Always the first lesson of the list that follows none which is still to come; undefined where lessons wait for each other. */
function asTaught(list: readonly LessonSheet[]): LessonSheet[] | undefined {
    const left = [...list];
    const taught: LessonSheet[] = [];
    while (left.length > 0) {
        const next = left.findIndex(one => !one.follows.some(({ name }) => left.some(other => other !== one && other.name === name)));
        if (next < 0) return undefined;
        taught.push(...left.splice(next, 1));
    }
    return taught;
}

const taughtIn = ({ courses, lessons: all }: Programme): LessonSheet[] | undefined => asTaught(courses.get('c')!.units.flatMap(unit => unit.lessons).flatMap(({ name }) => all.get(name) ?? []));
const minutes = (list: readonly LessonSheet[]): number => list.reduce((sum, { parts }) => sum + parts.reduce((own, one) => own + (one.minutes ?? 0), 0), 0);

test('tells what the adapted course lacks and the course does not, each objective once, and counts both', () => {
    fc.assert(fc.property(lessons, fc.array(change, { minLength: 1, maxLength: 6 }), (taught, changes) => {
        const read = programmeOf(taught, changes);
        const ledger = planLedger(read, { class: 'k' })!;
        const [before, after] = [taughtIn(read), taughtIn(adaptedFor(read, { class: 'k' })!.programme)];
        fc.pre(before !== undefined && after !== undefined);
        const told = [...ledger.changes.flatMap(({ consequences }) => consequences), ...ledger.otherConsequences];
        const about = (kind: string): string[] => told.filter(one => one.kind === kind && !one.fact).map(one => one.about.name).sort();
        const [then, now] = [state(before), state(after)];
        expect(about('no-longer-introduced')).toEqual([...now.missing].filter(objective => !then.missing.has(objective)).sort());
        // Where the course itself asks too early, only further lessons are told.
        const early = about('practised-too-early');
        expect(new Set(early)).toEqual(new Set([...now.early].filter(objective => !then.early.has(objective) || early.includes(objective))));
        expect(ledger.minutes).toMatchObject({ before: minutes(before), after: minutes(after) });
        expect(ledger.changes).toHaveLength(changes.length);
        const known = new Set(after.map(({ name }) => name));
        for (const { lessons: shown } of told) expect(shown.every(name => known.has(name))).toBe(true);
        expect(ledger.lessons.filter(({ happened }) => happened !== 'left out').map(({ name }) => name)).toEqual(after.map(({ name }) => name));
    }), { numRuns: 150 });
});
