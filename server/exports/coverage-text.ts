import { onOneLine } from '../markdown/one-line.js';
import type { CoverageFigures, CoverageLesson, CoverageObjective, Does, FrameworkFigures, FrameworkNode } from '../planning/coverage-figures.js';
import { byStrand, coverageTitle, frameworkRemarks, nodeLine } from './coverage-lines.js';
import { textTable } from './text-table.js';

/** Columns of the terminal that lines keep to. */
const width = 100;
const titleWidth = 38;
const letters: Record<Does, string> = { introduces: 'I', practises: 'P', checks: 'C' };

/** Coverage for a terminal: what is missing, each objective in words, the grid in pieces that fit, the frameworks. */
export function coverageText(coverage: CoverageFigures): string {
    const lines = [...wrapped(coverageTitle(coverage)), ''];
    const block = (heading: string, content: readonly string[], otherwise?: string): void => {
        if (content.length === 0 && otherwise === undefined) return;
        lines.push(heading, ...(content.length > 0 ? content : [`  ${otherwise ?? ''}`]), '');
    };
    block('Frameworks', coverage.frameworks.flatMap(f => wrapped(`${f.title}: ${f.text}`, '  ')));
    block('To look at', coverage.gaps.flatMap(g => wrapped(g.message, '  - ')), coverage.objectives.length === 0 ? undefined : 'Nothing: every objective is introduced, comes back and is checked.');
    for (const [strand, objectives] of byStrand(coverage.objectives)) {
        block(strand === '' ? 'Objectives' : `Objectives: ${onOneLine(strand)}`, objectives.flatMap(o => [...wrapped(o.title, '  '), ...wrapped(o.text, '    ')]));
    }
    const grid = gridLines(coverage);
    if (grid.length > 0) {
        block('Objectives by lesson', [...wrapped('I: introduced, P: practised, C: checked. Lessons carry numbers; their titles stand below.', '  '), '', ...grid]);
        block('Lessons', lessonLines(coverage.lessons));
    }
    for (const framework of coverage.frameworks) block(onOneLine(framework.document ?? framework.title), frameworkLines(framework));
    block('Taken for granted', coverage.assumptions.flatMap(a => wrapped(a, '  - ')));
    return `${lines.join('\n').trimEnd()}\n`;
}

function gridLines({ lessons, objectives }: CoverageFigures): string[] {
    const lines: string[] = [];
    // All three letters and a space, or the longest lesson number and one.
    const cell = Math.max(4, String(lessons.length).length + 1);
    const lessonsAbreast = Math.floor((width - titleWidth - 2) / cell);
    const gridLine = (title: string, cells: readonly string[]): string => `  ${cut(title, titleWidth)}${cells.map(c => c.padStart(cell)).join('')}`.trimEnd();
    for (let from = 0; from < lessons.length; from += lessonsAbreast) {
        const columns = lessons.slice(from, from + lessonsAbreast);
        const rows = objectives.map(o => ({ title: o.title, cells: cellsOf(o, columns) })).filter(row => row.cells.some(Boolean));
        if (rows.length === 0) continue;
        if (lines.length > 0) lines.push('');
        const weeks = columns.map((l, i) => (l.week !== undefined && (i === 0 || columns[i - 1]?.week !== l.week) ? String(l.week) : ''));
        lines.push(gridLine('week', weeks), gridLine('lesson', columns.map(l => String(l.index + 1))), ...rows.map(row => gridLine(row.title, row.cells.map(c => c || '.'))));
    }
    return lines;
}

function cellsOf(objective: CoverageObjective, columns: readonly CoverageLesson[]): string[] {
    return columns.map(({ index }) => objective.cells.find(c => c.lesson === index)?.does.map(does => letters[does]).join('') ?? '');
}

function lessonLines(lessons: readonly CoverageLesson[]): string[] {
    return textTable([{ title: 'no.', number: true }, { title: 'week', number: true }, { title: 'day' }, { title: 'lesson' }],
        lessons.map(l => [String(l.index + 1), l.week === undefined ? '' : String(l.week), l.label ?? '', `${l.title}${l.again ? `, taught again ${l.again.length === 1 ? 'once' : `${l.again.length} times`}` : ''}`]))
        .map(line => `  ${line}`);
}

function frameworkLines(framework: FrameworkFigures): string[] {
    if (framework.wrong !== undefined) return wrapped(framework.wrong, '  ');
    const lines: string[] = [];
    const show = (nodes: readonly FrameworkNode[], depth: number): void => {
        for (const node of nodes) {
            // Deeper levels than the line has room for stand under one another.
            lines.push(...wrapped(nodeLine(node), `${'  '.repeat(Math.min(depth, 12))}- `));
            show(node.children, depth + 1);
        }
    };
    show(framework.tree, 1);
    return [...lines, ...frameworkRemarks(framework).flatMap(r => wrapped(r, '  '))];
}

/** Exactly so wide; what is longer ends with an ellipsis. */
function cut(text: string, room: number): string {
    const characters = [...onOneLine(text)];
    return characters.length > room ? `${characters.slice(0, room - 1).join('').trimEnd()}…`.padEnd(room) : characters.join('').padEnd(room);
}

/** Words of a text in lines of at most the terminal's width, further lines under the first word; a longer word has a line of its own. */
function wrapped(text: string, lead = ''): string[] {
    const lines: string[] = [];
    let line = lead;
    let isEmpty = true;
    for (const word of onOneLine(text).split(/ +/)) {
        if (!isEmpty && [...line].length + 1 + [...word].length > width) {
            lines.push(line);
            line = ' '.repeat(lead.length);
            isEmpty = true;
        }
        line += isEmpty ? word : ` ${word}`;
        isEmpty = false;
    }
    lines.push(line);
    return lines;
}
