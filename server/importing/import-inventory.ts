import { applyEdits } from '@haversack/language/checks/apply-edits';
import type { Edit } from '@haversack/language/checks/check';
import type { Programme } from '@haversack/language/sheets/programme';
import { likeness } from './columns.js';
import { planImport, type ImportChoices } from './plan-import.js';
import { readCsv } from './read-csv.js';
import { readWorkbook } from './read-workbook.js';
import type { ImportReport } from './report.js';
import { tooLarge, limits, type Refusal, type Table } from './table.js';

/** A file before and after an import. */
export interface ChangedFile {
    uri: string;
    /** Empty for a file that is not there yet. */
    before: string;
    after: string;
    edits: Edit[];
}

export interface Import {
    report: ImportReport;
    /** Those that differ. */
    files: ChangedFile[];
}

/** Reads a spreadsheet of any kind that can be read: the sheet named, or the one that looks most like an inventory. */
export async function readSpreadsheet(bytes: Uint8Array, sheet?: string): Promise<Table | Refusal> {
    if (bytes.length > limits.file) return tooLarge(bytes.length);
    const starts = (...signature: number[]): boolean => signature.every((byte, at) => bytes[at] === byte);
    if (starts(0xd0, 0xcf, 0x11, 0xe0)) {
        return { refusal: 'This is a spreadsheet in the old .xls format, or one that a password protects. Save it as .xlsx or .csv without a password and import that.' };
    }
    if (!starts(0x50, 0x4b)) {
        if (sheet !== undefined) return { refusal: `A file of text has no sheets: leave out '${sheet}'.` };
        return readCsv(bytes);
    }
    const tables = await readWorkbook(bytes, sheet);
    if ('refusal' in tables) return tables;
    const best = tables.reduce((most, table) => (likeness(table) > likeness(most) ? table : most));
    if (best.rows.every(row => row.every(({ text }) => text === ''))) return { refusal: 'The spreadsheet is empty.' };
    const others = tables.filter(table => table !== best && table.rows.some(row => row.some(({ text }) => text !== ''))).map(table => `'${table.sheet}'`);
    const remark = `Sheet '${best.sheet}' is imported; ${others.join(', ')} ${others.length === 1 ? 'is' : 'are'} not.`;
    return others.length === 0 ? best : { ...best, remarks: [...best.remarks, remark] };
}

/** What importing a spreadsheet would change, with the texts of the files as they would be. */
export function importTable(programme: Programme, textOf: (uri: string) => string, table: Table, choices: ImportChoices): Import | Refusal {
    const plan = planImport(programme, textOf, table, choices);
    if ('refusal' in plan) return plan;
    const files = [...new Set(plan.edits.map(({ uri }) => uri))].map((uri): ChangedFile => {
        const before = textOf(uri);
        const edits = plan.edits.filter(edit => edit.uri === uri);
        return { uri, before, after: applyEdits(before, edits), edits };
    });
    return { report: plan.report, files: files.filter(({ before, after }) => before !== after) };
}

/** The files of a programme that new materials may go to, the likeliest first; `folder` is its address, without a slash at the end. */
export function targetFiles(programme: Programme, folder: string): string[] {
    const kits = [...programme.files.values()].filter(({ uri }) => uri.endsWith('.kit')).sort((a, b) => b.materials.length - a.materials.length).map(({ uri }) => uri);
    return kits.length > 0 ? kits : [`${folder}/inventory.kit`];
}
