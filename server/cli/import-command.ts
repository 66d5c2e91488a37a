import { existsSync, readFileSync, realpathSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { EmptyFileSystem, URI } from 'langium';
import { programmeFile } from '@haversack/language/facts/programme-file';
import { createHaversackServices } from '@haversack/language/module';
import type { GivenColumn } from '../importing/columns.js';
import { meanings, type Meaning } from '../importing/headings.js';
import { importTable, readSpreadsheet, targetFiles, type ChangedFile } from '../importing/import-inventory.js';
import { importJson, previewText, reportText, summary } from '../importing/import-report.js';
import type { ImportReport } from '../importing/report.js';
import { stillReads } from '../importing/still-reads.js';
import { limits, tooLarge } from '../importing/table.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { readProgramme, reason } from './read-programme.js';

export interface ImportOptions {
    into: string;
    file?: string;
    class?: string;
    kit?: string;
    currency?: string;
    sheet?: string;
    column?: string[];
    write?: boolean;
    format?: string;
}

const byteOrderMark = '\uFEFF';

/** Shows what a spreadsheet would change in a programme, and with --write changes it. Rows that could not be used whole give exit code 1. */
export async function importCommand(sheet: string, options: ImportOptions, write: (text: string) => void): Promise<number> {
    const format = options.format ?? 'text';
    if (format !== 'text' && format !== 'json') throw new CouldNotRun(`There is no format '${format}' for import: use text or json.`);
    const columns = (options.column ?? []).map(givenColumn);
    const table = await readSpreadsheet(bytesOf(sheet), options.sheet);
    if ('refusal' in table) throw new CouldNotRun(`${sheet}: ${table.refusal}`);
    const { root, view: { programme }, show } = await readProgramme(options.into);
    const texts = new FileTexts(programme.files.keys());
    const file = options.file === undefined ? targetFiles(programme, URI.file(root).toString())[0]! : fileInside(root, options.file);
    const done = importTable(programme, uri => texts.of(uri), table, { file, columns, currency: options.currency?.toUpperCase(), class: options.class, kit: options.kit });
    if ('refusal' in done) throw new CouldNotRun(done.columns ? `${done.refusal} As in: --column title=${done.columns[0]?.letter ?? 'A'}` : done.refusal);
    const { report, files } = done;
    const worse = stillReads(files, createHaversackServices(EmptyFileSystem).haversack.parser.Lexer);
    if (worse) throw new CouldNotRun(worse.refusal);
    for (const { uri } of files) mustBeInside(root, URI.parse(uri).fsPath);
    if (options.write) save(files, texts);
    write(format === 'json' ? importJson(report, files, show, options.write === true) : asText(report, files, show, options.write === true));
    return report.rows.some(({ lost }) => lost) ? exitCodes.problems : exitCodes.fine;
}

function asText(report: ImportReport, files: readonly ChangedFile[], show: (uri: string) => string, wrote: boolean): string {
    const asked = [
        ...(report.asks.includes('currency') ? ["Say the currency of the prices with --currency, as in: --currency USD"] : []),
        ...(report.asks.includes('class') ? ['Say whose cupboard holds what is on hand with --class NAME, or which kit with --kit NAME.'] : [])
    ];
    const written = wrote ? files.map(({ uri }) => `Wrote ${show(uri)}`) : ['Nothing is written yet. Add --write to write it.'];
    const last = files.length === 0 ? ['The programme says all this already: there is nothing to write.'] : written;
    const blocks = [reportText(report).trimEnd(), ...(files.length === 0 || wrote ? [] : [previewText(files, show)]), [...asked, ...last].join('\n')];
    return wrote ? `${summary(report.rows, report.blankRows)}\n${blocks.slice(-1)[0]}\n` : `${blocks.join('\n\n')}\n`;
}

/** "title=Item name": what a column means, and its heading, letter or number. */
function givenColumn(text: string): GivenColumn {
    const [, written = '', column = ''] = /^\s*([\w -]+?)\s*=\s*(.+?)\s*$/.exec(text) ?? [];
    const means = written.replace(/ +/g, '-').toLowerCase();
    if (column === '') throw new CouldNotRun(`'${text}' names no column. Write what it means and its heading, as in: --column title="Item name"`);
    if (!(meanings as readonly string[]).includes(means)) throw new CouldNotRun(`A column cannot mean '${means}': it is one of ${meanings.join(', ')}.`);
    return { column, means: means as Meaning };
}

function bytesOf(sheet: string): Uint8Array {
    const path = resolve(sheet);
    if (!existsSync(path)) throw new CouldNotRun(`There is no spreadsheet at ${sheet}. Check the path.`);
    try {
        const { size } = statSync(path);
        if (size > limits.file) throw new CouldNotRun(`${sheet}: ${tooLarge(size).refusal}`);
        return readFileSync(path);
    } catch (error) {
        if (error instanceof CouldNotRun) throw error;
        throw new CouldNotRun(`${sheet} could not be read: ${reason(error)}.`);
    }
}

/** The address of a file named relative to the programme. */
function fileInside(root: string, name: string): string {
    if (!programmeFile.test(name)) throw new CouldNotRun(`New materials go to a file that ends in .kit, and '${name}' does not.`);
    const path = resolve(root, name);
    mustBeInside(root, path);
    return URI.file(path).toString();
}

/** Links that lead out of the programme's folder are not followed. */
function mustBeInside(root: string, path: string): void {
    const folder = dirname(path);
    if (!existsSync(folder)) throw new CouldNotRun(`There is no folder ${folder}.`);
    const real = existsSync(path) ? realpathSync(path) : join(realpathSync(folder), basename(path));
    const way = relative(realpathSync(root), real);
    if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) throw new CouldNotRun(`${path} is outside the programme's folder, so nothing is written there.`);
}

/** The texts of files as the language read them; a byte order mark is put back when a file is written. */
class FileTexts {
    private readonly known: ReadonlySet<string>;
    private readonly marked = new Set<string>();

    constructor(uris: Iterable<string>) {
        this.known = new Set(uris);
    }

    of(uri: string): string {
        const { fsPath } = URI.parse(uri);
        if (!this.known.has(uri) && !existsSync(fsPath)) return '';
        try {
            const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(fsPath));
            if (!text.startsWith(byteOrderMark)) return text;
            this.marked.add(uri);
            return text.slice(1);
        } catch (error) {
            throw new CouldNotRun(`${fsPath} could not be read: ${reason(error)}.`);
        }
    }

    markOf(uri: string): string {
        return this.marked.has(uri) ? byteOrderMark : '';
    }
}

function save(files: readonly ChangedFile[], texts: FileTexts): void {
    for (const { uri, after } of files) {
        const { fsPath } = URI.parse(uri);
        try {
            writeFileSync(fsPath, texts.markOf(uri) + after);
        } catch (error) {
            throw new CouldNotRun(`${fsPath} could not be written: ${reason(error)}.`);
        }
    }
}
