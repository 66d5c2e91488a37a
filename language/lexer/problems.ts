/** What the lexer found wrong in a line. `code` is explained in checks/reading.ts. */
export interface ReadingProblem {
    code: 'unknown-statement' | 'unfinished-line' | 'wrong-place' | 'indentation' | 'tabs-and-spaces' | 'said-twice'
        | 'name-spelling' | 'open-brace' | 'name-in-braces' | 'missing-colon';
    message: string;
    severity: 'error' | 'warning';
    /** Offset in the file. */
    offset: number;
    length: number;
    /** From 1, as the parser's own errors count. */
    line: number;
    column: number;
    /** A replacement that would mend it: `text` for the `length` characters at `offset`. */
    mend?: { title: string; offset: number; length: number; text: string };
}
