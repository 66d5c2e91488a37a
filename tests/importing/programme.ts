import { EmptyFileSystem, URI } from 'langium';
import { loose } from '@haversack/language/linking/programmes';
import { createHaversackServices } from '@haversack/language/module';
import type { Problem } from '@haversack/language/checks/check';
import type { HaversackDocumentValidator } from '@haversack/language/checks/document-validator';
import type { Programme } from '@haversack/language/sheets/programme';
import { importTable, readSpreadsheet, type Import } from '../../server/importing/import-inventory.js';
import type { ImportChoices } from '../../server/importing/plan-import.js';
import type { Refusal, Table } from '../../server/importing/table.js';

/** Texts of a programme by file name. */
export type Files = Record<string, string>;

const root = 'file:///programme/';
const { shared, haversack } = createHaversackServices(EmptyFileSystem);

export interface Read {
    programme: Programme;
    textOf: (uri: string) => string;
    problems: Problem[];
}

/** Reads a programme as the language does, with every problem it finds. */
export async function readFiles(files: Files): Promise<Read> {
    const { LangiumDocuments, DocumentBuilder, LangiumDocumentFactory } = shared.workspace;
    await DocumentBuilder.update([], LangiumDocuments.all.map(({ uri }) => uri).toArray());
    const documents = Object.entries(files).map(([name, text]) => LangiumDocumentFactory.fromString(text, URI.parse(root + name)));
    for (const document of documents) LangiumDocuments.addDocument(document);
    await DocumentBuilder.build(documents, { validation: true });
    const validator = haversack.validation.DocumentValidator as HaversackDocumentValidator;
    return {
        programme: haversack.sheets.viewAt(loose).programme, textOf: uri => files[uri.slice(root.length)] ?? '',
        problems: documents.flatMap(document => [...validator.problemsIn(document)])
    };
}

export const uriOf = (name: string): string => root + name;

export function tableOf(rows: readonly (readonly string[])[]): Table {
    return { rows: rows.map(row => row.map(text => ({ text, is: 'text' as const }))), remarks: [] };
}

export function isRefusal<T extends object>(answer: T | Refusal): answer is Refusal {
    return 'refusal' in answer;
}

export interface Imported extends Import {
    /** The programme's files as they are afterwards. */
    after: Files;
}

/** Imports a table, or text or bytes of a spreadsheet, into files; fails where it is refused. */
export async function importInto(files: Files, sheet: string | Uint8Array | Table, choices: Partial<ImportChoices> & { sheet?: string } = {}): Promise<Imported> {
    const table = typeof sheet === 'string' ? await readSpreadsheet(new TextEncoder().encode(sheet)) : sheet instanceof Uint8Array ? await readSpreadsheet(sheet, choices.sheet) : sheet;
    if (isRefusal(table)) throw new Error(table.refusal);
    const { programme, textOf } = await readFiles(files);
    const done = importTable(programme, textOf, table, { file: uriOf('inventory.kit'), ...choices });
    if (isRefusal(done)) throw new Error(done.refusal);
    const after = { ...files };
    for (const { uri, after: text } of done.files) after[uri.slice(root.length)] = text;
    return { ...done, after };
}

/** The errors of a programme: what the language cannot read or make sense of. */
export async function errorsIn(files: Files): Promise<string[]> {
    const { problems } = await readFiles(files);
    return problems.filter(({ severity }) => severity === 'error').map(({ uri, at, code, message }) => `${uri.slice(root.length)}:${at.start.line + 1} ${code}: ${message}`);
}
