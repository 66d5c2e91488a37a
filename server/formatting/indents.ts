import type { Chunk } from './declarations.js';
import type { LayoutLine } from './read-layout.js';

/** One step in: so many spaces, or a tab. */
export interface Step {
    size: number;
    tabs: boolean;
}

export function indentOf(depth: number, { size, tabs }: Step): string {
    return tabs ? '\t'.repeat(depth) : ' '.repeat(depth * size);
}

/** A column that is in use, and the indentation that lines in it get. */
interface Column {
    was: number;
    indent: string;
}

/** The indentation of each line of a declaration in which every line stands as it should, by its index in the file. */
export function indentsIn(text: string, lines: readonly LayoutLine[], chunk: Chunk, step: Step): Map<number, string> {
    const indents = new Map<number, string>();
    const open: Column[] = [];
    let statement = lines[chunk.head]!;
    let prose: Column | undefined;
    for (let index = chunk.head; index <= chunk.last; index++) {
        const { kind, depth, line, next } = lines[index]!;
        const own = indentOf(depth, step);
        if (kind === 'statement') {
            open.length = depth;
            open[depth] = { was: line.wide, indent: own };
            statement = lines[index]!;
            prose = undefined;
            indents.set(index, own);
        } else if (kind === 'prose') {
            // How far the lines of a text stand in is its writer's: it is kept from the statement on.
            prose = { was: line.wide, indent: own + further(text, statement, lines[index]!, step) };
            indents.set(index, prose.indent);
        } else if (kind === 'comment') {
            const below = next && next.depth === depth + 1 ? [{ was: next.line.wide, indent: indentOf(next.depth, step) }] : [];
            indents.set(index, nearestColumn([...open, ...below, ...(prose ? [prose] : [])], line.wide));
        }
    }
    return indents;
}

/** By how much a line of prose stands deeper than its statement. */
function further(text: string, statement: LayoutLine, prose: LayoutLine, step: Step): string {
    const above = text.slice(statement.line.start, statement.line.content);
    const own = text.slice(prose.line.start, prose.line.content);
    if (!own.startsWith(above)) return ' '.repeat(prose.line.wide - statement.line.wide);
    const tab = step.tabs ? '\t' : ' '.repeat(step.size);
    return own.slice(above.length).replaceAll('\uFEFF', '').replace(/[^\t]/g, ' ').replaceAll('\t', tab);
}

/** A comment stays in the column of the lines it stands with; one between two columns goes to the shallower. */
function nearestColumn(columns: readonly Column[], column: number): string {
    return columns.filter(({ was }) => was <= column).sort((a, b) => b.was - a.was)[0]?.indent ?? '';
}
