import type { DraftToken } from '@haversack/language/lexer/fit-line';
import { endOfWords, spaced } from './spacing.js';
import { headOf, type LayoutLine } from './read-layout.js';

/** Blocks whose lines are a table: the thing, how much and for whom, the flags, a remark. */

/** True: always in columns. False: in columns where the writer has begun so, as between `on hand` and its like both are usual. */
const tables: Readonly<Record<string, boolean>> = { materials: true, holds: true, 'on hand': false, 'on order': false, objectives: false };

const gap = 2;

/** The lines of a table, by their index in the file, and the words of the language above it. */
export interface Table {
    head: string;
    rows: number[];
}

export function tablesIn(lines: readonly LayoutLine[]): Table[] {
    const found: Table[] = [];
    const open: { depth: number; rows: number[] }[] = [];
    for (const [index, line] of lines.entries()) {
        if (line.kind !== 'statement') continue;
        while (open.length > 0 && open[open.length - 1]!.depth >= line.depth) open.pop();
        const top = open[open.length - 1];
        if (top && line.depth === top.depth + 1) top.rows.push(index);
        else if (Object.hasOwn(tables, headOf(line))) {
            const table: Table = { head: headOf(line), rows: [] };
            found.push(table);
            open.push({ depth: line.depth, rows: table.rows });
        }
    }
    return found.filter(({ rows }) => rows.length > 0);
}

/** The text of each line of a table, without its indentation; none where the writer lists rather than tabulates. */
export function columns(text: string, lines: readonly LayoutLine[], { head, rows: indexes }: Table): string[] | undefined {
    const rows = indexes.map(index => lines[index]!);
    const parted = rows.map(row => cells(text, row));
    if (tables[head] !== true && !rows.some((row, index) => isApart(text, row, parted[index]!))) return undefined;
    const widths = [0, 1, 2].map(column => widest(parted.map(({ words }) => words[column]!)));
    const bodies = parted.map(({ words }) => words.map((cell, column) => (words.slice(column + 1).some(Boolean) && widths[column]! > 0 ? padded(cell, widths[column]!) : cell)).join(''));
    const commented = widest(bodies.filter((_, index) => parted[index]!.comment));
    return bodies.map((body, index) => (parted[index]!.comment ? padded(body, commented) + parted[index]!.comment : body));
}

function widest(texts: readonly string[]): number {
    return texts.reduce((most, text) => Math.max(most, widthOf(text)), 0);
}

function padded(text: string, width: number): string {
    return text + ' '.repeat(width - widthOf(text) + gap);
}

interface Cells {
    words: string[];
    /** Offset where the second cell begins. */
    second?: number;
    comment: string;
}

function cells(text: string, row: LayoutLine): Cells {
    const { tokens, line, commentAt } = row;
    const comment = commentAt === undefined ? '' : text.slice(commentAt, endOfWords(text, commentAt, line.end));
    const parts: DraftToken[][] = [[], [], []];
    let column = 0;
    let inBrackets = false;
    for (const [index, token] of tokens.entries()) {
        if (token.symbol === '(') inBrackets = true;
        if (token.symbol === ')') inBrackets = false;
        if (!inBrackets) column = Math.max(column, columnOf(token, index, tokens));
        parts[column]!.push(token);
    }
    const second = parts[1]![0] ?? parts[2]![0];
    return { words: parts.map(spaced), second: second?.start, comment };
}

/** Which column a word begins: 1 with an amount or what an objective line names, 2 with the flags or the day of arrival. */
function columnOf({ symbol }: DraftToken, index: number, tokens: readonly DraftToken[]): number {
    if (['introduces', 'practices', 'practises', 'checks'].includes(tokens[0]!.symbol)) return index === 0 ? 0 : 1;
    if (symbol === 'NUMBER' || symbol === 'FRACTION' || symbol === 'per') return 1;
    return symbol === 'in' || symbol === 'not' || symbol === 'optional' || symbol === 'arriving' ? 2 : 0;
}

function isApart(text: string, { line }: LayoutLine, { second }: Cells): boolean {
    if (second === undefined) return false;
    const blanks = text.slice(endOfWords(text, line.start, second), second);
    return blanks.length >= gap || blanks.includes('\t');
}

const wide = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u;

/** How many columns a text takes in a fixed-width face: letters of East Asian scripts take two, marks on a letter none. */
function widthOf(text: string): number {
    // eslint-disable-next-line no-control-regex -- plain ASCII is most of all text
    if (/^[\x00-\x7f]*$/.test(text)) return text.length;
    let width = 0;
    for (const letter of text) width += /\p{M}/u.test(letter) ? 0 : wide.test(letter) ? 2 : 1;
    return width;
}
