/**
 * The shopping list as CSV: RFC 4180 (section 2), read back by csv-parse, which shares nothing with the writer (papaparse). What counts as
 * the start of a formula: OWASP, "CSV Injection" (from memory).
 */
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shoppingColumns, shoppingList } from '@haversack/server/exports/shopping-list';
import { order, supplies } from '../exports/figures.js';

const read = (text: string) => parse(text, { bom: true, relax_column_count: false }) as string[][];

describe('RFC 4180', () => {
    test('lines end with CRLF, the last one too, and all have as many fields as the heading', () => {
        const text = shoppingList(supplies([order('Beans'), order('Cubes, 2 cm\r\n"red"')]));
        const rows = read(text);
        expect(rows[0]).toEqual([...shoppingColumns]);
        expect(rows.map(row => row.length)).toEqual([12, 12, 12]);
        expect(text.endsWith('\r\n')).toBe(true);
        expect(text.split('\r\n').length - 1).toBe(4);
    });

    test('2.6 and 2.7: commas, quotes and line breaks come back', () => {
        fc.assert(fc.property(fc.string({ unit: 'grapheme' }), title => {
            const cell = read(shoppingList(supplies([order(title)])))[1]?.[3];
            expect(cell === title || cell === `'${title}`).toBe(true);
        }));
    });
});

describe('no cell is a formula', () => {
    test.each(['=HYPERLINK("http://x")', '+1', '-1', '@sum', '\t=1', '\r=1', '  =1', '＝1', '\0=1'])('%j', title => {
        expect(read(shoppingList(supplies([order(title, { late: { days: 1, words: title } })])))[1]).toEqual(expect.arrayContaining([`'${title}`]));
    });

    test('of whatever text', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), text => {
            for (const cell of read(shoppingList(supplies([order(text, { joined: text })]))).flat()) expect(cell).not.toMatch(/^\s*[=+\-@]/);
        }));
    });
});

test('the earliest last day to order stands first, and money can be added up', () => {
    const rows = read(shoppingList(supplies([order('Late', { orderBy: '2026-10-01' }), order('Soon', { orderBy: '2026-09-01' }), order('On the day', { orderBy: undefined, neededBy: '2026-09-20' })])));
    expect(rows.slice(1).map(row => row[3])).toEqual(['Soon', 'On the day', 'Late']);
    expect(rows[1]?.slice(7, 9)).toEqual(['29.00', 'USD']);
});
