import { readSheet } from 'read-excel-file/universal';
import { columnLetter, columnNumber, emptyCell, limits, tooLarge, type Cell, type Refusal, type Table } from './table.js';
import { packPlainly, unpackWorkbook } from './unpack-workbook.js';
import { factsOfCells, sheetNames, type CellFacts, type SheetName } from './workbook-cells.js';

/**
 * Reads the sheets of an .xlsx workbook: the one named (or numbered from 1), or all that are not hidden. What is too large is refused
 * before it is unpacked. Where one of several sheets cannot be read, the others say so.
 */
export async function readWorkbook(bytes: Uint8Array, wanted?: string): Promise<Table[] | Refusal> {
    if (bytes.length > limits.file) return tooLarge(bytes.length);
    const parts = unpackWorkbook(bytes);
    if ('refusal' in parts) return parts;
    const names = sheetNames(parts);
    const sheets = choose(names, wanted);
    if ('refusal' in sheets) return sheets;
    // What the reader opens was unpacked under our own limits.
    const { buffer, byteOffset, byteLength } = packPlainly(parts);
    const archive = buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer;
    const tables: Table[] = [];
    const unread: string[] = [];
    for (const sheet of sheets) {
        const facts = factsOfCells(parts, sheet);
        const table = 'refusal' in facts ? facts : await readOne(archive, names.indexOf(sheet) + 1, sheet, facts);
        if (!('refusal' in table)) tables.push(table);
        else if (sheets.length === 1) return table;
        else unread.push(`Sheet '${sheet.name}' was not read. ${table.refusal}`);
    }
    if (tables.length === 0) return { refusal: 'No sheet of the spreadsheet could be read. Save it anew in your spreadsheet program, or save the inventory as .csv.' };
    return tables.map(table => ({ ...table, remarks: [...table.remarks, ...unread] }));
}

function choose(names: readonly SheetName[], wanted: string | undefined): readonly SheetName[] | Refusal {
    if (names.length === 0) return { refusal: 'The spreadsheet has no sheet.' };
    if (wanted === undefined) {
        const visible = names.filter(({ hidden }) => !hidden);
        return (visible.length > 0 ? visible : names).slice(0, limits.sheets);
    }
    const found = names.find(({ name }) => name === wanted) ?? names.find(({ name }) => name.trim().toLowerCase() === wanted.trim().toLowerCase())
        ?? (/^\d{1,3}$/.test(wanted) ? names[Number(wanted) - 1] : undefined);
    if (found) return [found];
    return { refusal: `There is no sheet '${wanted}'. ${names.length === 1 ? 'The only one is' : 'There are'} ${names.map(({ name }) => `'${name}'`).join(', ')}.` };
}

async function readOne(archive: ArrayBuffer, number: number, { name }: SheetName, { shownIn, errors }: CellFacts): Promise<Table | Refusal> {
    try {
        const data = await readSheet(archive, number) as readonly (readonly unknown[])[];
        const rows = data.map((row, at) => row.map((value, column) => cellOf(value, shownIn.get(`${columnLetter(column)}${at + 1}`))));
        // The reader leaves these cells empty.
        for (const [address, text] of errors) {
            const { row, column } = placeOf(address);
            while (rows.length <= row) rows.push([]);
            const cells = rows[row]!;
            while (cells.length <= column) cells.push(emptyCell);
            cells[column] = { text: text.trim() || 'a formula that was never worked out', is: 'error' };
        }
        return { sheet: name, rows, remarks: [] };
    } catch {
        return { refusal: `The sheet '${name}' could not be read. Save the spreadsheet anew in your spreadsheet program, or save the sheet as .csv.` };
    }
}

/** Row and column from 0. */
function placeOf(address: string): { row: number; column: number } {
    const [, letters = 'A', digits = '1'] = /^([A-Za-z]+)(\d+)$/.exec(address) ?? [];
    return { row: Math.max(0, Number(digits) - 1), column: columnNumber(letters) - 1 };
}

function cellOf(value: unknown, shownIn: string | undefined): Cell {
    if (typeof value === 'string') {
        const text = value.trim();
        return text === '' ? emptyCell : { text, is: 'text' };
    }
    if (typeof value === 'number' && Number.isFinite(value)) return { text: plainNumber(value), is: 'number', ...(shownIn !== undefined && { shownIn }) };
    if (typeof value === 'boolean') return { text: value ? 'yes' : 'no', is: 'truth' };
    if (value instanceof Date && !Number.isNaN(value.valueOf())) return { text: value.toISOString().slice(0, 10), is: 'date' };
    return emptyCell;
}

/** The shortest number that a spreadsheet would show, never with an exponent: 0.1 + 0.2 as spreadsheets keep it is 0.3. */
function plainNumber(value: number): string {
    const rounded = Number(value.toPrecision(15));
    return /e/i.test(String(rounded)) ? rounded.toLocaleString('en', { useGrouping: false, maximumFractionDigits: 15 }) : String(rounded);
}
