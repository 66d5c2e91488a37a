/** Real texts to damage: the examples and the page of the language. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { firstSteps, languagePage, programmeFiles, year } from '../lexer/reading.js';

export interface CorpusFile {
    /** Its name in the programme. */
    file: string;
    text: string;
}

const entries = (files: ReadonlyMap<string, string>): CorpusFile[] => [...files].map(([file, text]) => ({ file, text }));

export const small = entries(programmeFiles(firstSteps));
export const large = entries(programmeFiles(year));
export const page = entries(programmeFiles(languagePage));
export const corpus: readonly CorpusFile[] = [...small, ...page, ...large];

/** Calendars, frameworks and tables that stand beside programmes. */
export const otherFiles: readonly CorpusFile[] = [
    ...['calendars/village.ics', 'frameworks/valley-outcomes.json'].map(file => ({ file, text: readFileSync(join(year, file), 'utf8') })),
    { file: 'co-op-inventory.csv', text: readFileSync(join(import.meta.dirname, '../importing/co-op-inventory.csv'), 'utf8') }
];
