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
    /** Asks for a whole self-contained page instead of sections. */
    format?: 'sections' | 'html' | 'md' | 'json';
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
    /** The whole page for format html, md, json. */
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

export const briefRequest = 'haversack/brief';
/** Server to client: the programme changed; previews should ask again. */
export const changedNotification = 'haversack/changed';
