import { onOneLine } from '../markdown/one-line.js';

/** A column of a table for the terminal: its heading, and whether its cells are numbers. */
export interface Column {
    title: string;
    number?: boolean;
}

/** Aligned columns with two spaces between them; the last one is not filled up. Cells stay on one line each. */
export function textTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
    const cells = [columns.map(c => c.title), ...rows.map(row => columns.map((_, i) => onOneLine(row[i] ?? '')))];
    const widths = columns.map((_, i) => cells.reduce((widest, row) => Math.max(widest, widthOf(row[i] ?? '')), 0));
    return cells.map(row => row.map((cell, i) => {
        const room = ' '.repeat((widths[i] ?? 0) - widthOf(cell));
        if (columns[i]?.number) return room + cell;
        return i === columns.length - 1 ? cell : cell + room;
    }).join('  ').trimEnd());
}

/** Characters as a terminal counts them, combining marks left out. */
function widthOf(text: string): number {
    return [...text.replace(/\p{M}/gu, '')].length;
}
