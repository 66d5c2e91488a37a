import type { GrammarAutomaton } from '@haversack/language/lexer/automaton';
import { contextOfLine } from '@haversack/language/lexer/read-lines';
import { tablesIn } from './columns.js';
import { indentEdit, type BlankEdit } from './blank-edits.js';
import { formatEdits, type FormatOptions } from './format-text.js';
import { indentOf } from './indents.js';
import { readLayout, type Layout, type LayoutLine } from './read-layout.js';

/**
 * What to change after Enter began line `at` (from 0): the table that was written in gets its columns, and the new line its
 * indentation where the editor gave it none. Of the new line nothing changes but blanks before the cursor.
 */
export function editsAfterEnter(text: string, at: number, automaton: GrammarAutomaton, options: FormatOptions): BlankEdit[] {
    const layout = readLayout(text, automaton);
    return [...tableEdits(text, at, automaton, options, layout), ...indentEdits(text, at, automaton, options, layout)].sort((a, b) => a.start - b.start);
}

function tableEdits(text: string, at: number, automaton: GrammarAutomaton, options: FormatOptions, layout: Layout): BlankEdit[] {
    const table = tablesIn(layout.lines).find(({ rows }) => rows.includes(at - 1));
    if (!table) return [];
    const ranges = table.rows.filter(row => row !== at).map(row => ({ from: row, to: row }));
    return formatEdits(text, automaton, { ...options, endLastLine: false }, ranges, layout).filter(({ indents, start, end, text: blanks }) => !indents && !/[\r\n]/.test(text.slice(start, end) + blanks));
}

function indentEdits(text: string, at: number, automaton: GrammarAutomaton, options: FormatOptions, { lines }: Layout): BlankEdit[] {
    const [above, here] = [lines[at - 1], lines[at]];
    if (!above || !here || above.broken || (above.kind !== 'statement' && above.kind !== 'prose')) return [];
    const statement = lines.slice(0, at).findLast(({ kind }) => kind === 'statement')!;
    const indent = here.kind === 'blank' ? indentOfNew(text, at, lines, above, statement, automaton, options) : indentOfParted(text, here, above, statement, options);
    const edit = indent === undefined ? undefined : indentEdit(text, here.line, here.line.start, indent);
    return edit ? [edit] : [];
}

/** An empty new line under one that begins a block stands a step deeper; under another, where nothing was taken over, beside it. */
function indentOfNew(text: string, at: number, lines: readonly LayoutLine[], above: LayoutLine, statement: LayoutLine, automaton: GrammarAutomaton, options: FormatOptions): string | undefined {
    const { wide } = lines[at]!.line;
    // A game in a lesson is mostly one line, and what may stand under it says itself in the inventory.
    const begins = above === statement && contextOfLine(text, at, automaton)?.spots.some(({ opens, head }) => opens && head !== 'game in a lesson');
    if (!begins) return wide === 0 ? indentationOf(text, above) : undefined;
    if (wide > statement.line.wide) return undefined;
    const { next } = lines[at]!;
    return next && next.line.wide > statement.line.wide ? indentationOf(text, next) : indentationOf(text, statement) + indentOf(1, options);
}

/** The rest of a text that Enter parted goes on deeper than its word, or it would be text no more. */
function indentOfParted(text: string, here: LayoutLine, above: LayoutLine, statement: LayoutLine, options: FormatOptions): string | undefined {
    const tellsProse = above.kind === 'prose' || statement.tokens.some(({ symbol }) => symbol === 'TEXT' || symbol === '{');
    if (!tellsProse || !(here.kind === 'unread' || here.broken) || here.line.wide > statement.line.wide) return undefined;
    return above.kind === 'prose' ? indentationOf(text, above) : indentationOf(text, statement) + indentOf(1, options);
}

function indentationOf(text: string, { line }: LayoutLine): string {
    return text.slice(line.start, line.content).replaceAll('\uFEFF', '');
}
