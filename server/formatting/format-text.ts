import type { GrammarAutomaton } from '@haversack/language/lexer/automaton';
import { blankLines } from './blank-lines.js';
import { columns, tablesIn } from './columns.js';
import { declarationsIn, frozenLines, type Chunk } from './declarations.js';
import { indentsIn, type Step } from './indents.js';
import { readLayout, saidBy, saysTheSame, type Layout, type LayoutLine } from './read-layout.js';
import { endOfWords, statementText } from './spacing.js';
import { blankEdits, joinedEdits, withEdits, type BlankEdit } from './blank-edits.js';

export interface FormatOptions extends Step {
    trimLineEnds: boolean;
    /** A last line that does not end gets an end. */
    endLastLine: boolean;
    /** Blank lines at the end of the file go. */
    trimFileEnd: boolean;
}

/** Lines from and to which something is asked, both included, from 0. */
export interface LineRange {
    from: number;
    to: number;
}

export const usualFormat: FormatOptions = { size: 2, tabs: false, trimLineEnds: true, endLastLine: true, trimFileEnd: true };

/**
 * What to change between the words of a file, so that it is laid out as usual: edits of blanks and line ends alone, in
 * order. With ranges, only those that lie in them. The text says the same afterwards, or there are none.
 */
export function formatEdits(text: string, automaton: GrammarAutomaton, options: FormatOptions, ranges?: readonly LineRange[], layout: Layout = readLayout(text, automaton)): BlankEdit[] {
    const { chunks, edits } = allEdits(text, layout, options);
    const asked = ranges === undefined ? edits : editsIn(edits, chunks, ranges);
    // Beside a line that stands where it should not, another step in the rest of the file can make it be read otherwise.
    const attempts = [asked, asked.filter(({ indents }) => !indents)];
    return joinedEdits(attempts.find(attempt => attempt.length === 0 || saysTheSame(layout, saidBy(withEdits(text, attempt), automaton))) ?? []);
}

/** The edits in some lines. Of a declaration that would be re-indented only in part, every line keeps its indentation. */
function editsIn(edits: readonly BlankEdit[], chunks: readonly Chunk[], ranges: readonly LineRange[]): BlankEdit[] {
    const whole = joined(ranges);
    const starts = whole.map(({ from }) => from);
    const inside = ({ firstLine, lastLine }: BlankEdit): boolean => firstLine >= (starts[0] ?? Infinity) && lastLine <= whole[lastAtMost(starts, firstLine)]!.to;
    const heads = chunks.map(({ head }) => head);
    const inPart = new Set(edits.filter(edit => edit.indents && !inside(edit)).map(({ firstLine }) => lastAtMost(heads, firstLine)));
    return edits.filter(edit => inside(edit) && !(edit.indents && inPart.has(lastAtMost(heads, edit.firstLine))));
}

/** Ranges in order, those that meet made one. */
function joined(ranges: readonly LineRange[]): LineRange[] {
    const whole: LineRange[] = [];
    for (const { from, to } of [...ranges].sort((a, b) => a.from - b.from)) {
        const last = whole[whole.length - 1];
        if (last && from <= last.to + 1) last.to = Math.max(last.to, to);
        else whole.push({ from, to });
    }
    return whole;
}

/** Index of the last of some rising numbers that is not above another; -1 where all are. */
function lastAtMost(numbers: readonly number[], most: number): number {
    let low = 0;
    for (let high = numbers.length; low < high;) {
        const middle = (low + high) >> 1;
        if (numbers[middle]! <= most) low = middle + 1;
        else high = middle;
    }
    return low - 1;
}

function allEdits(text: string, { lines }: Layout, options: FormatOptions): { chunks: Chunk[]; edits: BlankEdit[] } {
    const chunks = declarationsIn(lines);
    const frozen = frozenLines(lines, chunks);
    const indents = new Map<number, string>();
    for (let index = 0; index < (chunks[0]?.head ?? lines.length); index++) if (lines[index]!.kind === 'comment' && !frozen.has(index)) indents.set(index, '');
    for (const chunk of chunks.filter(({ broken }) => !broken)) for (const [index, indent] of indentsIn(text, lines, chunk, options)) indents.set(index, indent);
    const tabled = tableTexts(text, lines, frozen);
    const blanks = blankLines(lines, chunks, frozen);
    const lastSaid = lines.findLastIndex(({ kind }) => kind !== 'blank');
    const wanted = lines.map((line, index) => {
        const words = frozen.has(index) ? undefined : tabled.get(index) ?? wordsOf(text, line);
        const goes = index > lastSaid ? options.trimFileEnd : blanks.removed.has(index);
        return { line: line.line, indent: frozen.has(index) ? undefined : indents.get(index), words, trimmed: options.trimLineEnds && !frozen.has(index), goes, blankBefore: blanks.before.has(index) };
    });
    return { chunks, edits: lastSaid < 0 ? [] : blankEdits(text, wanted, lastSaid, options.endLastLine && !frozen.has(lastSaid)) };
}

function wordsOf(text: string, line: LayoutLine): string {
    const { content, end } = line.line;
    return line.kind === 'statement' ? statementText(text, line) : text.slice(content, endOfWords(text, content, end));
}

function tableTexts(text: string, lines: readonly LayoutLine[], frozen: ReadonlySet<number>): Map<number, string> {
    const texts = new Map<number, string>();
    for (const table of tablesIn(lines)) {
        if (table.rows.some(index => frozen.has(index))) continue;
        columns(text, lines, table)?.forEach((row, order) => texts.set(table.rows[order]!, row));
    }
    return texts;
}
