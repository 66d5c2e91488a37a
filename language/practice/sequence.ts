import { Blocks } from './blocks.js';
import { keepApart, type Before, type Placed } from './neighbours.js';
import type { ItemInTurn, ItemSet } from './practice-item.js';
import { kindOf } from './practice-lines.js';
import { readPractice, type PracticePart, type ReadPractice } from './read-practice.js';
import { othersBefore, Returning } from './returning.js';

/** The most items that a practice may ask for. */
export const mostItems = 200;
/** How many there are where the writer has not said, if there are so many (common practice, no source). */
const usualItems = 10;
/** At least so many are put in order together, so that there is room to keep them apart. */
const leastBlock = 10;
/** So few are counted one by one where two lines may give the same item. */
const fewItems = 2000;

/** How many different items the lines of a practice can give. Where lines of one kind overlap in more than two thousand items, those of both count twice. */
export function possibleItems(part: PracticePart): number {
    return different(readPractice(part));
}

/** The most items that can be asked for without one that comes before its turn, up to `mostItems`; what returns may come back. */
export function itemsWithoutRepeat(read: ReadPractice): number {
    const many = read.returns.length;
    const others = different(read) - many;
    if (many === 0 || others === 0) return Math.min(different(read), mostItems);
    let most = 0;
    for (let slot = 0, used = 0; most < mostItems; slot++) {
        const between = Math.min(others - used, othersBefore(slot, many));
        most += between;
        used += between;
        if (between < othersBefore(slot, many)) break;
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
    for (const item of allItems(read, seedOf(part, lesson), Math.max(asked, leastBlock))) {
        if (items.length >= (count ?? asked)) break;
        if (passed++ >= from) items.push(item);
    }
    return items;
}

const seedOf = ({ name }: PracticePart, lesson: string): string => `${lesson}/${name}`;

function* allItems(read: ReadPractice, seed: string, block: number): Generator<ItemInTurn> {
    const returning = new Returning(read.returns.map(({ item, index }): ItemInTurn => ({ ...item, line: index })));
    const before: Before = { count: 0 };
    for (let round = 0; ; round++) {
        const begun = before.count;
        for (const items of roundOf(new Blocks(read.lines, seed, round, returning.items), block, before)) {
            keepApart(items, before, returning);
            for (const { item } of items) {
                yield item;
                before.count++;
                before.last = item;
                const back = returning.after(before.count);
                if (back) yield back;
            }
        }
        if (before.count === begun) return;
    }
}

/** The blocks of one round. The last, which is short, comes with the one before it: two items that are left may be about the same. */
function* roundOf(blocks: Blocks, size: number, before: Before): Generator<Placed[]> {
    const take = (block: number, last: ItemInTurn | undefined): Placed[] => blocks.next(size, last).map(item => ({ item, block }));
    let now = take(0, before.last);
    for (let block = 1; now.length > 0; block++) {
        const next = take(block, now[now.length - 1]?.item);
        if (next.length === size) yield now;
        else return yield [...now, ...next];
        now = next;
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
