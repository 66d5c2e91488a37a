import type { Chunk } from './declarations.js';
import type { LayoutLine } from './read-layout.js';

/** Which blank lines go, and before which lines one comes. */
export interface BlankLines {
    removed: Set<number>;
    before: Set<number>;
}

/** No blank line above the first line, one where there were several, one between declarations; none beside lines that stay as they are. */
export function blankLines(lines: readonly LayoutLine[], chunks: readonly Chunk[], frozen: ReadonlySet<number>): BlankLines {
    const removed = new Set<number>();
    const before = new Set<number>();
    const begins = new Map(chunks.slice(1).map((chunk, order) => [firstLineOf(lines, chunk, chunks[order]!), { above: chunks[order]!, chunk }]));
    let last = -1;
    for (let index = 0; index < lines.length; index++) {
        if (lines[index]!.kind === 'blank') continue;
        const kept = frozen.has(index) && frozen.has(last);
        if (!kept) for (let blank = last === -1 ? 0 : last + 2; blank < index; blank++) removed.add(blank);
        const apart = begins.get(index);
        if (last === index - 1 && !kept && apart && !(apart.above.oneLine && apart.chunk.oneLine)) before.add(index);
        last = index;
    }
    return { removed, before };
}

/** The first of the comments right above a declaration, or its own line. */
function firstLineOf(lines: readonly LayoutLine[], chunk: Chunk, above: Chunk): number {
    let first = chunk.head;
    while (first - 1 > above.last && lines[first - 1]!.kind === 'comment') first--;
    return first;
}
