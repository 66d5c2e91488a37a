import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { CoverageFigures, CoverageLesson, Does, FrameworkFigures, FrameworkNode } from '../planning/coverage-figures.js';
import { byStrand, coverageTitle, frameworkRemarks, nodeLine } from './coverage-lines.js';

/** Coverage as CommonMark: what is missing, each objective in words, each lesson with its objectives, the frameworks as lists. */
export function coverageMarkdown(coverage: CoverageFigures): string {
    const out = new Outline();
    out.heading(1, plainText(coverageTitle(coverage)));
    list(out, 'To look at', coverage.gaps.map(g => g.message));
    for (const [strand, objectives] of byStrand(coverage.objectives)) {
        list(out, strand === '' ? 'Objectives' : `Objectives: ${strand}`, objectives.map(o => `${o.title}: ${o.text}`));
    }
    const worked = objectivesByLesson(coverage);
    list(out, 'Lessons', coverage.lessons.map(l => `${when(l)}: ${l.title}${worked[l.index] ? ` (${worked[l.index]!})` : ''}`));
    for (const framework of coverage.frameworks) frameworkList(out, framework);
    list(out, 'Taken for granted', coverage.assumptions);
    return out.toString();
}

function list(out: Outline, heading: string, items: readonly string[]): void {
    if (items.length === 0) return;
    out.heading(2, plainText(heading));
    for (const item of items) out.item(0, plainText(item));
}

function when({ week, label }: CoverageLesson): string {
    return [week === undefined ? undefined : `Week ${week}`, label].filter(Boolean).join(', ');
}

/** "introduces A and B; checks C" for each lesson, by its index. */
function objectivesByLesson({ lessons, objectives }: CoverageFigures): string[] {
    const worked = lessons.map(() => new Map<Does, string[]>());
    for (const { title, cells } of objectives) {
        for (const cell of cells) {
            for (const does of cell.does) worked[cell.lesson]?.set(does, [...worked[cell.lesson]?.get(does) ?? [], title]);
        }
    }
    return worked.map(does => (['introduces', 'practises', 'checks'] as const).flatMap(what => (does.has(what) ? [`${what} ${does.get(what)!.map(t => `“${t}”`).join(', ')}`] : [])).join('; '));
}

function frameworkList(out: Outline, framework: FrameworkFigures): void {
    out.heading(2, plainText(framework.document ?? framework.title));
    if (framework.wrong !== undefined) {
        out.paragraph(plainText(framework.wrong));
        return;
    }
    out.paragraph(plainText(`${framework.text}.`));
    const show = (nodes: readonly FrameworkNode[], depth: number): void => {
        for (const node of nodes) {
            out.item(depth, plainText(nodeLine(node)));
            show(node.children, depth + 1);
        }
    };
    show(framework.tree, 0);
    for (const remark of frameworkRemarks(framework)) out.paragraph(plainText(remark));
}
