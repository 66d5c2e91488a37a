import type { PracticeItemFigures } from '../../planning/figures.js';

/** “Four hundred and eighteen” is right too, and is 4 words: once for a key, where a number has such a name. */
export function keyNote(items: readonly PracticeItemFigures[]): string | undefined {
    const said = items.flatMap(({ alsoSaid }) => alsoSaid ?? []);
    const one = said.find(({ words }) => words !== undefined) ?? said[0];
    if (!one) return undefined;
    const name = `“${one.name.replace(/^[a-z]/, first => first.toUpperCase())}”`;
    return one.words === undefined ? `${name} is right too, and other numbers with “and” likewise.` : `${name} is right too, and is ${one.words} words; other numbers with “and” likewise.`;
}
