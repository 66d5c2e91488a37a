/** Plain text as CommonMark: no character of it can become markup. */
import { onOneLine } from './one-line.js';

/** Text on one line in which every character stands for itself. */
export function plainText(text: string): string {
    return escaped(onOneLine(text));
}

/** A message whose words of the language stand between backticks. */
export function messageText(message: string): string {
    return message.split(/`([^`]+)`/).map((piece, index) => (index % 2 ? codeSpan(piece) : plainInside(piece))).join('').trim();
}

/** As plainText, with the spaces at both ends. */
function plainInside(text: string): string {
    const inner = text.trim();
    if (inner === '') return text && ' ';
    return `${/^\s/.test(text) ? ' ' : ''}${plainText(inner)}${/\s$/.test(text) ? ' ' : ''}`;
}

/** Characters that can open markup anywhere, and those that can at the start of a line. */
export function escaped(text: string): string {
    return text
        .replace(/[\\`*_[\]<>|~&#]/g, '\\$&')
        .replace(/^([ \t]*)([+=-])/gm, '$1\\$2')
        .replace(/^([ \t]*\d{1,9})([.)])(?=\s|$)/gm, '$1\\$2');
}

/** A code span needs a fence longer than any run of backticks inside (CommonMark 0.31, 6.1). */
export function codeSpan(text: string): string {
    const longest = Math.max(0, ...(text.match(/`+/g) ?? []).map(run => run.length));
    const fence = '`'.repeat(longest + 1);
    const pad = /^`|`$|^ .* $/s.test(text) ? ' ' : '';
    return fence + pad + text.replace(/\n/g, ' ') + pad + fence;
}

/** A fenced block; the fence is longer than any run of backticks inside (CommonMark 0.31, 4.5). */
export function codeBlock(lines: readonly string[]): string {
    const longest = Math.max(2, ...(lines.join('\n').match(/`+/g) ?? []).map(run => run.length));
    const fence = '`'.repeat(longest + 1);
    return [fence, ...lines, fence].join('\n');
}
