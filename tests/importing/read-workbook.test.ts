import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readSpreadsheet } from '../../server/importing/import-inventory.js';
import { readWorkbook } from '../../server/importing/read-workbook.js';
import { limits, type Table } from '../../server/importing/table.js';
import { sayingSize, withPart, workbook } from './workbooks.js';

async function read(book: Uint8Array, sheet?: string): Promise<Table> {
    const table = await readSpreadsheet(book, sheet);
    if ('refusal' in table) throw new Error(table.refusal);
    return table;
}

async function refusal(book: Uint8Array, sheet?: string): Promise<string> {
    const table = await readSpreadsheet(book, sheet);
    if (!('refusal' in table)) throw new Error('It was read.');
    return table.refusal;
}

const texts = ({ rows }: Table): string[][] => rows.map(row => row.map(({ text }) => text));

describe('cells', () => {
    test('texts, numbers, dates, truths and empty rows, each as a spreadsheet shows it', async () => {
        const table = await read(await workbook({
            Things: [
                ['Item', 'Stock', 'Bought', 'Reusable'], [' Bell ', 3, { value: new Date(Date.UTC(2026, 8, 1)), type: Date, format: 'yyyy-mm-dd' }, true], [null, null, null, null], ['Rice', 0.1 + 0.2, null, false], ['Sand', 1e-7, 1e21]
            ]
        }));
        expect(texts(table)).toEqual([
            ['Item', 'Stock', 'Bought', 'Reusable'], ['Bell', '3', '2026-09-01', 'yes'], ['', '', '', ''], ['Rice', '0.3', '', 'no'], ['Sand', '0.0000001', '1000000000000000000000', '']
        ]);
        expect(table.rows[1]!.map(({ is }) => is)).toEqual(['text', 'number', 'date', 'truth']);
        expect(table.sheet).toBe('Things');
    });

    test('what a formula came to when the spreadsheet was saved', async () => {
        const book = withPart(await workbook({ Things: [['Item', 'Stock', 'Note'], ['Bell', 1, 2], ['Drum', 3, 4]] }), 'xl/worksheets/sheet1.xml', xml => xml
            .replace('<c r="B2"><v>1</v></c>', '<c r="B2"><f>1+4</f><v>5</v></c>').replace('<c r="C2"><v>2</v></c>', '<c r="C2" t="str"><f>"a"&amp;"b"</f><v>ab</v></c>')
            .replace('<c r="C3"><v>4</v></c>', '<c r="C3" t="e"><f>1/0</f><v>#DIV/0!</v></c>'));
        const table = await read(book);
        expect(texts(table).slice(1)).toEqual([['Bell', '5', 'ab'], ['Drum', '3', '#DIV/0!']]);
        expect(table.rows[2]![2]!.is).toBe('error');
    });

    test('a formula that was never worked out is not taken for an empty cell', async () => {
        const book = withPart(await workbook({ Things: [['Item', 'Stock'], ['Bell', 1], ['Drum', 2]] }), 'xl/worksheets/sheet1.xml', xml => xml
            .replace('<c r="B2"><v>1</v></c>', '<c r="B2" t="str"><f>A2</f></c>').replace('<c r="B3"><v>2</v></c>', '<c r="B3"><f>1+1</f></c>'));
        expect((await read(book)).rows.slice(1).map(row => row[1])).toEqual(Array(2).fill({ text: 'a formula that was never worked out', is: 'error' }));
    });

    // The number formats are those of ECMA-376 part 1, section 18.8.31: [$€-407] is a currency with a locale.
    test('the currency that a number is shown in', async () => {
        const shown = (await read(await workbook({
            Things: [['Item', 'Price'], ...['[$€-407] #,##0.00', '#,##0.00 "EUR"', '"£"#,##0.00', '$#,##0.00', '0.00', '#,##0 [$CHF]'].map((format, at) => [`Thing ${at}`, { value: 4.5, type: Number, format }])]
        }))).rows.slice(1).map(row => row[1]!.shownIn);
        expect(shown).toEqual(['€', 'EUR', '£', '$', undefined, 'CHF']);
    });
});

describe('sheets', () => {
    const several = () => workbook({ 'Read me': [['How we use this'], ['Ask Ada.']], 'Things & more': [['Item', 'Stock'], ['Bell', 3]], Old: [['Item'], ['Drum']] });

    test('the one that looks like an inventory, and the others are named', async () => {
        const table = await read(await several());
        expect(table.sheet).toBe('Things & more');
        expect(table.remarks).toEqual(["Sheet 'Things & more' is imported; 'Read me', 'Old' are not."]);
    });

    test('the one that is asked for, by name in any case or by number', async () => {
        expect((await read(await several(), 'old')).sheet).toBe('Old');
        expect((await read(await several(), '1')).sheet).toBe('Read me');
        expect(await refusal(await several(), 'New')).toBe("There is no sheet 'New'. There are 'Read me', 'Things & more', 'Old'.");
    });

    test('a hidden one is only read when asked for', async () => {
        const book = withPart(await workbook({ Hidden: [['Item', 'Stock', 'Price'], ['Bell', 3, 2]], Shown: [['Item', 'Stock'], ['Drum', 1]] }), 'xl/workbook.xml', xml => xml.replace('name="Hidden"', 'name="Hidden" state="hidden"'));
        expect((await read(book)).sheet).toBe('Shown');
        expect((await read(book, 'Hidden')).sheet).toBe('Hidden');
    });

    test('an empty workbook', async () => {
        expect(await refusal(await workbook({ One: [[null]] }))).toBe('The spreadsheet is empty.');
    });
});

describe('files that are no spreadsheet, or too much of one', () => {
    const zeros = new Uint8Array(4 * 1024 * 1024);

    test('what is not .xlsx', async () => {
        expect(await refusal(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1))).toContain('old .xls format, or one that a password protects');
        expect(await refusal(zipSync({ mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'), 'content.xml': strToU8('<a/>') }))).toContain('Save it as .xlsx or .csv');
        expect(await refusal(zipSync({ 'word/document.xml': strToU8('<a/>') }))).toContain('not a spreadsheet in .xlsx format');
        expect(await refusal(strToU8('PK is not enough'))).toContain('damaged');
    });

    test('every way to cut a workbook short', async () => {
        const book = await workbook({ Things: [['Item', 'Stock'], ['Bell', 3]] });
        for (let length = 4; length < book.length; length += 97) expect(await refusal(book.slice(0, length))).toMatch(/damaged|could not be read|empty|no sheet|No sheet/);
    });

    test('a workbook with any byte changed is read or refused', async () => {
        const book = await workbook({ Things: [['Item', 'Stock'], ['Bell', 3]] });
        for (let at = 0; at < book.length; at += 13) {
            const table = await readSpreadsheet(book.map((byte, index) => (index === at ? byte ^ 0x55 : byte)));
            expect('refusal' in table ? table.refusal : table.rows.length).toBeTruthy();
        }
    });

    test('a file over the limit is refused unread', async () => {
        const large = new Uint8Array(100 * 1024 * 1024);
        large.set([0x50, 0x4b, 3, 4]);
        expect(await refusal(large)).toMatch(/^The spreadsheet has 100 MB, and 20 MB is the most/);
    });

    test('a zip bomb: what would be too much is refused before it is unpacked', async () => {
        const parts = unzipSync(await workbook({ Things: [['Item'], ['Bell']] }));
        for (let sheet = 2; sheet < 40; sheet++) parts[`xl/worksheets/sheet${sheet}.xml`] = zeros;
        const bomb = zipSync(parts);
        expect(bomb.length).toBeLessThan(1024 * 1024);
        expect(await refusal(bomb)).toContain('Unpacked, the spreadsheet would have more than 64 MB');
    });

    test('a zip bomb whose headers lie is stopped while it is unpacked', async () => {
        const parts = unzipSync(await workbook({ Things: [['Item'], ['Bell']] }));
        const one = zipSync({ ...parts, 'xl/worksheets/sheet1.xml': zeros });
        expect(await refusal(sayingSize(one, 'xl/worksheets/sheet1.xml', 100))).toContain('damaged');
        let many: Uint8Array = zipSync({ ...parts, ...Object.fromEntries(Array.from({ length: 30 }, (_, at) => [`xl/worksheets/sheet${at + 2}.xml`, zeros])) });
        for (let at = 0; at < 30; at++) many = sayingSize(many, `xl/worksheets/sheet${at + 2}.xml`, 1000);
        expect(await refusal(many)).toContain('damaged');
    });

    test('parts that hold no cells are never unpacked', async () => {
        const parts = unzipSync(await workbook({ Things: [['Item', 'Stock'], ['Bell', 3]] }));
        const book = zipSync({ ...parts, 'xl/media/image1.png': new Uint8Array(limits.unpacked + 1), 'xl/drawings/drawing1.xml': zeros });
        expect(texts(await read(book))[1]).toEqual(['Bell', '3']);
    });

    // The last cell of a sheet has this address; a reader that makes room for all before it needs gigabytes.
    test.each([['XFD1048576', /more than 10000 rows/], ['XFD2', /more than 256 columns/], ['A99999999999', /more than 10000 rows/]])('a cell at %s', async (address, says) => {
        const book = withPart(await workbook({ Things: [['Item', 'Stock'], ['Bell', 3]] }), 'xl/worksheets/sheet1.xml', xml => xml.replace('r="B2"', `r="${address}"`));
        expect(await refusal(book)).toMatch(says);
    });

    test('a row far down', async () => {
        const book = withPart(await workbook({ Things: [['Item', 'Stock'], ['Bell', 3]] }), 'xl/worksheets/sheet1.xml', xml => xml.replace('<row r="2"', '<row r="4000000000"'));
        expect(await refusal(book)).toMatch(/more than 10000 rows/);
    });

    test('a sheet that cannot be read does not keep the others from it', async () => {
        const book = withPart(await workbook({ Broken: [['Item', 'Stock', 'Price'], ['Bell', 3, 1]], Fine: [['Item', 'Stock'], ['Drum', 1]] }), 'xl/worksheets/sheet1.xml', xml => xml.replace('r="B2"', 'r="XFD1048576"'));
        const tables = await readWorkbook(book);
        expect('refusal' in tables ? tables : tables.map(({ sheet }) => sheet)).toEqual(['Fine']);
        expect((await read(book)).remarks).toEqual([expect.stringMatching(/^Sheet 'Broken' was not read\. The sheet has more than 10000 rows\./)]);
    });
});
