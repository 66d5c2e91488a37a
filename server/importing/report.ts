import type { Meaning } from './headings.js';

/** What an import would do, row by row: plain data, safe as JSON. */
export interface ImportReport {
    /** The sheet of the workbook; CSV has none. */
    sheet?: string;
    /** Row of the headings from 1; absent where there are none. */
    headingRow?: number;
    columns: ReportedColumn[];
    rows: ReportedRow[];
    /** About the whole spreadsheet: how it was read, what was taken for granted. */
    remarks: string[];
    /** What the import would like to be told: without it, prices or amounts on hand are left out. */
    asks: ('currency' | 'class')[];
    blankRows: number;
}

export interface ReportedColumn {
    /** "C" */
    letter: string;
    heading: string;
    means: Meaning;
    why: string;
    /** True where the column's cells come to nothing: it is not used, or not with what was chosen. */
    left: boolean;
}

export interface ReportedRow {
    /** From 1, as the spreadsheet counts. */
    row: number;
    does: 'new' | 'changed' | 'same' | 'skipped';
    /** The name in the programme. */
    name?: string;
    title: string;
    /** What is written, in the words of the language: "pack of 500 g costs 2.10 USD". */
    changes: string[];
    /** Why the row is skipped, what was taken for granted, what could not be used. */
    remarks: string[];
    /** True where something that the row says is left out. */
    lost: boolean;
}
