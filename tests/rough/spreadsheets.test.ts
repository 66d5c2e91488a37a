/** Every CSV that the tool writes, full of formulas, read back: no cell is one, and what was written is still there. */
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { shoppingList } from '@haversack/server/exports/shopping-list';
import { everyTextAs } from '../brief/hostile.js';
import { term } from '../brief/term-fixture.js';
import { formulas } from './hostile-words.js';

/** OWASP, "CSV Injection": a cell that begins with one of these, its full-width form, a tab or a carriage return, as a spreadsheet sees it: behind blanks and characters without width. */
const isFormula = (cell: string): boolean => /^[\s\p{Cf}\p{Cc}]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u.test(cell) || /^[\t\r]/.test(cell);

test('no cell of a shopping list is a formula', () => {
    let cells = 0;
    for (const formula of formulas) {
        const csv = shoppingList(everyTextAs(term.supplies, formula));
        const rows = parse(csv, { bom: true, relax_column_count: false }) as string[][];
        expect(rows.length).toBeGreaterThan(1);
        for (const row of rows) for (const cell of row) {
            cells++;
            expect({ formula, cell, isFormula: isFormula(cell) }).toEqual({ formula, cell, isFormula: false });
        }
        expect(rows.flat().some(cell => cell.includes(formula))).toBe(true);
    }
    console.log(`${formulas.length} formulas in every text of a shopping list: ${cells} cells read back, none is a formula.`);
    expect(cells).toBeGreaterThan(1000);
});
