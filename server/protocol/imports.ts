import type { ImportReport } from '../importing/report.js';
import type { BriefRefusal } from './pages.js';

/** What a column of a spreadsheet can be told to mean: a meaning of `server/importing/headings.ts`. */
export interface ImportColumn {
    /** Its heading, letter ("C") or number from 1. */
    column: string;
    means: string;
}

/** A spreadsheet whose inventory is to be taken into the programme. Nothing is changed by asking. */
export interface ImportParams {
    /** The file: base64, or its bytes one by one. */
    bytes: string | number[];
    sheet?: string;
    /** A file of the programme that is meant, where several are open. */
    uri?: string;
    columns?: ImportColumn[];
    /** The programme's file for new materials; it may not be there yet. Without it, the likeliest. */
    file?: string;
    class?: string;
    kit?: string;
    /** ISO 4217. */
    currency?: string;
}

export interface ImportAnswer {
    report: ImportReport;
    /** The same as plain text. */
    text: string;
    summary: string;
    /** Each file that differs, as it would be, with the edits that make it so; `isNew` where the file has to be made first. */
    files: { uri: string; isNew: boolean; version?: number; after: string; edits: { range: { start: { line: number; character: number }; end: { line: number; character: number } }; newText: string }[] }[];
    /** What may be chosen, and what was. */
    choices: { file: string; files: string[]; classes: { name: string; title: string }[]; kits: { name: string; title: string }[]; meanings: { means: string; words: string }[] };
}

/** Why nothing can be imported; with the columns, where one of them has to be told first. */
export interface ImportRefusal extends BriefRefusal {
    columns?: { letter: string; heading: string }[];
}

export const importRequest = 'haversack/import';
/** The most bytes of a spreadsheet that are read. */
export const importLimit = 20 * 1024 * 1024;
