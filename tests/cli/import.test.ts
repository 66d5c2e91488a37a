import { mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { workbook } from '../importing/workbooks.js';
import { folder, haversack } from './run.js';

const sheet = join(import.meta.dirname, '../importing/co-op-inventory.csv');
const read = (...path: string[]): string => readFileSync(join(...path), 'utf8');

describe.concurrent('import', () => {
    test('shows what would change and writes nothing', async () => {
        const path = folder();
        const before = read(path, 'inventory.kit');
        const { code, out, err } = await haversack(['import', sheet, '--into', '.', '--class', 'attic'], path);
        expect(err).toBe('');
        expect(out).toContain('Columns (headings in row 4)\n  A  Item: title (by its heading)\n');
        expect(out).toContain('  H  Shelf: not used (nothing tells what it means)\n');
        expect(out).toContain('--- inventory.kit\n+++ inventory.kit\n');
        expect(out).toMatch(/\n- {2}pack of 1 costs 6\.50 EUR\n\+ {2}pack of 1 costs 6\.90 EUR\n- {2}arrives in 7 days\n\+ {2}arrives in 10 working days\n/);
        expect(out).toContain('\nNothing is written yet. Add --write to write it.\n');
        // Feathers: a price, an amount and a source that cannot be read.
        expect(code).toBe(1);
        expect(read(path, 'inventory.kit')).toBe(before);
    });

    test('writes it with --write; a second time there is nothing to write', async () => {
        const path = folder();
        const before = read(path, 'inventory.kit');
        const wrote = await haversack(['import', sheet, '--into', path, '--class', 'attic', '--write']);
        expect(wrote.out).toMatch(/^4 new, 3 changed, 0 the same, 3 skipped; 1 blank row passed over\. Of 1 row not everything could be used\.\nWrote .*inventory\.kit\nWrote .*programme\.course\n$/);
        const after = read(path, 'inventory.kit');
        const gone = before.split('\n').filter(line => !after.split('\n').includes(line));
        expect(gone).toEqual(['  pack of 1 costs 6.50 EUR', '  arrives in 7 days', '  pack of 500 g costs 1.30 EUR']);
        expect(after).toContain('material massband "Maßband"\n  reusable\n  pack of 10 costs 7.50 EUR\n  arrives in 1 week\n  from shop\n');
        expect(after).toContain('material cotton-wool\n  consumable\n  measured in g\n  pack of 100 g costs 0.99 EUR\n  from shop\n');
        expect(read(path, 'programme.course')).toMatch(/on hand\n[^]*cotton-wool\s+200 g\n/);
        expect((await haversack(['check', path])).out).not.toContain(' error ');
        const again = await haversack(['import', sheet, '--into', path, '--class', 'attic', '--write']);
        expect(again.out).toMatch(/\nThe programme says all this already: there is nothing to write\.\n$/);
        expect(read(path, 'inventory.kit')).toBe(after);
    });

    test('a workbook, a new file, columns that are told, a currency; all fine: exit code 0', async () => {
        const path = folder({ 'a.course': 'class harbour\n  learners 7\n' });
        writeFileSync(join(path, 'things.xlsx'), await workbook({ Intro: [['Hello']], Things: [['What we own', 'Use', 'Paid', 'Got'], ['Bell', 'reusable', '$4.50', 3], ['Sand', 'consumable', '$2', '1 kg']] }));
        const args = ['import', 'things.xlsx', '--into', '.', '--sheet', 'things', '--column', 'title=What we own', '--column', 'on-hand=D', '--currency', 'cad', '--class', 'harbour', '--file', 'stock.kit', '--write'];
        const { code, out, err } = await haversack(args, path);
        expect({ code, err }).toEqual({ code: 1, err: '' });
        expect(out).toContain('Wrote stock.kit\nWrote a.course\n');
        expect(read(path, 'stock.kit')).toBe('material bell\n  reusable\n  pack of 1 costs 4.50 CAD\n\nmaterial sand\n  consumable\n  measured in kg\n');
        expect(read(path, 'a.course')).toBe('class harbour\n  learners 7\n  on hand\n    bell  3\n    sand  1 kg\n');
    });

    test('a sheet that is understood whole: exit code 0', async () => {
        const path = folder({ 'a.kit': 'material bell\n  reusable\n', 'b.csv': 'Item,Lead time\nBell,3 days\n' });
        expect(await haversack(['import', 'b.csv', '--into', '.', '--write'], path)).toEqual({ code: 0, out: '0 new, 1 changed, 0 the same, 0 skipped.\nWrote a.kit\n', err: '' });
        expect(read(path, 'a.kit')).toBe('material bell\n  reusable\n  arrives in 3 days\n');
    });

    test('as JSON', async () => {
        const path = folder({ 'a.kit': 'material bell\n  reusable\n', 'b.csv': 'Item,Lead time\nBell,3 days\n' });
        const { code, out } = await haversack(['import', 'b.csv', '--into', '.', '--format', 'json'], path);
        expect(code).toBe(0);
        expect(JSON.parse(out)).toMatchObject({
            format: 'haversack-import', version: 1, wrote: false, rows: [{ row: 2, does: 'changed', name: 'bell', changes: ['arrives in 3 days'], lost: false }],
            files: [{ file: 'a.kit', isNew: false, text: 'material bell\n  reusable\n  arrives in 3 days\n' }]
        });
        expect(read(path, 'a.kit')).toBe('material bell\n  reusable\n');
    });

    test('a byte order mark and the line breaks of a file stay', async () => {
        const path = folder({ 'a.kit': '\uFEFFmaterial bell "Old"\r\n  reusable\r\n', 'b.csv': 'Code,Item,Lead time\nbell,New,3 days\n' });
        await haversack(['import', 'b.csv', '--into', '.', '--write'], path);
        expect(read(path, 'a.kit')).toBe('\uFEFFmaterial bell "New"\r\n  reusable\r\n  arrives in 3 days\r\n');
    });
});

describe.concurrent('import cannot run: exit code 2, one sentence, nothing written', () => {
    const refused = async (args: string[], cwd: string): Promise<string> => {
        const { code, out, err } = await haversack(args, cwd);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err.trimEnd().split('\n')).toHaveLength(1);
        expect(err).not.toMatch(/unforeseen|node:|at .*\(/);
        return err.trimEnd();
    };
    const small = (): string => folder({ 'a.kit': 'material bell\n  reusable\n', 'b.csv': 'Item,Lead time\nDrum,3 days\n', 'odd.csv': 'a,b\n1,2\n', 'old.xls': Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0, 0), 'empty.csv': '' });

    test.each([
        [['import'], 'Which spreadsheet, and into which programme?'], [['import', 'b.csv'], 'Which spreadsheet, and into which programme?'], [['import', 'c.csv', '--into', '.'], 'There is no spreadsheet at c.csv. Check the path.'], [['import', '.', '--into', '.'], '. could not be read: it is a folder.'],
        [['import', 'old.xls', '--into', '.'], 'old.xls: This is a spreadsheet in the old .xls format'], [['import', 'empty.csv', '--into', '.'], 'empty.csv: The spreadsheet is empty.'], [['import', 'b.csv', '--into', 'nowhere'], 'There is nothing at nowhere.'],
        [['import', 'b.csv', '--into', '.', '--class', 'x'], "There is no class 'x'. This programme declares no class."], [['import', 'b.csv', '--into', '.', '--column', 'colour=A'], "A column cannot mean 'colour'"], [['import', 'b.csv', '--into', '.', '--column', 'title'], "'title' names no column."],
        [['import', 'odd.csv', '--into', '.'], 'The columns are A, B. As in: --column title=A'], [['import', 'odd.csv', '--into', '.', '--column', 'On hands=A'], "A column cannot mean 'on-hands'"],
        [['import', 'b.csv', '--into', '.', '--currency', 'shells'], "'SHELLS' is no currency"], [['import', 'b.csv', '--into', '.', '--format', 'xml'], "There is no format 'xml' for import: use text or json."], [['import', 'b.csv', '--into', '.', '--sheet', 'One'], "A file of text has no sheets: leave out 'One'."],
        [['import', 'b.csv', '--into', '.', '--file', '../other.kit', '--write'], 'outside the programme'], [['import', 'b.csv', '--into', '.', '--file', 'b.csv', '--write'], "ends in .kit, and 'b.csv' does not"], [['import', 'b.csv', '--into', '.', '--file', 'no/such.kit', '--write'], 'There is no folder']
    ])('%j', async (args, says) => {
        const path = small();
        expect(await refused(args, path)).toContain(says);
        expect(read(path, 'a.kit')).toBe('material bell\n  reusable\n');
    });

    test('a link that leads out of the folder is not written through', async () => {
        const [path, other] = [small(), folder({ 'far.kit': 'material gong\n  reusable\n' })];
        symlinkSync(join(other, 'far.kit'), join(path, 'near.kit'));
        writeFileSync(join(path, 'gong.csv'), 'Item,Lead time\nGong,3 days\n');
        expect(await refused(['import', 'gong.csv', '--into', '.', '--write'], path)).toContain('near.kit is outside the programme’s folder'.replace('’', "'"));
        expect(read(other, 'far.kit')).toBe('material gong\n  reusable\n');
        mkdirSync(join(other, 'inner'));
        symlinkSync(join(other, 'inner'), join(path, 'inner'));
        expect(await refused(['import', 'b.csv', '--into', '.', '--file', 'inner/new.kit', '--write'], path)).toContain('outside the programme');
    });

    test('a spreadsheet of 100 MB', async () => {
        const path = small();
        writeFileSync(join(path, 'large.xlsx'), '');
        truncateSync(join(path, 'large.xlsx'), 100 * 1024 * 1024);
        expect(await refused(['import', 'large.xlsx', '--into', '.'], path)).toContain('large.xlsx: The spreadsheet has 100 MB, and 20 MB is the most that is read.');
    });
});
