import type { TokenType } from 'chevrotain';
import { createParser, GrammarAST, LangiumParser, type LangiumCoreServices } from 'langium';

/** The empty tokens between lines, and marks that begin or separate something but never end it. */
const outOfTree = new Set(['EOL', 'INDENT', 'DEDENT', ':', '{', ',', '(']);

/** Langium's parser, which keeps tokens out of the tree that nothing asks for there: they are a quarter of all. */
class LineParser extends LangiumParser {
    override consume(index: number, tokenType: TokenType, feature: GrammarAST.AbstractElement): void {
        if (outOfTree.has(tokenType.name) && !GrammarAST.isAssignment(feature.$container)) this.wrapper.wrapConsume(index, tokenType);
        else super.consume(index, tokenType, feature);
    }
}

export function createLineParser(services: LangiumCoreServices): LangiumParser {
    const parser = createParser(services.Grammar, new LineParser(services), services.parser.Lexer.definition);
    parser.finalize();
    return parser;
}
