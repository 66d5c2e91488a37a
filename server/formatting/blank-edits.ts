import { isBlank, type Line } from '@haversack/language/lexer/scan';

/** A change of nothing but blanks and line ends. Offsets are in the file, lines from 0. */
export interface BlankEdit {
    start: number;
    end: number;
    text: string;
    firstLine: number;
    /** The last line of which something changes. */
    lastLine: number;
    /** True where it changes how deep a line stands. */
    indents: boolean;
}

/** How one line shall look. What is undefined stays as it is. */
export interface WantedLine {
    line: Line;
    indent: string | undefined;
    /** Its words from the first to the last, as they shall stand apart. */
    words: string | undefined;
    /** Whether blanks at its end go. */
    trimmed: boolean;
    /** The line, blank, goes. */
    goes: boolean;
    /** A blank line comes before it. */
    blankBefore: boolean;
}

const byteOrderMark = 0xfeff;

/** The edits that make each line look as it shall: one for each run of blanks that changes. */
export function blankEdits(text: string, wanted: readonly WantedLine[], lastSaid: number, endLastLine: boolean): BlankEdit[] {
    const edits: BlankEdit[] = [];
    const usualEnd = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
    for (const [index, { line, goes, blankBefore, ...looks }] of wanted.entries()) {
        const begins = line.start === 0 && text.charCodeAt(0) === byteOrderMark ? 1 : line.start;
        const endOf = (other: Line | undefined): string => (other && text.slice(other.end, wanted[other.number + 1]?.line.start)) || usualEnd;
        if (goes && index < lastSaid) {
            edits.push({ start: begins, end: wanted[index + 1]!.line.start, text: '', firstLine: index, lastLine: index, indents: false });
            continue;
        }
        if (goes) continue;
        if (blankBefore) edits.push({ start: begins, end: begins, text: endOf(wanted[index - 1]?.line), firstLine: index, lastLine: index, indents: false });
        edits.push(...editsOfLine(text, { line, ...looks }, begins));
    }
    return [...edits, ...endOfFile(text, wanted, lastSaid, endLastLine, usualEnd)];
}

/** Lines after the last that says something go, and that one gets an end. */
function endOfFile(text: string, wanted: readonly WantedLine[], lastSaid: number, endLastLine: boolean, usualEnd: string): BlankEdit[] {
    const last = wanted[lastSaid]!.line;
    const below = wanted[lastSaid + 1];
    if (!below) return endLastLine ? [{ start: text.length, end: text.length, text: usualEnd, firstLine: lastSaid, lastLine: lastSaid, indents: false }] : [];
    if (!below.goes || below.line.start === text.length) return [];
    return [{ start: below.line.start, end: text.length, text: '', firstLine: last.number + 1, lastLine: wanted.length - 1, indents: false }];
}

function editsOfLine(text: string, { line, indent, words, trimmed }: Omit<WantedLine, 'goes' | 'blankBefore'>, begins: number): BlankEdit[] {
    const edits: BlankEdit[] = [];
    const put = (start: number, end: number, blanks: string): void => {
        edits.push({ start, end, text: blanks, firstLine: line.number, lastLine: line.number, indents: false });
    };
    if (line.content === line.end) {
        if (trimmed && begins < line.end) put(begins, line.end, '');
        return edits;
    }
    const indented = indent === undefined ? undefined : indentEdit(text, line, begins, indent);
    if (indented) edits.push(indented);
    if (words === undefined) return edits;
    let at = line.content;
    for (let index = 0; index < words.length || at < line.end;) {
        const blanks = blanksAt(words, index, words.length);
        const oldBlanks = blanksAt(text, at, line.end);
        const atEnd = index + blanks === words.length;
        if (at + oldBlanks === line.end !== atEnd || (!atEnd && words[index + blanks] !== text[at + oldBlanks])) return edits.filter(({ indents }) => indents);
        if (text.slice(at, at + oldBlanks) !== words.slice(index, index + blanks) && (!atEnd || trimmed)) put(at, at + oldBlanks, words.slice(index, index + blanks));
        index += blanks + 1;
        at += oldBlanks + 1;
    }
    return edits;
}

/** What gives a line another indentation, if it has another. Put in or taken out at the line's start: a cursor behind it stays with its words. */
export function indentEdit(text: string, line: Line, begins: number, indent: string): BlankEdit | undefined {
    const old = text.slice(begins, line.content);
    if (old === indent) return undefined;
    const [start, end, blanks] = indent.endsWith(old) ? [begins, begins, indent.slice(0, indent.length - old.length)]
        : old.endsWith(indent) ? [begins, line.content - indent.length, ''] : [begins, line.content, indent];
    return { start, end, text: blanks, firstLine: line.number, lastLine: line.number, indents: true };
}

function blanksAt(text: string, at: number, end: number): number {
    let length = 0;
    while (at + length < end && isBlank(text.charCodeAt(at + length))) length++;
    return length;
}

/** Blank lines that go one after another go in one edit. */
export function joinedEdits(edits: readonly BlankEdit[]): BlankEdit[] {
    const joined: BlankEdit[] = [];
    for (const edit of edits) {
        const last = joined[joined.length - 1];
        if (last && last.end === edit.start && last.text === '' && edit.text === '') joined[joined.length - 1] = { ...last, end: edit.end, lastLine: edit.lastLine };
        else joined.push(edit);
    }
    return joined;
}

export function withEdits(text: string, edits: readonly BlankEdit[]): string {
    const pieces: string[] = [];
    let at = 0;
    for (const { start, end, text: put } of edits) {
        pieces.push(text.slice(at, start), put);
        at = end;
    }
    return pieces.join('') + text.slice(at);
}
