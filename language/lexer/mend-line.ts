import type { GrammarState, TokenSymbol } from './automaton.js';
import { fitLine, isWhole, type DraftToken, type Fit } from './fit-line.js';
import { nearest } from './nearest.js';
import { isName, nameFrom, pieceAt, type Line, type Piece } from './scan.js';

/** How a line that does not fit was read all the same. */
export interface Mended {
    fit: Fit;
    how:
        | { did: 'respelt'; piece: Piece; as: string }
        | { did: 'renamed'; piece: Piece; as: string }
        | { did: 'put in'; symbol: TokenSymbol; before: number }
        | { did: 'left out'; from: number; to: number };
}

/**
 * Tries to read a line that does not fit with one mend, so that what is right in it, and everything under it, still counts:
 * a keyword respelt, a name put in or brought into lower case, a mark put in, the part that does not fit left out.
 */
export function mendLine(text: string, line: Line, broken: Fit): Mended | undefined {
    const { state, stopped } = broken;
    const at = stopped?.start ?? line.end;
    const goOn = (symbol: TokenSymbol, piece: DraftToken | undefined, from: number): Fit | undefined => {
        const next = state.move(symbol);
        if (!next) return undefined;
        const tokens = [...broken.tokens, ...(piece ? [piece] : [])];
        if (symbol === ':' && next.accepts('TEXT')) return { start: broken.start, tokens, state: next, prose: true, at: from, singles: broken.singles };
        const rest = fitLine(text, line, from, next);
        return isWhole(rest) ? { ...rest, start: broken.start, tokens: [...tokens, ...rest.tokens], singles: [...broken.singles, ...rest.singles] } : undefined;
    };

    if (stopped && stopped.kind === 'word') {
        const after = stopped.start + stopped.text.length;
        const keywords = [...new Set(state.edges.map(edge => edge.symbol))].filter(symbol => /^[a-z][a-z-]+$/.test(symbol));
        const as = keywords.includes(stopped.text.toLowerCase()) ? stopped.text.toLowerCase() : nearest(stopped.text.toLowerCase(), keywords);
        const respelt = as && goOn(as, { symbol: as, start: stopped.start, text: stopped.text }, after);
        if (respelt) return { fit: respelt, how: { did: 'respelt', piece: stopped, as } };
        const next = pieceAt(text, after, line.end);
        const joined = next?.kind === 'word' ? `${stopped.text}-${next.text}` : '';
        if (next && keywords.includes(joined)) {
            const piece: Piece = { kind: 'word', start: stopped.start, text: text.slice(stopped.start, next.start + next.text.length) };
            const hyphenated = goOn(joined, { symbol: joined, start: piece.start, text: piece.text }, piece.start + piece.text.length);
            if (hyphenated) return { fit: hyphenated, how: { did: 'respelt', piece, as: joined } };
        }
        const parted = partAtHyphen(text, line, broken, stopped);
        if (parted) return { fit: parted, how: { did: 'respelt', piece: stopped, as: stopped.text.replace('-', ' ') } };
        const name = nameFrom(stopped.text);
        const renamed = isName(name) && goOn('NAME', { symbol: 'NAME', start: stopped.start, text: stopped.text }, after);
        if (renamed) return { fit: renamed, how: { did: 'renamed', piece: stopped, as: name } };
    }
    const insertable: TokenSymbol[] = [':', ',', 'NAME'];
    for (const symbol of insertable) {
        const filled = symbol === ':' && broken.tokens.length === 0 ? undefined : goOn(symbol, { symbol, start: at, text: '' }, at);
        // A colon may be put in only where nothing else could follow, or any line of words would turn into prose.
        if (filled && (symbol !== ':' || state.edges.every(edge => edge.symbol === ':'))) {
            return { fit: filled, how: { did: 'put in', symbol, before: at } };
        }
    }
    return leaveOut(text, line, broken, at);
}

/** "on-hand" read as "on hand". */
function partAtHyphen(text: string, line: Line, broken: Fit, { text: word, start }: Piece): Fit | undefined {
    const [first = '', second = '', ...more] = word.split('-');
    const next = more.length === 0 && /^[a-z]+-[a-z]+$/.test(word) ? broken.state.move(first)?.move(second) : undefined;
    if (!next) return undefined;
    const rest = fitLine(text, line, start + word.length, next);
    const tokens: DraftToken[] = [{ symbol: first, start, text: first }, { symbol: second, start: start + first.length + 1, text: second }];
    return isWhole(rest) ? { ...rest, start: broken.start, tokens: [...broken.tokens, ...tokens, ...rest.tokens], singles: [...broken.singles, ...rest.singles] } : undefined;
}

/** Leaves out the shortest run of pieces after which the line goes on well; at worst everything from the spot on. */
function leaveOut(text: string, line: Line, broken: Fit, at: number): Mended | undefined {
    if (broken.tokens.length === 0) return undefined;
    let piece = pieceAt(text, at, line.end);
    for (let count = 0; piece && count < 12; count++) {
        const from = piece.start + piece.text.length;
        const rest = fitLine(text, line, from, broken.state);
        if (isWhole(rest) && !rest.prose) {
            return { fit: { ...rest, start: broken.start, tokens: [...broken.tokens, ...rest.tokens] }, how: { did: 'left out', from: at, to: from } };
        }
        piece = pieceAt(text, from, line.end);
    }
    const cut = longestEnding(broken);
    return cut && { fit: cut, how: { did: 'left out', from: cut.at, to: line.end } };
}

/** The longest beginning of a line that may stand alone. */
function longestEnding(broken: Fit): Fit | undefined {
    const states: GrammarState[] = [broken.start];
    for (const token of broken.tokens) states.push(states[states.length - 1]!.move(token.symbol)!);
    for (let count = broken.tokens.length; count > 0; count--) {
        if (!states[count]!.accepts('EOL')) continue;
        const last = broken.tokens[count - 1]!;
        return { ...broken, tokens: broken.tokens.slice(0, count), state: states[count]!, stopped: undefined, at: last.start + last.text.length };
    }
    return undefined;
}
