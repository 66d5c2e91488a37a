import type { ItemInTurn } from './practice-item.js';

/**
 * How many others come before what returns for the `slot`th time (from 0), when `many` return in turns: one until each has been there twice, then more
 * and more, up to four for one that returns and two for several. So none comes twice running (common practice, no source).
 */
export function othersBefore(slot: number, many: number): number {
    return Math.min(Math.max(Math.floor(slot / many), 1), many === 1 ? 4 : 2);
}

/** What returns, and where: in turns between the others. */
export class Returning {
    /** Slots by the number of others before them. */
    private readonly slots = new Map<number, number>();
    private reached = 0;

    constructor(readonly items: readonly ItemInTurn[]) {}

    /** What comes when so many others have been, from 1 up. */
    after(others: number): ItemInTurn | undefined {
        if (this.items.length === 0) return undefined;
        while (this.reached < others) {
            this.reached += othersBefore(this.slots.size, this.items.length);
            this.slots.set(this.reached, this.slots.size);
        }
        const slot = this.slots.get(others);
        return slot === undefined ? undefined : this.items[slot % this.items.length];
    }
}
