import type { BriefRefusal, PrintParams } from './pages.js';

/** Which practice is wanted as a sheet: that of the lesson named, else of the one at the cursor. Further items with `more`, the answers with `key`. */
export interface PracticeParams extends PrintParams {
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
