import { URI, UriUtils } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { loose } from '@haversack/language/linking/programmes';
import { textEditsFor } from '@haversack/language/checks/apply-edits';
import type { GivenColumn } from '../importing/columns.js';
import { meanings, meaningWords, type Meaning } from '../importing/headings.js';
import { importTable, readSpreadsheet, targetFiles } from '../importing/import-inventory.js';
import { reportText, summary } from '../importing/import-report.js';
import { stillReads } from '../importing/still-reads.js';
import { limits, tooLarge, type Refusal, type Table } from '../importing/table.js';
import { importRequest, type ImportAnswer, type ImportParams, type ImportRefusal } from '../protocol/imports.js';
import { programmeOf } from './asked-for.js';
import { isListOf, isText, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

const kinds = {
    bytes: (value: unknown): boolean => typeof value === 'string' || Array.isArray(value), sheet: isText, columns: isListOf({ column: isText, means: isText }),
    uri: isText, file: isText, class: isText, kit: isText, currency: isText
};

/** Answers what an import of a spreadsheet would change: a report, and edits for the editor to make. */
export function addImportRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(importRequest, async (given: unknown): Promise<ImportAnswer | ImportRefusal> => {
        const params = readParams<ImportParams>(given, kinds);
        const bytes = bytesOf(params.bytes);
        if ('refusal' in bytes) return bytes;
        const table = await readSpreadsheet(bytes, params.sheet);
        if ('refusal' in table) return table;
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answer(params, table, services));
    });
}

function answer(params: Partial<ImportParams>, table: Table, services: HaversackServerServices): ImportAnswer | ImportRefusal {
    const { LangiumDocuments } = services.shared.workspace;
    const at = programmeOf({ ...params, uri: params.file ?? params.uri }, services);
    const { programme } = services.sheets.viewAt(at);
    const folders = at === loose ? [] : [at];
    const files = targetFiles(programme, folders[0] ?? 'untitled:');
    const file = params.file === undefined ? files[0]! : URI.parse(params.file).toString();
    if (!/\.(?:kit|course|lesson)$/.test(file) || URI.parse(file).path.split('/').includes('..') || !folders.some(folder => UriUtils.contains(folder, file))) {
        return { refusal: folders.length === 0 ? 'Open the folder of a programme first.' : 'New materials go to a file of the programme that ends in .kit.' };
    }
    const unknown = params.columns?.find(({ means }) => !(meanings as readonly string[]).includes(means));
    if (unknown) return { refusal: `A column cannot mean '${unknown.means}'.` };
    const documentAt = (uri: string) => (LangiumDocuments.hasDocument(URI.parse(uri)) ? LangiumDocuments.getDocument(URI.parse(uri))?.textDocument : undefined);
    const done = importTable(programme, uri => documentAt(uri)?.getText() ?? '', table, {
        file, columns: params.columns as GivenColumn[] | undefined, currency: params.currency?.toUpperCase(), class: params.class, kit: params.kit
    });
    if ('refusal' in done) return done;
    const worse = stillReads(done.files, services.parser.Lexer);
    if (worse) return worse;
    const { report } = done;
    return {
        report, text: reportText(report), summary: summary(report.rows, report.blankRows),
        files: done.files.map(({ uri, before, after, edits }) => ({ uri, isNew: !documentAt(uri), version: documentAt(uri)?.version, after, edits: textEditsFor(before, edits) })),
        choices: {
            file, files: [...new Set([...files, ...folders.slice(0, 1).map(folder => `${folder}/inventory.kit`)])],
            classes: named(programme.classes.values()), kits: named(programme.kits.values()), meanings: meanings.map((means: Meaning) => ({ means, words: meaningWords[means] }))
        }
    };
}

function named(declared: Iterable<{ name: string; title: string }>): { name: string; title: string }[] {
    return [...declared].map(({ name, title }) => ({ name, title }));
}

/** The bytes, or why there are none; base64 says how long it is before it is decoded. */
function bytesOf(bytes: unknown): Uint8Array | Refusal {
    const size = typeof bytes === 'string' ? Math.floor(bytes.length / 4 * 3) - 2 : Array.isArray(bytes) ? bytes.length : 0;
    if (size > limits.file) return tooLarge(size);
    try {
        if (typeof bytes === 'string') return Uint8Array.from(atob(bytes), char => char.charCodeAt(0));
        if (Array.isArray(bytes)) return Uint8Array.from(bytes as number[]);
    } catch {
        // Not base64: there is nothing to read.
    }
    return { refusal: 'The spreadsheet did not arrive. Try again.' };
}
