/** One cell of a spreadsheet as text; an empty one has no text. */
export interface Cell {
    text: string;
    is: 'text' | 'number' | 'date' | 'truth' | 'error';
    /** A sign or code such as "€" or "EUR" that the spreadsheet shows around the number, though it is no part of the cell. */
    shownIn?: string;
}

/** A spreadsheet's sheet as it stands: `rows[0]` is its row 1. Rows may be of different lengths. */
export interface Table {
    /** The sheet's name; CSV has none. */
    sheet?: string;
    rows: Cell[][];
    /** How it was read, for the report: encoding, delimiter, sheets that were not looked at. */
    remarks: string[];
    /** True where decimals are written with a comma, as far as the file itself shows; absent when it does not. */
    decimalComma?: boolean;
}

/** Why nothing can be done, in a teacher's words. */
export interface Refusal {
    refusal: string;
    /** The columns there are, where telling what one of them means would help. */
    columns?: { letter: string; heading: string }[];
}

export const emptyCell: Cell = { text: '', is: 'text' };

export const limits = {
    /** Bytes of a file. */
    file: 20 * 1024 * 1024,
    /** Bytes of a workbook when unpacked. */
    unpacked: 64 * 1024 * 1024,
    rows: 10_000,
    columns: 256,
    sheets: 20
} as const;

/** Said of a file that is too large; `bytes` is its size. */
export function tooLarge(bytes: number): Refusal {
    const size = Math.ceil(bytes / (1024 * 1024));
    return { refusal: `The spreadsheet has ${size} MB, and ${limits.file / (1024 * 1024)} MB is the most that is read. Copy the inventory alone into a new spreadsheet, without pictures, and import that.` };
}

export function tooManyRows(): Refusal {
    return { refusal: `The sheet has more than ${limits.rows} rows. Copy the rows of the inventory into a new spreadsheet and import that.` };
}

export function tooManyColumns(): Refusal {
    return { refusal: `The sheet has more than ${limits.columns} columns. Copy the columns of the inventory into a new spreadsheet and import that.` };
}

/** "A" for 0, "Z" for 25, "AA" for 26. */
export function columnLetter(index: number): string {
    return index < 26 ? String.fromCharCode(65 + index) : columnLetter(Math.floor(index / 26) - 1) + columnLetter(index % 26);
}

/** 1 for "A", 27 for "AA"; 0 for no letters. */
export function columnNumber(letters: string): number {
    return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}
