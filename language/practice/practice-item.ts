import type { Picture } from '../pictures/picture.js';

/** One computed item of a practice with its answer. */
export interface PracticeItem {
    /** What is asked, as it stands on the sheet; a `?` is the place of the answer in a number sentence. */
    ask: string;
    answer: string;
    /** The numbers or the fact that it is about: of two items that share one, either may give the other's answer away. */
    about: readonly string[];
    show?: Picture;
    /** How the answer is written down: in place of the `?`, as a number behind what is asked, or as words on a line of their own. */
    room: 'gap' | 'number' | 'line';
}

/** An item in its turn. */
export interface ItemInTurn extends PracticeItem {
    /** The line that it comes from, counted from 0 among the lines of the practice. */
    line: number;
}

/** All items that one line of a practice can give, by number: none is listed before it is wanted. */
export interface ItemSet {
    /** How many there are. Two numbers below it never give the same item. */
    total: number;
    /** The item of a number from 0 to `total` - 1. */
    at(index: number): PracticeItem;
    /** So many from the front are used up before the next so many, where given: then no number comes back in another form too early. */
    wave?: number;
    /** The number of the item that is about these numbers: one for `67`, two for a sum of 7 and 8. */
    find(numbers: readonly number[]): number | undefined;
}
