import type { LangiumDocument } from 'langium';
import type { Position, Range, SelectionRange, SelectionRangeParams } from 'vscode-languageserver-protocol';
import type { GrammarAutomaton } from '@haversack/language/lexer/automaton';
import { fitLine } from '@haversack/language/lexer/fit-line';
import { contextOfLine } from '@haversack/language/lexer/read-lines';
import { isComment, linesOf, type Line } from '@haversack/language/lexer/scan';

/** A piece of a text between two offsets. */
interface Piece {
    from: number;
    to: number;
}

/** More places than these are no cursors of a person's. */
const mostPlaces = 100;
/** Nobody grows a selection through more blocks than these; what lies further out is the file. */
const mostBlocks = 200;

/**
 * What a growing selection takes in at each place: the word, the words in quotation marks or braces, the sentence, the paragraph, the
 * line, the line with its block, the block around it, the file. Read off the text and its indentation, so that it holds where lines are
 * broken too.
 */
export function selectionRanges(document: LangiumDocument, { positions }: Pick<SelectionRangeParams, 'positions'>, automaton: GrammarAutomaton): SelectionRange[] {
    const page = new Page(document, automaton);
    return positions.slice(0, mostPlaces).map(position => page.at(position));
}

class Page {
    private readonly text: string;
    private readonly lines: readonly Line[];

    constructor(private readonly document: LangiumDocument, private readonly automaton: GrammarAutomaton) {
        this.text = document.textDocument.getText();
        this.lines = linesOf(this.text);
    }

    at(position: Position): SelectionRange {
        const offset = this.document.textDocument.offsetAt(position);
        const number = this.document.textDocument.positionAt(offset).line;
        const line = this.lines[number];
        const inside = !line || line.content === line.end ? [] : isComment(this.text, line.content) ? [wordAt(this.text, offset, line), contentOf(line), ...this.remarksAround(line)]
            : [...this.inStatement(line, offset), ...this.blocksAround(line)];
        const pieces = [...inside, { from: 0, to: this.text.length }];
        // Each takes in the one before and is larger; what lies beside the place is none of it.
        const growing = pieces.reduce<Piece[]>((found, piece) => {
            const last = found.at(-1) ?? { from: offset, to: offset };
            const grows = piece.from <= last.from && piece.to >= last.to && (found.length === 0 || piece.from < last.from || piece.to > last.to);
            return grows ? [...found, piece] : found;
        }, []);
        return growing.reduceRight<SelectionRange | undefined>((parent, piece) => ({ range: this.rangeOf(piece), ...(parent && { parent }) }), undefined)!;
    }

    /** From the word to the whole statement without what stands under it. */
    private inStatement(line: Line, offset: number): Piece[] {
        const context = contextOfLine(this.text, line.number, this.automaton);
        const begins = context?.continuesProse ? this.aboveProse(line) : line;
        const spot = (begins === line ? context : contextOfLine(this.text, begins.number, this.automaton))?.spots[0];
        const fit = spot && fitLine(this.text, begins, begins.content, spot.state);
        const within = [wordAt(this.text, offset, line), ...between(this.text, offset, line)];
        if (!fit?.prose) return [...within, contentOf(line)];
        const last = this.lastOfProse(begins);
        const prose = trimmed(this.text, { from: fit.at, to: last.end });
        const statement = { from: begins.content, to: last.end };
        const isInProse = offset >= prose.from && offset <= prose.to;
        return isInProse ? [...within, sentenceAt(this.text, offset, prose), prose, statement] : [...within, statement];
    }

    /** The line whose prose goes on in this one: the nearest further out that begins a statement. */
    private aboveProse(line: Line): Line {
        let { wide } = line;
        for (let number = line.number - 1; number >= 0; number--) {
            const above = this.lines[number]!;
            if (above.content === above.end || isComment(this.text, above.content) || above.wide >= wide) continue;
            if (this.beginsProse(above)) return above;
            ({ wide } = above);
        }
        return line;
    }

    private lastOfProse(begins: Line): Line {
        let last = begins;
        for (const line of this.lines.slice(begins.number + 1)) {
            if (line.content === line.end || isComment(this.text, line.content)) continue;
            // A statement under prose, such as `expect:` under `ask:`, is none of it.
            if (line.wide <= begins.wide || this.beginsProse(line)) break;
            last = line;
        }
        return last;
    }

    private beginsProse({ content, end }: Line): boolean {
        return /^[a-z-]+(?: [a-z]+)?[ \t]*:/.test(this.text.slice(content, Math.min(end, content + 40)));
    }

    /** The line with its block, then each block around it with its first line. */
    private blocksAround(line: Line): Piece[] {
        const blocks: Piece[] = [this.withBlock(line)];
        let { wide } = line;
        for (let number = line.number - 1; number >= 0 && wide > 0 && blocks.length < mostBlocks; number--) {
            const above = this.lines[number]!;
            if (above.content === above.end || isComment(this.text, above.content) || above.wide >= wide) continue;
            ({ wide } = above);
            blocks.push(this.withBlock(above));
        }
        return blocks;
    }

    private withBlock(head: Line): Piece {
        let last = head;
        for (const line of this.lines.slice(head.number + 1)) {
            if (line.content === line.end) continue;
            if (line.wide <= head.wide) break;
            last = line;
        }
        return { from: head.content, to: last.end };
    }

    /** Remarks on lines that follow one another are one. */
    private remarksAround(line: Line): Piece[] {
        let first = line;
        let last = line;
        const isRemark = (other: Line | undefined): other is Line => other !== undefined && other.content < other.end && isComment(this.text, other.content);
        for (let above = this.lines[first.number - 1]; isRemark(above); above = this.lines[first.number - 1]) first = above;
        for (let below = this.lines[last.number + 1]; isRemark(below); below = this.lines[last.number + 1]) last = below;
        return [{ from: first.content, to: last.end }, ...this.blocksAround(line).slice(1)];
    }

    private rangeOf({ from, to }: Piece): Range {
        return { start: this.document.textDocument.positionAt(from), end: this.document.textDocument.positionAt(to) };
    }
}

const contentOf = ({ content, end }: Line): Piece => ({ from: content, to: end });

/** The name, number or word at a place; the place itself where none stands there. */
function wordAt(text: string, offset: number, line: Line): Piece {
    const isPart = (at: number): boolean => at >= line.content && at < line.end && /[\p{L}\p{M}\p{N}_-]|[\uD800-\uDFFF]/u.test(text[at]!);
    let from = offset;
    let to = offset;
    while (isPart(from - 1)) from--;
    while (isPart(to)) to++;
    return { from, to };
}

/** What stands between the quotation marks, braces or brackets around a place in a line, and the same with them. */
function between(text: string, offset: number, { content, end }: Line): Piece[] {
    const found: Piece[] = [];
    // No pattern takes the mark that begins it once more before its end, so a line of nothing but such marks is read in one go.
    for (const piece of text.slice(content, end).matchAll(/"[^"]*"|“[^“”]*”|\{[^{}]*\}|\([^()]*\)|\*\*[^*]+\*\*|\*[^*]+\*/g)) {
        const from = content + piece.index;
        const to = from + piece[0].length;
        if (from <= offset && offset <= to) found.push({ from: from + 1, to: to - 1 }, { from, to });
    }
    return found;
}

/** The sentence at a place: up to a mark that ends one and a blank behind it. */
function sentenceAt(text: string, offset: number, prose: Piece): Piece {
    let from = prose.from;
    for (const end of text.slice(prose.from, prose.to).matchAll(/[.?!…]["”’)]?(?=\s)/g)) {
        const at = prose.from + end.index + end[0].length;
        if (at >= offset) return trimmed(text, { from, to: at });
        from = at;
    }
    return trimmed(text, { from, to: prose.to });
}

function trimmed(text: string, { from, to }: Piece): Piece {
    while (from < to && /\s/.test(text[from]!)) from++;
    while (to > from && /\s/.test(text[to - 1]!)) to--;
    return { from, to };
}
