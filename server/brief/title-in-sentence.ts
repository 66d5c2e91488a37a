/**
 * How the title of a thing reads inside a sentence. The inventory says "Pan balances"; a step that says "Wipe the {pan-balance}."
 * reads "Wipe the pan balance."
 *
 * 1. Materials and prints are common nouns: their title begins small, unless a sentence begins with it. Books, games, lessons and
 *    objectives are known by their title, which stays as it is, in quotation marks where the writer has set it apart by nothing else.
 * 2. A title that is a name of its own keeps its capital: one whose first word holds more than a first capital ("LED lamp",
 *    "A4 card", "I think, I tried") or that has a capital in a later word ("Market Street price list").
 * 3. The name in the braces says whether one or several are meant: where the title holds the plural of the name's last word, the
 *    sentence gets that word as the writer typed it ({paper-cup} is a paper cup, {paper-cup}s are paper cups). A title that is a
 *    plural of another word stays as it is, without a second ending.
 * 4. What stands behind a comma is a remark for the list ("Glass bottles, all alike") and is left out of the sentence.
 */
import { asCommonNoun, singularTitle } from '@haversack/language/sheets/titles';
import type { NameFigures } from '../planning/figures.js';

const commonNouns: ReadonlySet<NameFigures['kind']> = new Set(['material', 'print']);
export interface SentencePlace {
    /** The sentence begins with it. */
    begins?: boolean;
    /** The title is shown as the inventory has it, in the plural if it is one: for a list of things inside a sentence. */
    listed?: boolean;
    /** The writer put quotation marks or emphasis round it. */
    marked?: boolean;
    /** Letters that the writer put right behind the name. */
    ending?: string;
}

export function titleInSentence(name: string, title: string, kind: NameFigures['kind'] | undefined, place: SentencePlace = {}): string {
    if (kind === undefined) return title + (place.ending ?? '');
    const noun = commonNouns.has(kind) ? nounOf(title, name, place) : undefined;
    const words = noun ?? (kind === 'word' || place.marked || place.listed ? title : `“${title}”`);
    const shown = place.begins ? words.replace(/^\p{Ll}/u, first => first.toUpperCase()) : words;
    return noun === undefined ? shown + (place.ending ?? '') : shown;
}

function nounOf(title: string, name: string, { listed, ending = '' }: SentencePlace): string {
    const [several, one] = [asCommonNoun(title), asCommonNoun(singularTitle(title, name))];
    if (listed) return several + ending;
    const isPlural = /^e?s$/.test(ending);
    // {leaf}s are "leaves" where the title says so, and {loupe}s with the title "Magnifying glasses" take no second ending.
    if (isPlural && one !== several) return several;
    const last = one.toLowerCase().split(/\P{L}/u).at(-1)!;
    return isPlural && last.endsWith('s') && (ending === 's' || !name.endsWith(last)) ? one : one + ending;
}

/** "Harbour co-op" of "Harbour co-op, autumn": what a class or course is called where its whole title stands further up. */
export function shortTitle(title: string): string {
    return title.replace(/(?<=\S),\s.*$/su, '');
}
