import { isCompositeCstNode, isLeafCstNode, GrammarAST, type AstNode, type CstNode, type LeafCstNode, type Reference } from 'langium';
import type { Mention, Range } from './sheet.js';

const nowhere: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Where a node stands, without the empty tokens around it. */
export function rangeOf(node: AstNode | undefined): Range {
    return node?.$cstNode?.range ?? nowhere;
}

/** Where a property of a node stands; the whole node when it was put in by the lexer. */
export function propertyRange(node: AstNode, property: string): Range {
    const found = node.$cstNode && findProperty(node.$cstNode, property, node);
    return found ? found.range : rangeOf(node);
}

function findProperty(cst: CstNode, property: string, node: AstNode): CstNode | undefined {
    if (!isCompositeCstNode(cst)) return undefined;
    for (const child of cst.content) {
        if (assigns(child, property)) return child;
        if (!isLeafCstNode(child) && child.astNode === node) {
            const inner = findProperty(child, property, node);
            if (inner) return inner;
        }
    }
    return undefined;
}

/** Where each value of a list stands, in order. */
export function propertyRanges(node: AstNode, property: string): Range[] {
    const ranges: Range[] = [];
    const gather = (cst: CstNode): void => {
        if (!isCompositeCstNode(cst)) return;
        for (const child of cst.content) {
            if (assigns(child, property)) ranges.push(child.range);
            else if (!isLeafCstNode(child) && child.astNode === node) gather(child);
        }
    };
    if (node.$cstNode) gather(node.$cstNode);
    return ranges;
}

function assigns(cst: CstNode, property: string): boolean {
    let element: AstNode | undefined = cst.grammarSource;
    while (element && GrammarAST.isAbstractElement(element) && !GrammarAST.isAssignment(element)) element = element.$container;
    return GrammarAST.isAssignment(element) && element.feature === property;
}

/** The first line of a declaration: from its first word to the end of its header. */
export function headRange(node: AstNode): Range {
    const whole = rangeOf(node);
    return node.$cstNode ? { start: whole.start, end: endOfFirstLine(node.$cstNode, whole.start) } : whole;
}

function endOfFirstLine(cst: CstNode, start: Range['start']): Range['end'] {
    if (!isCompositeCstNode(cst)) return cst.range.end;
    let end = start;
    for (const child of cst.content) {
        if (child.range.start.line > start.line) break;
        end = endOfFirstLine(child, end);
    }
    return end;
}

/** The end of what stands before a word of the language in the first line of a node; undefined where the word is not there. */
export function endBefore(node: AstNode, keyword: string): Range['end'] | undefined {
    const cst = node.$cstNode;
    const leaves = cst ? leavesOf(cst).filter(({ hidden }) => !hidden) : [];
    const index = leaves.findIndex(({ grammarSource, range, text }) => GrammarAST.isKeyword(grammarSource) && grammarSource.value === keyword && text !== '' && range.start.line === rangeOf(node).start.line);
    return index > 0 ? leaves[index - 1]!.range.end : undefined;
}

function leavesOf(cst: CstNode): LeafCstNode[] {
    return isLeafCstNode(cst) ? [cst] : isCompositeCstNode(cst) ? cst.content.flatMap(leavesOf) : [];
}

export function mention(reference: Reference | undefined): Mention {
    return { name: reference?.$refText ?? '', at: reference?.$refNode?.range ?? nowhere };
}

/** References without those whose name the lexer had to put in. */
export function mentions(references: readonly Reference[]): Mention[] {
    return references.map(mention).filter(({ name }) => name !== '');
}
