import Papa from 'papaparse';
import { emptyCell, limits, tooLarge, tooManyColumns, tooManyRows, type Cell, type Refusal, type Table } from './table.js';

const delimiters = ['\t', ';', ','] as const;
const delimiterNames: Record<string, string> = { '\t': 'tabs', ';': 'semicolons', ',': 'commas' };

/** Rows that are looked at to tell the delimiter. */
const sample = 100;

/** More delimiters than this in one line are no inventory; splitting them would only cost memory. */
const mostInLine = 100_000;

/**
 * Reads text with delimiters (RFC 4180 and its relatives): cells between commas, semicolons or tabs, in UTF-8, UTF-16 with a byte order
 * mark, or Windows-1252.
 */
export function readCsv(bytes: Uint8Array): Table | Refusal {
    if (bytes.length > limits.file) return tooLarge(bytes.length);
    const { text: whole, encoding } = decode(bytes);
    const remarks = encoding === undefined ? [] : [encoding];
    const named = /^sep=([,;\t])\r?\n/i.exec(whole);
    const text = named ? whole.slice(named[0].length) : whole;
    if (text.trim() === '') return { refusal: 'The spreadsheet is empty.' };
    const delimiter = named?.[1] ?? guessDelimiter(text);
    if (mostTogether(text, delimiter) > mostInLine) return tooManyColumns();
    const { data, errors } = Papa.parse<string[]>(text, { delimiter, preview: limits.rows + 1 });
    // What ends the last line begins no row.
    if (data.length > 1 && data[data.length - 1]!.join('') === '') data.pop();
    if (data.length > limits.rows) return tooManyRows();
    if (data.some(row => row.length > limits.columns)) return tooManyColumns();
    if (data.every(row => row.every(cell => cell.trim() === ''))) return { refusal: 'The spreadsheet is empty.' };
    if (data.some(row => row.length > 1)) remarks.push(`Columns are separated by ${delimiterNames[delimiter]}.`);
    for (const { type, row } of errors.slice(0, 5)) {
        if (type === 'Quotes') remarks.push(`Row ${(row ?? 0) + 1}: a quotation mark is not closed as it should be, so that cells after it may have run together.`);
    }
    return { rows: data.map(row => row.map(cellOf)), remarks, decimalComma: delimiter === ';' ? true : undefined };
}

/** Spreadsheets write ="007" to keep a text from becoming a number. */
function cellOf(text: string): Cell {
    const kept = /^="([^"]*)"$/.exec(text.trim());
    const shown = (kept?.[1] ?? text).trim();
    if (shown === '') return emptyCell;
    return { text: shown, is: /^#(?:N\/A|REF!|DIV\/0!|VALUE!|NAME\?|NULL!|NUM!)$/.test(shown) ? 'error' : 'text' };
}

function decode(bytes: Uint8Array): { text: string; encoding?: string } {
    const [first, second] = bytes;
    if (first === 0xff && second === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'The text is in UTF-16.' };
    if (first === 0xfe && second === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'The text is in UTF-16.' };
    try {
        return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
    } catch {
        return {
            text: windows1252(bytes),
            encoding: 'The text is not UTF-8 and was read as Windows-1252, the usual one of older spreadsheets. Look at letters such as é and ß; if they are wrong, save the spreadsheet as "CSV UTF-8".'
        };
    }
}

// 0x80 to 0x9f of the index windows-1252 in the WHATWG Encoding Standard. Node 20 decodes them as control characters.
const above80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function windows1252(bytes: Uint8Array): string {
    return new TextDecoder('windows-1252').decode(bytes).replace(/[\u0080-\u009f]/g, char => above80[char.charCodeAt(0) - 0x80]!);
}

/** The delimiter that cuts most rows into the same number of cells. */
function guessDelimiter(text: string): string {
    const start = text.slice(0, 200_000);
    let best = ',';
    let most = 0;
    for (const delimiter of delimiters) {
        if (!start.includes(delimiter) || mostTogether(start, delimiter) > mostInLine) continue;
        const lengths = Papa.parse<string[]>(start, { delimiter, preview: sample, skipEmptyLines: 'greedy' }).data.map(row => row.length);
        const counts = new Map<number, number>();
        for (const length of lengths) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
        const alike = Math.max(0, ...counts.values());
        if (alike > most) {
            best = delimiter;
            most = alike;
        }
    }
    return best;
}

/** The most delimiters between two line ends. */
function mostTogether(text: string, delimiter: string): number {
    const code = delimiter.charCodeAt(0);
    let most = 0;
    let count = 0;
    for (let at = 0; at < text.length; at++) {
        const char = text.charCodeAt(at);
        if (char === 10 || char === 13) count = 0;
        else if (char === code && ++count > most) most = count;
    }
    return most;
}
