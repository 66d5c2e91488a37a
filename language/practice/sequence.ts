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
const leastTogether = 30;
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
    if (part.piece && part.items === 0) return 0;
    const wanted = part.items !== undefined && Number.isInteger(part.items) && part.items > 0 ? part.items : usualItems;
    return Math.min(wanted, itemsWithoutRepeat(read));
}

/** How many items have been, or have their turn in the other piece of a split practice, before further ones begin. */
export function itemsBeforeFurther(part: PracticePart): number {
    return itemsAskedFor(wholeOf(part)) - itemsBefore(part);
}

/**
 * Items of a practice of a lesson, from the one numbered `from` (0 is the first) on. The same text always gives the same items in the same order, and
 * asking for some and then for more gives what asking for all gives; in another lesson, split or joined, it gives what it gave where it was written.
 * None comes again while another is unused, except what returns; then all begin anew.
 */
export function practiceItems(part: PracticePart, lesson: string, { count, from = 0 }: { count?: number; from?: number } = {}): ItemInTurn[] {
    const read = readPractice(part);
    const whole = itemsAskedFor(wholeOf(part), read);
    const wanted = count ?? itemsAskedFor(part, read);
    const skipped = itemsBefore(part) + from;
    const items: ItemInTurn[] = [];
    if (whole === 0 || wanted === 0) return items;
    let passed = 0;
    for (const item of allItems(read, seedOf(part, lesson), whole)) {
        if (passed++ >= skipped) items.push(item);
        if (items.length >= wanted) break;
    }
    return items;
}

/** Seeded as it is called where it is written. */
function seedOf({ name, from: [origin] = [] }: PracticePart, lesson: string): string {
    return origin ? `${origin.lesson}/${origin.part}` : `${lesson}/${name}`;
}

function wholeOf(part: PracticePart): PracticePart {
    return part.piece ? { ...part, items: part.piece.of, piece: undefined } : part;
}

function itemsBefore(part: PracticePart): number {
    return part.piece ? part.piece.before ?? itemsAskedFor(wholeOf(part)) : 0;
}

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

/** The items of one round, so many blocks at a time that there is room to keep neighbours apart; the last, which may be few, come with those before them. */
function* roundOf(blocks: Blocks, size: number, before: Before): Generator<Placed[]> {
    let group: Placed[] = [];
    for (let block = 0; ; block++) {
        const last = group[group.length - 1]?.item ?? before.last;
        const next = blocks.next(size, last).map(item => ({ item, first: block === 0 && before.count === 0 }));
        if (group.length >= leastTogether && next.length === size) {
            yield group;
            group = next;
        } else {
            group.push(...next);
        }
        if (next.length < size) break;
    }
    if (group.length > 0) yield group;
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
