/** Coverage of any programme against a count made line by line. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FrameworkItem } from '@haversack/language/attachments/attachment';
import { attachmentKey, gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { FileSheet } from '@haversack/language/sheets/sheet';
import { planCoverage } from '../../server/planning/coverage.js';
import type { FrameworkNode } from '../../server/planning/coverage-figures.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { aligned, framework, items, objective, scheduled, working, type Outline } from './coverage-sheets.js';
import { course, file, klass, meets, on } from './sheets.js';

const objectives = ['a', 'b', 'c', '__proto__', 'toString'];
const lessons = ['l1', 'l2', 'l3', 'l4', 'l5', 'l6'];
const outline = (depth: number): fc.Arbitrary<Outline> => {
    const code = fc.constantFrom('1', '2', '3', '4', '5', '6', '__proto__');
    return depth === 0 ? code : fc.oneof(code, fc.tuple(code, fc.array(outline(depth - 1), { maxLength: 3 })).map(([own, under]): Outline => [own, ...under]));
};
const names = fc.array(fc.tuple(fc.constantFrom('+', '~', '?'), fc.constantFrom(...objectives, 'undeclared')).map(([sign, name]) => sign + name), { maxLength: 6 }).map(words => words.join(' '));
const any = fc.record({
    does: fc.array(names, { minLength: lessons.length, maxLength: lessons.length }),
    order: fc.uniqueArray(fc.constantFrom(...lessons, 'gone'), { maxLength: 7 }),
    codes: fc.array(fc.array(fc.constantFrom('1', '2', '3', '4', 'x'), { maxLength: 3 }), { minLength: objectives.length, maxLength: objectives.length }),
    tree: fc.array(outline(3), { maxLength: 4 })
});

/** One declaration to a file, so that the order of files can change. */
function filesOf({ does, order, codes }: { does: string[]; order: string[]; codes: string[][] }): FileSheet[] {
    const declared = [
        ...lessons.map((name, i) => ({ uri: `file:///p/${name}.lesson`, sheet: file(working(name, does[i])) })),
        { uri: 'file:///p/c.course', sheet: file(course('c', order), klass('k', 'c', 4, { starts: on('2026-09-07'), meets: meets('mon', 'wed') })) },
        { uri: 'file:///p/objectives.course', sheet: { ...file(), objectives: objectives.map((name, i) => objective(name, aligned('f', ...codes[i] ?? []))), frameworks: [framework('f')] } }
    ];
    return declared.map(({ uri, sheet }) => ({ ...sheet, uri }));
}

function programmeOf(files: FileSheet[], tree: FrameworkItem[]): Programme {
    const at = files.flatMap(f => f.frameworks).map(f => attachmentKey(f.uri, f.from?.path ?? ''))[0] ?? '';
    return gatherProgramme(files, new Map([[at, { state: 'framework', framework: { title: 'F', items: tree, remarks: [] } }]]));
}

test('every line of a taught lesson that names a declared objective is in exactly one cell, and no cell is without a line', () => {
    fc.assert(fc.property(any, all => {
        const programme = programmeOf(filesOf(all), items(...all.tree));
        const figures = planCoverage(programme);
        const lines = new Set(all.order.filter(name => name !== 'gone').flatMap(name => all.does[lessons.indexOf(name)]!.split(' ').filter(word => word && word.slice(1) !== 'undeclared').map(word => `${name} ${word}`)));
        const signs = { introduces: '+', practises: '~', checks: '?' };
        const cells = figures.objectives.flatMap(o => o.cells.flatMap(c => c.does.map(does => `${figures.lessons[c.lesson]!.name} ${signs[does]}${o.name}`)));
        expect(cells.sort()).toEqual([...lines].sort());
        expect(figures.lessons.map(l => l.name)).toEqual(planSchedule(programme).weeks.flatMap(w => w.meetings.flatMap(m => m.lessons)));
        for (const { cells: own, spacing } of figures.objectives) {
            // Each lesson has a meeting of its own here.
            const meetings = own.map(c => figures.lessons[c.lesson]!.meeting!);
            expect(spacing.reduce((sum, gap) => sum + gap, 0)).toBe(Math.max(0, ...meetings) - Math.min(...meetings, Math.max(0, ...meetings)));
            expect(spacing.every(gap => gap > 0)).toBe(true);
        }
    }), { numRuns: 300 });
});

test('shares lie between 0 and 1 and are what a count by hand gives', () => {
    fc.assert(fc.property(any, all => {
        const tree = items(...all.tree);
        const [share] = planCoverage(programmeOf(filesOf(all), tree)).frameworks;
        const worked = new Set(all.order.flatMap(name => (all.does[lessons.indexOf(name)] ?? '').split(' ').map(word => word.slice(1))));
        const at = new Set<string>(all.codes.flatMap((codes, i) => (worked.has(objectives[i]!) ? codes : [])));
        // A leaf counts when its own code or one above it is worked on.
        const leaves = (nodes: FrameworkItem[], above: boolean): boolean[] => nodes.flatMap(n => {
            const met = above || at.has(n.code!);
            return n.children.length === 0 ? [met] : leaves(n.children, met);
        });
        const counted = leaves(tree, false);
        expect([share!.items, share!.met]).toEqual([counted.length, counted.filter(Boolean).length]);
        expect(share!.metAbove).toBeLessThanOrEqual(share!.met);
        const check = (nodes: FrameworkNode[]): void => nodes.forEach(n => {
            expect(n.leavesMet).toBeGreaterThanOrEqual(0);
            expect(n.leavesMet).toBeLessThanOrEqual(n.leaves);
            expect(n.leaves).toBe(n.children.length === 0 ? 1 : n.children.reduce((sum, c) => sum + c.leaves, 0));
            expect(n.met).toBe(n.leavesMet === n.leaves);
            check(n.children);
        });
        check(share!.tree);
        const codesThere = (nodes: FrameworkItem[]): string[] => nodes.flatMap(n => [n.code!, ...codesThere(n.children)]);
        const there = new Set(codesThere(tree));
        expect(share!.unknownCodes.map(u => u.code).sort()).toEqual(all.codes.flat().filter(code => !there.has(code)).sort());
    }), { numRuns: 300 });
});

test('the order of the files does not matter, and figures are plain data', () => {
    fc.assert(fc.property(any, fc.infiniteStream(fc.nat()), (all, numbers) => {
        const files = filesOf(all);
        const tree = items(...all.tree);
        const figures = planCoverage(programmeOf(files, tree));
        const shuffled = files.map(f => ({ f, n: numbers.next().value as number })).sort((x, y) => x.n - y.n).map(({ f }) => f);
        expect(planCoverage(programmeOf(shuffled, tree))).toEqual(figures);
        expect(JSON.parse(JSON.stringify(figures))).toEqual(figures);
        expect(figures.gaps).toEqual(figures.objectives.flatMap(o => o.gaps));
    }), { numRuns: 100 });
});

test('any order of meetings, with pieces, repeats and free days, is answered, and more visits never make a gap longer', () => {
    const meeting = fc.array(fc.constantFrom(...lessons, 'l1/1', 'l1/2', 'l2!', 'gone'), { maxLength: 3 }).map(words => words.join(' '));
    fc.assert(fc.property(any, fc.array(meeting, { maxLength: 30 }), fc.integer({ min: 1, max: 6 }), (all, meetings, within) => {
        const programme = programmeOf(filesOf(all), []);
        const at = (days: string[]) => planCoverage(programme, {}, { schedule: scheduled('c', ...days), revisitWithin: within });
        const figures = at(meetings);
        for (const o of figures.objectives) {
            for (const gap of o.gaps.filter(g => g.kind === 'not-revisited')) expect(Number(/for (\d+) meeting/.exec(gap.message)?.[1])).toBeGreaterThan(within);
            expect(o.trail.length).toBeGreaterThanOrEqual(o.cells.length);
        }
        // Every lesson that is taught, taught again at every meeting: nothing waits any more.
        const everywhere = figures.lessons.map(l => `${l.name}!`).join(' ');
        expect(at(meetings.map(day => `${day} ${everywhere}`)).gaps.filter(g => g.kind === 'not-revisited')).toEqual([]);
    }), { numRuns: 300 });
});
