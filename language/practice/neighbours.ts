import type { ItemInTurn, PracticeItem } from './practice-item.js';
import type { Returning } from './returning.js';

/** How bad it is that two items are neighbours: the same again is worst, then one that may give the other's answer away, then two of one line. */
const [same, telling, alike] = [1_000_000, 1000, 1];
/** How bad it is that a line gives more or less to the first items than its share. */
const otherShare = 10;

/** An item in its place; `first` is for those that the brief begins with, to which each line gives its share. */
export interface Placed {
    item: ItemInTurn;
    first: boolean;
}

/** What the items to be put in order come after. */
export interface Before {
    /** How many have been, and the last of them; what returns does not count. */
    count: number;
    last?: ItemInTurn;
}

/** Whether two items are about the same number or fact. */
export function touch(one: PracticeItem, other: PracticeItem): boolean {
    return one.about.some(about => other.about.includes(about));
}

/**
 * Changes places until no item may give its neighbour's answer away, as far as that can be, what returns between them included. The order changes no
 * more than it has to, and each line keeps its share of the first items.
 */
export function keepApart(placed: Placed[], before: Before, returning: Returning): void {
    const at = (index: number): ItemInTurn | undefined => (index < 0 ? before.last : placed[index]?.item);
    /** Between the item at `index` and the one before it. */
    const cost = (index: number): number => {
        const [left, right] = [at(index - 1), at(index)];
        const between = returning.after(before.count + index);
        const line = left && right && left.line === right.line ? alike : 0;
        return line + (between ? costOf(left, between) + costOf(between, right) : costOf(left, right));
    };
    const around = (one: number, other: number): number => [...new Set([one, one + 1, other, other + 1])].reduce((sum, index) => sum + cost(index), 0);
    const swap = (one: number, other: number): void => void ([placed[one], placed[other]] = [placed[other]!, placed[one]!]);
    const gain = (one: number, other: number): number => {
        const now = around(one, other);
        swap(one, other);
        const then = around(one, other);
        swap(one, other);
        return now - then;
    };
    const best = (one: number): { gain: number; other: number } => {
        let found = { gain: 0, other: one };
        for (const other of outward(one, placed.length)) {
            const [a, b] = [placed[one]!, placed[other]!];
            const gained = gain(one, other) - (a.first !== b.first && a.item.line !== b.item.line ? otherShare : 0);
            if (gained > found.gain) found = { gain: gained, other };
        }
        return found;
    };
    const all = (): number => placed.reduce((sum, _, index) => sum + cost(index), cost(placed.length));
    const move = (from: number, to: number): void => void placed.splice(to, 0, ...placed.splice(from, 1));
    /** Where no two can change places, one of the neighbours may stand elsewhere. */
    const moved = (index: number): boolean => {
        const now = all();
        for (const from of [index, index - 1].filter(place => place >= 0 && place < placed.length)) {
            for (const to of outward(from, placed.length)) {
                move(from, to);
                if (now - all() > telling / 2) return true;
                move(to, from);
            }
        }
        return false;
    };
    for (let pass = 0, improved = true; improved && pass < placed.length; pass++) {
        improved = false;
        for (let index = 0; index <= placed.length; index++) {
            if (cost(index) < telling) continue;
            const [one] = [index, index - 1].filter(place => place >= 0 && place < placed.length).map(place => ({ place, ...best(place) })).sort((a, b) => b.gain - a.gain);
            if (one && one.gain > telling / 2) swap(one.place, one.other);
            else if (!moved(index)) continue;
            improved = true;
        }
    }
}

function costOf(left: PracticeItem | undefined, right: PracticeItem | undefined): number {
    if (!left || !right) return 0;
    return left.ask === right.ask ? same : touch(left, right) ? telling : 0;
}

/** The places behind, the next first, and then those before. */
function* outward(from: number, total: number): Generator<number> {
    for (let place = from + 1; place < total; place++) yield place;
    for (let place = from - 1; place >= 0; place--) yield place;
}
