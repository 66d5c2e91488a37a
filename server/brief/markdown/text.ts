/** Plain text and prose as CommonMark: what is not marked up by a writer can never become markup. */
import type { Prose } from '../../planning/figures.js';
import type { SentencePlace } from '../title-in-sentence.js';
import { readProse, type ProseBlock, type ProseInline } from '../prose.js';

/** Text on one line in which every character stands for itself. */
export function plainText(text: string): string {
    return escaped(text.replace(/\s+/g, space => (/[\r\n\u2028\u2029]/.test(space) ? ' ' : space)).trim());
}

/** A message whose words of the language stand between backticks. */
export function messageText(message: string): string {
    return message.split(/`([^`]+)`/).map((piece, index) => (index % 2 ? codeSpan(piece) : plainInside(piece))).join('').trim();
}

/** As plainText, with the spaces at both ends. */
function plainInside(text: string): string {
    const [, before = '', inner = '', after = ''] = /^(\s*)(.*?)(\s*)$/s.exec(text) ?? [];
    return `${before && ' '}${plainText(inner)}${after && ' '}`;
}

/** Characters that can open markup anywhere, and those that can at the start of a line. */
function escaped(text: string): string {
    return text
        .replace(/[\\`*_[\]<>|~&#]/g, '\\$&')
        .replace(/^([ \t]*)([+=-])/gm, '$1\\$2')
        .replace(/^([ \t]*\d{1,9})([.)])(?=\s|$)/gm, '$1\\$2');
}

/** The words that stand for a name in braces. */
export type TitleOf = (name: string, place: SentencePlace) => string;

/** Prose as lines; the caller indents every line after the first to its own depth. */
export function proseLines(prose: Prose, titleOf: TitleOf): string[] {
    return blockLines(readProse(prose), titleOf);
}

function blockLines(blocks: ProseBlock[], titleOf: TitleOf): string[] {
    return blocks.flatMap((block, index) => {
        const lines = block.kind === 'paragraph' ? inlineText(block.inside, titleOf).split('\n') : listLines(block, titleOf);
        return index === 0 ? lines : ['', ...lines];
    });
}

function listLines(list: ProseBlock & { kind: 'list' }, titleOf: TitleOf): string[] {
    return list.items.flatMap((item, index) => {
        const marker = list.ordered ? `${list.start + index}. ` : '- ';
        const lines = blockLines(item, titleOf);
        return lines.map((line, at) => (at === 0 ? marker + line : line && ' '.repeat(marker.length) + line));
    });
}

function inlineText(inside: ProseInline[], titleOf: TitleOf): string {
    return inside.map(piece => {
        switch (piece.kind) {
            case 'text':
                return piece.text.split('\n').map(escaped).join('\n');
            case 'name':
                return plainText(titleOf(piece.name, piece));
            case 'break':
                return '\\\n';
            case 'code':
                return codeSpan(piece.text);
            case 'em':
                return `*${inlineText(piece.inside, titleOf)}*`;
            case 'strong':
                return `**${inlineText(piece.inside, titleOf)}**`;
            case 'link':
                return `[${inlineText(piece.inside, titleOf)}](<${piece.href.replace(/&/g, '&amp;')}>)`;
        }
    }).join('');
}

/** A code span needs a fence longer than any run of backticks inside (CommonMark 0.31, 6.1). */
function codeSpan(text: string): string {
    const longest = Math.max(0, ...(text.match(/`+/g) ?? []).map(run => run.length));
    const fence = '`'.repeat(longest + 1);
    const pad = /^`|`$|^ .* $/s.test(text) ? ' ' : '';
    return fence + pad + text.replace(/\n/g, ' ') + pad + fence;
}
