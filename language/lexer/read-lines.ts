import type { GrammarAutomaton, GrammarState } from './automaton.js';
import { fitLine, isWhole, proseTokens, type BraceProblem, type DraftToken, type Fit } from './fit-line.js';
import { mendLine } from './mend-line.js';
import * as tell from './messages.js';
import type { ReadingProblem } from './problems.js';
import { isComment, linesOf, type Line } from './scan.js';
import type { TokenSink } from './token-list.js';

/** A block that is open: its statements begin at one column. */
interface Block {
    /** Column of its statements, tabs counted to eight. */
    column: number;
    /** What the block belongs to, as facts/statements.ts calls it. */
    head: string;
    /** What may come next in it. */
    state: GrammarState;
    /** What the last statement in it is called, should it open a block. */
    lastHead: string;
    /** Properties set already that may be set only once. */
    set: Set<string>;
}

/** Where a line may stand: in an open block, or in a new one under the last statement. */
export interface Spot {
    depth: number;
    opens: boolean;
    state: GrammarState;
    head: string;
}

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
    private readonly blocks: Block[];
    /** While set, deeper lines belong to a statement that could not be read. */
    private lostColumn: number | undefined;
    /** The line whose prose ran to its end, so that a stray line after it can be told to go deeper. */
    private proseBefore = false;
    private proseColumn = 0;
    private reportedLine = 0;

    constructor(private readonly text: string, automaton: GrammarAutomaton, private readonly list: TokenSink) {
        this.lines = linesOf(text);
        this.blocks = [{ column: 0, head: 'file', state: automaton.start, lastHead: '', set: new Set() }];
    }

    private get innermost(): Block {
        return this.blocks[this.blocks.length - 1]!;
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
        this.lines.push(...below);
        return { line, spots: this.spotsFor(line), continuesProse: this.proseBefore && line.wide > this.proseColumn };
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
        const spots = this.spotsFor(line);
        const meant = spots[0]!;
        const straight = fitLine(this.text, line, line.content, meant.state);
        if (isWhole(straight)) return this.take(index, meant, straight);
        for (const other of spots.slice(1)) {
            const fit = fitLine(this.text, line, line.content, other.state);
            if (!isWhole(fit) || fit.tokens[0]!.symbol === 'NAME' && !other.opens && other.depth < this.blocks.length - 1) continue;
            this.report(tell.misplaced(line, other.head, fit, this.columnOf(other)));
            return this.take(index, other, fit);
        }
        const mended = mendLine(this.text, line, straight);
        if (mended) {
            this.report(tell.mended(this.text, line, meant.head, straight, mended));
            return this.take(index, meant, mended.fit);
        }
        this.report(tell.unreadable(this.text, line, meant.head, straight, this.proseBefore));
        this.lose(line);
        this.lostColumn = line.wide;
        return index + 1;
    }

    /** Where a line may stand, the place that its indentation says first. */
    private spotsFor(line: Line): Spot[] {
        const top = this.innermost;
        const under = this.spotUnder();
        const inBlocks = this.blocks.map((_, depth) => this.spotIn(depth)).reverse();
        let meant: Spot;
        if (line.wide > top.column) {
            meant = under ?? inBlocks[0]!;
            if (!under) this.report(tell.tooDeep(line, top.column));
        } else {
            let depth = this.blocks.length - 1;
            while (depth > 0 && this.blocks[depth]!.column > line.wide) depth--;
            // Between two columns that are in use, the deeper one is the likelier slip.
            if (this.blocks[depth]!.column < line.wide) {
                meant = this.spotIn(depth + 1);
                this.report(tell.betweenColumns(line, meant.head, this.blocks[depth + 1]!.column));
            } else {
                meant = this.spotIn(depth);
            }
        }
        if ((line.narrow > top.column) !== (line.wide > top.column) && line.narrow !== line.wide && top.column > 0 && this.mixesTabs(line)) {
            this.report(tell.tabsAndSpaces(line));
        }
        const others = [...(under ? [under] : []), ...inBlocks].filter(spot => spot.depth !== meant.depth || spot.opens !== meant.opens);
        return [meant, ...others];
    }

    private mixesTabs(line: Line): boolean {
        const indent = this.text.slice(line.start, line.content);
        return indent.includes('\t') && indent.includes(' ');
    }

    private spotUnder(): Spot | undefined {
        const top = this.innermost;
        const state = top.lastHead === '' ? undefined : top.state.move('INDENT');
        return state && { depth: this.blocks.length, opens: true, state, head: top.lastHead };
    }

    private spotIn(depth: number): Spot {
        let state = this.innermost.state;
        for (let open = this.blocks.length - 1; open > depth; open--) state = state.move('DEDENT')!;
        return { depth, opens: false, state, head: this.blocks[depth]!.head };
    }

    private columnOf(spot: Spot): number {
        return spot.opens ? this.innermost.column + 2 : this.blocks[spot.depth]!.column;
    }

    /** Puts a fitted line into the token list, with the prose that follows it and the block tokens before it. */
    private take(index: number, spot: Spot, fit: Fit): number {
        const line = this.lines[index]!;
        if (spot.opens) {
            this.list.addEmpty('INDENT');
            const column = Math.max(line.wide, this.innermost.column + 1);
            this.blocks.push({ column, head: spot.head, state: spot.state, lastHead: '', set: new Set() });
        } else {
            this.closeTo(spot.depth + 1);
        }
        const block = this.innermost;
        for (const token of fit.tokens) this.list.add(token, line);
        for (const single of fit.singles) {
            if (block.set.has(single)) this.report(tell.saidTwice(line, block.head, fit));
            block.set.add(single);
        }
        block.lastHead = tell.headOf(block.head, fit.tokens);
        let next = index + 1;
        let state = fit.state;
        if (fit.prose) {
            state = this.addProse(line, fit.at, line.end, state);
            next = this.addContinuation(index, state, state.move('EOL')!);
        } else {
            this.addTrailingComment(fit, line);
        }
        this.proseBefore = fit.prose;
        this.proseColumn = line.wide;
        this.list.addEmpty('EOL');
        block.state = state.move('EOL')!;
        return next;
    }

    private addTrailingComment(fit: Fit, line: Line): void {
        let at = fit.at;
        while (at < line.end && !isComment(this.text, at)) at++;
        if (at < line.end && fit.stopped === undefined) this.list.addComment(at, line);
    }

    private addProse(line: Line, from: number, end: number, state: GrammarState): GrammarState {
        const braces: BraceProblem[] = [];
        const tokens: DraftToken[] = proseTokens(this.text, from, end, braces);
        for (const token of tokens) {
            this.list.add(token, line);
            state = state.move(token.symbol)!;
        }
        for (const brace of braces) this.problems.push(tell.brace(this.text, line, brace));
        return state;
    }

    /** Prose goes on over deeper lines until one that begins a statement; comments between change nothing. */
    private addContinuation(index: number, state: GrammarState, after: GrammarState): number {
        const first = this.lines[index]!;
        let next = index + 1;
        for (let at = next; at < this.lines.length; at++) {
            const line = this.lines[at]!;
            if (line.content === line.end || isComment(this.text, line.content)) continue;
            if (line.wide <= first.wide || this.beginsStatement(line, after)) break;
            for (const between of this.lines.slice(next, at)) {
                if (between.content < between.end) this.list.addComment(between.content, between);
            }
            this.addProse(line, line.content, line.end, state);
            next = at + 1;
        }
        return next;
    }

    /** True when a deeper line is `word:` of a statement that may stand under the prose or beside it, with or without the colon. */
    private beginsStatement(line: Line, after: GrammarState): boolean {
        const head = /^([a-z]+)(?:[ \t]+[a-z]+)?[ \t]*:|^(expect|help)[ \t]+\p{Lu}/u.exec(this.text.slice(line.content, Math.min(line.end, line.content + 40)));
        if (!head) return false;
        const under = after.move('INDENT');
        if (head[2]) return under?.accepts(head[2]) ?? false;
        const states = [under, after];
        let outer: GrammarState | undefined = after;
        for (let depth = this.blocks.length - 1; depth > 0; depth--) {
            outer = outer?.move('DEDENT');
            states.push(outer);
        }
        return states.some(state => state !== undefined && fitLine(this.text, line, line.content, state).prose);
    }

    /** One line, one message about its shape. */
    private report(problem: ReadingProblem): void {
        if (this.reportedLine === problem.line) return;
        this.reportedLine = problem.line;
        this.problems.push(problem);
    }

    private closeTo(depth: number): void {
        while (this.blocks.length > depth) {
            const closed = this.blocks.pop()!;
            this.list.addEmpty('DEDENT');
            this.innermost.state = closed.state.move('DEDENT')!;
        }
    }

    private lose(line: Line): void {
        for (const [word] of this.text.slice(line.content, line.end).matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)) this.unreadable.add(word);
    }
}
