import type { TokenType } from 'chevrotain';
import { createParser, LangiumParser, type GrammarAST, type LangiumCoreServices } from 'langium';

const emptyTokens = new Set(['EOL', 'INDENT', 'DEDENT']);

/** Langium's parser, which keeps the empty tokens between lines out of the tree: nothing asks for them there. */
class LineParser extends LangiumParser {
    override consume(index: number, tokenType: TokenType, feature: GrammarAST.AbstractElement): void {
        if (emptyTokens.has(tokenType.name)) this.wrapper.wrapConsume(index, tokenType);
        else super.consume(index, tokenType, feature);
    }
}

export function createLineParser(services: LangiumCoreServices): LangiumParser {
    const parser = createParser(services.Grammar, new LineParser(services), services.parser.Lexer.definition);
    parser.finalize();
    return parser;
}
