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
