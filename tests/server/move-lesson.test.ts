import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { describe, expect, test } from 'vitest';
import type { CourseSheet } from '@haversack/language/sheets/sheet';
import { moveLessons, type Destination, type LessonsMoved } from '../../server/editing/move-lesson.js';
import { lastView, problemsIn } from '../language/fixture.js';

async function courseOf(text: string): Promise<CourseSheet> {
    await problemsIn({ 'plan.course': text });
    return [...lastView().programme.courses.values()][0]!;
}

const applied = (text: string, { edits }: LessonsMoved): string =>
    TextDocument.applyEdits(TextDocument.create('', '', 0, text), edits);
const order = (course: CourseSheet): string[] => course.units.map(({ name, lessons }) => `${name}: ${lessons.map(lesson => lesson.name).join(' ')}`);

interface Asked {
    move: string[];
    to: Destination | { lesson: string } | { unit: string };
}

/** Moves lessons by their names (a new one stands nowhere yet), and reads the text again. */
async function moved(text: string, { move, to }: Asked): Promise<{ text: string; order: string[]; at: string[] }> {
    const course = await courseOf(text);
    const lineOf = (name: string): number | undefined => course.units.flatMap(({ lessons }) => lessons).find(lesson => lesson.name === name)?.at.start.line;
    const destination = 'lesson' in to && typeof to.lesson === 'string' ? { lesson: lineOf(to.lesson)! }
        : 'unit' in to && typeof to.unit === 'string' ? { unit: course.units.find(({ name }) => name === to.unit)!.at.start.line } : to as Destination;
    const result = moveLessons(text, course, move.map(name => ({ name, line: lineOf(name) })), destination)!;
    const after = applied(text, result);
    return { text: after, order: order(await courseOf(after)), at: result.lines.map(line => after.split(/\r\n|\r|\n/)[line]!.trim()) };
}

const weighing = `# The year.
course weighing "Weighing"
  unit bags "Bags"
    # With sand.
    bags-1
    bags-2   # a long one
    bags-3

  unit jars "Jars"
    jars-1
    # Twice, because it was
    # too short.
    jars-2

class harbour
  teaches weighing
`;

describe('a lesson', () => {
    test('moved down in its unit stands behind the lesson on which it was let go', async () => {
        const { order: now, at } = await moved(weighing, { move: ['bags-1'], to: { lesson: 'bags-2' } });
        expect(now).toEqual(['bags: bags-2 bags-1 bags-3', 'jars: jars-1 jars-2']);
        expect(at).toEqual(['bags-1']);
    });

    test('moved up stands before it', async () => {
        expect((await moved(weighing, { move: ['bags-3'], to: { lesson: 'bags-1' } })).order[0]).toBe('bags: bags-3 bags-1 bags-2');
    });

    test('takes the comments right above it along, and leaves everything else where it is', async () => {
        const { text } = await moved(weighing, { move: ['jars-2'], to: { lesson: 'bags-1' } });
        expect(text).toBe(weighing.replace('    # Twice, because it was\n    # too short.\n    jars-2\n', '').replace('    # With sand.\n', '    # Twice, because it was\n    # too short.\n    jars-2\n    # With sand.\n'));
    });

    test('comes from another unit before the lesson, and on a unit to its end', async () => {
        expect((await moved(weighing, { move: ['bags-1'], to: { lesson: 'jars-1' } })).order).toEqual(['bags: bags-2 bags-3', 'jars: bags-1 jars-1 jars-2']);
        expect((await moved(weighing, { move: ['bags-1'], to: { unit: 'jars' } })).order).toEqual(['bags: bags-2 bags-3', 'jars: jars-1 jars-2 bags-1']);
        expect((await moved(weighing, { move: ['bags-1'], to: { unit: 'bags' } })).order[0]).toBe('bags: bags-2 bags-3 bags-1');
    });

    test('goes one up or down, at the edge of a unit into the next, and at the end of the course nowhere', async () => {
        expect((await moved(weighing, { move: ['bags-2'], to: { by: 'up' } })).order[0]).toBe('bags: bags-2 bags-1 bags-3');
        expect((await moved(weighing, { move: ['bags-2'], to: { by: 'down' } })).order[0]).toBe('bags: bags-1 bags-3 bags-2');
        expect((await moved(weighing, { move: ['bags-3'], to: { by: 'down' } })).order).toEqual(['bags: bags-1 bags-2', 'jars: bags-3 jars-1 jars-2']);
        expect((await moved(weighing, { move: ['jars-1'], to: { by: 'up' } })).order).toEqual(['bags: bags-1 bags-2 bags-3 jars-1', 'jars: jars-2']);
        expect(await moved(weighing, { move: ['bags-1'], to: { by: 'up' } })).toMatchObject({ text: weighing, at: ['bags-1'] });
        expect((await moved(weighing, { move: ['jars-2'], to: { by: 'down' } })).text).toBe(weighing);
    });

    test('goes together with others in the order of the course', async () => {
        const { order: now, at } = await moved(weighing, { move: ['jars-2', 'bags-1'], to: { lesson: 'bags-3' } });
        expect(now).toEqual(['bags: bags-2 bags-3 bags-1 jars-2', 'jars: jars-1']);
        expect(at).toEqual(['bags-1', 'jars-2']);
        expect((await moved(weighing, { move: ['bags-1', 'bags-2', 'bags-3'], to: { unit: 'bags' } })).text).toBe(weighing);
        expect((await moved(weighing, { move: ['bags-1', 'bags-2'], to: { lesson: 'bags-2' } })).text).toBe(weighing);
    });

    test('that stands in no course is written in', async () => {
        const { text, at } = await moved(weighing, { move: ['scales-1'], to: { lesson: 'jars-1' } });
        expect(text).toBe(weighing.replace('    jars-1\n', '    scales-1\n    jars-1\n'));
        expect(at).toEqual(['scales-1']);
        expect((await moved(weighing, { move: ['scales-1'], to: { unit: 'bags' } })).order[0]).toBe('bags: bags-1 bags-2 bags-3 scales-1');
    });

    test('is not looked for on a line that holds another', async () => {
        expect(moveLessons(weighing, await courseOf(weighing), [{ name: 'bags-1', line: 0 }], { by: 'down' })).toBeUndefined();
        expect(moveLessons(weighing, await courseOf(weighing), [{ name: 'bags-1', line: 4 }], { lesson: 3 })).toBeUndefined();
        expect(moveLessons(weighing, await courseOf(weighing), [{ name: 'bags-1' }], { by: 'down' })).toBeUndefined();
    });
});

describe('the text round it', () => {
    test('keeps its line ends', async () => {
        const text = weighing.replaceAll('\n', '\r\n');
        expect((await moved(text, { move: ['bags-1'], to: { by: 'down' } })).text).toBe((await moved(weighing, { move: ['bags-1'], to: { by: 'down' } })).text.replaceAll('\n', '\r\n'));
    });

    test('ends without a line end where it did', async () => {
        const text = 'course c\n  unit u\n    a-1\n    a-2\n    a-3';
        expect((await moved(text, { move: ['a-3'], to: { lesson: 'a-1' } })).text).toBe('course c\n  unit u\n    a-3\n    a-1\n    a-2');
        expect((await moved(text, { move: ['a-1'], to: { lesson: 'a-3' } })).text).toBe('course c\n  unit u\n    a-2\n    a-3\n    a-1');
        expect((await moved(text, { move: ['a-1'], to: { lesson: 'a-2' } })).text).toBe('course c\n  unit u\n    a-2\n    a-1\n    a-3');
        expect((await moved(text.replaceAll('\n', '\r\n'), { move: ['new'], to: { unit: 'u' } })).text).toBe('course c\r\n  unit u\r\n    a-1\r\n    a-2\r\n    a-3\r\n    new');
        expect((await moved(text, { move: ['a-1', 'a-3'], to: { unit: 'u' } })).text).toBe('course c\n  unit u\n    a-2\n    a-1\n    a-3');
    });

    test('with tabs: a lesson takes the indentation of its new unit, and in its own keeps what it has', async () => {
        const text = 'course c\n\tunit u\n\t\ta-1\n\t\ta-2\n\tunit v\n\t\tb-1\n';
        expect((await moved(text, { move: ['a-1'], to: { lesson: 'b-1' } })).text).toBe('course c\n\tunit u\n\t\ta-2\n\tunit v\n\t\ta-1\n\t\tb-1\n');
        const deeper = 'course c\n  unit u\n      # Mind the step.\n      a-1\n  unit v\n    b-1\n';
        expect((await moved(deeper, { move: ['a-1'], to: { unit: 'v' } })).text).toBe('course c\n  unit u\n  unit v\n    b-1\n    # Mind the step.\n    a-1\n');
    });

    test('in an empty unit: as far in as elsewhere, behind what is written of the unit', async () => {
        const text = 'course c\n\tunit u\n\t\ta-1\n\tunit v\n\n\tunit w\n\t\tabout: Two\n\t\t\tlines.\n';
        expect((await moved(text, { move: ['a-1'], to: { unit: 'v' } })).text).toBe('course c\n\tunit u\n\tunit v\n\t\ta-1\n\n\tunit w\n\t\tabout: Two\n\t\t\tlines.\n');
        expect((await moved(text, { move: ['a-1'], to: { unit: 'w' } })).text).toBe('course c\n\tunit u\n\tunit v\n\n\tunit w\n\t\tabout: Two\n\t\t\tlines.\n\t\ta-1\n');
        expect((await moved('course c\n  unit u', { move: ['a-1'], to: { unit: 'u' } })).text).toBe('course c\n  unit u\n    a-1');
    });

    test('keeps a remark’s text, though it looks like a comment', async () => {
        const text = 'course c\n  unit u\n    about: Two\n      # lines.\n    a-1\n    a-2\n';
        expect((await moved(text, { move: ['a-1'], to: { by: 'down' } })).text).toBe('course c\n  unit u\n    about: Two\n      # lines.\n    a-2\n    a-1\n');
    });
});

// Every other line is kept character for character, and the lessons stand as asked: against plain lists of names.
test('holds for any course', async () => {
    const comment = fc.constantFrom('# why', '#', '# ünïcode 🎒', '# two  spaces ');
    const unitOf = fc.record({ spaces: fc.constantFrom('    ', '   ', '      '), comments: fc.array(comment, { minLength: 5, maxLength: 5 }), count: fc.integer({ min: 0, max: 5 }), commented: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }), blank: fc.boolean(), about: fc.boolean() });
    const plan = fc.record({
        units: fc.array(unitOf, { minLength: 1, maxLength: 4 }), end: fc.constantFrom('\n', '\r\n'), endsOpen: fc.boolean(), more: fc.boolean(), tabs: fc.boolean(),
        picked: fc.array(fc.nat(30), { minLength: 1, maxLength: 4 }), to: fc.nat(30), kind: fc.constantFrom('up', 'down', 'lesson', 'unit')
    });
    await fc.assert(fc.asyncProperty(plan, async ({ units: plain, end, endsOpen, more, tabs, picked, to, kind }) => {
        const units = plain.map(({ spaces, ...unit }) => ({ ...unit, indent: tabs ? '\t\t' : spaces }));
        const written = units.flatMap(({ indent, comments, count, commented, blank, about }, unit) => [
            `${tabs ? '\t' : '  '}unit u${unit}`,
            ...(about ? [`${indent}about: Of unit ${unit}`] : []),
            ...Array.from({ length: count }, (_, at) => [...(commented[at] ? [indent + comments[at]!] : []), `${indent}l-${unit}-${at}`]).flat(),
            ...(blank ? [''] : [])
        ]);
        const lines = ['# A course.', 'course c', ...written, ...(more ? ['', 'class k', '  teaches c'] : [])];
        const text = lines.join(end) + (endsOpen ? '' : end);
        const before = await courseOf(text);
        const model = before.units.map(({ lessons }) => lessons.map(({ name }) => name));
        const names = model.flat();
        if (names.length === 0) return;
        const chosen = names.filter((_, at) => picked.some(one => one % names.length === at));
        const lineOf = (name: string): number => before.units.flatMap(({ lessons }) => lessons).find(lesson => lesson.name === name)!.at.start.line;
        const target = names[to % names.length]!;
        const unit = to % units.length;
        const destination: Destination = kind === 'lesson' ? { lesson: lineOf(target) } : kind === 'unit' ? { unit: before.units[unit]!.at.start.line } : { by: kind as 'up' };
        const result = moveLessons(text, before, chosen.map(name => ({ name, line: lineOf(name) })), destination)!;
        const after = applied(text, result);
        const now = (await courseOf(after)).units.map(({ lessons }) => lessons.map(({ name }) => name));
        expect(now).toEqual(asAsked(model, chosen, kind === 'lesson' ? { lesson: target } : kind === 'unit' ? { unit } : { by: kind as 'up' }));
        // The same lines, each with its own characters: but for the indentation of what has moved.
        const others = (lineTexts: string[]): string[] => lineTexts.filter(line => !chosen.some(name => line.trim() === name)).map(line => (line.trim().startsWith('#') ? line.trim() : line)).sort();
        const afterLines = after.split(end);
        expect(others(afterLines)).toEqual(others(text.split(end)));
        expect(afterLines.length).toBe(text.split(end).length);
        // What was moved stands together, the comment that belongs to it above it.
        for (const name of chosen) {
            const commentOf = (all: string[]): string | undefined => { const above = all[all.findIndex(line => line.trim() === name) - 1]!.trim(); return above.startsWith('#') ? above : undefined; };
            expect(commentOf(afterLines)).toBe(commentOf(text.split(end)));
        }
        if (result.edits.length > 0) expect(result.lines.map(line => afterLines[line]!.trim())).toEqual(chosen);
    }), { numRuns: 150 });
}, 60_000);

/** What moving means, said once more with lists alone. */
function asAsked(model: string[][], chosen: string[], to: { by: 'up' | 'down' } | { lesson: string } | { unit: number }): string[][] {
    const without = model.map(unit => unit.filter(name => !chosen.includes(name)));
    const put = (unit: number, at: number): string[][] => without.map((names, index) => (index === unit ? [...names.slice(0, at), ...chosen, ...names.slice(at)] : names));
    if ('unit' in to) return put(to.unit, without[to.unit]!.length);
    if ('lesson' in to) {
        if (chosen.includes(to.lesson)) return model;
        const unit = model.findIndex(names => names.includes(to.lesson));
        const first = model[unit]!.indexOf(chosen[0]!);
        const fromAbove = first >= 0 && first < model[unit]!.indexOf(to.lesson);
        return put(unit, without[unit]!.indexOf(to.lesson) + (fromAbove ? 1 : 0));
    }
    const edge = to.by === 'up' ? chosen[0]! : chosen[chosen.length - 1]!;
    const unit = model.findIndex(names => names.includes(edge));
    const neighbour = model[unit]![model[unit]!.indexOf(edge) + (to.by === 'up' ? -1 : 1)];
    if (neighbour !== undefined) return put(unit, without[unit]!.indexOf(neighbour) + (to.by === 'up' ? 0 : 1));
    const next = unit + (to.by === 'up' ? -1 : 1);
    if (next < 0 || next >= model.length) return model;
    return put(next, to.by === 'up' ? without[next]!.length : 0);
}
