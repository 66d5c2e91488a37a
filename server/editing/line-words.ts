import type { LinePart } from '@haversack/language/facts/line-parts';
import type { Edge, GrammarState } from '@haversack/language/lexer/automaton';
import type { DraftToken } from '@haversack/language/lexer/fit-line';

/** Where the words of a line have come to: which part of it the last word belongs to, and what may come next. */
export interface Progress {
    /** Index of the part; -1 while none has begun. */
    part: number;
    state: GrammarState;
}

/** Walks along words that fit the grammar, behind the first `skip` of them, and tells which part each belongs to. */
export function alongParts(start: GrammarState, tokens: readonly DraftToken[], skip: number, parts: readonly LinePart[]): Progress {
    let state = start;
    let part = -1;
    for (const [index, { symbol }] of tokens.entries()) {
        if (index >= skip) part = partOf(state.edges.filter(edge => edge.symbol === symbol), part, parts) ?? part;
        state = state.move(symbol) ?? state;
    }
    return { part, state };
}

/** The first part from `current` on that any of these ways to go on belongs to. */
export function partOf(edges: readonly Edge[], current: number, parts: readonly LinePart[]): number | undefined {
    const found = parts.findIndex((one, index) => index >= Math.max(0, current) && edges.some(edge => belongs(edge, one)));
    return found < 0 ? undefined : found;
}

/** The part that is to be written next: the one after the current, unless that one cannot end yet. */
export function nextPart({ state, part }: Progress, parts: readonly LinePart[]): number | undefined {
    return partOf(state.edges, part + 1, parts) ?? partOf(state.edges, part, parts);
}

export function belongs({ symbol, assignment, rule }: Edge, { takes }: LinePart): boolean {
    return takes.includes(rule.name) || takes.includes(symbol) || (assignment !== undefined && takes.includes(assignment.feature));
}
