import { Cancellation, GrammarAST, interruptAndCheck, isCompositeCstNode, isLeafCstNode, isReference, type CstNode, type LangiumDocument, type LeafCstNode, type Reference } from 'langium';
import type { SemanticTokenProvider } from 'langium/lsp';
import type { Range, SemanticTokens, SemanticTokensOptions, SemanticTokensParams, SemanticTokensRangeParams } from 'vscode-languageserver-protocol';
import type { CancellationToken } from 'vscode-jsonrpc';

/**
 * What each word is, for editors that colour by meaning: names by the kind of thing they lead to, numbers with their units,
 * flags, the words of the language. Types are the protocol's own, so that every theme has a colour for them. Prose and comments
 * get none: they stay text to whoever checks spelling, and only the names in braces stand out. A name that leads nowhere gets none either.
 */
export class HaversackSemanticTokens implements SemanticTokenProvider {
    readonly tokenTypes: Record<string, number> = numbered(types);
    /** Each is one bit of a number. */
    readonly tokenModifiers: Record<string, number> = { [declaration]: 1 };
    readonly semanticTokensOptions: SemanticTokensOptions = { legend: { tokenTypes: [...types], tokenModifiers: [declaration] }, full: { delta: false }, range: true };

    semanticHighlight(document: LangiumDocument, _params: SemanticTokensParams, cancelToken: CancellationToken = Cancellation.CancellationToken.None): Promise<SemanticTokens> {
        return this.tokensOf(document, undefined, cancelToken);
    }

    semanticHighlightRange(document: LangiumDocument, { range }: SemanticTokensRangeParams, cancelToken: CancellationToken = Cancellation.CancellationToken.None): Promise<SemanticTokens> {
        return this.tokensOf(document, range, cancelToken);
    }

    /** No differences are announced; who asks all the same gets everything. */
    semanticHighlightDelta(document: LangiumDocument, _params: unknown, cancelToken: CancellationToken = Cancellation.CancellationToken.None): Promise<SemanticTokens> {
        return this.tokensOf(document, undefined, cancelToken);
    }

    private async tokensOf(document: LangiumDocument, within: Range | undefined, cancelToken: CancellationToken): Promise<SemanticTokens> {
        const data: number[] = [];
        let line = 0;
        let character = 0;
        let end = 0;
        let count = 0;
        const referenceAt = referenceFinder();
        for (const leaf of leavesIn(document.parseResult.value.$cstNode, within)) {
            if (++count % 1000 === 0) await interruptAndCheck(cancelToken);
            if (leaf.offset < end || leaf.length === 0) continue;
            const meaning = meaningOf(leaf, referenceAt);
            if (!meaning) continue;
            const { start } = leaf.range;
            data.push(start.line - line, start.line === line ? start.character - character : start.character, leaf.length, this.tokenTypes[meaning.type]!, meaning.declared ? 1 : 0);
            ({ line, character } = start);
            end = leaf.end;
        }
        return { data };
    }
}

const types = [
    'keyword', 'modifier', 'number', 'string', 'variable', 'parameter', 'property', 'enum', 'enumMember', 'struct', 'class', 'interface', 'type', 'namespace', 'function', 'method', 'macro'
] as const;
type TokenType = (typeof types)[number];
const declaration = 'declaration';

function numbered(names: readonly string[]): Record<string, number> {
    return Object.fromEntries(names.map((name, index) => [name, index]));
}

/** By the kind of thing that has the name. */
const typeOfKind: Readonly<Record<string, TokenType>> = {
    Material: 'variable', MaterialPart: 'property', Print: 'parameter', Book: 'enum', Game: 'function', Kit: 'struct',
    Lesson: 'class', WarmUp: 'method', Activity: 'method', Practice: 'method', Checkpoint: 'method', TaughtWord: 'property',
    Objective: 'enumMember', Framework: 'interface', Course: 'namespace', Unit: 'namespace', Class: 'type', Section: 'type', Adaptation: 'macro'
};

/** By the property that a name, a number or a code sets, where the kind of token does not say enough. */
const typeOfProperty: Readonly<Record<string, TokenType>> = {
    unit: 'number', measured: 'number', one: 'number', many: 'number', currency: 'number', edition: 'number', asOf: 'number',
    kind: 'enumMember', who: 'enumMember', picture: 'enumMember', code: 'enumMember', day: 'enumMember', source: 'enumMember', strand: 'type',
    use: 'modifier', twoSided: 'modifier', draft: 'modifier', optional: 'modifier', inKit: 'modifier', notInKit: 'modifier'
};

const typeOfToken: Readonly<Record<string, TokenType>> = { NUMBER: 'number', FRACTION: 'number', PERCENT: 'number', DATE: 'number', CLOCK: 'number', CODE: 'number' };

interface Meaning {
    type: TokenType;
    declared?: boolean;
}

type FindReference = (leaf: LeafCstNode, property: string) => Reference | undefined;

function meaningOf(leaf: LeafCstNode, referenceAt: FindReference): Meaning | undefined {
    const source = leaf.grammarSource;
    const property = assignedProperty(source);
    if (GrammarAST.isKeyword(source)) return /^[a-z]/.test(source.value) ? { type: keywordType(leaf, source, property) } : undefined;
    if (leaf.tokenType.name === 'STRING') return { type: 'string' };
    const reference = property === undefined ? undefined : referenceAt(leaf, property);
    if (reference) return known(reference.$nodeDescription?.type);
    const declared = property === 'name' ? known(leaf.astNode.$type) : undefined;
    if (declared) return { ...declared, declared: true };
    const type = typeOfProperty[property ?? ''] ?? typeOfToken[leaf.tokenType.name];
    return type && { type };
}

function known(kind: string | undefined): Meaning | undefined {
    const type = kind === undefined ? undefined : typeOfKind[kind];
    return type && { type };
}

/** Words of the language that are units. */
const unitWords = new Set(['min', 'oz']);

/** `kit` belongs to the flag that `in` or `not` begins. */
function keywordType(leaf: LeafCstNode, keyword: GrammarAST.Keyword, property: string | undefined): TokenType {
    if (unitWords.has(keyword.value)) return 'number';
    if (property !== undefined && property !== 'who') return typeOfProperty[property] ?? 'keyword';
    return leaf.astNode.$type === 'Need' && (keyword.value === 'in' || keyword.value === 'kit') ? 'modifier' : 'keyword';
}

function assignedProperty(source: GrammarAST.AbstractElement | undefined): string | undefined {
    let element: unknown = source;
    while (GrammarAST.isAbstractElement(element) && !GrammarAST.isAssignment(element)) element = element.$container;
    return GrammarAST.isAssignment(element) ? element.feature : undefined;
}

/** Finds the reference of a leaf. The one list that was asked last is kept by its leaves, for prose may hold any number of names. */
function referenceFinder(): FindReference {
    let last: { list: unknown; byLeaf: Map<CstNode | undefined, Reference> } | undefined;
    return (leaf, property) => {
        const value = (leaf.astNode as unknown as Record<string, unknown>)[property];
        if (isReference(value)) return value;
        if (!Array.isArray(value) || !isReference(value[0])) return undefined;
        if (last?.list !== value) last = { list: value, byLeaf: new Map((value as Reference[]).map(reference => [reference.$refNode, reference])) };
        return last.byLeaf.get(leaf);
    };
}

/** Leaves in the order of the text, without hidden ones; with a range, of its lines. */
function* leavesIn(root: CstNode | undefined, within: Range | undefined): Generator<LeafCstNode> {
    const open: CstNode[] = root ? [root] : [];
    for (let node = open.pop(); node; node = open.pop()) {
        if (within && (node.range.end.line < within.start.line || node.range.start.line > within.end.line)) continue;
        if (isLeafCstNode(node)) {
            if (!node.hidden) yield node;
        } else if (isCompositeCstNode(node)) {
            for (let index = node.content.length - 1; index >= 0; index--) open.push(node.content[index]!);
        }
    }
}
