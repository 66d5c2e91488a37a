/** Text of a cell as it can stand in a file of the language, and what had to be changed for it. */
export interface SafeText {
    text: string;
    changes: string[];
}

// Control characters, marks that turn the direction of text round, and half characters: nobody typed them on purpose.
const unseen = /(?!\s)[\p{Cc}\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]|\p{Cs}/gu;

/** One line of text: line breaks become blanks, what cannot be seen goes. */
export function oneLine(cell: string): SafeText {
    const changes: string[] = [];
    const shown = cell.replace(unseen, '');
    if (shown !== cell) changes.push('characters that cannot be seen were left out');
    if (/[\r\n\u2028\u2029]/.test(shown.trim())) changes.push('line breaks became blanks');
    return { text: shown.replace(/\s+/g, ' ').trim(), changes };
}

/** A title stands between straight quotation marks, so that those inside become typographic ones. */
export function safeTitle(cell: string): SafeText {
    const { text, changes } = oneLine(cell);
    if (!text.includes('"')) return { text, changes };
    const quoted = text.replace(/(^|[\s([{–—-])"/g, '$1“').replaceAll('"', '”');
    return { text: quoted, changes: [...changes, 'straight quotation marks became typographic ones'] };
}

/** Prose that reads as the cell does: what would be a name in braces or markup is marked as plain. */
export function safeProse(cell: string): SafeText {
    const { text, changes } = oneLine(cell);
    return { text: text.replace(/[\\{}*_`[\]<>&]/g, '\\$&'), changes };
}

/** Prose of a file as it reads, to be compared with a cell. */
export function readingOf(prose: string): string {
    return prose.replace(/\\([!-/:-@[-`{-~])/g, '$1').replace(/\s+/g, ' ').trim();
}

/** Titles that differ in case, blanks or the shape of their quotation marks are the same to a reader. */
export function titleKey(title: string): string {
    return title.normalize('NFC').toLowerCase().replace(/[“”„"«»]/g, '"').replace(/[‘’']/g, "'").replace(/\s+/g, ' ').trim();
}
