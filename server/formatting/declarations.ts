import type { LayoutLine } from './read-layout.js';

/** A declaration with everything under it, as indexes of lines. */
export interface Chunk {
    /** The line of its first word. */
    head: number;
    /** Its last line that is not blank. */
    last: number;
    /** Something in it does not stand as it should, so all of it keeps its indentation. */
    broken: boolean;
    oneLine: boolean;
}

/** Every declaration of a file, in order; lines above the first belong to none. */
export function declarationsIn(lines: readonly LayoutLine[]): Chunk[] {
    const heads = [...lines.keys()].filter(index => lines[index]!.kind === 'statement' && lines[index]!.depth === 0);
    return heads.map((head, order) => {
        let last = (heads[order + 1] ?? lines.length) - 1;
        while (last > head && belongsBelow(lines[last]!)) last--;
        const own = lines.slice(head, last + 1);
        return { head, last, broken: own.some(({ kind, broken }) => broken || kind === 'unread'), oneLine: own.every(({ kind }, index) => index === 0 || kind === 'blank') };
    });
}

/** Blank lines, and comments at the left edge, are the beginning of what follows. */
function belongsBelow({ kind, line }: LayoutLine): boolean {
    return kind === 'blank' || (kind === 'comment' && line.wide === 0);
}

/** Lines that stay as they are to the last blank: those of each block in which a line does not stand or read as it should. */
export function frozenLines(lines: readonly LayoutLine[], chunks: readonly Chunk[]): Set<number> {
    const frozen = new Set<number>();
    const freeze = (from: number, to: number): void => { for (let index = from; index <= to; index++) frozen.add(index); };
    const firstHead = chunks[0]?.head ?? lines.length;
    if (lines.slice(0, firstHead).some(({ kind, broken }) => broken || kind === 'unread')) freeze(0, firstHead - 1);
    for (const chunk of chunks.filter(({ broken }) => broken)) {
        for (let index = chunk.head; index <= chunk.last; index++) {
            const { kind, broken } = lines[index]!;
            if (frozen.has(index) || !(broken || kind === 'unread')) continue;
            const depth = depthAround(lines, index, chunk);
            if (depth === 0) freeze(chunk.head, chunk.last);
            else freeze(...blockAround(lines, index, depth, chunk));
        }
    }
    return frozen;
}

/** The depth of a broken statement, or the least of those beside a line that was not read. */
function depthAround(lines: readonly LayoutLine[], index: number, chunk: Chunk): number {
    const { kind, depth, next } = lines[index]!;
    if (kind === 'statement') return depth;
    return Math.max(1, next && next.line.number <= chunk.last ? Math.min(depth, next.depth) : depth);
}

function blockAround(lines: readonly LayoutLine[], index: number, depth: number, chunk: Chunk): [number, number] {
    const ends = (at: number): boolean => lines[at]!.kind === 'statement' && lines[at]!.depth < depth;
    let from = index;
    while (from > chunk.head + 1 && !ends(from - 1)) from--;
    let to = index;
    while (to < chunk.last && !ends(to + 1)) to++;
    return [from, to];
}
