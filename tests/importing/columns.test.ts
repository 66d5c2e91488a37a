import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planColumns, type GivenColumn } from '../../server/importing/columns.js';
import { styleOf } from '../../server/importing/numbers.js';
import { tableOf } from './programme.js';

function plan(rows: string[][], given: GivenColumn[] = []): { row?: number; means: string[]; why: string[] } {
    const table = tableOf(rows);
    const columns = planColumns(table, given, styleOf(table));
    if ('refusal' in columns) throw new Error(columns.refusal);
    return { row: columns.headingRow, means: columns.columns.map(({ letter, means }) => `${letter} ${means}`), why: columns.columns.map(({ why }) => why) };
}

const data = ['Hand bell', 'reusable', '6', '€6.50', '12', '7 days', 'shop', 'loud'];

// Headings as people write them: common practice, no source.
describe('headings in many wordings', () => {
    test.each([
        [['Item', 'Type', 'Pack size', 'Price', 'In stock', 'Lead time', 'Source', 'Notes']],
        [['MATERIAL', 'Reusable / consumable', 'Qty per pack', 'Cost (EUR)', 'Qty on hand', 'Delivery (days)', 'Where from?', 'Comments']],
        [['Item name:', 'Use', 'Pack of', 'Price per pack', 'Quantity', 'Arrives in', 'Comes from', 'Remarks']],
        [['Product', 'Consumable?', 'Box qty', 'Pack price €', 'Have', 'Order time', 'Get it from', 'Description']],
        [['Things', 'Kind', 'Package', 'Cost', 'How many', 'Days to arrive', 'From', 'Details']],
        [['Bezeichnung', 'Art', 'Packung', 'Preis', 'Bestand', 'Lieferzeit', 'Quelle', 'Anmerkung']]
    ])('%j', headings => {
        const row = [...data];
        if (headings[1] === 'Consumable?') row[1] = 'no';
        expect(plan([headings, row, row]).means).toEqual(['A title', 'B use', 'C pack', 'D price', 'E on-hand', 'F lead', 'G source', 'H note']);
    });

    test('less usual columns', () => {
        expect(plan([['Code', 'Name', 'Unit', 'Currency', 'Min stock', 'Spare %', 'Shelf life', 'Unit price'], ['hand-bell', 'Hand bell', 'pcs', 'EUR', '2', '10%', '90 days', '3']]).means)
            .toEqual(['A name', 'B title', 'C unit', 'D currency', 'E safety-stock', 'F spare', 'G keeps', 'H price']);
    });

    test('what is worked out anyway, or says nothing about a thing, is left out with its reason', () => {
        const { means, why } = plan([['No.', 'Item', 'Qty needed', 'Total price', 'Expiry date', 'Shelf'], ['1', 'Bell', '3', '€20', '2027-01-01', 'top']]);
        expect(means).toEqual(['A unused', 'B title', 'C unused', 'D unused', 'E unused', 'F unused']);
        expect(why).toEqual(['a running number says nothing about a thing', 'by its heading', 'such numbers are worked out from the lessons', 'totals are worked out', 'dates are not part of an inventory', 'nothing tells what it means']);
    });

    test('a second column of the same meaning is left out, notes are all taken', () => {
        const { means, why } = plan([['Item', 'Price', 'Old price', 'Notes', 'Comments'], ['Bell', '€3', '€2', 'a', 'b']]);
        expect(means).toEqual(['A title', 'B price', 'C unused', 'D note', 'E note']);
        expect(why[2]).toBe('column B is taken as the price of a pack already');
    });

    test('the surer heading comes first, wherever it stands', () => {
        expect(plan([['Item description', 'Count of uses by item', 'Item'], ['long', '2', 'Bell']]).means[0]).toBe('A title');
        expect(plan([['Type', 'Item'], ['toy', 'Bell'], ['tool box', 'Drum']]).means).toEqual(['A unused', 'B title']);
    });
});

describe('where the headings stand', () => {
    const headings = ['Item', 'Stock', 'Price'];
    const row = ['Bell', '3', '€2'];

    test('below titles, addresses and blank rows', () => {
        expect(plan([['Inventory of the co-op'], ['Last counted by Ada, 3 items missing', ''], [], ['', '', ''], headings, row]).row).toBe(4);
    });

    test('in the first row though another row names items too', () => {
        expect(plan([headings, row, ['Stock of old items', '2', '€3'], headings, row]).row).toBe(0);
    });

    test('nowhere: the cells tell', () => {
        const { row: at, means } = plan([['Bell', '€2.50', '12 pcs', '6 days', 'shop', 'reusable'], ['Drum', '€3.50', '3', '2 weeks', 'home', 'reusable'], ['Rice', '€1.10', '2 kg', '3 days', 'shop', 'consumable']]);
        expect(at).toBeUndefined();
        expect(means).toEqual(['A title', 'B price', 'C on-hand', 'D lead', 'E source', 'F use']);
    });

    test('a column without a heading is told by its cells', () => {
        expect(plan([['Item', '', 'Stock'], ['Bell', '€2.50', '3'], ['Drum', '€4', '1']]).means).toEqual(['A title', 'B price', 'C on-hand']);
    });

    test('a title column under a heading that says nothing', () => {
        expect(plan([['Zubehör', 'Stock', 'Price'], ['Bell', '3', '€2'], ['Drum', '1', '€3']]).means).toEqual(['A title', 'B on-hand', 'C price']);
    });
});

describe('columns that are given', () => {
    const rows = [['Thing we love', 'Stock', 'Count'], ['Bell', '3', '5']];

    test('by heading in any case, by letter, by number', () => {
        for (const column of ['count', 'C', '3']) {
            expect(plan(rows, [{ column, means: 'on-hand' }]).means).toEqual(['A title', 'B unused', 'C on-hand']);
        }
        expect(plan(rows, [{ column: 'Stock', means: 'unused' }]).means).toEqual(['A title', 'B unused', 'C on-hand']);
    });

    test('a heading that is given marks its row', () => {
        expect(plan([['x', 'y'], ['What we own', 'zz'], ['Bell', '3']], [{ column: 'What we own', means: 'title' }, { column: 'zz', means: 'on-hand' }]).row).toBe(1);
    });

    test('one that is not there', () => {
        const table = tableOf(rows);
        expect(planColumns(table, [{ column: 'Cost', means: 'price' }], {})).toEqual({ refusal: "There is no column 'Cost'. The columns are A 'Thing we love', B 'Stock', C 'Count'." });
    });

    test('none with titles', () => {
        const found = planColumns(tableOf([['Stock', 'Price'], ['3', '€2']]), [], {});
        expect(found).toEqual({ refusal: "No column of the sheet was recognised as the one with the things' titles. Say which it is. The columns are A 'Stock', B 'Price'.", columns: [{ letter: 'A', heading: 'Stock' }, { letter: 'B', heading: 'Price' }] });
    });
});

test('the order of the columns changes nothing', () => {
    const headings = ['Item', 'Type', 'Pack size', 'Price', 'In stock', 'Lead time', 'Source', 'Notes'];
    const meant = ['title', 'use', 'pack', 'price', 'on-hand', 'lead', 'source', 'note'];
    fc.assert(fc.property(fc.shuffledSubarray([...headings.keys()], { minLength: headings.length }), order => {
        const { means } = plan([order.map(at => headings[at]!), order.map(at => data[at]!)]);
        expect(means.map(one => one.slice(2))).toEqual(order.map(at => meant[at]));
    }));
});
