import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { workbook } from '../importing/workbooks.js';
import type { ImportAnswer, ImportParams, ImportRefusal } from '../../server/protocol/imports.js';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const ask = (params: Partial<ImportParams>): Promise<ImportAnswer | ImportRefusal> => client.connection.sendRequest('haversack/import', params);
const base64 = (text: string | Uint8Array): string => Buffer.from(text).toString('base64');

async function answer(params: Partial<ImportParams>): Promise<ImportAnswer> {
    const found = await ask(params);
    if ('refusal' in found) throw new Error(found.refusal);
    return found;
}

async function refusal(params: Partial<ImportParams>): Promise<ImportRefusal> {
    const found = await ask(params);
    if (!('refusal' in found)) throw new Error('It was read.');
    return found;
}

const sheet = 'Item,Price,Lead time,Stock\nHand bell,€7.50,3 days,2\nFrame drum,€18,1 week,1\n';

describe('what an import would change', () => {
    test('a report, and edits that give the files as they would be', async () => {
        const { report, files, text, summary, choices } = await answer({ bytes: base64(sheet), class: 'attic' });
        expect(report.rows.map(({ row, does, name }) => [row, does, name])).toEqual([[2, 'changed', 'hand-bell'], [3, 'new', 'frame-drum']]);
        expect(text).toContain('  2  changed: hand-bell "Hand bell"\n');
        expect(summary).toBe('1 new, 1 changed, 0 the same, 0 skipped.');
        expect(files.map(({ uri, isNew }) => [uri, isNew])).toEqual([[client.uri('inventory.kit'), false], [client.uri('programme.course'), false]]);
        for (const { uri, after, edits } of files) {
            const name = uri.slice(uri.lastIndexOf('/') + 1);
            expect(TextDocument.applyEdits(TextDocument.create(uri, 'haversack', 1, client.text(name)), edits)).toBe(after);
        }
        expect(choices).toMatchObject({ file: client.uri('inventory.kit'), files: [client.uri('inventory.kit')], classes: [{ name: 'attic' }], kits: [{ name: 'sound-bag' }] });
        expect(choices.meanings).toContainEqual({ means: 'on-hand', words: 'what is on hand' });
    });

    test('counts from the text that is being written, not from the disk', async () => {
        await client.open('inventory.kit');
        await client.edit('inventory.kit', '# Start here.', '# One line more.\n# Start here.');
        const { files } = await answer({ bytes: base64(sheet) });
        expect(files[0]!.after).toContain('# One line more.\n');
        expect(TextDocument.applyEdits(TextDocument.create('x', 'haversack', 1, client.text('inventory.kit')), files[0]!.edits)).toBe(files[0]!.after);
    });

    test('a workbook as plain bytes, into a file that is not there yet', async () => {
        const book = await workbook({ Things: [['Item', 'Use'], ['Gong', 'reusable']] });
        const { files } = await answer({ bytes: [...book], file: client.uri('more.kit') });
        expect(files).toEqual([{ uri: client.uri('more.kit'), isNew: true, after: 'material gong\n  reusable\n', edits: [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, newText: 'material gong\n  reusable\n' }] }]);
    });

    test('a column’s meaning may be told', async () => {
        const told = await refusal({ bytes: base64('Stock,Zzz\n3,4\n') });
        expect(told).toMatchObject({ refusal: expect.stringContaining('Say which it is.') as string, columns: [{ letter: 'A', heading: 'Stock' }, { letter: 'B', heading: 'Zzz' }] });
        const { report } = await answer({ bytes: base64('Stock,Zzz,Thing\n3,4,Bell\n'), columns: [{ column: 'B', means: 'title' }] });
        expect(report.columns.find(({ letter }) => letter === 'B')).toMatchObject({ means: 'title', why: 'as you said' });
    });
});

test('members of another kind than the protocol says count as not given', async () => {
    const strange = { sheet: 1, columns: [{ column: 2 }], file: {}, class: 3, kit: [], currency: 4 } as never;
    expect((await answer({ bytes: base64(sheet), ...strange as object })).text).toBe((await answer({ bytes: base64(sheet) })).text);
});

describe('what cannot be imported is refused in a sentence', () => {
    test.each([
        ['nothing', {}, 'did not arrive'], ['no base64', { bytes: '%%%' }, 'did not arrive'], ['an empty file', { bytes: '' }, 'The spreadsheet is empty.'], ['an unknown class', { bytes: base64(sheet), class: 'x' }, "There is no class 'x'."],
        ['an unknown meaning', { bytes: base64(sheet), columns: [{ column: 'A', means: 'colour' }] }, "A column cannot mean 'colour'."], ['a file outside', { bytes: base64(sheet), file: 'file:///etc/inventory.kit' }, 'New materials go to a file of the programme'],
        ['a file beside the folder', { bytes: base64(sheet), file: 'FOLDER/../inventory.kit' }, 'New materials go to a file of the programme'],
        ['strange members', { bytes: 7 as never, columns: 'title' as never }, 'did not arrive'],
        ['a file of another kind', { bytes: base64(sheet), file: 'FOLDER/notes.txt' }, 'that ends in .kit']
    ])('%s', async (_, params, says) => {
        const file = (params as ImportParams).file?.replace('FOLDER', client.uri('').replace(/\/$/, ''));
        expect((await refusal({ ...params, ...(file !== undefined && { file }) })).refusal).toContain(says);
    });

    test('too many bytes, by their number alone', async () => {
        expect((await refusal({ bytes: 'A'.repeat(30 * 1024 * 1024) })).refusal).toContain('20 MB is the most that is read');
    });
});
