/** "pan-balance" becomes "Pan balance". */
export function titleFromName(name: string): string {
    const words = name.replace(/-/g, ' ');
    return words.charAt(0).toUpperCase() + words.slice(1);
}

/** More than a first capital in the first word ("LED lamp"), or a capital in a later one ("Market Street price list"). */
const ownName = /^\p{Lu}(?![\p{Ll}'’])|\p{L}.*?[^\p{L}'’]\p{Lu}/u;

/** The title of a thing inside a sentence: a name of its own stays as it is; any other begins small, without the remark behind a comma. */
export function asCommonNoun(title: string): string {
    return ownName.test(title) ? title : title.replace(/,.*$/su, '').replace(/^\p{Lu}/u, first => first.toLowerCase());
}
