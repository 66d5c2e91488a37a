import type { IToken, TokenTypeDictionary } from 'chevrotain';
import type { TokenSymbol } from './automaton.js';
import type { DraftToken } from './fit-line.js';
import type { Line } from './scan.js';

/** Where the lexer puts what it reads. */
export interface TokenSink {
    add(draft: DraftToken, line: Line): void;
    addEmpty(symbol: 'EOL' | 'INDENT' | 'DEDENT'): void;
    addComment(start: number, line: Line): void;
}

/** Collects the tokens of a file in the form that the parser takes (lines and columns from 1, ends inclusive). */
export class TokenList implements TokenSink {
    readonly tokens: IToken[] = [];
    readonly hidden: IToken[] = [];
    private endOffset = 0;
    private endLine = 1;
    private endColumn = 1;

    constructor(private readonly text: string, private readonly types: TokenTypeDictionary) {}

    add(draft: DraftToken, line: Line): void {
        const token = this.make(draft.symbol, draft.text, draft.start, line);
        this.tokens.push(token);
        this.endOffset = draft.start + draft.text.length;
        this.endLine = line.number + 1;
        this.endColumn = this.endOffset - line.start + 1;
    }

    /** EOL, INDENT or DEDENT: an empty token at the end of the last real one, so that no block reaches past its text. */
    addEmpty(symbol: 'EOL' | 'INDENT' | 'DEDENT'): void {
        const tokenType = this.types[symbol]!;
        this.tokens.push({
            image: '', tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!,
            startOffset: this.endOffset, endOffset: this.endOffset - 1,
            startLine: this.endLine, endLine: this.endLine,
            startColumn: this.endColumn, endColumn: this.endColumn - 1
        });
    }

    addComment(start: number, line: Line): void {
        this.hidden.push(this.make('COMMENT', this.text.slice(start, line.end), start, line));
    }

    private make(symbol: TokenSymbol, image: string, start: number, line: Line): IToken {
        const tokenType = this.types[symbol];
        if (!tokenType) throw new Error(`No token type ${symbol}.`);
        const column = start - line.start + 1;
        return {
            image, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!,
            startOffset: start, endOffset: start + image.length - 1,
            startLine: line.number + 1, endLine: line.number + 1,
            startColumn: column, endColumn: column + image.length - 1
        };
    }
}
