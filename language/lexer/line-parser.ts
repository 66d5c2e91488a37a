import type { IToken, TokenType } from 'chevrotain';
import {
    createParser, CstNodeBuilder, GrammarAST, isAstNode, LangiumParser,
    type AstNode, type CompositeCstNode, type CstNode, type LangiumCoreServices, type ParserOptions, type ParseResult
} from 'langium';

/** The empty tokens between lines, and marks that begin or separate something but never end it. */
const outOfTree = new Set(['EOL', 'INDENT', 'DEDENT', ':', '{', ',', '(']);

/** So many arguments every call takes. */
const mostArguments = 10_000;

/** Takes any number of remarks side by side: Langium's own hands all of them to one call, which takes about 120,000 arguments. */
class PatientNodeBuilder extends CstNodeBuilder {
    override appendChildren(parent: CompositeCstNode, children: CstNode[]): void {
        if (children.length < mostArguments) super.appendChildren(parent, children);
        else for (const child of children) this.appendChild(parent, child);
    }

    /** Langium's own looks for the place of remarks before every token, though hardly any has one before it. */
    override addHiddenNodes(tokens: IToken[]): void {
        if (tokens.length > 0) super.addHiddenNodes(tokens);
    }

    override insertChildren(parent: CompositeCstNode, index: number, children: CstNode[]): void {
        if (children.length < mostArguments) return super.insertChildren(parent, index, children);
        const behind = parent.content.slice(index);
        (parent as unknown as { content: CstNode[] }).content = parent.content.slice(0, index);
        this.appendChildren(parent, children);
        this.appendChildren(parent, behind);
    }
}

/** Langium's parser, which keeps tokens out of the tree that nothing asks for there: they are a quarter of all. */
class LineParser extends LangiumParser {
    constructor(services: LangiumCoreServices) {
        super(services);
        Object.assign(this, { nodeBuilder: new PatientNodeBuilder() });
    }

    override consume(index: number, tokenType: TokenType, feature: GrammarAST.AbstractElement): void {
        const { $container: within } = feature;
        // A mark that is one value among others, as the comma of `mark 7, 12` is, stands in the tree.
        if (outOfTree.has(tokenType.name) && !GrammarAST.isAssignment(within) && !GrammarAST.isAlternatives(within)) this.wrapper.wrapConsume(index, tokenType);
        else super.consume(index, tokenType, feature);
    }

    override parse<T extends AstNode>(input: string, options?: ParserOptions): ParseResult<T> {
        const result = super.parse<T>(input, options);
        fitLists(result.value);
        return result;
    }
}

/** A list that grew item by item has room for 16 more: a sixth of a large programme's memory. */
function fitLists(node: AstNode): void {
    const properties = node as unknown as Record<string, unknown>;
    for (const name in properties) {
        if (name.startsWith('$')) continue;
        const value = properties[name];
        if (Array.isArray(value)) {
            if (value.length === 0) continue;
            properties[name] = value.slice();
            for (const item of value) if (isAstNode(item)) fitLists(item);
        } else if (isAstNode(value)) {
            fitLists(value);
        }
    }
}

export function createLineParser(services: LangiumCoreServices): LangiumParser {
    const parser = createParser(services.Grammar, new LineParser(services), services.parser.Lexer.definition);
    parser.finalize();
    return parser;
}
