import type { AstNode } from 'langium';
import * as ast from '../generated/ast.js';
import { wordsAdded } from './scopes.js';

/**
 * What a file shows to others, as one text: kinds and names in their order, with the parts that others can name. While it
 * stays the same, references from other files lead to the same places, whatever else in the file has changed.
 */
export function exportsOf(root: AstNode): string {
    if (!ast.isProgrammeFile(root)) return '';
    return root.declarations.map(node => {
        const own = `${node.$type} ${node.name ?? ''}`;
        if (ast.isMaterial(node)) return `${own}(${node.parts.map(part => part.name).join(' ')})`;
        if (ast.isLesson(node)) return `${own}(${node.words.map(word => word.name).join(' ')})(${node.parts.map(part => `${part.$type} ${ast.isGamePlay(part) ? '' : part.name}`).join(' ')})`;
        if (ast.isAdaptation(node)) return `${own}(${wordsAdded(node).map(word => word.name).join(' ')})`;
        return own;
    }).join('\n');
}
