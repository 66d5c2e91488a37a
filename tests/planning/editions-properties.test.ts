import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readProgramme } from '../../server/cli/read-programme.js';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { pairUp } from '@haversack/server/planning/editions/alike';
import { commonRun, movedItems } from '@haversack/server/planning/editions/order';
import { reapply } from '@haversack/server/planning/editions/reapply';
import type { DifferenceKind } from '@haversack/server/planning/edition-figures';
import { read, told } from './edition-texts.js';

const nouns = ['bag', 'stone', 'feather', 'ladder', 'basket', 'bucket', 'lantern', 'apple', 'ribbon', 'kettle', 'pebble', 'wheel', 'candle', 'button', 'bridge', 'puddle', 'window', 'barrel', 'thimble', 'acorn'];
const sentence = fc.array(fc.constantFrom(...nouns), { minLength: 4, maxLength: 9 }).map(words => `Take the ${words.join(' and the ')}.`);

interface Lesson { id: number; name: string; title: string; parts: { name: string; minutes: number; steps: string[] }[] }

const lesson = (id: number): fc.Arbitrary<Lesson> => fc.array(fc.record({ minutes: fc.integer({ min: 1, max: 30 }), steps: fc.array(sentence, { minLength: 2, maxLength: 4 }) }), { minLength: 2, maxLength: 4 })
    .map(parts => ({ id, name: `lesson-${id}`, title: `Lesson number ${id}`, parts: parts.map((part, index) => ({ ...part, name: `part-${index + 1}` })) }));
const lessons = (least: number): fc.Arbitrary<Lesson[]> => fc.integer({ min: least, max: 7 }).chain(count => fc.tuple(...Array.from({ length: count }, (_, id) => lesson(id + 1))));

const textOf = (list: readonly Lesson[]): string => [
    ...list.map(({ name, title, parts }) => `lesson ${name} "${title}"\n${parts.map(part => `  activity ${part.name} ${part.minutes} min\n${part.steps.map(step => `    do: ${step}\n`).join('')}`).join('')}`),
    `course measure "Measure"\n  unit all "All"\n${list.map(({ name }) => `    ${name}\n`).join('')}`
].join('');

const count = (old: readonly Lesson[], now: readonly Lesson[], kind: DifferenceKind): number =>
    compareEditions(read(textOf(old)), read(textOf(now))).sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences).filter(one => one.kind === kind).length;

test('a programme beside itself: nothing changed', () => {
    fc.assert(fc.property(lessons(1), list => {
        expect(told(compareEditions(read(textOf(list)), read(textOf(list))))).toEqual([]);
    }), { numRuns: 40 });
});

test.each(['first-steps', 'year'])('the example %s beside itself: nothing changed, and every adaptation applies as before', async name => {
    const [one, other] = [await readProgramme(`examples/${name}`), await readProgramme(`examples/${name}`)];
    expect(told(compareEditions(one.view.programme, other.view.programme))).toEqual([]);
    const changes = reapply(one.view.programme, other.view.programme).flatMap(adaptation => adaptation.changes);
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.filter(({ outcome }) => outcome !== 'clean')).toEqual([]);
});

test('what is added one way is removed the other way', () => {
    fc.assert(fc.property(lessons(2), fc.infiniteStream(fc.boolean()), (list, coins) => {
        const old = list.filter(() => coins.next().value);
        const now = list.filter(() => coins.next().value);
        expect(count(old, now, 'lesson-added')).toBe(count(now, old, 'lesson-removed'));
        expect(count(old, now, 'lesson-removed')).toBe(count(now, old, 'lesson-added'));
        expect(count(old, now, 'part-added')).toBe(count(now, old, 'part-removed'));
    }), { numRuns: 60 });
});

test('a renamed lesson is recognised whatever else is edited, and no two lessons become one', () => {
    const edits = fc.record({ which: fc.nat(), dropStep: fc.boolean(), minutes: fc.integer({ min: 1, max: 40 }), shuffle: fc.nat(), added: lesson(99) });
    fc.assert(fc.property(lessons(2), edits, (list, { which, dropStep, minutes, shuffle, added }) => {
        // Lessons that say nearly the same cannot be told apart by anybody.
        fc.pre(new Set(list.flatMap(({ parts }) => parts.flatMap(({ steps }) => steps))).size === list.flatMap(({ parts }) => parts.flatMap(({ steps }) => steps)).length);
        const target = list[which % list.length]!;
        const parts = target.parts.map((part, index) => (index === 0 ? { ...part, minutes, steps: dropStep && part.steps.length > 2 ? part.steps.slice(1) : part.steps } : part));
        const rest = list.filter(one => one !== target);
        const now = [...rest.slice(0, shuffle % list.length), { ...target, name: 'another-name', title: 'Another title altogether', parts }, ...rest.slice(shuffle % list.length), added];
        const figures = compareEditions(read(textOf(list)), read(textOf(now)));
        const differences = figures.sections.flatMap(({ groups }) => groups).flatMap(one => one.differences);
        expect(differences.filter(({ kind }) => kind === 'lesson-renamed').map(({ says }) => says)).toEqual([`“${target.title}” (${target.name}) is now “Another title altogether” (another-name)`]);
        expect(differences.filter(({ kind }) => kind === 'lesson-removed')).toEqual([]);
        expect(differences.filter(({ kind }) => kind === 'lesson-added')).toHaveLength(1);
    }), { numRuns: 60 });
});

describe('who is who', () => {
    interface Thing { name: string; items: string[] }
    const things = fc.uniqueArray(fc.record({ name: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), items: fc.array(fc.constantFrom(...nouns.slice(0, 6)), { maxLength: 4 }) }), { selector: ({ name }) => name, maxLength: 6 });
    const pairs = (old: readonly Thing[], now: readonly Thing[]) => pairUp(old, now, {
        name: ({ name }) => name, saying: ({ items }) => items.join(' '), least: 0.5, aspects: ({ items }) => [{ what: 'items', weight: 1, items }]
    });

    test('nobody twice, nobody lost, nobody with the same name left over on both sides', () => {
        fc.assert(fc.property(things, things, (old, now) => {
            const { pairs: found, gone, added } = pairs(old, now);
            expect([...found.map(pair => pair.old), ...gone].sort(byName)).toEqual([...old].sort(byName));
            expect([...found.map(pair => pair.new), ...added].sort(byName)).toEqual([...now].sort(byName));
            expect(gone.filter(one => added.some(other => other.name === one.name))).toEqual([]);
            for (const { old: before, new: after, recognised } of found) if (before.name !== after.name) expect(recognised?.score).toBeGreaterThanOrEqual(0.5);
        }), { numRuns: 500 });
    });

    test('the same seen from the other side', () => {
        fc.assert(fc.property(things, things, (old, now) => {
            const names = (list: readonly Thing[]): string[] => list.map(({ name }) => name).sort();
            const [there, back] = [pairs(old, now), pairs(now, old)];
            expect(names(there.gone)).toEqual(names(back.added));
            expect(names(there.added)).toEqual(names(back.gone));
        }), { numRuns: 500 });
    });

    const byName = (a: Thing, b: Thing): number => (a.name < b.name ? -1 : 1);
});

describe('least moves', () => {
    /** Whether taking those places out leaves the rest in order: tried for every set, smallest first. */
    const fewest = (order: readonly number[]): number => {
        const sizes = Array.from({ length: 2 ** order.length }, (_, set) => {
            const rest = order.filter((_, index) => !(set & (1 << index)));
            return rest.every((value, index) => index === 0 || rest[index - 1]! < value) ? order.length - rest.length : Infinity;
        });
        return Math.min(...sizes);
    };

    test('as few as an exhaustive search finds, and the others keep their order', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: 8 }).chain(length => fc.shuffledSubarray(Array.from({ length }, (_, index) => index), { minLength: length })), order => {
            const moved = movedItems(order);
            expect(moved.size).toBe(fewest(order));
            const rest = order.filter((_, index) => !moved.has(index));
            expect(rest).toEqual([...rest].sort((a, b) => a - b));
        }));
    });

    test('what two lists have in common is as long as an exhaustive search finds', () => {
        const letters = fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 8 });
        const subsequences = (list: readonly string[]): Set<string> => new Set(Array.from({ length: 2 ** list.length }, (_, set) => list.filter((_, index) => set & (1 << index)).join('')));
        fc.assert(fc.property(letters, letters, (a, b) => {
            const run = commonRun(a, b);
            const others = subsequences(b);
            expect(run.length).toBe(Math.max(...[...subsequences(a)].filter(one => others.has(one)).map(one => one.length)));
            expect(run.every(([i, j], index) => a[i] === b[j] && (index === 0 || (run[index - 1]![0] < i && run[index - 1]![1] < j)))).toBe(true);
        }));
    });

    test('very long lists that differ in all are no trouble', () => {
        const list = (letter: string): string[] => Array.from({ length: 5000 }, (_, index) => `${letter}${index}`);
        expect(commonRun(['x', ...list('a'), 'y'], ['x', ...list('b'), 'y'])).toEqual([[0, 0], [5001, 5001]]);
    });
});

test('half-typed programmes never stop the comparison', () => {
    const line = fc.constantFrom('lesson', 'lesson a', '  activity', '  activity x 5 min', '    do: {y}', '  materials', '    bean 20', '    bean or lentil 1/0 g per', 'material bean', '  pack of 0', 'course c edition', '  unit u', '    a', '    a', 'adaptation n of c edition 1', '  skip lesson', '  skip lesson a', '  move a after a', '  join a with a', '  swap bean for bean', '  split a after x', '  insert z after a', '  add to a', 'class k', '  teaches c', '  learners 0', 'objective', 'objective o', '  builds on o');
    const text = fc.array(line, { maxLength: 25 }).map(lines => lines.join('\n'));
    fc.assert(fc.property(text, text, (old, now) => {
        const figures = compareEditions(read(old), read(now));
        expect(JSON.parse(JSON.stringify(figures))).toBeTruthy();
        expect(told(compareEditions(read(old), read(old)))).toEqual([]);
    }), { numRuns: 150 });
});
