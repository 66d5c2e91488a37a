import type { GrammarAutomaton, GrammarState } from './automaton.js';
import { fitLine, isWhole, proseTokens, type BraceProblem, type DraftToken, type Fit } from './fit-line.js';
import { mendLine } from './mend-line.js';
import * as tell from './messages.js';
import { OpenBlocks, type Block, type Slip, type Spot } from './open-blocks.js';
import type { ReadingProblem } from './problems.js';
import { isComment, linesOf, type Line } from './scan.js';
import type { TokenSink } from './token-list.js';

/** Words that a line of ordinary text may well begin with: such a line goes on from the text above. */
const everydayWords = new Set(['from', 'in', 'at', 'off', 'on', 'draft', 'parts', 'keeps', 'spare', 'move', 'split', 'words']);

/** As many messages about braces as one line can use. */
const mostBraces = 20;

export function readLines(text: string, automaton: GrammarAutomaton, list: TokenSink): { problems: ReadingProblem[]; unreadable: string[] } {
    const reader = new Reader(text, automaton, list);
    reader.read();
    return { problems: reader.problems, unreadable: [...reader.unreadable] };
}

/** Where a place in a line stands in the grammar: what completion asks. */
export interface LineContext {
    line: Line;
    /** Each spot where the line may stand, the one that its indentation says first. */
    spots: readonly Spot[];
    /** True when the line goes on from prose above it. */
    continuesProse: boolean;
}

/** Reads the lines above a line as the lexer does and tells where that line stands. */
export function contextOfLine(text: string, lineNumber: number, automaton: GrammarAutomaton): LineContext | undefined {
    return new Reader(text, automaton, { add: nothing, addEmpty: nothing, addComment: nothing }).contextOf(lineNumber);
}

function nothing(): void { /* the tokens are not asked for */ }

class Reader {
    readonly problems: ReadingProblem[] = [];
    readonly unreadable = new Set<string>();
    private readonly lines: Line[];
    private readonly blocks: OpenBlocks;
    /** While set, deeper lines belong to a statement that could not be read. */
    private lostColumn: number | undefined;
    /** The line whose prose ran to its end, so that a stray line after it can be told to go deeper. */
    private proseBefore = false;
    private proseColumn = 0;
    private lastLost: { column: number; code: ReadingProblem['code'] } | undefined;
    private reportedLine = 0;

    constructor(private readonly text: string, automaton: GrammarAutomaton, private readonly list: TokenSink) {
        this.lines = linesOf(text);
        this.blocks = new OpenBlocks(text, this.lines, automaton.start);
    }

    read(): void {
        for (let index = 0; index < this.lines.length;) index = this.readStatement(index);
        this.closeTo(1);
    }

    contextOf(number: number): LineContext | undefined {
        const line = this.lines[number];
        if (!line) return undefined;
        const below = this.lines.splice(number);
        for (let index = 0; index < this.lines.length;) index = this.readStatement(index);
        // One by one: a file may have more lines than a call takes arguments.
        for (const one of below) this.lines.push(one);
        return { line, spots: this.blocks.spotsFor(line), continuesProse: this.proseBefore && line.wide > this.proseColumn };
    }

    /** Reads the statement that begins on this line; returns the index of the line after it. */
    private readStatement(index: number): number {
        const line = this.lines[index]!;
        if (line.content === line.end) return index + 1;
        if (isComment(this.text, line.content)) {
            this.list.addComment(line.content, line);
            return index + 1;
        }
        if (this.lostColumn !== undefined) {
            if (line.wide > this.lostColumn) {
                this.lose(line);
                return index + 1;
            }
            this.lostColumn = undefined;
        }
        if (this.blocks.mixesTabs(line)) this.report(tell.tabsAndSpaces(line));
        const { spot: meant, slip } = this.blocks.meantSpot(line);
        const straight = fitLine(this.text, line, line.content, meant.state);
        if (isWhole(straight)) {
            const inner = this.blocks.slippedOutOf(index, meant, straight);
            if (inner) {
                this.report(tell.misplaced(line, inner.spot.head, inner.fit, this.blocks.columnOf(inner.spot)));
                return this.take(index, inner.spot, inner.fit);
            }
            this.letPass(line, slip);
            return this.take(index, meant, straight);
        }
        for (const other of this.blocks.otherSpots(meant)) {
            const fit = fitLine(this.text, line, line.content, other.state);
            if (!isWhole(fit) || fit.tokens[0]!.symbol === 'NAME' && !other.opens && other.depth < this.blocks.depth) continue;
            this.report(tell.misplaced(line, other.head, fit, this.blocks.columnOf(other)));
            return this.take(index, other, fit);
        }
        this.letPass(line, slip);
        const mended = mendLine(this.text, line, straight);
        if (mended) {
            this.report(tell.mended(this.text, line, meant.head, straight, mended));
            return this.take(index, meant, mended.fit);
        }
        const problem = tell.unreadable(this.text, line, meant.head, straight, this.proseBefore ? this.proseColumn : undefined);
        // Lines side by side that are lost for the same reason have one cause, such as a missing `materials` above them.
        const sameCause = straight.tokens.length === 0 && this.lastLost?.column === line.wide && this.lastLost.code === problem.code;
        if (!sameCause) this.report(problem);
        this.lastLost = straight.tokens.length === 0 ? { column: line.wide, code: problem.code } : undefined;
        this.lose(line);
        this.lostColumn = line.wide;
        return index + 1;
    }

    /** Puts a fitted line into the token list, with the prose that follows it and the block tokens before it. */
    private take(index: number, spot: Spot, fit: Fit): number {
        const line = this.lines[index]!;
        if (spot.opens) {
            this.list.addEmpty('INDENT');
            const column = this.blocks.columnForNew(index, fit);
            if (column !== line.wide) this.report(tell.misplaced(line, spot.head, fit, column));
            this.blocks.open(spot, column);
        } else {
            this.closeTo(spot.depth + 1);
        }
        const block = this.blocks.innermost;
        for (const token of fit.tokens) this.list.add(token, line);
        this.noteSingles(block, fit, line);
        let next = index + 1;
        let state = fit.state;
        if (fit.prose) {
            state = this.addProse(line, fit.at, line.end, state);
            next = this.addContinuation(index, state, state.move('EOL')!);
        } else {
            this.addTrailingComment(fit, line);
        }
        this.lastLost = undefined;
        this.proseBefore = fit.prose;
        this.proseColumn = line.wide;
        this.list.addEmpty('EOL');
        block.state = state.move('EOL')!;
        block.lastHead = block.state.accepts('INDENT') ? tell.headOf(block.head, fit.tokens) : '';
        return next;
    }

    private addTrailingComment(fit: Fit, line: Line): void {
        let at = fit.at;
        while (at < line.end && !isComment(this.text, at)) at++;
        if (at < line.end && fit.stopped === undefined) this.list.addComment(at, line);
    }

    /** Of several such lines side by side the first is told: they have one cause, such as a missing line above them. */
    private noteSingles(block: Block, fit: Fit, line: Line): void {
        const again = fit.singles.some(single => block.set.has(single));
        if (again && !block.lastWasAgain) this.report(tell.saidTwice(line, block.head, fit));
        block.lastWasAgain = again;
        for (const single of fit.singles) block.set.add(single);
    }

    private addProse(line: Line, from: number, end: number, state: GrammarState): GrammarState {
        const braces: BraceProblem[] = [];
        const tokens: DraftToken[] = proseTokens(this.text, from, end, braces);
        for (const token of tokens) {
            this.list.add(token, line);
            state = state.move(token.symbol)!;
        }
        for (const brace of braces.slice(0, mostBraces)) this.problems.push(tell.brace(this.text, line, brace));
        return state;
    }

    /** Prose goes on over deeper lines until one that begins a statement; comments between change nothing. */
    private addContinuation(index: number, state: GrammarState, after: GrammarState): number {
        // A line that slipped to the left does not make text of the lines beside it.
        const column = Math.max(this.lines[index]!.wide, this.blocks.innermost.column);
        let next = index + 1;
        for (let at = next; at < this.lines.length; at++) {
            const line = this.lines[at]!;
            if (line.content === line.end || isComment(this.text, line.content)) continue;
            if (line.wide <= column || this.beginsStatement(line, after)) break;
            for (const between of this.lines.slice(next, at)) {
                if (between.content < between.end) this.list.addComment(between.content, between);
            }
            this.addProse(line, line.content, line.end, state);
            next = at + 1;
        }
        return next;
    }

    /**
     * True when a deeper line is no text but a statement: `word:`, or `expect` and `help` without their colon, or a whole line
     * such as `activity two-bags 15 min` that has slipped to the right.
     */
    private beginsStatement(line: Line, after: GrammarState): boolean {
        const head = /^([a-z-]+)(?:[ \t]+[a-z]+)?[ \t]*(:?)|$/u.exec(this.text.slice(line.content, Math.min(line.end, line.content + 40)))!;
        if (!head[1]) return false;
        const under = after.move('INDENT');
        if (under?.accepts(head[1]) && /^[ \t]+\p{Lu}/u.test(this.text.slice(line.content + head[1].length, line.end))) return true;
        const states = [under, after];
        let outer: GrammarState | undefined = after;
        for (let depth = this.blocks.depth; depth > 0; depth--) {
            outer = outer?.move('DEDENT');
            states.push(outer);
        }
        return states.some(state => {
            if (!state?.accepts(head[1]!)) return false;
            const fit = fitLine(this.text, line, line.content, state);
            return fit.prose || (isWhole(fit) && !everydayWords.has(head[1]!));
        });
    }

    /** The line is read where it stands, though not in a column of its block; its neighbours in the same column need no second message. */
    private letPass(line: Line, slip: Slip | undefined): void {
        if (!slip) return;
        this.report(slip.problem);
        slip.block.alsoAt = line.wide;
    }

    /** One line, one message about its shape. */
    private report(problem: ReadingProblem): void {
        if (this.reportedLine === problem.line) return;
        this.reportedLine = problem.line;
        this.problems.push(problem);
    }

    private closeTo(depth: number): void {
        for (let closed = this.blocks.close(depth); closed > 0; closed--) this.list.addEmpty('DEDENT');
    }

    private lose(line: Line): void {
        for (const [word] of this.text.slice(line.content, line.end).matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)) this.unreadable.add(word);
    }
}
