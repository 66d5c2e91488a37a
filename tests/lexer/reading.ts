import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { IToken } from 'chevrotain';
import { EmptyFileSystem } from 'langium';
import type { ProgrammeFile } from '@haversack/language/generated/ast';
import type { ReadingReport } from '@haversack/language/lexer/line-lexer';
import type { ReadingProblem } from '@haversack/language/lexer/problems';
import { createHaversackServices } from '@haversack/language/module';
import { makeSheet } from '@haversack/language/sheets/make-sheet';
import type { FileSheet } from '@haversack/language/sheets/sheet';

const { haversack } = createHaversackServices(EmptyFileSystem);

export interface Read {
    tokens: IToken[];
    comments: IToken[];
    problems: ReadingProblem[];
    /** Words of lines that could not be read. */
    unreadable: string[];
    /** The parser's own complaints: none, whatever the text. */
    parserErrors: string[];
    sheet: FileSheet;
}

/** Reads a text as the language does: lexer, parser and sheet. */
export function read(text: string): Read {
    const { tokens, hidden } = haversack.parser.Lexer.tokenize(text);
    const { value, parserErrors, lexerReport } = haversack.parser.LangiumParser.parse<ProgrammeFile>(text);
    const { problems, unreadable } = lexerReport as ReadingReport;
    return { tokens, comments: hidden, problems, unreadable, parserErrors: parserErrors.map(({ message }) => message), sheet: makeSheet(value, 'file:///one.lesson', unreadable) };
}

/** What the lexer and the parser find wrong, without a sheet: quicker. */
export function problemsIn(text: string): Pick<Read, 'problems' | 'parserErrors'> {
    const { parserErrors, lexerReport } = haversack.parser.LangiumParser.parse<ProgrammeFile>(text);
    return { problems: (lexerReport as ReadingReport).problems, parserErrors: parserErrors.map(({ message }) => message) };
}

/** Only what the lexer says: quicker still. */
export function lex(text: string): Pick<Read, 'tokens' | 'comments' | 'problems' | 'unreadable'> {
    const { tokens, hidden, report } = haversack.parser.Lexer.tokenize(text);
    const { problems, unreadable } = report as ReadingReport;
    return { tokens, comments: hidden, problems, unreadable };
}

/** A sheet without the places in it: what the text says, wherever it stands. */
export function said(sheet: FileSheet): unknown {
    const places = new Set(['at', 'whole', 'head', 'flagAt', 'itemsAt', 'wordsEnd', 'kindAt', 'editionAt', 'useAt', 'sourceAt', 'starts', 'brokenLines', 'unreadable', 'uri']);
    const strip = (value: unknown): unknown => Array.isArray(value) ? value.map(strip)
        : value !== null && typeof value === 'object' ? Object.fromEntries(Object.entries(value).filter(([key, inner]) => !(places.has(key) && (typeof inner === 'object' || key === 'uri'))).map(([key, inner]) => [key, strip(inner)]))
            : value;
    return strip(sheet);
}

const repository = join(import.meta.dirname, '../..');
export const languagePage = join(import.meta.dirname, 'language-page');
export const firstSteps = join(repository, 'examples/first-steps');
export const year = join(repository, 'examples/year');

/** All files of a programme by their path in it. */
export function programmeFiles(folder: string): Map<string, string> {
    return new Map(readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => /\.(lesson|kit|course)$/.test(name)).sort()
        .map(name => [name, readFileSync(join(folder, name), 'utf8')]));
}
