/** Ten thousand edits over the wire with requests between them: the server's memory comes back to where it was. */
import { expect, test, vi } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { cases, Chance, everything, seed } from './chance.js';
import { small } from './corpus.js';
import { RawServer } from './raw-server.js';

vi.setConfig({ testTimeout: 3_600_000 });

/** In MB. */
interface Memory {
    data: number;
    code: number;
}

test('edits, and requests between them', async () => {
    const edits = cases(10_000, 60);
    const points = everything ? 10 : 2;
    const chance = new Chance(seed);
    const server = new RawServer(undefined, ['--expose-gc', '--import', new URL('report-memory.mjs', import.meta.url).href]);
    await server.initialize();
    const memory = async (): Promise<Memory> => {
        // The plan is looked at when typing rests: what it needs belongs to both measurements.
        await new Promise(resolve => setTimeout(resolve, everything ? 1500 : 400));
        server.process.kill('SIGUSR2');
        await new Promise<void>(resolve => { const look = (): void => { if (/heap \d+ \d+\n/.test(server.errors)) resolve(); else setTimeout(look, 20); }; look(); });
        const [told, used, code] = /heap (\d+) (\d+)\n/.exec(server.errors)!;
        server.errors = server.errors.replace(told, '');
        return { data: (Number(used) - Number(code)) / 1e6, code: Number(code) / 1e6 };
    };
    const documents = new Map<string, TextDocument>();
    const open = ({ file, text }: { file: string; text: string }): void => {
        const uri = `${server.root}/${file}`;
        documents.set(uri, TextDocument.create(uri, 'haversack', 1, text));
        server.send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'haversack', version: 1, text } } });
    };
    small.forEach(open);
    const measured: { edit: number; memory: Memory }[] = [];
    let id = 0;
    const change = (document: TextDocument, from: number, length: number, text: string): TextDocument => {
        const range = { start: document.positionAt(from), end: document.positionAt(from + length) };
        server.send({ method: 'textDocument/didChange', params: { textDocument: { uri: document.uri, version: document.version + 1 }, contentChanges: [{ range, text }] } });
        return TextDocument.update(document, [{ range, text }], document.version + 1);
    };
    for (let edit = 1; edit <= edits; edit++) {
        const uri = chance.one([...documents.keys()]);
        const document = documents.get(uri)!;
        // Typed and taken back, so that the text itself does not grow: a word, a broken line, a new declaration.
        const typed = chance.one(['x', '{hand-bell}', `\nmaterial soak-${edit} "Soak ${edit}"\n  reusable\n`, '\n  zzz\n', '"', '🔔']);
        const from = chance.below(document.getText().length + 1);
        const changed = change(document, from, 0, typed);
        const ask = (method: string, params: object): void => server.send({ id: id++, method, params });
        const position = changed.positionAt(from);
        if (edit % 3 === 0) ask('textDocument/completion', { textDocument: { uri }, position });
        if (edit % 5 === 0) ask('textDocument/hover', { textDocument: { uri }, position });
        if (edit % 7 === 0) ask('haversack/brief', { uri, line: position.line });
        if (edit % 11 === 0) ask('textDocument/semanticTokens/full', { textDocument: { uri } });
        if (edit % 50 === 0) ask('haversack/term', { uri, line: 0 });
        documents.set(uri, change(changed, from, typed.length, ''));
        if (edit % 97 === 0) {
            server.send({ method: 'textDocument/didClose', params: { textDocument: { uri } } });
            open(small.find(({ file }) => uri.endsWith(file))!);
        }
        if (edit % 20 === 0) { await server.answered(); server.answers.clear(); }
        if (edit % Math.floor(edits / points) === 0) measured.push({ edit, memory: await memory() });
    }
    await server.answered();
    // Until the first fifth everything is compiled and remembered once.
    const [first, last] = [measured[Math.floor(points / 5)]!, measured.at(-1)!];
    const slope = (last.memory.data - first.memory.data) / (last.edit - first.edit) * 1000;
    console.log(`${edits} edits (each typed and taken back), ${id} requests, seed ${seed}. Heap after collection, and compiled code apart: ${measured.map(({ edit, memory: { data, code } }) => `${edit}: ${data.toFixed(1)} and ${code.toFixed(1)} MB`).join(', ')}; ${slope.toFixed(2)} MB of data for 1,000 edits.`);
    if (everything) expect(last.memory.data).toBeLessThan(first.memory.data * 1.1);
    expect(measured.length).toBe(points);
    await server.ask('shutdown', 'shutdown');
    expect({ code: await server.exit(), errors: server.errors }).toEqual({ code: 0, errors: '' });
});
