/**
 * How the title of a thing reads inside a sentence. The inventory says "Pan balances"; a step that says "Wipe the {pan-balance}."
 * reads "Wipe the pan balance."
 *
 * 1. Materials and prints are common nouns: their title begins small, unless a sentence begins with it. Books, games, lessons and
 *    objectives are known by their title, which stays as it is, in quotation marks where the writer has set it apart by nothing else.
 * 2. A title that is a name of its own keeps its capital: one whose first word holds more than a first capital ("LED lamp",
 *    "A4 card", "I think, I tried") or that has a capital in a later word ("Market Street price list").
 * 3. The name in the braces says whether one or several are meant: where the title holds the plural of the name's last word, the
 *    sentence gets that word as the writer typed it ({paper-cup} is a paper cup, {paper-cup}s are paper cups).
 * 4. What stands behind a comma is a remark for the list ("Glass bottles, all alike") and is left out of the sentence.
 */
import { asCommonNoun } from '@haversack/language/sheets/titles';
import type { NameFigures } from '../planning/figures.js';

const commonNouns: ReadonlySet<NameFigures['kind']> = new Set(['material', 'print']);
const irregular: ReadonlyMap<string, string> = new Map([
    ['die', 'dice'], ['foot', 'feet'], ['tooth', 'teeth'], ['mouse', 'mice'], ['goose', 'geese'], ['child', 'children'], ['man', 'men'], ['woman', 'women']
]);

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
    const words = commonNouns.has(kind) ? asCommonNoun(place.listed ? title : oneOf(title, name))
        : kind === 'word' || place.marked || place.listed ? title : `“${title}”`;
    return (place.begins ? words.replace(/^\p{Ll}/u, first => first.toUpperCase()) : words) + (place.ending ?? '');
}

/** "Harbour co-op" of "Harbour co-op, autumn": what a class or course is called where its whole title stands further up. */
export function shortTitle(title: string): string {
    return title.replace(/(?<=\S),\s.*$/su, '');
}

/** The title with the plural of the name's last word put back to that word. */
function oneOf(title: string, name: string): string {
    const last = name.slice(name.lastIndexOf('-') + 1);
    return title.replace(/\p{L}+/gu, word => {
        if (!isPlural(word.toLowerCase(), last)) return word;
        return /^\p{Lu}/u.test(word) ? last.charAt(0).toUpperCase() + last.slice(1) : last;
    });
}

/** English plurals (common practice, no source). */
function isPlural(word: string, one: string): boolean {
    return word === `${one}s` || word === `${one}es` || word === irregular.get(one)
        || (/[^aeiou]y$/.test(one) && word === `${one.slice(0, -1)}ies`)
        || (/fe?$/.test(one) && word === `${one.replace(/fe?$/, '')}ves`);
}
