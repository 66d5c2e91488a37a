import type { GrammarAutomaton, TokenSymbol } from '@haversack/language/lexer/automaton';
import type { DraftToken } from '@haversack/language/lexer/fit-line';
import type { ReadingProblem } from '@haversack/language/lexer/problems';
import { readLines } from '@haversack/language/lexer/read-lines';
import { linesOf, type Line } from '@haversack/language/lexer/scan';
import type { TokenSink } from '@haversack/language/lexer/token-list';

/** A line of a file as its layout goes: what it is, and where it stands by what the lexer read. */
export interface LayoutLine {
    line: Line;
    kind: 'blank' | 'comment' | 'statement' | 'prose' | 'unread';
    /** How many blocks are open around a statement; for other lines, around the last statement above. */
    depth: number;
    /** Of a statement, up to the end of its line; the first of its prose is the last that counts. */
    tokens: DraftToken[];
    /** Where the comment behind a statement begins. */
    commentAt?: number;
    /** The lexer found that the line does not stand or read as it should. */
    broken: boolean;
    /** The next statement below. */
    next?: LayoutLine;
}

/** What a file says, wherever its words stand: two files that say the same have equal ones. */
export interface Said {
    /** Tokens and comments, each after the name of its kind, and codes of problems. */
    words: string[];
}

export interface Layout extends Said {
    lines: LayoutLine[];
    problems: ReadingProblem[];
}

/** Problems that leave a line whole where it stands. */
const harmless = new Set<ReadingProblem['code']>(['said-twice', 'open-brace', 'name-in-braces']);

export function readLayout(text: string, automaton: GrammarAutomaton): Layout {
    const reader = new LayoutReader(text);
    const { problems, unreadable } = readLines(text, automaton, reader);
    for (const { code, line } of problems) if (!harmless.has(code)) reader.lines[line - 1]!.broken = true;
    let depth = 0;
    for (const line of reader.lines) {
        if (line.kind === 'statement') depth = line.depth;
        else line.depth = depth;
    }
    let next: LayoutLine | undefined;
    for (const line of reader.lines.toReversed()) {
        line.next = next;
        if (line.kind === 'statement') next = line;
    }
    return { lines: reader.lines, problems, words: [...reader.words, ...problems.map(({ code }) => code), ...unreadable] };
}

/** What a text says, to compare it with another layout of the same. */
export function saidBy(text: string, automaton: GrammarAutomaton): Said {
    const words: string[] = [];
    const { problems, unreadable } = readLines(text, automaton, {
        add: ({ symbol, text: word }) => { words.push(symbol, word); },
        addEmpty: symbol => { words.push(symbol); },
        addComment: (start, line) => { words.push(commentWords(text, start, line)); }
    });
    return { words: [...words, ...problems.map(({ code }) => code), ...unreadable] };
}

export function saysTheSame(one: Said, other: Said): boolean {
    return one.words.length === other.words.length && one.words.every((word, index) => word === other.words[index]);
}

function commentWords(text: string, start: number, line: Line): string {
    return text.slice(start, line.end).trimEnd();
}

class LayoutReader implements TokenSink {
    readonly lines: LayoutLine[];
    readonly words: string[] = [];
    private depth = 0;
    /** The line of the statement that is being read. */
    private statement: LayoutLine | undefined;

    constructor(private readonly text: string) {
        this.lines = linesOf(text).map(line => ({ line, kind: line.content === line.end ? 'blank' : 'unread', depth: 0, tokens: [], broken: false }));
    }

    add(draft: DraftToken, line: Line): void {
        this.words.push(draft.symbol, draft.text);
        const at = this.lines[line.number]!;
        if (!this.statement) {
            this.statement = at;
            at.kind = 'statement';
            at.depth = this.depth;
        }
        if (at === this.statement) at.tokens.push(draft);
        else at.kind = 'prose';
    }

    addEmpty(symbol: 'EOL' | 'INDENT' | 'DEDENT'): void {
        this.words.push(symbol);
        if (symbol === 'INDENT') this.depth++;
        else if (symbol === 'DEDENT') this.depth--;
        else this.statement = undefined;
    }

    addComment(start: number, line: Line): void {
        this.words.push(commentWords(this.text, start, line));
        const at = this.lines[line.number]!;
        if (start === line.content) at.kind = 'comment';
        else at.commentAt = start;
    }
}

/** The words of the language that a statement begins with, such as `on hand`. */
export function headOf({ tokens }: LayoutLine): string {
    const words: TokenSymbol[] = [];
    for (const { symbol } of tokens) {
        if (!/^[a-z]/.test(symbol)) break;
        words.push(symbol);
    }
    return words.join(' ');
}
