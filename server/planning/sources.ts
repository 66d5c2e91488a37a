import type { Source, ThingSheet } from '@haversack/language/sheets/sheet';
import type { WeekNeed } from './gross.js';

/**
 * Where a thing is fetched from, by the first of these that says something:
 * 1. a print is printed; 2. the material's or book's own `from`; 3. the kit, where a kit of the class holds it; 4. the need's
 * flag `in kit`; 5. the shop, where packs are declared; 6. the library for a book; 7. home. Number 7, and packs as
 * a sign of the shop, are our judgement (common practice, no source): what has no price is what a household lends or brings.
 */
export function sourceOf(need: Pick<WeekNeed, 'thing'> & Partial<Pick<WeekNeed, 'inKit'>>, heldByKit: boolean): Source {
    const { thing } = need;
    if (thing.kind === 'print') return 'printed';
    if (thing.source) return thing.source;
    if (heldByKit || need.inKit === true) return 'kit';
    if (thing.kind === 'book') return thing.cost ? 'shop' : 'library';
    return thing.packs.length > 0 ? 'shop' : 'home';
}

/**
 * Whether what is missing of a thing is bought: from the kit or the shop, or where packs are declared. What comes from home or the
 * library is asked for, unless some of it is `known` to be at hand.
 */
export function isBought(thing: ThingSheet, source: Source, known: boolean): boolean {
    if (source === 'printed') return false;
    return source === 'kit' || source === 'shop' || (known && thing.kind === 'material' && thing.packs.length > 0);
}

/** The order of a fetching list, with the heading of each group. */
export const sourceTitles: readonly (readonly [Source, string])[] = [
    ['kit', 'From the kit'],
    ['home', 'From home'],
    ['shop', 'From the shop'],
    ['library', 'From the library'],
    ['printed', 'To print']
];
