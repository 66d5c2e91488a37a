import type { DraftToken } from '@haversack/language/lexer/fit-line';
import { isBlank } from '@haversack/language/lexer/scan';
import type { LayoutLine } from './read-layout.js';

/** How the words of one line stand apart. Text in quotation marks, prose and comments are taken as they are. */

const beforeNothing = new Set([',', ')', ':', '.']);
const nothingAfter = new Set(['(', '.']);

/** The words of some tokens with one blank where the language has one. */
export function spaced(tokens: readonly DraftToken[]): string {
    return tokens.map((token, index) => {
        const before = tokens[index - 1];
        const close = before === undefined || beforeNothing.has(token.symbol) || nothingAfter.has(before.symbol);
        return close ? token.text : ` ${token.text}`;
    }).join('');
}

/** A statement's line without its indentation and without what stands blank at its end. */
export function statementText(text: string, { line, tokens, commentAt }: LayoutLine): string {
    const proseAt = tokens.findIndex(({ symbol }) => symbol === 'TEXT' || symbol === '{');
    if (proseAt >= 0) return `${spaced(tokens.slice(0, proseAt))} ${text.slice(tokens[proseAt]!.start, endOfWords(text, line.start, line.end))}`;
    return spaced(tokens) + (commentAt === undefined ? '' : comment(text, commentAt, line.start, line.end));
}

/** A comment behind a statement, as far from it as it stood. */
function comment(text: string, at: number, start: number, end: number): string {
    return text.slice(endOfWords(text, start, at), endOfWords(text, at, end));
}

/** Offset after the last character between two offsets that is no blank. */
export function endOfWords(text: string, start: number, end: number): number {
    let at = end;
    while (at > start && isBlank(text.charCodeAt(at - 1))) at--;
    return at;
}
