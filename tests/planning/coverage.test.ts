import { describe, expect, test } from 'vitest';
import type { CalendarFile } from '@haversack/language/attachments/attachment';
import { planCoverage } from '../../server/planning/coverage.js';
import type { CoverageFigures, CoverageObjective } from '../../server/planning/coverage-figures.js';
import { aligned, covered, framework, frameworkFile, objective, scheduled, working } from './coverage-sheets.js';
import { course, klass, meets, on, programme } from './sheets.js';

/** Lessons in the order of their names unless a schedule says otherwise; one objective "a" and what else is named. */
function plan(lessons: Record<string, string>, meetings = Object.keys(lessons), revisitWithin?: number): CoverageFigures {
    const sheets = Object.entries(lessons).map(([name, does]) => working(name, does));
    const names = new Set(['a', ...Object.values(lessons).flatMap(does => does.split(' ').map(word => word.slice(1)).filter(Boolean))]);
    return planCoverage(covered([...sheets, ...[...names].map(name => objective(name)), course('c', Object.keys(lessons))]), {}, { schedule: scheduled('c', ...meetings), revisitWithin });
}

const row = (figures: CoverageFigures, name = 'a'): CoverageObjective => {
    const found = figures.objectives.find(o => o.name === name);
    if (!found) throw new Error(`no row ${name}`);
    return found;
};
const kinds = (figures: CoverageFigures, name = 'a') => row(figures, name).gaps.map(g => [g.kind, g.lesson]);
const taught = (count: number, at: Record<number, string>) => Array.from({ length: count }, (_, i) => at[i + 1] ?? '');

describe('the grid', () => {
    const figures = plan({ l1: '+a', l2: '~a +b', l3: '?a ~a +a', l4: '' });
    test('lessons in teaching order, each line in one cell, with its place', () => {
        expect(figures.lessons.map(l => [l.name, l.index, l.meeting, l.week, l.label])).toEqual([['l1', 0, 1, 1, 'Day 1'], ['l2', 1, 2, 1, 'Day 2'], ['l3', 2, 3, 1, 'Day 3'], ['l4', 3, 4, 1, 'Day 4']]);
        expect(row(figures).cells.map(c => [c.lesson, c.does])).toEqual([[0, ['introduces']], [1, ['practises']], [2, ['introduces', 'practises', 'checks']]]);
        expect(row(figures, 'b').cells.map(c => [c.lesson, c.does])).toEqual([[1, ['introduces']]]);
        const [l2, a, b] = [working('l2', '~a +b'), objective('a'), objective('b')];
        const own = planCoverage(covered([l2, a, b, course('c', ['l2'])]), {}, { schedule: scheduled('c', 'l2') });
        expect(row(own).cells[0]?.place).toEqual({ uri: l2.uri, range: l2.practises[0]?.at });
        expect(row(own, 'b').place).toEqual({ uri: b.uri, range: b.at });
        expect(row(own, 'b').trail).toEqual([{ words: '“L2” introduces it (week 1, Day 1)', place: { uri: l2.uri, range: l2.introduces[0]?.at } }]);
    });
    test('the order of the schedule, not of the course; only what it teaches', () => {
        const moved = plan({ l1: '~a', l2: '+a', l3: '?a' }, ['l2', '', 'l1']);
        expect(moved.lessons.map(l => [l.name, l.meeting])).toEqual([['l2', 1], ['l1', 3]]);
        expect(row(moved).cells.map(c => [c.lesson, c.does])).toEqual([[0, ['introduces']], [1, ['practises']]]);
        expect(moved.assumptions).toEqual(['One lesson has no room in the term and is not counted: “L3”.']);
    });
    test('of many lessons without room three are named and the others counted', () => {
        const names = (count: number) => Object.fromEntries(Array.from({ length: count }, (_, i) => [`l${i + 1}`, '']));
        expect(plan(names(4), ['l1']).assumptions).toEqual(['3 lessons have no room in the term and are not counted: “L2”, “L3” and “L4”.']);
        expect(plan(names(6), ['l1']).assumptions).toEqual(['5 lessons have no room in the term and are not counted: “L2”, “L3”, “L4” and 2 more.']);
    });
    test('the trail tells all that a lesson does, and what falls on one meeting', () => {
        const figures2 = plan({ l1: '+a ~a', l2: '~a', l3: '~a ?a' }, ['l1 l2', 'l3']);
        expect(row(figures2).trail.map(t => t.words)).toEqual([
            '“L1” introduces and practises it (week 1, Day 1)', 'at the same meeting: “L2” practises it (week 1, Day 1)', '1 meeting later: “L3” practises and checks it (week 1, Day 2)'
        ]);
    });
    test('a split lesson is one column, at its first meeting; a repeat is a further visit', () => {
        const figures2 = plan({ l1: '+a', l2: '?a' }, ['l1/1', 'l1/2', 'l1!', 'l2', 'l2!']);
        expect(figures2.lessons.map(l => [l.name, l.meeting, l.again])).toEqual([['l1', 1, [3]], ['l2', 4, [5]]]);
        expect(row(figures2).spacing).toEqual([2, 1, 1]);
        expect(row(figures2).text).toBe('introduced in week 1, taught again twice in weeks 1 and 2, checked in week 1; visited at gaps of 2, 1 and 1 meetings');
        expect(row(figures2).trail.map(t => t.words)).toEqual([
            '“L1” introduces it (week 1, Day 1)', '2 meetings later: “L1” is taught again (week 1, Day 3)', '1 meeting later: “L2” checks it (week 1, Day 4)', '1 meeting later: “L2” is taught again (week 2, Day 5)'
        ]);
    });
    test('again at the same meeting is the same visit', () => {
        expect(plan({ l1: '+a', l2: '?a' }, ['l1 l1!', 'l2']).lessons[0]?.again).toBeUndefined();
        expect(plan({ l1: '+a', l2: '?a' }, ['l1', 'l2 l1!', 'l1!']).lessons[0]?.again).toEqual([2, 3]);
    });
    test('a plan without pieces is read from the names of its meetings', () => {
        const sheets = covered([working('l1', '+a'), working('l2', '?a'), objective('a'), course('c', ['l1', 'l2']), klass('k', 'c', 3, { starts: on('2026-09-07'), meets: meets('mon') })]);
        const figures3 = planCoverage(sheets);
        expect(figures3).toMatchObject({ course: 'c', class: 'k', lessons: [{ name: 'l1', date: '2026-09-07', meeting: 1, week: 1 }, { name: 'l2', date: '2026-09-14', meeting: 2, week: 2 }] });
        expect(row(figures3).text).toBe('introduced in week 1, checked in week 2; visited again after 1 meeting');
    });
});

describe('spacing', () => {
    test('meetings from one visit to the next, free days counted, lessons of one meeting as one visit', () => {
        const figures = plan({ l1: '+a', l2: '~a', l3: '~a', l4: '', l5: '?a' }, ['l1 l2', '', 'l3', 'l4', '', '', 'l5']);
        expect(row(figures)).toMatchObject({ spacing: [2, 4], widening: true, gaps: [] });
        expect(row(figures).text).toBe('introduced in week 1, practised twice in week 1, checked in week 2; visited at widening gaps of 2 and 4 meetings');
    });
    test.each([
        [[1, 2, 4], true], [[2, 2, 3], true], [[2, 2, 2], false], [[4, 2, 5], false], [[1, 3, 2], false], [[3], undefined], [[], undefined]
    ])('gaps %j widen: %s', (spacing, widening) => {
        const at = spacing.reduce<number[]>((days, gap) => [...days, days.at(-1)! + gap], [1]);
        const lessons = Object.fromEntries(at.map((_, i) => [`l${i}`, i === 0 ? '+a' : '~a']));
        expect(row(plan(lessons, taught(20, Object.fromEntries(at.map((day, i) => [day, `l${i}`]))))).widening).toBe(widening);
    });
    test('in words', () => {
        const lessons = Object.fromEntries(Array.from({ length: 9 }, (_, i) => [`l${i}`, i === 0 ? '+a' : '~a']));
        expect(row(plan(lessons, taught(17, Object.fromEntries(Object.keys(lessons).map((name, i) => [i * 2 + 1, name]))))).text)
            .toBe('introduced in week 1, practised 8 times in weeks 1 to 5, never checked; visited at gaps of 2 meetings');
        expect(row(plan({ l1: '' })).text).toBe('in no lesson of this plan');
        expect(row(plan({ l1: '?a' })).text).toBe('never introduced, checked in week 1');
    });
});

describe('gaps', () => {
    test.each<[string, Record<string, string>, [string, string | undefined][]]>([
        ['nothing is missing', { l1: '+a', l2: '~a', l3: '?a' }, []],
        ['all in one lesson', { l1: '+a ~a ?a' }, []],
        ['no lesson', { l1: '' }, [['never-used', undefined]]],
        ['never introduced: said once', { l1: '~a', l2: '~a', l3: '?a' }, [['never-introduced', 'l1']]],
        ['practised too early', { l1: '~a', l2: '~a', l3: '+a', l4: '?a' }, [['practised-before-introduced', 'l1'], ['practised-before-introduced', 'l2']]],
        ['checked too early, and again in time', { l1: '?a', l2: '+a', l3: '?a' }, [['checked-before-introduced', 'l1']]],
        ['checked too early and never after', { l1: '?a', l2: '+a ~a' }, [['checked-before-introduced', 'l1'], ['never-checked', 'l2']]],
        ['never checked: mended where it was last', { l1: '+a', l2: '~a', l3: '' }, [['never-checked', 'l2']]]
    ])('%s', (_, lessons, expected) => {
        expect(kinds(plan(lessons))).toEqual(expected);
    });
    test('not revisited: more than so many meetings, until it is checked or the course ends', () => {
        const late = (last: number) => plan({ l1: '+a', l2: '?a' }, taught(last, { 1: 'l1', [last]: 'l2' }));
        expect(late(16).revisitWithin).toBe(15);
        expect(kinds(late(16))).toEqual([]);
        expect(kinds(late(17))).toEqual([['not-revisited', 'l1']]);
        expect(row(late(17)).gaps[0]?.message).toBe('After “L1” (week 1), “A” is not met again for 16 meetings, until “L2” (week 5), and it has not been checked yet. Let a lesson in between practise it: `practices a`.');
        expect(row(late(17)).trail.at(-1)?.words).toContain('more than 15 meetings');
        const unchecked = (end: number) => plan({ l1: '+a', l2: '~a', l3: '' }, taught(end, { 1: 'l1', 3: 'l2', [end]: 'l3' }));
        expect(kinds(unchecked(18))).toEqual([['never-checked', 'l2']]);
        expect(kinds(unchecked(19))).toEqual([['not-revisited', 'l2'], ['never-checked', 'l2']]);
        expect(row(unchecked(19)).gaps[0]?.message).toContain('16 meetings, to the end of the course');
        // Free days after the last lesson are not the course; what comes after a check may wait.
        expect(kinds(plan({ l1: '+a' }, taught(30, { 1: 'l1' })))).toEqual([['never-checked', 'l1']]);
        expect(kinds(plan({ l1: '+a', l2: '?a', l3: '~a' }, taught(40, { 1: 'l1', 2: 'l2', 40: 'l3' })))).toEqual([]);
    });
    test('a repeat counts as a visit, but not as the check', () => {
        expect(kinds(plan({ l1: '+a', l2: '?a' }, taught(30, { 1: 'l1', 12: 'l1!', 26: 'l2' })))).toEqual([]);
        expect(kinds(plan({ l0: '?a', l1: '+a', l2: '' }, taught(40, { 1: 'l0', 2: 'l1', 3: 'l0!', 40: 'l2' })))).toEqual([['checked-before-introduced', 'l0'], ['not-revisited', 'l0'], ['never-checked', 'l1']]);
    });
    test.each([[4, [['not-revisited', 'l1']]], [5, []], [0, []], [Number.NaN, []], [-3, []], [2.5, []]])('within %d', (within, expected) => {
        expect(kinds(plan({ l1: '+a', l2: '?a' }, taught(6, { 1: 'l1', 6: 'l2' }), within))).toEqual(expected);
    });
    test('why no lesson works on it: none, no room, outside the course, another course', () => {
        const sheets = covered([
            working('l1'), working('l2', '+a'), working('l3', '+b'), working('l4', '+d'), working('l5', '+a ?a'), working('l6', '+g'), working('l7', '+g'), ...['a', 'b', 'd', 'e', 'g'].map(name => objective(name)), course('c', ['l1', 'l2', 'l5', 'l6']), course('other', ['l4', 'l7'])
        ]);
        const figures = planCoverage(sheets, {}, { schedule: scheduled('c', 'l1') });
        expect(figures.gaps.map(g => [g.objective, g.kind, g.message])).toEqual([
            ['a', 'never-used', expect.stringContaining('“L2” and “L5” would, but there is no room')], ['b', 'never-used', expect.stringContaining('only “L3” does, outside the course')],
            ['e', 'never-used', 'No lesson works on “E”. Write `introduces e` under the objectives of a lesson.'], ['g', 'never-used', expect.stringContaining('“L6” would, but there is no room')]
        ]);
        expect(figures.objectives.map(o => o.name)).toEqual(['a', 'b', 'e', 'g']);
        const noCheck = planCoverage(sheets, {}, { schedule: scheduled('c', 'l1', 'l2') });
        expect(noCheck.gaps[0]).toMatchObject({ kind: 'never-checked', message: expect.stringContaining('“L5” would, but the term has no room for it.') as string });
    });
});

describe('frameworks', () => {
    const f = frameworkFile(['N', 'N.1', 'N.2', ['N.3', 'N.3.a', 'N.3.b']], ['M', 'M.1']);
    const share = (attach: Record<string, string[]>, file = f) => {
        const sheets = covered([framework('f'), working('l1', '+a'), working('l2', '~a ?b'), ...['a', 'b', 'untaught'].map(name => objective(name, aligned('f', ...attach[name] ?? []))), course('c', ['l1', 'l2'])], { 'f.json': file });
        const [figures] = planCoverage(sheets).frameworks;
        if (!figures) throw new Error('no framework');
        return figures;
    };
    test('leaves count; which lessons meet them', () => {
        const figures = share({ a: ['N.1'], b: ['M.1'], untaught: ['N.2'] });
        expect(figures).toMatchObject({ name: 'f', document: 'The document', items: 5, met: 2, metAbove: 0, text: '2 of 5 items are met (40 %)', unknownCodes: [] });
        expect(figures.wrong).toBeUndefined();
        expect(figures.tree.map(n => [n.code, n.leavesMet, n.leaves, n.met])).toEqual([['N', 1, 4, false], ['M', 1, 1, true]]);
        const [first, second] = figures.tree[0]!.children;
        expect(first).toMatchObject({ met: true, objectives: [{ name: 'a' }], lessons: [{ name: 'l1' }, { name: 'l2' }] });
        expect(second).toMatchObject({ met: false, objectives: [{ name: 'untaught' }], lessons: [] });
    });
    test('lessons stand in teaching order, each once', () => {
        expect(share({ b: ['N.1'], a: ['N.1'] }).tree[0]!.children[0]!.lessons.map(l => l.name)).toEqual(['l1', 'l2']);
        const late = covered([framework('f'), working('l1', '+a'), working('l2', '+b'), objective('b', aligned('f', 'N.1')), objective('a', aligned('f', 'N.1'))], { 'f.json': f });
        expect(planCoverage(late).frameworks[0]!.tree[0]!.children[0]!.lessons.map(l => l.name)).toEqual(['l1', 'l2']);
    });
    test('an alignment to an item above meets what is under it, said; one that is not taught meets nothing', () => {
        const figures = share({ a: ['N'], b: ['N.1'] });
        expect(figures).toMatchObject({ met: 4, metAbove: 3, text: '4 of 5 items are met (80 %), 3 of them only through an item above' });
        expect(figures.tree[0]?.children.map(n => [n.met, n.through])).toEqual([[true, undefined], [true, 'above'], [true, 'above']]);
        expect(share({ a: ['N.3'] }).text).toBe('2 of 5 items are met (40 %), only through an item above');
        expect(share({ untaught: ['N'] }).text).toBe('0 of 5 items are met (0 %)');
    });
    test('an item without an alignment of its own is met when all under it are', () => {
        expect(share({ a: ['N.3.a'] }).tree[0]?.children[2]?.met).toBe(false);
        const all = share({ a: ['N.3.a', 'N.1', 'M.1'], b: ['N.3.b', 'N.2', 'N.2'] });
        expect([all.tree[0]?.met, all.tree[0]?.children[2]?.met, all.text]).toEqual([true, true, '5 of 5 items are met (100 %)']);
        expect(all.tree[0]?.children[1]?.objectives).toHaveLength(1);
    });
    test('codes: as written, by identifier, in other letters and spacing; unknown ones with their line; the same code twice', () => {
        const figures = share({ a: ['id-N.1', 'n.2', 'X.9'], b: ['M.1'] });
        expect([figures.met, figures.unknownCodes]).toEqual([3, [{ code: 'X.9', objective: 'a', place: expect.anything() as unknown }]]);
        expect(share({ a: ['A 1'] }, frameworkFile('a1', 'b'))).toMatchObject({ met: 1 });
        expect(share({ a: ['A1'] }, frameworkFile('a1', 'a 1')).unknownCodes).toHaveLength(1);
        expect(share({ a: ['X'] }, frameworkFile('X', 'X', 'Y')).text).toBe('2 of 3 items are met (67 %)');
    });
    test('of two frameworks each counts its own alignments, and has its own unknown codes and remarks', () => {
        const own = { ...objective('a'), alignsTo: [...aligned('f', 'N.1', 'gone').alignsTo, ...aligned('g', 'M.1').alignsTo] };
        const g = frameworkFile('M.1', 'M.2');
        if (g.state !== 'framework') throw new Error();
        g.framework.remarks = ['One item stands twice.'];
        const figures = planCoverage(covered([framework('f'), framework('g'), working('l1', '+a'), own, course('c', ['l1'])], { 'f.json': f, 'g.json': g })).frameworks;
        expect(figures.map(one => [one.name, one.met, one.items, one.remarks, one.unknownCodes])).toEqual([
            ['f', 1, 5, [], [{ code: 'gone', objective: 'a', place: { uri: own.uri, range: own.alignsTo[1]!.at } }]], ['g', 1, 2, ['One item stands twice.'], []]
        ]);
    });
    test('one short of all is not 100 per cent, one of many not 0', () => {
        const codes = Array.from({ length: 300 }, (_, i) => `c${i}`);
        expect(share({ a: codes.slice(1) }, frameworkFile(...codes)).text).toBe('299 of 300 items are met (99 %)');
        expect(share({ a: codes.slice(0, 1) }, frameworkFile(...codes)).text).toBe('1 of 300 items are met (1 %)');
    });
    test('files that cannot be used are said, and the rest stands', () => {
        const wrongs = (path: string, attachments: Parameters<typeof covered>[1]) => planCoverage(covered([framework('f', path), working('l1', '+a'), objective('a', aligned('f', 'N'))], attachments)).frameworks[0];
        expect(wrongs('f.json', { 'f.json': { state: 'wrong', message: 'It breaks off.' } })).toMatchObject({ wrong: 'It breaks off.', items: 0, met: 0, tree: [], unknownCodes: [], text: '“F” cannot be compared with the plan: its file is not readable' });
        expect(wrongs('f.json', {})).toMatchObject({ wrong: 'The file “f.json” has not been read.' });
        expect(wrongs('', {})?.wrong).toContain('No file is named for “F”');
        expect(wrongs('f.json', { 'f.json': { state: 'calendar', calendar: { events: [], remarks: [] } as unknown as CalendarFile } })?.wrong).toContain('is a calendar');
    });
    test('items 10,000 deep', () => {
        const deep = frameworkFile('leaf');
        if (deep.state !== 'framework') throw new Error();
        for (let i = 0; i < 10_000; i++) deep.framework.items = [{ identifier: `d${i}`, statement: 'x', children: deep.framework.items }];
        expect(share({ a: ['leaf'] }, deep).text).toBe('1 of 1 item is met (100 %)');
    });
});

test('programmes without objectives, lessons, course or class', () => {
    expect(planCoverage(programme())).toMatchObject({ course: undefined, lessons: [], objectives: [], gaps: [], frameworks: [] });
    expect(kinds(planCoverage(covered([objective('a')])))).toEqual([['never-used', undefined]]);
    expect(kinds(planCoverage(covered([objective('a'), working('l', '+a')])))).toEqual([['never-checked', 'l']]);
    const unknown = planCoverage(covered([working('l1', '+x ~y'), course('c', ['l1', 'gone'])]), { class: 'nobody' });
    expect(unknown.objectives).toEqual([]);
    expect(unknown.assumptions).toContain('Lessons name objectives that no file declares; they are left out: “x” and “y”.');
});
