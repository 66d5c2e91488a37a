/** Prose as CommonMark: what is not marked up by its writer can never become markup. */
import type { Prose } from '../../planning/figures.js';
import { codeSpan, escaped, plainText } from '../../markdown/plain-text.js';
import { readProse, type ProseBlock, type ProseInline } from '../prose.js';
import type { SentencePlace } from '../title-in-sentence.js';

/** The words that stand for a name in braces. */
type TitleOf = (name: string, place: SentencePlace) => string;

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
