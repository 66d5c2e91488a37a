import { isName, nameFrom, pieceAt } from '@haversack/language/lexer/scan';

const letters: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', đ: 'd', ð: 'd', þ: 'th', ł: 'l', ı: 'i', ħ: 'h', ŋ: 'n', ŧ: 't' };
const longest = 40;

/**
 * The name of a thing with this title: lower-case words with hyphens, letters with marks as plain ones ("Crème brûlée" is
 * creme-brulee, "Maßband" massband). Letters of other scripts stay. Always a name.
 */
export function nameFromTitle(title: string): string {
    const plain = title.toLowerCase().replace(/[ßæœøđðþłıħŋŧ]/g, letter => letters[letter]!).normalize('NFKD').replace(/[\u0300-\u036f]/g, '').normalize('NFC');
    const name = shortened(nameFrom(plain.replace(/[^\p{Ll}\p{Lo}\p{N}'’]+/gu, ' ')));
    if (isWrittenAsName(name)) return name;
    const numbered = `item-${name}`;
    return isWrittenAsName(numbered) ? numbered : 'item';
}

/** A word that may be a name and is not read as a date, a fraction or a number. */
export function isWrittenAsName(word: string): boolean {
    const piece = pieceAt(word, 0, word.length);
    return piece?.kind === 'word' && piece.text === word && isName(word);
}

/** The name itself, or with the first number that makes it free. `tried` remembers how far the numbers of a name have gone. */
export function freeName(name: string, isTaken: (name: string) => boolean, tried = new Map<string, number>()): string {
    if (!isTaken(name)) return name;
    for (let number = tried.get(name) ?? 2; ; number++) {
        if (isTaken(`${name}-${number}`)) continue;
        tried.set(name, number + 1);
        return `${name}-${number}`;
    }
}

/** Cut at a hyphen where there is one. */
function shortened(name: string): string {
    const characters = [...name];
    if (characters.length <= longest) return name;
    const start = characters.slice(0, longest).join('');
    const hyphen = start.lastIndexOf('-');
    return hyphen > longest / 2 ? start.slice(0, hyphen) : start.replace(/-$/, '');
}
