/** A server that is killed in the midst of its work leaves nothing half done: the next one, told of the same unsaved text, answers the same, and nothing on the disk has changed. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { cases, Chance, seed } from './chance.js';
import { small } from './corpus.js';
import { RawServer } from './raw-server.js';

vi.setConfig({ testTimeout: 600_000 });

const filesIn = (folder: string): string[] => readdirSync(folder, { recursive: true, withFileTypes: true }).filter(entry => entry.isFile()).map(entry => join(entry.parentPath, entry.name)).sort()
    .map(path => `${path.slice(folder.length)} ${readFileSync(path, 'utf8').length} ${readFileSync(path, 'base64')}`);

test('killed in the midst of requests', async () => {
    const times = cases(30, 1);
    let begun = 0;
    for (let time = 0; time < times; time++) {
        const chance = new Chance(seed + time);
        // The client keeps unsaved text: it tells each server of it anew.
        const { file, text } = chance.one(small.filter(one => one.file.endsWith('.lesson')));
        const unsaved = `${text}\n  activity unsaved-${time} "Unsaved ${time}" 5 min\n    do: Keep me.\n`;
        const open = (server: RawServer): void => server.send({ method: 'textDocument/didOpen', params: { textDocument: { uri: `${server.root}/${file}`, languageId: 'haversack', version: 1, text: unsaved } } });
        const ask = async (server: RawServer): Promise<unknown> => (await server.ask('symbols', 'textDocument/documentSymbol', { textDocument: { uri: `${server.root}/${file}` } })).result;
        const killed = new RawServer();
        const before = filesIn(killed.folder);
        await killed.initialize();
        open(killed);
        const outlined = await ask(killed);
        expect(JSON.stringify(outlined)).toContain(`Unsaved ${time}`);
        for (let id = 0; id < 40; id++) killed.send({ id, method: chance.one(['haversack/term', 'haversack/brief', 'textDocument/completion', 'textDocument/rename', 'textDocument/formatting']), params: { textDocument: { uri: `${killed.root}/${file}` }, position: { line: 3, character: 4 }, newName: 'other', options: { tabSize: 2, insertSpaces: true } } });
        begun += 40;
        await new Promise(resolve => setTimeout(resolve, chance.below(30)));
        killed.kill();
        await killed.died();
        expect(filesIn(killed.folder)).toEqual(before);
        const next = new RawServer(killed.folder);
        await next.initialize();
        open(next);
        expect(await ask(next)).toEqual(outlined);
        await next.ask('shutdown', 'shutdown');
        expect({ code: await next.exit(), errors: next.errors }).toEqual({ code: 0, errors: '' });
        killed.forget();
    }
    console.log(`${times} servers killed in the midst of ${begun} requests, seed ${seed}: nothing on the disk had changed, and the next one read the unsaved text as the one before.`);
});
