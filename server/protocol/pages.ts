/** Requests beyond the Language Server Protocol: the brief, the term and the changes, as the preview and the commands ask for them. */

/** How a whole page is printed: on which paper (without one, what the printer has), and whether the browser's print window opens by itself. */
export interface PrintParams {
    paper?: 'a4' | 'letter';
    printing?: boolean;
}

/** Which brief is wanted. Without `week`, the week of the lesson at `position` (or of the file), else week 1. */
export interface BriefParams extends PrintParams {
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
export interface TermParams extends PrintParams {
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
export interface ChangesParams extends PrintParams {
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
