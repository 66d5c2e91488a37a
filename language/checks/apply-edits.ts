import type { Position, TextEdit } from 'vscode-languageserver-types';
import type { Edit } from './check.js';

/** Edits of one file as text edits of the document as it stands: line breaks and indentation are those of the document. */
export function textEditsFor(text: string, edits: readonly Edit[]): TextEdit[] {
    const page = new Page(text);
    return edits.map(edit => {
        if ('replace' in edit) return { range: edit.replace, newText: edit.text };
        if ('removeLines' in edit) return page.withoutLines(...edit.removeLines);
        const like = edit.like ?? edit.afterLine;
        const [head = '', ...rest] = edit.lines;
        const open = edit.until === undefined ? undefined : page.lineThatSays(head, like + 1, edit.until);
        return open === undefined ? page.withLines(edit.afterLine, like, edit.deeper, edit.lines) : page.withLines(open, open, 0, rest);
    });
}

/** The text with all edits of its file made. Edits do not overlap; those at one place are made in their order. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
    const page = new Page(text);
    const changes = textEditsFor(text, edits).map(({ range, newText }, order) => ({
        from: page.offsetOf(range.start), to: page.offsetOf(range.end), newText, order
    }));
    changes.sort((a, b) => a.from - b.from || a.order - b.order);
    let result = '';
    let at = 0;
    for (const { from, to, newText } of changes) {
        result += text.slice(at, from) + newText;
        at = Math.max(at, to);
    }
    return result + text.slice(at);
}

class Page {
    private readonly lines: { start: number; text: string }[] = [];
    private readonly lineBreak: string;

    constructor(private readonly text: string) {
        const breaks = /\r\n|\r|\n/g;
        let start = 0;
        for (const found of text.matchAll(breaks)) {
            this.lines.push({ start, text: text.slice(start, found.index) });
            start = found.index + found[0].length;
        }
        this.lines.push({ start, text: text.slice(start) });
        this.lineBreak = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
    }

    offsetOf({ line, character }: Position): number {
        const found = this.lines[line];
        return found ? Math.min(found.start + character, found.start + found.text.length) : this.text.length;
    }

    /** The first line from one to another that says just this, a remark aside. */
    lineThatSays(words: string, first: number, last: number): number | undefined {
        const found = this.lines.slice(first, last + 1).findIndex(({ text }) => withoutRemark(text).trim() === words);
        return found < 0 ? undefined : first + found;
    }

    withoutLines(first: number, last: number): TextEdit {
        const end = last + 1 < this.lines.length ? { line: last + 1, character: 0 } : this.endOf(last);
        // The last line of a file has no line break of its own: the one before it goes.
        const start = last + 1 < this.lines.length || first === 0 ? { line: first, character: 0 } : this.endOf(first - 1);
        return { range: { start, end }, newText: '' };
    }

    withLines(afterLine: number, like: number, deeper: number, lines: readonly string[]): TextEdit {
        const step = this.stepUnder(like);
        const indent = this.indentOf(like) + step.repeat(deeper);
        const fresh = lines.map(line => (line === '' ? '' : indent + line.replace(/^(?: {2})+/, blanks => step.repeat(blanks.length / 2))));
        const last = this.lines.length - 1;
        if (afterLine + 1 <= last) {
            const at = { line: afterLine + 1, character: 0 };
            return { range: { start: at, end: at }, newText: fresh.map(line => line + this.lineBreak).join('') };
        }
        const at = this.endOf(last);
        if (this.lines[last]!.text.trim() !== '') return { range: { start: at, end: at }, newText: fresh.map(line => this.lineBreak + line).join('') };
        // An empty file does not begin with an empty line.
        const whole = this.text.trim() === '' && fresh[0] === '' ? fresh.slice(1) : fresh;
        return { range: { start: { line: last, character: 0 }, end: at }, newText: whole.map(line => line + this.lineBreak).join('') };
    }

    private endOf(line: number): Position {
        return { line, character: this.lines[line]?.text.length ?? 0 };
    }

    private indentOf(line: number): string {
        return /^[\s\uFEFF]*/.exec(this.lines[line]?.text ?? '')![0].replace('\uFEFF', '');
    }

    /** What one level further in looks like under a line: as in its own block, or else as anywhere in the file. */
    private stepUnder(line: number): string {
        const own = this.indentOf(line);
        for (let at = line + 1; at < this.lines.length; at++) {
            const { text } = this.lines[at]!;
            if (text.trim() === '' || text.trimStart().startsWith('#')) continue;
            const indent = this.indentOf(at);
            if (indent.length > own.length && indent.startsWith(own)) return indent.slice(own.length);
            break;
        }
        const first = this.lines.find(({ text }, at) => text.trim() !== '' && !text.trimStart().startsWith('#') && this.indentOf(at) !== '');
        return first ? /^[^\S\r\n]+/.exec(first.text)![0] : '  ';
    }
}

function withoutRemark(line: string): string {
    const at = line.search(/\s#/);
    return at < 0 ? line : line.slice(0, at);
}
