import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '@haversack/language/checks/apply-edits';
import { importTable } from '../../server/importing/import-inventory.js';
import { previewText, reportText } from '../../server/importing/import-report.js';
import type { ReportedRow } from '../../server/importing/report.js';
import { errorsIn, importInto, readFiles, tableOf, uriOf, type Files, type Imported } from './programme.js';
import { workbook } from './workbooks.js';

const kit = `# What we have.
material hand-bell "Hand bell"   # the big one
  reusable
  from kit
  # two shops sell it
  pack of 1 costs 6.50 EUR   # paid in March
  arrives in 7 days

material rice "Uncooked rice"
  consumable
  measured in g
  pack of 500 g costs 1.30 EUR
  caution small-parts
  note: Keep it dry
    and closed.
# the end
`;
const course = `class harbour "Harbour"
  learners 7
  on hand
    rice       200 g   # in the tin
    hand-bell  1
  starts 2026-09-07

kit sound-bag "Sound bag"
  holds
    hand-bell  1
`;
const files: Files = { 'inventory.kit': kit, 'year.course': course };

const rowOf = ({ report }: Imported, row: number): ReportedRow => report.rows.find(one => one.row === row)!;
const lines = (text: string): string[] => text.split('\n');

/** Lines that are in one text and not in the other. */
function differences(before: string, after: string): { gone: string[]; come: string[] } {
    const [old, now] = [lines(before), lines(after)];
    return { gone: old.filter(line => !now.includes(line)), come: now.filter(line => !old.includes(line)) };
}

describe('a new inventory', () => {
    const sheet = [
        'Our things,,,,,,,,', '', 'Item,Type,Pack,Price,In stock,Lead time,Where from,Spare,Notes', 'Pan balance,reusable,1,"€24,90",3,10 working days,shop,,The beam swings freely', 'Dried beans,consumable,500 g,"€2,10","1,5 kg",,shop,10%,',
        'Place-value cards,reusable,,,4 sets,,,,', ',,,,,,,,', '"Paper, A4",consumable,100 sheets,"€1,80",2 packs,2 weeks,store,,'
    ].join('\r\n');

    test('in a file of its own', async () => {
        const { after, report } = await importInto({ 'year.course': 'class harbour\n  learners 7\n' }, sheet, { class: 'harbour' });
        expect(after['inventory.kit']).toBe(`material pan-balance
  reusable
  pack of 1 costs 24.90 EUR
  arrives in 10 working days
  from shop
  note: The beam swings freely

material dried-beans
  consumable
  measured in g
  pack of 500 g costs 2.10 EUR
  spare 10%
  from shop

material place-value-cards "Place-value cards"
  reusable
  counted in set / sets

material paper-a4 "Paper, A4"
  consumable
  measured in sheet
  pack of 100 sheets costs 1.80 EUR
  arrives in 2 weeks
  from shop
`);
        expect(after['year.course']).toBe(`class harbour
  learners 7
  on hand
    pan-balance        3
    dried-beans        1.5 kg
    place-value-cards  4 sets
    paper-a4           200 sheets
`);
        expect(report.rows.map(({ does, lost }) => [does, lost])).toEqual(Array(4).fill(['new', false]));
        expect(report.blankRows).toBe(1);
        expect(await errorsIn(after)).toEqual([]);
    });

    test('behind what a file says already, with its line breaks and its indentation', async () => {
        const before = 'material cup\r\n\treusable\r\n';
        const { after } = await importInto({ 'inventory.kit': before }, 'Item,Use\nBell,reusable\n');
        expect(after['inventory.kit']).toBe(`${before}\r\nmaterial bell\r\n\treusable\r\n`);
    });

    test('from a workbook, with the currency its cells are shown in', async () => {
        const book = await workbook({
            Things: [['Item', 'Consumable', 'Unit', 'Price', 'Stock'], ['Sand', true, 'kg', { value: 1.2, type: Number, format: '"£"0.00' }, 12.5], [null, null, null, null, null], ['Sieve', false, 'pcs', { value: 3, type: Number, format: '"£"0.00' }, 4]]
        });
        const { after, report } = await importInto({ 'a.course': 'class harbour\n  learners 7\n' }, book, { class: 'harbour' });
        expect(after['inventory.kit']).toBe('material sand\n  consumable\n  measured in kg\n  pack of 1 kg costs 1.20 GBP\n\nmaterial sieve\n  reusable\n  pack of 1 costs 3.00 GBP\n');
        expect(after['a.course']).toContain('    sand   12.5 kg\n    sieve  4\n');
        expect(report.remarks).toContain('No column says what a pack is, so each price is taken as the price of one, or of what stands in the unit column.');
        expect(report.rows.flatMap(({ remarks }) => remarks)).toEqual(['Price: £ is taken as GBP', 'Price: £ is taken as GBP']);
    });
});

describe('an inventory that is there', () => {
    test('only what differs changes; remarks, order, indentation and all else stay to the character', async () => {
        const sheet = 'Item,Price,Lead time,Where from,Stock\nHand bell,€6.50,10 days,shop,1\nUncooked rice,,,,0.75 kg\n';
        const { after, report } = await importInto(files, sheet, { class: 'harbour' });
        expect(differences(kit, after['inventory.kit']!)).toEqual({ gone: ['  from kit', '  arrives in 7 days'], come: ['  from shop', '  arrives in 10 days'] });
        expect(differences(course, after['year.course']!)).toEqual({ gone: ['    rice       200 g   # in the tin'], come: ['    rice       0.75 kg   # in the tin'] });
        expect(report.rows.map(({ row, does, changes }) => [row, does, changes])).toEqual([
            [2, 'changed', ['arrives in 10 days, was 7 days', 'from shop, was from kit']], [3, 'changed', ['on hand 0.75 kg, was 200 g']]
        ]);
    });

    test('the same in other units and words is the same', async () => {
        const { files: changed, report } = await importInto(files, 'Item,Use,Pack,Price,Lead time,Stock\nHAND  BELL,Equipment,1 pc,"6,50 €",1 week,1 pcs\nuncooked rice,disposable,0.5 kg,1.3 EUR,,0.2 kg\n', { class: 'harbour' });
        expect(changed).toEqual([]);
        expect(report.rows.map(({ does, lost }) => [does, lost])).toEqual([['same', false], ['same', false]]);
    });

    test('what a sheet does not say is not taken away', async () => {
        const { files: changed } = await importInto(files, 'Item,Notes\nHand bell,\nUncooked rice,\n');
        expect(changed).toEqual([]);
    });

    test('another pack stands below the others, another price in its place', async () => {
        const { after } = await importInto(files, 'Item,Pack,Price\nUncooked rice,2 kg,€4.20\nHand bell,1,€7\nHand bell,6,€36\n');
        expect(differences(kit, after['inventory.kit']!)).toEqual({
            gone: ['  pack of 1 costs 6.50 EUR   # paid in March'], come: ['  pack of 1 costs 7.00 EUR   # paid in March', '  pack of 6 costs 36.00 EUR', '  pack of 2 kg costs 4.20 EUR']
        });
        expect(lines(after['inventory.kit']!).indexOf('  pack of 6 costs 36.00 EUR')).toBe(lines(kit).indexOf('  pack of 1 costs 6.50 EUR   # paid in March') + 1);
    });

    test('found by its name, a material gets the sheet’s title', async () => {
        const { after } = await importInto(files, 'Code,Item\nhand-bell,"Brass bell, ""old"""\nrice,Rice\n');
        expect(differences(kit, after['inventory.kit']!)).toEqual({
            gone: ['material hand-bell "Hand bell"   # the big one', 'material rice "Uncooked rice"'], come: ['material hand-bell "Brass bell, “old”"   # the big one', 'material rice']
        });
    });

    test('a note is added where there is none; one that stands in the file is kept, and that is told', async () => {
        const done = await importInto(files, 'Item,Notes\nHand bell,Ring it once.\nUncooked rice,Keep it wet.\n');
        expect(differences(kit, done.after['inventory.kit']!)).toEqual({ gone: [], come: ['  note: Ring it once.'] });
        expect(rowOf(done, 3)).toMatchObject({ does: 'same', lost: true, remarks: ["the note 'Keep it wet.' is not in the file, whose own note is kept"] });
        expect((await importInto(files, 'Item,Notes\nUncooked rice,Keep it dry and closed.\n')).report.rows[0]).toMatchObject({ does: 'same', lost: false });
    });

    test('printed things come from no shop, and the other way round', async () => {
        const before = { 'inventory.kit': 'material card "Card"\n  reusable\n  printed   # on thick paper\n\nmaterial mat "Mat"\n  reusable\n  from   home # soft\n' };
        const { after } = await importInto(before, 'Item,Source\nCard,shop\nMat,printed\n');
        expect(after['inventory.kit']).toBe('material card "Card"\n  reusable\n  from shop   # on thick paper\n\nmaterial mat "Mat"\n  reusable\n  printed # soft\n');
        expect(await errorsIn(after)).toEqual([]);
    });

    test('a material of another file is changed where it stands', async () => {
        const { files: changed } = await importInto({ ...files, 'more.kit': 'material drum "Drum"\n  reusable\n' }, 'Item,Lead time\nDrum,3 days\nGong,4 days\n');
        expect(changed.map(({ uri, after }) => [uri, after.includes('arrives in 3 days'), after.includes('material gong')])).toEqual([[uriOf('more.kit'), true, false], [uriOf('inventory.kit'), false, true]]);
    });
});

describe('what is on hand', () => {
    const sheet = 'Item,Stock\nHand bell,5\nDrum,2\n';

    test('goes to the class that is named, in the shape of its list', async () => {
        const { after } = await importInto(files, sheet, { class: 'harbour' });
        expect(differences(course, after['year.course']!)).toEqual({ gone: [], come: ['    hand-bell  5', '    drum       2'] });
    });

    test('or into a kit', async () => {
        const { after } = await importInto(files, sheet, { kit: 'sound-bag' });
        expect(after['year.course']).toBe(course.replace('holds\n    hand-bell  1', 'holds\n    hand-bell  5\n    drum       2'));
    });

    test('or nowhere, which is told', async () => {
        const { after, report } = await importInto(files, sheet);
        expect(after['year.course']).toBe(course);
        expect(report.asks).toEqual(['class']);
        expect(report.columns[1]).toMatchObject({ heading: 'Stock', left: true, why: 'no class or kit is chosen that has it' });
    });

    test('a block that stands there empty is used', async () => {
        const before = { 'a.course': 'class harbour\n  on hand   # counted in May\n  learners 7\n' };
        const { after } = await importInto(before, sheet, { class: 'harbour' });
        expect(after['a.course']).toBe('class harbour\n  on hand   # counted in May\n    hand-bell  5\n    drum       2\n  learners 7\n');
    });

    test('an amount in another kind of measure is left out, which is told', async () => {
        const done = await importInto(files, 'Item,Stock\nUncooked rice,3\nHand bell,200 g\n', { class: 'harbour' });
        expect(done.files).toEqual([]);
        expect(done.report.rows.map(({ remarks, lost }) => [remarks, lost])).toEqual([[["on hand: it is measured in g: '3' of what?"], true], [["on hand: it is counted in pieces, and '200 g' cannot be"], true]]);
    });

    test('a print or a book may be on hand; nothing else of it comes from a spreadsheet', async () => {
        const done = await importInto({ 'a.course': 'book ear-book "Games for ears"\nclass harbour\n  learners 7\n' }, 'Item,Price,Stock\nGames for ears,€5,2\n', { class: 'harbour' });
        expect(done.after['a.course']).toContain('    ear-book  2\n');
        expect(done.report.rows[0]!.remarks).toContain("'ear-book' is a book: of its row only what is on hand is taken");
    });

    test.each([[{ class: 'harbor' }, "There is no class 'harbor'. The only class is harbour."], [{ kit: 'bag' }, "There is no kit 'bag'. The only kit is sound-bag."], [{ class: 'harbour', kit: 'sound-bag' }, 'either to a class or into a kit'], [{ currency: 'EURO' }, "'EURO' is no currency"]])('%j', async (choices, says) => {
        await expect(importInto(files, sheet, choices)).rejects.toThrow(says);
    });
});

describe('rows', () => {
    test('headings between rows, repeated headings and totals are no things; a heading may say how things are used', async () => {
        const done = await importInto({}, 'Item,Price,Stock\nREUSABLE:,,\nBell,€2,1\nConsumables,,\nRice,€1,2\n,,\nKitchen,,\nBowl,€3,1\nItem,Price,Stock\nSpoon,€4,1\nTotal,€10,\n');
        expect(done.report.rows.map(({ row, does, lost }) => `${row} ${does} ${lost}`)).toEqual(['2 skipped false', '3 new false', '4 skipped false', '5 new false', '7 skipped false', '8 new false', '9 skipped false', '10 new false', '11 skipped false']);
        expect(done.after['inventory.kit']).toMatch(/^material bell\n {2}reusable\n[^]*material rice\n {2}consumable\n[^]*material bowl\n {2}pack/);
        expect(done.report.remarks).toContain("2 new materials do not say whether they are handed back or used up: write 'reusable' or 'consumable' under each.");
    });

    test('a thing twice: its packs are joined, of what differs the first counts and the other is told', async () => {
        const done = await importInto({}, 'Item,Pack,Price,Lead time\nRice,500 g,€1.30,3 days\nrice ,2 kg,€4.20,5 days\nRice,0.5 kg,€1.50,\n');
        expect(done.after['inventory.kit']).toBe('material rice\n  measured in g\n  pack of 500 g costs 1.30 EUR\n  pack of 2 kg costs 4.20 EUR\n  arrives in 3 days\n');
        expect(rowOf(done, 3)).toMatchObject({ does: 'skipped', lost: true, remarks: ['the same thing as row 2', "days until it arrives: '5 days' is left out, for '3 days' stands in a row above", 'its pack of 2 kg is taken as one more'] });
        expect(rowOf(done, 4).remarks).toEqual(['the same thing as row 2', 'the price 1.50 EUR is left out, for 1.30 EUR stands in a row above']);
    });

    test('titles that give the same name are two things, and stay so', async () => {
        const sheet = 'Item,Stock\nCafé,1\nCafe,2\nCAFÉ,1\n';
        const done = await importInto({}, sheet);
        expect(done.after['inventory.kit']).toBe('material cafe "Café"\n\nmaterial cafe-2 "Cafe"\n');
        expect(rowOf(done, 4).remarks).toEqual(['the same thing as row 2']);
        expect((await importInto(done.after, sheet)).files).toEqual([]);
    });

    test('a name that a print has is not taken', async () => {
        const { after } = await importInto({ 'a.kit': 'print sheet "Record sheet"\n' }, 'Item,Stock\nRecord sheet,1\nSheet,2\nSheets,2\n');
        expect(after['inventory.kit']).not.toContain('material sheet\n');
        expect(await errorsIn(after)).toEqual([]);
    });

    test('two materials of one title: the row is left out', async () => {
        const done = await importInto({ 'a.kit': 'material one "Bell"\n  reusable\nmaterial two "Bell"\n  reusable\n' }, 'Item,Lead time\nBell,3 days\n');
        expect(done.files).toEqual([]);
        expect(done.report.rows[0]).toMatchObject({ does: 'skipped', lost: true, remarks: ["'one' and 'two' have this title: give one of them another, or add a column with names"] });
    });

    test('a thing whose line cannot be read is not written a second time', async () => {
        const done = await importInto({ 'inventory.kit': 'materiel gong-big "Gong" what is this\n  reusable\n' }, 'Code,Item\ngong-big,Gong\n');
        expect(done.files).toEqual([]);
        expect(done.report.rows[0]!.remarks[0]).toContain("'gong-big' stands in a line of the programme that cannot be read");
    });

    test('what cannot be read is told, and the rest of the row is taken', async () => {
        const done = await importInto({}, 'Item,Use,Price,Stock,Lead time,Where from\nBell,toy,ask Ada,some,soon,attic\n');
        expect(done.after['inventory.kit']).toBe('material bell\n');
        expect(rowOf(done, 2)).toMatchObject({ does: 'new', lost: true });
        expect(rowOf(done, 2).remarks).toHaveLength(5);
    });

    test('the price of one, and packs of many', async () => {
        const done = await importInto({}, 'Item,Pack size,Price each\nCup,12,€0.25\n');
        expect(done.after['inventory.kit']).toContain('  pack of 12 costs 3.00 EUR\n');
        expect(rowOf(done, 2).remarks).toEqual(['12 at 0.25 EUR each are 3.00 EUR']);
    });

    test('headings without a row below them', async () => {
        const done = await importInto(files, 'Item,Price,Stock\n');
        expect([done.files, done.report.rows]).toEqual([[], []]);
        expect(reportText(done.report)).toContain('0 new, 0 changed, 0 the same, 0 skipped.');
    });

    test('a bare $ is asked about, unless the programme or the person has one', async () => {
        const sheet = 'Item,Price\nBell,$4.50\n';
        const done = await importInto({}, sheet);
        expect(done.report.asks).toEqual(['currency']);
        expect(done.after['inventory.kit']).toBe('material bell\n');
        expect((await importInto({}, sheet, { currency: 'CAD' })).after['inventory.kit']).toContain('costs 4.50 CAD');
        const own = await importInto({ 'a.kit': 'material cup\n  reusable\n  pack of 1 costs 2.00 AUD\n' }, sheet);
        expect(own.after['inventory.kit']).toContain('costs 4.50 AUD');
        expect(own.report.rows[0]!.remarks).toEqual(['Price: $ is taken as AUD, the currency of the programme']);
    });
});

describe('cells that would break a file', () => {
    const hostile = [
        '=HYPERLINK("http://x","y")', '"', '""quoted""', 'a\nb', 'material x "y"\n  reusable', '# not a remark', '{name}', '{', '}', '\\{', '{{a}', '“', '” x', '*bold* _x_ `c`', '[a](b)', '<script>', '&amp;', '\\', '\\"', '\u0000\u0007', '\u202eabc', 'שלום עולם', 'مرحبا', '\u2028x\u2029',
        'x'.repeat(10_000), 'wörd '.repeat(2000), '+1', '-1', '@x', "'", '\ud800', '\ufeff', '--', 'note: x', 'on hand', 'per', 'kit', 'in', '1 in', 'or', '-', '12', '1/2', '2026-09-14', '10%', '9:30', '\t', '\u000b\u000c\u0085', 'emoji 👩‍👧 🎲', 'a/b', 'a:b', 'ﬁne', '٣', '½'
    ];

    test.each(hostile.map(cell => [JSON.stringify(cell).slice(0, 40), cell]))('%s in every column', async (_, cell) => {
        const headings = ['Code', 'Item', 'Use', 'Unit', 'Pack', 'Price', 'Currency', 'Lead time', 'Source', 'Stock', 'Min stock', 'Spare %', 'Shelf life', 'Notes'];
        const rows = [headings, ...headings.map((_one, at) => headings.map((heading, column) => (column === at ? cell : heading === 'Item' ? `Thing ${at}` : '')))];
        const start = { 'year.course': course.replace(/ {4}(?:rice|hand-bell).*\n/g, '').replace('  holds\n', '') };
        const done = await importInto(start, tableOf(rows), { class: 'harbour', currency: 'EUR', columns: headings.map((column, at) => ({ column, means: (['name', 'title', 'use', 'unit', 'pack', 'price', 'currency', 'lead', 'source', 'on-hand', 'safety-stock', 'spare', 'keeps', 'note'] as const)[at]! })) });
        expect(await errorsIn(done.after)).toEqual([]);
        expect((await importInto(done.after, tableOf(rows), { class: 'harbour', currency: 'EUR', columns: headings.map((column, at) => ({ column, means: (['name', 'title', 'use', 'unit', 'pack', 'price', 'currency', 'lead', 'source', 'on-hand', 'safety-stock', 'spare', 'keeps', 'note'] as const)[at]! })) })).files).toEqual([]);
    });

    test('a title and a note read as their cells do', async () => {
        const cell = 'A {brace}, a \\slash, *stars*, a # and "quotes"';
        const done = await importInto({}, tableOf([['Item', 'Notes'], [cell, cell]]));
        const { programme } = await readFiles(done.after);
        const [material] = [...programme.materials.values()];
        expect(material!.title).toBe('A {brace}, a \\slash, *stars*, a # and “quotes”');
        expect(material!.notes[0]!.parts).toEqual([{ text: 'A \\{brace\\}, a \\\\slash, \\*stars\\*, a # and "quotes"', starts: expect.anything() as unknown }]);
        expect(done.report.rows[0]!.remarks).toEqual(['title: straight quotation marks became typographic ones']);
    });
});

describe('any spreadsheet', () => {
    const titles = fc.oneof(fc.constantFrom('Hand bell', 'Uncooked rice', 'Drum', 'Café', 'Cafe', 'Paper, A4', '6" ruler'), fc.string({ unit: 'grapheme', maxLength: 20 }));
    const row = fc.tuple(
        titles, fc.constantFrom('', 'reusable', 'consumable', 'toy'), fc.constantFrom('', '12', '500 g', '2 kg', 'box of 6', '3 rolls', '1 1/2 cups', '0', '?'), fc.constantFrom('', '€2', '€2.50', '$3', '1,5 €', 'free'), fc.constantFrom('', '3', '3 pcs', '250 g', '2 boxes', '1,5 kg', '0', 'some'),
        fc.constantFrom('', '3 days', '2 weeks', '5 working days', 'soon'), fc.constantFrom('', 'shop', 'home', 'printed', 'attic'), fc.oneof(fc.constant(''), fc.string({ maxLength: 30 })), fc.constantFrom('', '10%', '5')
    );
    const headings = ['Item', 'Use', 'Pack', 'Price', 'Stock', 'Lead time', 'Source', 'Notes', 'Spare'];

    test('imported twice changes nothing the second time; what is written is read without an error; no line of the file is lost but those that differ', async () => {
        await fc.assert(fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 6 }), fc.boolean(), async (rows, withFiles) => {
            const start = withFiles ? files : { 'year.course': course.replace(/ {4}(?:rice|hand-bell).*\n/g, '').replace('  holds\n', '') };
            const table = tableOf([headings, ...rows.map(one => one.map(text => text.trim()))]);
            const once = await importInto(start, table, { class: 'harbour' });
            expect(await errorsIn(once.after)).toEqual([]);
            const twice = await importInto(once.after, table, { class: 'harbour' });
            expect(twice.files.map(({ before, after }) => differences(before, after))).toEqual([]);
            expect(twice.report.rows.filter(({ does }) => does === 'new' || does === 'changed')).toEqual([]);
            for (const { before, after } of once.files) for (const line of lines(before).filter(one => one.includes('#') || one.includes('note'))) expect(after).toContain(line.includes('#') ? line.slice(line.indexOf('#')) : line);
        }), { numRuns: 30 });
    }, 120_000);
});

describe('the preview', () => {
    test('what a person reads', async () => {
        const done = await importInto(files, 'Item,Price,Shelf,Stock\nHand bell,€7,2,1\nDrum,€30,,2\n', { class: 'harbour' });
        expect(reportText(done.report)).toBe(`Columns (headings in row 1)
  A  Item: title (by its heading)
  B  Price: price of a pack (by its heading)
  C  Shelf: not used (nothing tells what it means)
  D  Stock: what is on hand (by its heading)

Rows
  2  changed: hand-bell "Hand bell"
       pack of 1 costs 7.00 EUR, was 6.50 EUR
  3  new: drum "Drum"
       pack of 1 costs 30.00 EUR
       on hand 2

Remarks
  Columns are separated by commas.
  No column says what a pack is, so each price is taken as the price of one, or of what stands in the unit column.
  One new material does not say whether it is handed back or used up: write 'reusable' or 'consumable' under it.

1 new, 1 changed, 0 the same, 0 skipped.
`);
        expect(previewText(done.files, uri => uri.slice(uri.lastIndexOf('/') + 1))).toBe(`--- inventory.kit
+++ inventory.kit
@@ -4,5 +4,5 @@
   from kit
   # two shops sell it
-  pack of 1 costs 6.50 EUR   # paid in March
+  pack of 1 costs 7.00 EUR   # paid in March
   arrives in 7 days
 
@@ -15,2 +15,5 @@
     and closed.
 # the end
+
+material drum
+  pack of 1 costs 30.00 EUR

--- year.course
+++ year.course
@@ -4,4 +4,5 @@
     rice       200 g   # in the tin
     hand-bell  1
+    drum       2
   starts 2026-09-07
 `);
    });

    // The form is that of POSIX diff -u: each line of a hunk is kept, gone or come, and the counts in its head are of those.
    test('applied as a patch, it gives the file', async () => {
        const prices = fc.array(fc.tuple(fc.constantFrom('Hand bell', 'Uncooked rice', 'Drum', 'Gong'), fc.constantFrom('€1', '€6.50', '€9'), fc.constantFrom('', '3 days', '7 days'), fc.constantFrom('', '1', '4')), { minLength: 1, maxLength: 4 });
        await fc.assert(fc.asyncProperty(prices, fc.boolean(), async (rows, bare) => {
            const start = bare ? { ...files, 'inventory.kit': kit.trimEnd() } : files;
            const done = await importInto(start, tableOf([['Item', 'Price', 'Lead time', 'Stock'], ...rows]), { class: 'harbour' });
            for (const { before, after, edits } of done.files) {
                const text = previewText([{ uri: 'x', before, after, edits }], uri => uri);
                expect(patched(before, lines(text).slice(2))).toEqual(after.replace(/\n$/, '').split('\n'));
            }
        }), { numRuns: 30 });
    });

    function patched(before: string, patch: string[]): string[] {
        const old = before.replace(/\n$/, '').split('\n');
        const result: string[] = [];
        let at = 0;
        for (let index = 0; index < patch.length; index++) {
            const head = /^@@ -(\d+),(\d+) \+(\d+),(\d+) @@$/.exec(patch[index]!);
            if (!head) throw new Error(`No head: ${patch[index]}`);
            const [from, length, to, grown] = head.slice(1).map(Number) as [number, number, number, number];
            while (at < from - 1) result.push(old[at++]!);
            expect(result).toHaveLength(to - 1);
            let [oldLines, newLines] = [0, 0];
            while (oldLines < length || newLines < grown) {
                const line = patch[++index]!;
                if (line[0] !== '+') { expect(old[at++]).toBe(line.slice(1)); oldLines++; }
                if (line[0] !== '-') { result.push(line.slice(1)); newLines++; }
            }
        }
        return [...result, ...old.slice(at)];
    }
});

test('the edits are those of the language: made one by one they give the same', async () => {
    const { programme, textOf } = await readFiles(files);
    const done = importTable(programme, textOf, tableOf([['Item', 'Lead time'], ['Hand bell', '3 days']]), { file: uriOf('inventory.kit') });
    if ('refusal' in done) throw new Error(done.refusal);
    expect(applyEdits(kit, done.files[0]!.edits)).toBe(done.files[0]!.after);
});
