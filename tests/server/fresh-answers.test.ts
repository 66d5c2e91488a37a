import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentSymbol, LocationLink, WorkspaceEdit } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

describe('an answer is about the text as it is now', () => {
    test('right after a file is opened, while another build runs', async () => {
        for (let round = 0; round < 5; round++) {
            void client.writeOutside('more.kit', `material thing-${round}\n  reusable\n`);
            void client.open(`new-${round}.lesson`, `lesson new-${round} "New ${round}"\n`);
            const symbols = await client.connection.sendRequest<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri: client.uri(`new-${round}.lesson`) } });
            expect(symbols.map(({ name }) => name)).toEqual([`New ${round}`]);
        }
    });

    test('right after keystrokes that move everything down', async () => {
        const file = 'lessons/listen-1.lesson';
        await client.open(file);
        const text = client.text(file);
        for (let round = 1; round <= 5; round++) {
            void client.writeOutside('more.kit', `material other-${round}\n  reusable\n`);
            void client.change(file, `${'# One more line.\n'.repeat(round * 3)}${text}`);
            const links = await client.ask<LocationLink[]>('textDocument/definition', file, 'repeat loud-and|-soft');
            expect(links.map(({ targetSelectionRange }) => client.inRange(file, targetSelectionRange))).toEqual(['loud-and-soft']);
            const edit = await client.ask<WorkspaceEdit>('textDocument/rename', file, 'repeat loud-and|-soft', { newName: 'other' });
            expect(edit.changes![client.uri(file)]!.map(({ range }) => client.inRange(file, range))).toEqual(['loud-and-soft', 'loud-and-soft']);
        }
    });
});
