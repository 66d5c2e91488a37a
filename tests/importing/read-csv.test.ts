import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCsv } from '../../server/importing/read-csv.js';
import type { Table } from '../../server/importing/table.js';
import { importLimit } from '../../server/protocol/imports.js';
import { limits } from '../../server/importing/table.js';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function read(sheet: Uint8Array | string): Table {
    const table = readCsv(typeof sheet === 'string' ? bytes(sheet) : sheet);
    if ('refusal' in table) throw new Error(table.refusal);
    return table;
}

const texts = ({ rows }: Table): string[][] => rows.map(row => row.map(({ text }) => text));

// RFC 4180, section 2: the examples of rules 1 to 7, in their order.
describe('examples of RFC 4180', () => {
    test.each([
        ['1: lines end in CRLF', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
        ['2: the last may not', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
        ['3: a header', 'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', [['field_name', 'field_name', 'field_name'], ['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
        ['5: fields in quotation marks', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
        ['6: line breaks inside', '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [['aaa', 'b\r\nbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
        ['7: quotation marks inside', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]]
    ])('%s', (_, text, rows) => {
        expect(texts(read(text))).toEqual(rows);
        expect(parse(text, { relax_column_count: true })).toEqual(rows);
    });
});

// The second reader is csv-parse, which is not ours and shares no code with what we read with.
test('reads what a writer of RFC 4180 wrote as another reader does', () => {
    const cell = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('a,b', 'say "so"', 'two\nlines', 'two\r\nlines', ';', '\t', 'é ß', '12,5', '=A1'))
        .map(text => text.trim()).filter(text => !/^="|\uFEFF|\0/.test(text));
    const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    fc.assert(fc.property(fc.integer({ min: 2, max: 5 }), fc.array(fc.array(cell, { minLength: 5, maxLength: 5 }), { minLength: 2, maxLength: 8 }), (width, rows) => {
        const table = [['Item', 'Price', 'Stock', 'Unit', 'Notes'].slice(0, width), ...rows.map(row => row.slice(0, width))];
        const text = table.map(row => row.map(quoted).join(',')).join('\r\n');
        const other = parse(text, { bom: true });
        const rowsToRead = other.map((row: string[]) => row.map(one => one.trim()));
        // Blank rows at the end of a sheet are no rows.
        while (rowsToRead.at(-1)?.every(one => one === '')) rowsToRead.pop();
        expect(texts(read(`sep=,\r\n${text}`))).toEqual(rowsToRead);
    }), { numRuns: 150 });
});

describe('delimiters', () => {
    test.each([
        ['commas', 'Item,Stock\nBell,3\nDrum,4\n'], ['semicolons', 'Item;Price\nBell;3,20\nDrum;4,50\n'], ['tabs', 'Item\tPrice\nBell, large\t3,20\nDrum\t4,50\n'],
        ['semicolons', 'Things of the co-op\n\nItem;Notes\nBell;loud, bright, old\nDrum;a, b\n']
    ])('%s', (name, text) => {
        const table = read(text);
        expect(table.remarks).toEqual([`Columns are separated by ${name}.`]);
        expect(texts(table).at(-1)!.length >= 1 && texts(table).some(row => row[0] === 'Drum')).toBe(true);
    });

    test('the line with which a spreadsheet program names it is no row', () => {
        expect(texts(read('sep=;\nItem;Price\nBell;1,5\n'))[0]).toEqual(['Item', 'Price']);
    });

    test('a single column', () => {
        expect(texts(read('Item\nBell\nDrum\n'))).toEqual([['Item'], ['Bell'], ['Drum']]);
    });
});

describe('encodings', () => {
    const text = 'Item,Note\nCafé,Maßband – 5 €\n';

    test('UTF-8 with and without a byte order mark', () => {
        expect(texts(read(text))[1]).toEqual(['Café', 'Maßband – 5 €']);
        expect(texts(read(`\uFEFF${text}`))[0]).toEqual(['Item', 'Note']);
    });

    test.each([['LE', 0], ['BE', 1]] as const)('UTF-16 %s by its byte order mark', (_, high) => {
        const units = [...`\uFEFF${text}`].map(char => char.charCodeAt(0));
        const table = read(Uint8Array.from(units.flatMap(unit => (high === 1 ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8]))));
        expect(texts(table).slice(0, 2)).toEqual([['Item', 'Note'], ['Café', 'Maßband – 5 €']]);
        expect(table.remarks[0]).toContain('UTF-16');
    });

    // Windows-1252: é E9, ß DF, en dash 96, € 80 (WHATWG Encoding Standard, index windows-1252).
    test('Windows-1252 where it is no UTF-8, and it says so', () => {
        const table = read(Uint8Array.from([...'Item,Note\nCaf'].map(char => char.charCodeAt(0)).concat(0xe9, 0x2c, 0xdf, 0x20, 0x96, 0x20, 0x80)));
        expect(texts(table)[1]).toEqual(['Café', 'ß – €']);
        expect(table.remarks[0]).toMatch(/not UTF-8.*Windows-1252/);
    });
});

describe('files that are not as they should be', () => {
    const refusal = (sheet: Uint8Array): string => {
        const table = readCsv(sheet);
        if (!('refusal' in table)) throw new Error('It was read.');
        return table.refusal;
    };

    test('an empty one', () => {
        expect(refusal(new Uint8Array())).toBe('The spreadsheet is empty.');
        expect(refusal(bytes(' \n,,\n'))).toBe('The spreadsheet is empty.');
    });

    test('a quotation mark that is never closed is told, and nothing is lost', () => {
        const table = read('Item,Note\nBell,"loud\nDrum,deep\n');
        expect(table.remarks.join()).toContain('Row 2: a quotation mark is not closed');
        expect(texts(table).flat().join()).toContain('Drum,deep');
    });

    test('100 MB are refused for their size alone', () => {
        const large = new Uint8Array(100 * 1024 * 1024).fill(44);
        expect(refusal(large)).toBe('The spreadsheet has 100 MB, and 20 MB is the most that is read. Copy the inventory alone into a new spreadsheet, without pictures, and import that.');
        expect(importLimit).toBe(limits.file);
    });

    test('as many rows, columns or delimiters as no inventory has', () => {
        expect(refusal(bytes('a,b\n'.repeat(limits.rows + 2)))).toContain('more than 10000 rows');
        expect(refusal(bytes(`${'a,'.repeat(300)}\nb,c\n`))).toContain('more than 256 columns');
        expect(refusal(new Uint8Array(limits.file).fill(44))).toContain('more than 256 columns');
    });

    test('any bytes at all are read or refused', () => {
        fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), sheet => {
            const table = readCsv(sheet);
            expect('refusal' in table ? table.refusal.length > 0 : table.rows.length > 0).toBe(true);
        }), { numRuns: 200 });
    });
});
