import type { GrammarState } from './automaton.js';
import { fitLine, isWhole, type Fit } from './fit-line.js';
import { linesBelow, usualStep } from './indentation.js';
import { betweenColumns, tooDeep } from './messages.js';
import type { ReadingProblem } from './problems.js';
import type { Line } from './scan.js';

/** A block that is open: its statements begin at one column. */
export interface Block {
    /** Column of its statements, tabs counted to eight. */
    column: number;
    /** Another column at which a line has been let pass after one message. */
    alsoAt?: number;
    /** What the block belongs to, as facts/statements.ts calls it. */
    head: string;
    /** What may come next in it. */
    state: GrammarState;
    /** What the last statement in it is called, where it may open a block; else empty. */
    lastHead: string;
    /** Properties set already that may be set only once. */
    set: Set<string>;
    lastWasAgain?: boolean;
}

/** Where a line may stand: in an open block, or in a new one under the last statement. */
export interface Spot {
    depth: number;
    opens: boolean;
    state: GrammarState;
    head: string;
}

/** A line that stands in no column of the block it is read in: what to tell, and whose column it shall be from then on. */
export interface Slip {
    problem: ReadingProblem;
    block: Block;
}

/** The blocks that are open, and where among them a line stands: by its indentation, and by what it says. */
export class OpenBlocks {
    private readonly blocks: Block[];
    private step: number | undefined;

    constructor(private readonly text: string, private readonly lines: readonly Line[], start: GrammarState) {
        this.blocks = [{ column: 0, head: 'file', state: start, lastHead: '', set: new Set() }];
    }

    get innermost(): Block {
        return this.blocks[this.blocks.length - 1]!;
    }

    /** How many blocks are open within the file. */
    get depth(): number {
        return this.blocks.length - 1;
    }

    open({ head, state }: Spot, column: number): void {
        this.blocks.push({ column, head, state, lastHead: '', set: new Set() });
    }

    /** Closes all but the outermost blocks; returns how many were closed. */
    close(keep: number): number {
        let closed = 0;
        for (; this.blocks.length > keep; closed++) {
            const { state } = this.blocks.pop()!;
            this.innermost.state = state.move('DEDENT')!;
        }
        return closed;
    }

    spotsFor(line: Line): Spot[] {
        const { spot } = this.meantSpot(line);
        return [spot, ...this.otherSpots(spot)];
    }

    /** Where a line stands by its indentation. */
    meantSpot(line: Line): { spot: Spot; slip?: Slip } {
        const top = this.innermost;
        if (line.wide > top.column) {
            const under = this.spotUnder();
            if (under) return { spot: under };
            const spot = this.spotIn(this.depth);
            return top.alsoAt === line.wide ? { spot } : { spot, slip: { problem: tooDeep(line, top.column), block: top } };
        }
        let depth = this.depth;
        while (depth > 0 && this.blocks[depth]!.column > line.wide && this.blocks[depth]!.alsoAt !== line.wide) depth--;
        if (this.blocks[depth]!.column >= line.wide) return { spot: this.spotIn(depth) };
        // Between two columns that are in use, the deeper one is the likelier slip.
        const block = this.blocks[depth + 1]!;
        const spot = this.spotIn(depth + 1);
        return { spot, slip: { problem: betweenColumns(line, spot.head, block.column), block } };
    }

    /** True when the depth of a line hangs on how wide a tab is taken to be. */
    mixesTabs(line: Line): boolean {
        const { column } = this.innermost;
        if (line.narrow === line.wide || (line.narrow > column) === (line.wide > column) || column === 0) return false;
        const indent = this.text.slice(line.start, line.content);
        return indent.includes('\t') && indent.includes(' ');
    }

    /** Everywhere else that a line may stand: under the last statement, or in an open block, the innermost first. */
    otherSpots(meant: Spot): Spot[] {
        const under = this.spotUnder();
        const inBlocks = this.blocks.map((_, depth) => this.spotIn(depth)).reverse();
        return [...(under ? [under] : []), ...inBlocks].filter(spot => spot.depth !== meant.depth || spot.opens !== meant.opens);
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

    /**
     * A line that would close a block may have slipped out of it to the left: so when it fits there too, and a line below it,
     * deeper than it, goes on in that block.
     */
    slippedOutOf(index: number, meant: Spot, fit: Fit): { spot: Spot; fit: Fit } | undefined {
        const line = this.lines[index]!;
        if (meant.opens || fit.state.move('EOL')?.accepts('INDENT')) return undefined;
        for (let depth = this.blocks.length - 1; depth > meant.depth; depth--) {
            const spot = this.spotIn(depth);
            const innerFit = fitLine(this.text, line, line.content, spot.state);
            const goesOn = isWhole(innerFit) && linesBelow(this.text, this.lines, index, line.wide).some(below => {
                const next = below.wide === this.blocks[depth]!.column ? fitLine(this.text, below, below.content, spot.state) : undefined;
                return next !== undefined && isWhole(next) && next.tokens[0]!.symbol !== 'NAME';
            });
            if (goesOn) return { spot, fit: innerFit };
        }
        return undefined;
    }

    columnOf(spot: Spot): number {
        return spot.opens ? this.innermost.column + 2 : this.blocks[spot.depth]!.column;
    }

    /**
     * The column of a block whose first line this is. Its own, unless that is not the file's usual step in and the lines that
     * follow in the block tell another: then it is this line that has slipped.
     */
    columnForNew(index: number, fit: Fit): number {
        const header = this.innermost.column;
        const own = this.lines[index]!.wide;
        this.step ??= usualStep(this.lines);
        const usual = header + this.step;
        if (own === usual) return own;
        const below = linesBelow(this.text, this.lines, index, header);
        if (below.length === 0) return Math.max(own, header + 1);
        const least = below.reduce((narrowest, { wide }) => Math.min(narrowest, wide), Infinity);
        if (own <= header) return this.standsUnder(fit, below[0]!) ? usual : least;
        if (least === own) return own > usual && below[0]!.wide === own && this.standsUnder(fit, below[0]!) && !this.standsBeside(fit, below[0]!) ? usual : own;
        if (least < own) return least === usual || below.every(line => line.wide !== own) ? least : own;
        if (least === usual && !this.standsUnder(fit, below[0]!)) return least;
        return below.some(line => line.wide === usual) ? usual : own;
    }

    private standsUnder(fit: Fit, line: Line): boolean {
        const under = fit.state.move('EOL')?.move('INDENT');
        return under !== undefined && isWhole(fitLine(this.text, line, line.content, under));
    }

    private standsBeside(fit: Fit, line: Line): boolean {
        return isWhole(fitLine(this.text, line, line.content, fit.state.move('EOL')!));
    }
}
