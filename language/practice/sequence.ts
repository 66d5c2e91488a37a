import type { ItemInTurn, ItemSet, PracticeItem } from './practice-item.js';
import { kindOf } from './practice-lines.js';
import { readPractice, type PracticePart, type ReadLine, type ReadPractice } from './read-practice.js';
import { shuffled, type Draw } from './shuffle.js';

/** The most items that a practice may ask for. */
export const mostItems = 200;
/** How many there are where the writer has not said, if there are so many (common practice, no source). */
const usualItems = 10;
/** So few are counted one by one where two lines may give the same item. */
const fewItems = 2000;

/** How many different items the lines of a practice can give. Where lines of one kind overlap in more than two thousand items, those of both count twice. */
export function possibleItems(part: PracticePart): number {
    return different(readPractice(part));
}

/** The most items that can be asked for without one that comes before its turn, up to `mostItems`; what returns may come back. */
export function itemsWithoutRepeat(read: ReadPractice): number {
    const easy = different(read) - read.returns.length;
    if (read.returns.length === 0 || easy === 0) return Math.min(different(read), mostItems);
    let most = 0;
    for (let slot = 0, used = 0; most < mostItems; slot++) {
        const between = Math.min(easy - used, easyBefore(slot));
        most += between;
        used += between;
        if (between < easyBefore(slot)) break;
        most++;
    }
    return Math.min(most, mostItems);
}

/** How many items the brief shows: as many as are asked for, else ten, and never more than there are. */
export function itemsAskedFor(part: PracticePart, read = readPractice(part)): number {
    const wanted = part.items !== undefined && Number.isInteger(part.items) && part.items > 0 ? part.items : usualItems;
    return Math.min(wanted, itemsWithoutRepeat(read));
}

/**
 * Items of a practice, from the one numbered `from` (0 is the first) on. The same text always gives the same items in the same order, and asking
 * for some and then for more gives what asking for all gives. None comes again while another is unused, except what returns; then all begin anew.
 */
export function practiceItems(part: PracticePart, lesson: string, { count, from = 0 }: { count?: number; from?: number } = {}): ItemInTurn[] {
    const read = readPractice(part);
    const asked = itemsAskedFor(part, read);
    if (asked === 0) return [];
    const items: ItemInTurn[] = [];
    let passed = 0;
    for (const item of allItems(read, `${lesson}/${part.name}`, asked)) {
        if (items.length >= (count ?? asked)) break;
        if (passed++ >= from) items.push(item);
    }
    return items;
}

function allItems(read: ReadPractice, seed: string, block: number): Iterable<ItemInTurn> {
    const returning = read.returns.map(({ item, index }): ItemInTurn => ({ ...item, line: index }));
    const easy = inTurns(read.lines, seed, block, returning.map(({ ask }) => ask));
    return returning.length === 0 ? easy : withReturns(easy, returning);
}

/** What returns comes after one easy item, after one more, after two, three, and then every four, so that it never comes twice running (common practice, no source). */
const easyBefore = (slot: number): number => Math.min(Math.max(slot, 1), 4);

function* withReturns(easy: Iterator<ItemInTurn>, returning: readonly ItemInTurn[]): Generator<ItemInTurn> {
    for (let slot = 0; ; slot++) {
        for (let before = 0; before < easyBefore(slot); before++) {
            const next = easy.next();
            if (next.done) return;
            yield next.value;
        }
        yield returning[slot % returning.length]!;
    }
}

/** The items of all lines in turns, a block at a time, without those of `except`; when all have been, all again in another order. */
function* inTurns(practised: readonly ReadLine[], seed: string, block: number, except: readonly string[]): Generator<ItemInTurn> {
    let last: PracticeItem | undefined;
    let lastLine: number | undefined;
    for (let round = 0; ; round++) {
        const used = new Set(except);
        const lines = practised.map(({ set }, line) => new Line(set, shuffled(set.total, `${seed}/${line}`, round, set.wave)));
        for (let first = true; ; first = false) {
            const taken = takeTurns(lines, block, used, first ? last?.ask : undefined);
            if (taken.every(items => items.length === 0)) {
                if (first) return;
                break;
            }
            for (const { line, item } of spread(taken, lastLine)) {
                yield { ...item, line: practised[line]!.index };
                last = item;
                lastLine = line;
            }
        }
    }
}

/** What each line gives to a block, when they take turns as long as they have any. */
function takeTurns(lines: readonly Line[], block: number, used: Set<string>, avoid: string | undefined): PracticeItem[][] {
    const taken: PracticeItem[][] = lines.map(() => []);
    const open = new Set(lines.keys());
    for (let count = 0; count < block && open.size > 0;) {
        for (const line of open) {
            const item = lines[line]!.next(used, avoid);
            if (!item) open.delete(line);
            else {
                taken[line]!.push(item);
                if (++count === block) break;
            }
        }
    }
    return taken;
}

/** Puts the items of a block in an order in which no line comes twice running, as far as that can be: always the line with most left that was not the last. */
function* spread(taken: readonly PracticeItem[][], lastLine: number | undefined): Generator<{ line: number; item: PracticeItem }> {
    const next = taken.map(() => 0);
    const left = (line: number): number => taken[line]!.length - next[line]!;
    for (let last = lastLine; ;) {
        let chosen: number | undefined;
        for (const line of taken.keys()) {
            if (left(line) > 0 && line !== last && (chosen === undefined || left(line) > left(chosen))) chosen = line;
        }
        if (chosen === undefined && last !== undefined && left(last) > 0) chosen = last;
        if (chosen === undefined) return;
        yield { line: chosen, item: taken[chosen]![next[chosen]!++]! };
        last = chosen;
    }
}

/** The unused items of one line. */
class Line {
    private held: PracticeItem | undefined;

    constructor(private readonly set: ItemSet, private readonly draw: Draw) {}

    /** The next that is not used; `avoid` has just been, so another comes first where there is one. */
    next(used: Set<string>, avoid: string | undefined): PracticeItem | undefined {
        if (this.held && this.held.ask !== avoid) return this.release();
        for (let index = this.draw(); index !== undefined; index = this.draw()) {
            const item = this.set.at(index);
            if (used.has(item.ask)) continue;
            used.add(item.ask);
            if (item.ask !== avoid) return item;
            this.held = item;
        }
        return this.release();
    }

    private release(): PracticeItem | undefined {
        const { held } = this;
        this.held = undefined;
        return held;
    }
}

/** Lines of different kinds never ask the same. */
function different({ lines }: ReadPractice): number {
    const kinds = new Map<string, ItemSet[]>();
    for (const { line, set } of lines) {
        const kind = kindOf(line)!.kind.words;
        kinds.set(kind, [...kinds.get(kind) ?? [], set]);
    }
    return [...kinds.values()].reduce((sum, sets) => sum + differentIn(sets), 0);
}

function differentIn(sets: readonly ItemSet[]): number {
    const all = sets.reduce((sum, { total }) => sum + total, 0);
    if (sets.length < 2 || all > fewItems) return all;
    const asks = new Set<string>();
    for (const set of sets) for (let index = 0; index < set.total; index++) asks.add(set.at(index).ask);
    return asks.size;
}
