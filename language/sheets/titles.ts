/** "pan-balance" becomes "Pan balance". */
export function titleFromName(name: string): string {
    const words = name.replace(/-/g, ' ');
    return words.charAt(0).toUpperCase() + words.slice(1);
}

/** More than a first capital in the first word ("LED lamp"), or a capital in a later one ("Market Street price list"). */
function isOwnName(title: string): boolean {
    if (/^\p{Lu}(?![\p{Ll}'’])/u.test(title)) return true;
    const letter = title.search(/\p{L}/u);
    return letter >= 0 && /[^\p{L}'’]\p{Lu}/u.test(title.slice(letter).replace(/^\p{L}/u, ''));
}

/** The title of a thing inside a sentence: a name of its own stays as it is; any other begins small, without the remark behind a comma. */
export function asCommonNoun(title: string): string {
    return isOwnName(title) ? title : title.split(',', 1)[0]!.replace(/^\p{Lu}/u, first => first.toLowerCase());
}

const irregular: ReadonlyMap<string, string> = new Map([
    ['die', 'dice'], ['foot', 'feet'], ['tooth', 'teeth'], ['mouse', 'mice'], ['goose', 'geese'], ['child', 'children'], ['man', 'men'], ['woman', 'women']
]);

/** The title with the plural of the name's last word put back to that word: "Pan balances" of `pan-balance` becomes "Pan balance". */
export function singularTitle(title: string, name: string): string {
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
