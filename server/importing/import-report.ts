import type { ChangedFile } from './import-inventory.js';
import { meaningWords } from './headings.js';
import { changedLines } from './line-preview.js';
import type { ImportReport, ReportedRow } from './report.js';

/** Names a file to a person. */
export type ShowFile = (uri: string) => string;

/** A remark that so many rows share is told once. */
const oftenFrom = 4;

/** The report as plain text: columns, rows and remarks. */
export function reportText({ sheet, headingRow, columns, rows, remarks: general, blankRows }: ImportReport): string {
    const often = remarksOfMany(rows);
    const width = String(rows[rows.length - 1]?.row ?? 0).length;
    const remarks = [...general, ...[...often].map(([remark, numbers]) => `Rows ${someOf(numbers)}: ${remark}`)];
    const where = [sheet === undefined ? undefined : `sheet '${sheet}'`, headingRow === undefined ? 'no headings' : `headings in row ${headingRow}`].filter(part => part !== undefined).join(', ');
    const blocks = [
        [`Columns (${where})`, ...columns.map(({ letter, heading, means, why, left }) => `  ${letter}  ${heading === '' ? '(no heading)' : heading}: ${means === 'unused' ? 'not used' : `${meaningWords[means]}${left ? ', not used' : ''}`} (${why})`)],
        ['Rows', ...rows.flatMap(row => rowLines(row, often, width))],
        ...(remarks.length === 0 ? [] : [['Remarks', ...remarks.map(remark => `  ${remark}`)]]),
        [summary(rows, blankRows)]
    ];
    return `${blocks.map(lines => lines.join('\n')).join('\n\n')}\n`;
}

function remarksOfMany(rows: readonly ReportedRow[]): Map<string, number[]> {
    const byRemark = new Map<string, number[]>();
    for (const { row, remarks } of rows) {
        for (const remark of remarks) {
            const numbers = byRemark.get(remark);
            if (numbers) numbers.push(row);
            else byRemark.set(remark, [row]);
        }
    }
    return new Map([...byRemark].filter(([, numbers]) => numbers.length >= oftenFrom));
}

function someOf(numbers: readonly number[]): string {
    return numbers.length > 12 ? `${numbers.slice(0, 10).join(', ')} and ${numbers.length - 10} more` : numbers.join(', ');
}

function rowLines({ row, does, name, title, changes, remarks }: ReportedRow, often: ReadonlyMap<string, unknown>, width: number): string[] {
    const what = name === undefined ? title : title === '' ? name : `${name} "${title}"`;
    const indent = ' '.repeat(width + 6);
    return [`  ${String(row).padStart(width)}  ${does}: ${what}`, ...changes.map(change => indent + change), ...remarks.filter(remark => !often.has(remark)).map(remark => `${indent}(${remark})`)];
}

/** "3 new, 1 changed, 10 the same, 2 skipped; 4 blank rows passed over." */
export function summary(rows: readonly ReportedRow[], blankRows: number): string {
    const count = (does: ReportedRow['does']): number => rows.filter(row => row.does === does).length;
    const lost = rows.filter(row => row.lost).length;
    const blank = blankRows === 0 ? '' : `; ${blankRows} blank ${blankRows === 1 ? 'row' : 'rows'} passed over`;
    const left = lost === 0 ? '' : ` Of ${lost} ${lost === 1 ? 'row' : 'rows'} not everything could be used.`;
    return `${count('new')} new, ${count('changed')} changed, ${count('same')} the same, ${count('skipped')} skipped${blank}.${left}`;
}

/** The changes to files as a unified diff. */
export function previewText(files: readonly ChangedFile[], show: ShowFile): string {
    return files.map(({ uri, before, after, edits }) => {
        const name = show(uri);
        return [`--- ${before === '' ? '(new file)' : name}`, `+++ ${name}`, ...changedLines(before, after, edits)].join('\n');
    }).join('\n\n');
}

/** The same for programs. */
export function importJson(report: ImportReport, files: readonly ChangedFile[], show: ShowFile, wrote: boolean): string {
    const changed = files.map(({ uri, before, after, edits }) => ({ file: show(uri), isNew: before === '', preview: changedLines(before, after, edits), text: after }));
    return `${JSON.stringify({ format: 'haversack-import', version: 1, ...report, files: changed, wrote }, undefined, 2)}\n`;
}
