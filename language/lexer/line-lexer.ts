import type { TokenType, TokenTypeDictionary } from 'chevrotain';
import type { Lexer, LexerResult, LexingReport, LangiumCoreServices } from 'langium';
import { GrammarAutomaton } from './automaton.js';
import type { ReadingProblem } from './problems.js';
import { readLines } from './read-lines.js';
import { TokenList } from './token-list.js';

/** What the lexer tells besides tokens. */
export interface ReadingReport extends LexingReport {
    problems: ReadingProblem[];
    /** Words in lines that could not be read. */
    unreadable: string[];
}

/**
 * Reads a file line by line along the grammar's automaton. A line that does not fit is mended or left out with one
 * message, so the parser behind only ever sees lines that fit: one broken line costs that line.
 */
export class LineLexer implements Lexer {
    readonly definition: TokenTypeDictionary = {};
    readonly automaton: GrammarAutomaton;

    constructor(services: LangiumCoreServices) {
        const vocabulary = services.parser.TokenBuilder.buildTokens(services.Grammar) as TokenType[];
        for (const type of vocabulary) this.definition[type.name] = type;
        this.automaton = new GrammarAutomaton(services.Grammar);
    }

    tokenize(text: string): LexerResult {
        const list = new TokenList(text, this.definition);
        const { problems, unreadable } = readLines(text, this.automaton, list);
        const report: ReadingReport = { diagnostics: [], problems, unreadable };
        return { tokens: list.tokens, hidden: list.hidden, errors: [], report };
    }
}

