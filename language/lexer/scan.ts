/** One word, number, string or mark in a line, before the grammar has said what it is there. */
export interface Piece {
    kind: 'word' | 'number' | 'fraction' | 'percent' | 'date' | 'clock' | 'string' | 'mark' | 'junk';
    text: string;
    /** Offset in the file. */
    start: number;
}

// Every pattern is a simple loop over one class of characters or a fixed shape: linear in the length of the line.
type Pattern = [Piece['kind'], RegExp];
const patterns: Pattern[] = [
    ['string', /"[^"\r\n]*"|“[^”\r\n]*”/y],
    ['date', /\d{4}-\d{2}-\d{2}(?![\p{L}\p{N}-])/uy],
    ['clock', /\d{1,2}:\d{2}(?![\p{L}\p{N}:])/uy],
    ['fraction', /\d+\/\d+(?![\p{L}\p{N}/.])/uy],
    ['percent', /\d+(?:\.\d+)?%/y],
    ['number', /\d+(?:\.\d+)?(?![\p{L}\p{N}\-.])/uy],
    ['word', /[\p{L}\p{M}\p{N}_](?:[\p{L}\p{M}\p{N}_'’-]|\.(?=[\p{L}\p{N}]))*/uy],
    ['mark', /[,:(){}/.]/y],
    ['junk', /[^\s\p{L}\p{M}\p{N}_,:(){}/."“#]+|["“#\p{M}]/uy]
];

/** Which patterns can begin with an ASCII character; every other character is tried with all of them. */
const byFirst: readonly Pattern[][] = Array.from({ length: 128 }, (_, code) => {
    const char = String.fromCharCode(code);
    if (/[a-z_]/i.test(char)) return patterns.filter(([kind]) => kind === 'word');
    return /\d/.test(char) ? patterns.filter(([kind]) => !['string', 'mark', 'junk'].includes(kind)) : patterns.filter(([kind]) => ['string', 'mark', 'junk'].includes(kind));
});

/** White space within a line, in every script: an ideographic space steps in like any other. */
export const isBlank = (code: number): boolean => code === 32 || code === 9 || code === 11 || code === 12 || code === 0xa0 || (code >= 0x1680 && farBlank(code));

function farBlank(code: number): boolean {
    return (code >= 0x2000 && code <= 0x200a) || code === 0x3000 || code === 0x2028 || code === 0x2029 || code === 0x202f || code === 0x205f || code === 0x1680 || code === 0xfeff;
}

/** The first piece at or after `from`, or none when only blanks or a comment are left before `end`. */
export function pieceAt(text: string, from: number, end: number): Piece | undefined {
    let start = from;
    while (start < end && isBlank(text.charCodeAt(start))) start++;
    if (start >= end || isComment(text, start)) return undefined;
    for (const [kind, pattern] of byFirst[text.charCodeAt(start)] ?? patterns) {
        pattern.lastIndex = start;
        const found = pattern.exec(text);
        if (found && start + found[0].length <= end) return { kind, text: found[0], start };
    }
    return { kind: 'junk', text: text.slice(start, start + 1), start };
}

/** `#` begins a comment at the start of a line and after a blank. */
export function isComment(text: string, at: number): boolean {
    return text.charCodeAt(at) === 35 && (at === 0 || isBlank(text.charCodeAt(at - 1)) || text[at - 1] === '\n' || text[at - 1] === '\r');
}

const namePattern = /^[\p{Ll}\p{Lo}\p{N}][\p{Ll}\p{Lo}\p{M}\p{N}]*(?:-[\p{Ll}\p{Lo}\p{M}\p{N}]+)*$/u;

/** True for a word that may be a name: lower-case letters and digits with single hyphens, not a bare number. */
export function isName(word: string): boolean {
    return namePattern.test(word) && /\D/.test(word);
}

/** The name that somebody probably meant: "Pan Balance!" gives "pan-balance"; empty when nothing is left. */
export function nameFrom(words: string): string {
    return words.toLowerCase().replace(/['’]/g, '').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
}

export interface Line {
    /** From 0. */
    number: number;
    start: number;
    /** Offset after the last character before the line break. */
    end: number;
    /** Offset of the first character that is no blank; equals `end` in a blank line. */
    content: number;
    /** Two measures of the indentation: tabs as one column and as eight. Lines compare alike in both or are mixed. */
    narrow: number;
    wide: number;
}

/** All lines of a text. A line ends at LF, CRLF or CR. */
export function linesOf(text: string): Line[] {
    const lines: Line[] = [];
    let start = 0;
    for (let number = 0; start <= text.length; number++) {
        let end = start;
        while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
        let content = start;
        let narrow = 0;
        let wide = 0;
        for (; content < end && isBlank(text.charCodeAt(content)); content++) {
            const code = text.charCodeAt(content);
            if (code === 0xfeff) continue;
            narrow += 1;
            wide = code === 9 ? wide + 8 - (wide % 8) : wide + 1;
        }
        lines.push({ number, start, end, content, narrow, wide });
        start = text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? end + 2 : end + 1;
    }
    return lines;
}
