import { describe, expect, it } from 'vitest';
import type { CourseNode, LessonNode, ProgrammeNode, WeekAnswer } from '../../server/protocol/programme.js';
import { placeOf, rowsById, rowsOf, type ProgrammeRow } from '../../extension/trees/programme-nodes.js';
import { Ticks } from '../../extension/trees/ticks.js';
import { holdsLines } from '../../extension/trees/holds-lines.js';
import { gatheringWeek, tickedByWeek, updateRows, weekRows } from '../../extension/trees/week-rows.js';

const at = (line: number) => ({ uri: 'file:///a.course', line, character: 0 });
const none = { errors: 0, warnings: 0 };
const lesson = (name: string, line = 0): LessonNode => ({ name, title: name, at: at(line), line: at(line), draft: false, minutes: 10, problems: none, standing: 'taught', meetings: [], changes: [] });
const course = (...units: string[][]): CourseNode => ({
    name: 'c', title: 'C', at: at(0), problems: none, units: units.map((lessons, index) => ({ name: `u${index}`, title: `U${index}`, at: at(index), problems: none, lessons: lessons.map(name => lesson(name)) }))
});
const programme = (key: string, more: Partial<ProgrammeNode> = {}): ProgrammeNode => ({ key, title: key, courses: [], otherLessons: [], classes: [], adaptations: [], ...more });

const shape = ({ is, children }: ProgrammeRow): unknown => (children.length === 0 ? is.kind : [is.kind, children.map(shape)]);

describe('the rows of the programme', () => {
    it('stand one below another, without empty groups', () => {
        const group = { name: 'k', title: 'K', at: at(9), problems: none };
        expect(rowsOf([programme('p', { courses: [course(['a', 'b'])], classes: [group], adaptations: [{ ...group, changes: [{ says: 'x', at: at(1) }] }] })]).map(shape)).toEqual([
            ['course', [['unit', ['lesson', 'lesson']]]], ['classes', ['class']], ['adaptations', [['adaptation', ['change']]]]
        ]);
        expect(rowsOf([])).toEqual([]);
    });

    it('have a row above them for each programme where there are several', () => {
        const several = rowsOf([programme('p', { otherLessons: [lesson('a')] }), programme('q', { otherLessons: [lesson('a')] })]);
        expect(several.map(shape)).toEqual([['programme', [['other lessons', ['lesson']]]], ['programme', [['other lessons', ['lesson']]]]]);
        expect(rowsById(several).size).toBe(6);
    });

    it('keep their ids when a lesson comes to another unit', () => {
        const idOf = (rows: ProgrammeRow[], name: string): string => [...rowsById(rows).values()].find(({ is }) => is.kind === 'lesson' && is.lesson.name === name)!.id;
        const [before, after] = [rowsOf([programme('p', { courses: [course(['a', 'b'], ['c'])] })]), rowsOf([programme('p', { courses: [course(['b'], ['c', 'a'])] })])];
        for (const name of ['a', 'b', 'c']) expect(idOf(after, name)).toBe(idOf(before, name));
        expect(rowsById(after).get(idOf(after, 'a'))!.parent!.is).toMatchObject({ kind: 'unit', unit: { name: 'u1' } });
    });

    // The editor shows no tree at all in which two rows have one id.
    it('have ids of their own, whatever is written twice', () => {
        const twice = course(['a', 'a'], ['a']);
        twice.units[1]!.name = 'u0';
        const change = { says: 'x', at: at(1) };
        const rows = rowsOf([programme('p', { courses: [twice], otherLessons: [lesson('b')], adaptations: [{ name: 'k', title: 'K', at: at(2), problems: none, changes: [change, change] }] })]);
        const all = (found: readonly ProgrammeRow[]): ProgrammeRow[] => found.flatMap(row => [row, ...all(row.children)]);
        expect(all(rows).length).toBe(12);
        expect(new Set(all(rows).map(({ id }) => id)).size).toBe(12);
    });

    it('lead to where they stand; a lesson that no file has to its line in the course', () => {
        const [row] = rowsOf([programme('p', { otherLessons: [{ ...lesson('a', 7), at: undefined }] })]);
        expect([placeOf(row!), placeOf(row!.children[0]!)]).toEqual([undefined, at(7)]);
    });
});

describe('the rows of a week', () => {
    const thing = { title: 'T', at: at(0), days: [], lessons: [], optional: false, or: [] };
    const answer: WeekAnswer = {
        programme: 'p', class: { name: 'k', title: 'K' }, classes: [], course: 'C', week: 1, weeks: 2, from: '2026-09-14', minutes: 10,
        groups: [{ source: 'kit', title: 'From the kit', things: [{ ...thing, name: 'a', amount: '1' }, { ...thing, name: 'b', amount: '2' }] }],
        buy: ['1 pack', '2 packs'].map(what => ({ name: 'a', title: 'A', at: at(0), what, when: '', ahead: false }))
    };

    it('tell what was gathered, and have ids of their own though a thing is bought twice', async () => {
        let kept: unknown;
        const ticks = new Ticks({ get: () => kept, update: (_, value) => { kept = value; return Promise.resolve(); } });
        await ticks.set(gatheringWeek(answer), [{ name: 'b', amount: '2', gathered: true }], '2026-09-12');
        const [kit, buying, ...more] = weekRows(answer, ticks);
        expect(more).toEqual([]);
        expect(kit).toMatchObject({ kind: 'group', gathered: 1, children: [{ standing: { gathered: false } }, { standing: { gathered: true } }] });
        expect(buying!.kind === 'buying' && new Set(buying!.children.map(({ id }) => id)).size).toBe(2);
    });

    it('are ticked for the week that they stood in, whichever is shown by then', () => {
        const ticks = new Ticks({ get: () => undefined, update: () => Promise.resolve() });
        const [thisWeek, nextWeek] = [answer, { ...answer, week: 2, from: '2026-09-21' }].map(one => weekRows(one, ticks)[0]!);
        const things = [thisWeek!, nextWeek!].flatMap(row => ('children' in row ? row.children : []));
        const ticked = [...tickedByWeek([{ row: thisWeek!, gathered: true }, ...things.map((row, index) => ({ row, gathered: index !== 1 }))])];
        expect(ticked).toEqual([
            [{ programme: 'p', class: 'k', from: '2026-09-14', week: 1 }, [{ name: 'a', amount: '1', gathered: true }, { name: 'b', amount: '2', gathered: false }]],
            [{ programme: 'p', class: 'k', from: '2026-09-21', week: 2 }, [{ name: 'a', amount: '1', gathered: true }, { name: 'b', amount: '2', gathered: true }]]
        ]);
    });

    it('stay the same rows while they tell of the same week, and say which of them differ', async () => {
        let kept: unknown;
        const ticks = new Ticks({ get: () => kept, update: (_, value) => { kept = value; return Promise.resolve(); } });
        const rows = weekRows(answer, ticks);
        const [kit] = rows;
        const first = 'children' in kit! ? kit.children[0] : undefined;
        expect(updateRows(rows, weekRows(answer, ticks))).toEqual([]);
        await ticks.set(gatheringWeek(answer), [{ name: 'a', amount: '1', gathered: true }], '2026-09-12');
        const differing = updateRows(rows, weekRows(answer, ticks));
        expect([differing!.length, differing![0] === kit, differing![1] === first]).toEqual([2, true, true]);
        expect(rows).toEqual(weekRows(answer, ticks));
        for (const other of [{ ...answer, week: 2 }, { ...answer, buy: [] }]) expect(updateRows(rows, weekRows(other, ticks))).toBeUndefined();
        expect(rows).toEqual(weekRows(answer, ticks));
    });

    it('are none to buy where there is nothing to buy', () => {
        expect(weekRows({ ...answer, buy: [], groups: [] }, new Ticks({ get: () => undefined, update: () => Promise.resolve() }))).toEqual([]);
    });
});

describe('a text that is to be changed', () => {
    const text = (...lines: string[]) => ({ lineCount: lines.length, lineAt: (line: number) => ({ text: lines[line]! }) });

    it('has to hold the lines that the change is about, where they were', () => {
        const held = { from: 1, lines: ['  b', '  c'] };
        expect(holdsLines(text('a', '  b', '  c'), held)).toBe(true);
        expect(holdsLines(text('z', '  b', '  c', 'd'), held)).toBe(true);
        for (const other of [text('new', 'a', '  b', '  c'), text('a', '  b', 'new', '  c'), text('a', '  b'), text('')]) expect(holdsLines(other, held)).toBe(false);
        expect(holdsLines(text(''), { from: 0, lines: [] })).toBe(true);
    });
});
