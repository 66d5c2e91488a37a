import type { Prose, WeekBrief } from '../planning/figures.js';
import { readProse, type ProseBlock, type ProseInline } from './prose.js';
import { makeView, type View } from './view.js';

/** A writer's prose as plain text on one line, with titles in place of names in braces. */
export function proseInWords(prose: Prose, view: View): string {
    return blocksInWords(readProse(prose), view).replace(/\s+/g, ' ').trim();
}

/** For the prose of one brief, with its titles. */
export function proseOf(brief: WeekBrief): (prose: Prose) => string {
    const view = makeView(brief, {});
    return prose => proseInWords(prose, view);
}

function blocksInWords(blocks: readonly ProseBlock[], view: View): string {
    return blocks.map(block => (block.kind === 'paragraph' ? inlineInWords(block.inside, view) : block.items.map(item => blocksInWords(item, view)).join('; '))).join(' ');
}

function inlineInWords(inside: readonly ProseInline[], view: View): string {
    return inside.map(piece => {
        switch (piece.kind) {
            case 'text':
            case 'code': return piece.text;
            case 'name': return view.inSentence(piece.name, piece);
            case 'break': return ' ';
            case 'em':
            case 'strong':
            case 'link': return inlineInWords(piece.inside, view);
        }
    }).join('');
}
