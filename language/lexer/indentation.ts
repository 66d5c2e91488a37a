import { isComment, type Line } from './scan.js';

/** How many lines are looked at to settle the column of a block. */
const lookAhead = 60;

/** The lines after a line that stand deeper than a column, without blank lines and comments; as many as settle a question. */
export function linesBelow(text: string, lines: readonly Line[], index: number, column: number): Line[] {
    const below: Line[] = [];
    for (const line of lines.slice(index + 1, index + 1 + lookAhead)) {
        if (line.content === line.end || isComment(text, line.content)) continue;
        if (line.wide <= column) break;
        below.push(line);
    }
    return below;
}

/** The step by which a file's lines usually go in; two where none does. */
export function usualStep(lines: readonly Line[]): number {
    const steps = new Map<number, number>();
    let last = 0;
    for (const line of lines) {
        if (line.content === line.end) continue;
        if (line.wide > last) steps.set(line.wide - last, (steps.get(line.wide - last) ?? 0) + 1);
        last = line.wide;
    }
    return [...steps].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? 2;
}
