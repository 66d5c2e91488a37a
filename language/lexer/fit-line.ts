import type { GrammarState, TokenSymbol } from './automaton.js';
import { isBlank, isName, nameFrom, pieceAt, type Line, type Piece } from './scan.js';

/** A token before it is handed to the parser: offsets are in the file, `text` is exactly what stands there. */
export interface DraftToken {
    symbol: TokenSymbol;
    start: number;
    text: string;
}

/** How far a line fits the grammar. */
export interface Fit {
    /** The state before the first token. */
    start: GrammarState;
    tokens: DraftToken[];
    /** The state after the last token that fitted. */
    state: GrammarState;
    /** The piece that did not fit; absent when the line ended. */
    stopped?: Piece;
    /** True when the last token opened prose: its text follows. */
    prose: boolean;
    /** Offset where prose begins or where the line stopped fitting. */
    at: number;
    /** Properties set that the block may set only once. */
    singles: string[];
}

const byKind: Partial<Record<Piece['kind'], TokenSymbol>> = {
    number: 'NUMBER', fraction: 'FRACTION', percent: 'PERCENT', date: 'DATE', clock: 'CLOCK', string: 'STRING'
};

/** The symbol that a piece has in this state, or none when it does not fit. A keyword comes before a name. */
function symbolOf(piece: Piece, state: GrammarState): TokenSymbol | undefined {
    const { text } = piece;
    if ((piece.kind === 'word' || piece.kind === 'mark') && state.accepts(text)) return text;
    const symbol = byKind[piece.kind];
    if (symbol && state.accepts(symbol)) return symbol;
    if (piece.kind === 'word' && state.accepts('NAME') && isName(text)) return 'NAME';
    if ((piece.kind === 'word' || piece.kind === 'number') && state.accepts('CODE')) return 'CODE';
    return undefined;
}

/** "10g" where a number is due is 10 and g; "weigh-2.walk" is a name, a full stop and a name. */
function splitPiece(piece: Piece, state: GrammarState): Piece | undefined {
    if (piece.kind !== 'word') return undefined;
    const number = state.accepts('NUMBER') ? /^\d+(?:\.\d+)?/.exec(piece.text) : null;
    if (number) return { kind: 'number', text: number[0], start: piece.start };
    const dot = state.accepts('NAME') ? piece.text.indexOf('.') : -1;
    if (dot > 0 && isName(piece.text.slice(0, dot))) return { kind: 'word', text: piece.text.slice(0, dot), start: piece.start };
    return undefined;
}

/** Fits the rest of a line, from offset `from`, onto a state. Never fails: it says how far it came. */
export function fitLine(text: string, line: Line, from: number, start: GrammarState): Fit {
    const tokens: DraftToken[] = [];
    const singles: string[] = [];
    let state = start;
    let at = from;
    for (;;) {
        let piece = pieceAt(text, at, line.end);
        if (!piece) return { start, tokens, state, prose: false, at, singles };
        let symbol = isInches(piece, state, text, line) ? 'NAME' : symbolOf(piece, state);
        if (!symbol) {
            const part = splitPiece(piece, state);
            symbol = part && symbolOf(part, state);
            if (!part || !symbol) return { start, tokens, state, stopped: piece, prose: false, at: piece.start, singles };
            piece = part;
        }
        const single = state.single(symbol);
        if (single !== undefined && !singles.includes(single)) singles.push(single);
        state = state.move(symbol)!;
        tokens.push({ symbol, start: piece.start, text: piece.text });
        at = piece.start + piece.text.length;
        if (symbol === ':' && state.accepts('TEXT')) return { start, tokens, state, prose: true, at, singles };
    }
}

/** `in` after a number is a unit, save where it begins `in kit`. */
function isInches(piece: Piece, state: GrammarState, text: string, line: Line): boolean {
    return piece.text === 'in' && state.accepts('NAME') && pieceAt(text, piece.start + piece.text.length, line.end)?.text !== 'kit';
}

/** True when the whole line fitted and may end there. */
export function isWhole(fit: Fit): boolean {
    return fit.prose || (!fit.stopped && fit.state.accepts('EOL'));
}

/** Something to say about braces in prose. */
export interface BraceProblem {
    code: 'open-brace' | 'name-in-braces';
    start: number;
    length: number;
    /** The name that was probably meant. */
    meant?: string;
}

/** Text and names of one line of prose between two offsets. Every character between them is in some token or blank at an end. */
export function proseTokens(text: string, from: number, end: number, problems: BraceProblem[]): DraftToken[] {
    const tokens: DraftToken[] = [];
    while (from < end && isBlank(text.charCodeAt(from))) from++;
    while (end > from && isBlank(text.charCodeAt(end - 1))) end--;
    let plain = from;
    const firstMark = text.slice(from, end).search(/[{\\]/);
    if (firstMark < 0) return from < end ? [{ symbol: 'TEXT', start: from, text: text.slice(from, end) }] : [];
    const flush = (upTo: number): void => {
        if (upTo > plain) tokens.push({ symbol: 'TEXT', start: plain, text: text.slice(plain, upTo) });
    };
    for (let at = from + firstMark; at < end; at++) {
        const char = text[at];
        if (char === '\\') at++;
        if (char !== '{') continue;
        let close = at + 1;
        while (close < end && text[close] !== '}' && text[close] !== '{') close++;
        if (close >= end || text[close] !== '}') {
            problems.push({ code: 'open-brace', start: at, length: Math.min(close, end) - at });
            continue;
        }
        const inner = text.slice(at + 1, close);
        const name = inner.trim();
        if (!isName(name)) {
            problems.push({ code: 'name-in-braces', start: at, length: close + 1 - at, meant: nameFrom(inner) || undefined });
            at = close;
            continue;
        }
        flush(at);
        const nameStart = at + 1 + inner.indexOf(name);
        tokens.push({ symbol: '{', start: at, text: '{' }, { symbol: 'NAME', start: nameStart, text: name }, { symbol: '}', start: close, text: '}' });
        plain = close + 1;
        at = close;
    }
    flush(end);
    return tokens;
}
