import type { ItemInTurn, ItemSet, PracticeItem } from './practice-item.js';
import { touch } from './neighbours.js';
import type { ReadLine } from './read-practice.js';
import { shuffled, type Draw } from './shuffle.js';

/** So many are passed over at most to find one about something else. */
const mostPassed = 100;

/** All items of the lines, each once, in blocks to which the lines give in turns; what `avoided` is about comes late, and last in the first block. */
export class Blocks {
    private readonly lines: Line[];
    private readonly used: Set<string>;

    constructor(practised: readonly ReadLine[], seed: string, round: number, private readonly returning: readonly PracticeItem[]) {
        this.used = new Set(returning.map(({ ask }) => ask));
        this.lines = practised.map(({ set, index }, line) => new Line(set, index, shuffled(set.total, `${seed}/${line}`, round, set.wave), this.used));
    }

    /** The next so many, fewer when all have been, in an order in which no line comes twice running, as far as that can be. */
    next(size: number, last: ItemInTurn | undefined): ItemInTurn[] {
        const taken: ItemInTurn[][] = this.lines.map(() => []);
        let open = [...this.lines.keys()];
        for (let wanted = size; wanted > 0 && open.length > 0;) {
            const each = Math.max(1, Math.floor(wanted / open.length));
            for (const line of wanted < open.length ? open.slice(0, wanted) : open) {
                const avoided = [...(last ? [last] : []), ...taken.flatMap((items, other) => (other === line ? [] : items))];
                for (let count = 0; count < each; count++) {
                    const item = this.lines[line]!.next(avoided, this.returning);
                    if (!item) {
                        open = open.filter(other => other !== line);
                        break;
                    }
                    taken[line]!.push(item);
                    wanted--;
                }
            }
        }
        this.exchange(taken);
        return [...spread(taken, last?.line)];
    }

    /** Where a line had nothing about something else, the line above may have. */
    private exchange(taken: ItemInTurn[][]): void {
        taken.forEach((items, line) => items.forEach((item, index) => {
            const others = taken.flatMap((some, other) => (other === line ? [] : some));
            if (!others.some(other => touch(item, other))) return;
            const instead = this.lines[line]!.another([...this.returning, ...others]);
            if (!instead) return;
            this.lines[line]!.hold(item);
            items[index] = instead;
        }));
    }
}

/** Always the line with most left that was not the last. */
function* spread(taken: readonly ItemInTurn[][], lastLine: number | undefined): Generator<ItemInTurn> {
    const next = taken.map(() => 0);
    const left = (line: number): number => taken[line]!.length - next[line]!;
    for (let last = taken.findIndex(([first]) => first?.line === lastLine); ;) {
        let chosen: number | undefined;
        for (const line of taken.keys()) {
            if (left(line) > 0 && line !== last && (chosen === undefined || left(line) > left(chosen))) chosen = line;
        }
        if (chosen === undefined && last >= 0 && left(last) > 0) chosen = last;
        if (chosen === undefined) return;
        yield taken[chosen]![next[chosen]!++]!;
        last = chosen;
    }
}

/** The unused items of one line. */
class Line {
    private readonly held: ItemInTurn[] = [];

    constructor(private readonly set: ItemSet, private readonly line: number, private readonly draw: Draw, private readonly used: Set<string>) {}

    /** The next that is not used: about nothing that is avoided where there is such a one soon, else at least not about what returns, which leaves few places. */
    next(avoided: readonly PracticeItem[], returning: readonly PracticeItem[]): ItemInTurn | undefined {
        return this.another([...returning, ...avoided]) ?? this.another(returning) ?? this.held.shift();
    }

    /** The next about something else; what is passed over has its turn later. */
    another(avoided: readonly PracticeItem[]): ItemInTurn | undefined {
        const apart = (item: PracticeItem): boolean => !avoided.some(other => touch(item, other));
        const at = this.held.findIndex(apart);
        if (at >= 0) return this.held.splice(at, 1)[0];
        for (let passed = 0; passed < mostPassed;) {
            const index = this.draw();
            if (index === undefined) return undefined;
            const item = { ...this.set.at(index), line: this.line };
            if (this.used.has(item.ask)) continue;
            this.used.add(item.ask);
            if (apart(item)) return item;
            this.held.push(item);
            passed++;
        }
        return undefined;
    }

    hold(item: ItemInTurn): void {
        this.held.push(item);
    }
}
