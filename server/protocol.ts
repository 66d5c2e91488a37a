import type { ImportReport } from './importing/report.js';

/** Requests beyond the Language Server Protocol: what the preview and the commands ask of the server. */

/** Which brief is wanted. Without `week`, the week of the lesson at `position` (or of the file), else week 1. */
export interface BriefParams {
    uri?: string;
    line?: number;
    class?: string;
    week?: number;
    /** The week to show when no lesson stands at the cursor or in the file: the one that is shown already. */
    otherwise?: number;
    /** Hashes of the sections the preview shows already, so that only changed ones travel. */
    known?: Record<string, string>;
    /** Asks for a whole self-contained page instead of sections; `notes` are speaking notes as Markdown. */
    format?: 'sections' | 'html' | 'md' | 'json' | 'notes';
    /** For `notes`: words spoken in a minute. */
    rate?: number;
}

export interface BriefSection {
    id: string;
    hash: string;
    /** Absent when the preview has this hash already. */
    html?: string;
}

export interface BriefAnswer {
    /** Stylesheet and title of the page; sections in order. */
    title: string;
    sections: BriefSection[];
    /** The whole page for format html, md, json, notes. */
    text?: string;
    week: number;
    weeks: number;
    class?: string;
    classes: { name: string; title: string }[];
    /** Errors in the file at `uri`, so that the preview can say that it shows the text as far as it can be read. */
    problems: number;
    /** First and last line (from 0) of the declaration at the cursor, so that the preview marks nothing of another one. */
    around?: { from: number; to: number };
}

/** Why no brief can be shown, in words for a teacher. */
export interface BriefRefusal {
    refusal: string;
}

/** Which class's term is wanted: the one named, else the one at the cursor, else the only or first one. */
export interface TermParams {
    uri?: string;
    line?: number;
    class?: string;
    /** ISO date to plan from in place of the day it is where the server runs. */
    today?: string;
    /** Hashes of the sections the preview shows already. */
    known?: Record<string, string>;
    /** Asks for a whole file instead of sections: a self-contained page, Markdown, all figures, the shopping list or a calendar. */
    format?: 'sections' | 'html' | 'md' | 'json' | 'csv' | 'ics';
    /** For a calendar: what the file that it replaces holds, so that a re-import updates. */
    before?: string;
}

export interface TermAnswer {
    title: string;
    sections: BriefSection[];
    /** The whole file, where a format other than sections was asked for. */
    text?: string;
    class?: string;
    classes: { name: string; title: string }[];
    /** Errors in the file at `uri`. */
    problems: number;
    around?: { from: number; to: number };
}

/** Which class's changes are wanted: the one named, else the one at the cursor or of the adaptation there, else the only or first one. */
export interface ChangesParams {
    uri?: string;
    line?: number;
    class?: string;
    /** The class to show where none is named and neither a class nor an adaptation stands at the cursor. */
    otherwise?: string;
    /** Hashes of the sections the preview shows already. */
    known?: Record<string, string>;
    /** Asks for a whole file instead of sections: a self-contained page, Markdown, or all figures. */
    format?: 'sections' | 'html' | 'md' | 'json';
}

export interface ChangesAnswer extends TermAnswer {
    /** Whether any adaptation applies; if none does, the page says so. */
    adapted: boolean;
}

export const briefRequest = 'haversack/brief';
/** Answered with a TermAnswer, or a BriefRefusal. */
export const termRequest = 'haversack/term';
/** Answered with a ChangesAnswer, or a BriefRefusal. */
export const changesRequest = 'haversack/changes';
/** Server to client: the programme changed; previews should ask again. */
export const changedNotification = 'haversack/changed';
/** Client to server: the person trusts the workspace now, which the client had not said when it started (`trusted` among the options it starts with). */
export const trustedNotification = 'haversack/trusted';

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

/** Which practice is wanted as a sheet: that of the lesson named, else of the one at the cursor. Further items with `more`, the answers with `key`. */
export interface PracticeParams {
    uri?: string;
    line?: number;
    lesson?: string;
    /** One practice of the lesson only. */
    practice?: string;
    /** As this class is taught the lesson. */
    class?: string;
    more?: number;
    key?: boolean;
    /** A self-contained page to print where nothing is said. */
    format?: 'html' | 'md' | 'text' | 'json';
}

export interface PracticeAnswer {
    lesson: string;
    title: string;
    /** All practices of the lesson that have items. */
    practices: { name: string; title: string }[];
    text: string;
}

/** Why there is no sheet; with the lessons that have practice, where none was meant. */
export interface PracticeRefusal extends BriefRefusal {
    lessons?: { name: string; title: string }[];
}

export const practiceRequest = 'haversack/practice';
