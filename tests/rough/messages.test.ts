/** Messages in bad order against the built server: it stays up, says nothing on its error output, and gives each request one answer. */
import { expect, test, vi } from 'vitest';
import { cases, Chance, seed, Tally } from './chance.js';
import { small } from './corpus.js';
import { RandomMessages } from './random-messages.js';
import { RawServer } from './raw-server.js';

vi.setConfig({ testTimeout: 3_600_000 });

const inAll = cases(1_000_000, 1500);
const inSession = Math.min(25_000, inAll);
const inBatch = 500;

test('random messages to servers that have begun', async () => {
    const tally = new Tally();
    const codes = new Tally();
    const began = performance.now();
    let requests = 0;
    for (let session = 0; tally.total < inAll; session++) {
        const chance = new Chance(seed + session);
        const server = new RawServer();
        const random = new RandomMessages(server.root, small, chance);
        server.reply = () => chance.one([{ result: null }, { result: [null] }, { result: [{ severity: { unused: 'off' } }] }, { error: { code: -32601, message: 'No' } }, { result: 'x' }]);
        await server.initialize();
        for (let sent = 0; sent < inSession && tally.total < inAll;) {
            const batch = Array.from({ length: Math.min(inBatch, inSession - sent) }, () => random.next());
            sent += batch.length;
            batch.forEach(({ kind }) => tally.add(kind));
            requests += batch.filter(({ message }) => message.method !== undefined && message.id !== undefined && message.id !== null).length;
            server.send(...batch.map(({ message }) => message));
            await server.answered();
            expect({ session, alive: server.alive, errors: server.errors }).toEqual({ session, alive: true, errors: '' });
        }
        // It still knows the way: a fresh file has a lesson.
        const uri = `${server.root}/fresh.lesson`;
        server.send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'haversack', version: 1, text: 'lesson fresh-one "Fresh one"\n' } } });
        expect((await server.ask('last', 'textDocument/documentSymbol', { textDocument: { uri } })).result).toMatchObject([{ name: 'Fresh one' }]);
        expect([...server.answers].filter(([, answers]) => answers.length !== 1).map(([id]) => id)).toEqual([]);
        for (const [{ error }] of server.answers.values() as Iterable<[{ error?: { code: number } }]>) codes.add(error ? String(error.code) : 'result');
        await server.ask('shutdown', 'shutdown');
        expect({ code: await server.exit(), errors: server.errors }).toEqual({ code: 0, errors: '' });
    }
    console.log(`${tally.total} messages, seed ${seed}, in ${Math.round((performance.now() - began) / 1000)} s: ${tally}. ${requests} requests, each answered once: ${codes}.`);
});

test('messages before the beginning, after the end, and an end in between', async () => {
    const tally = new Tally();
    for (let session = 0; session < cases(200, 2); session++) {
        const chance = new Chance(seed + 5000 + session);
        const server = new RawServer();
        const random = new RandomMessages(server.root, small, chance);
        const some = (count: number, kind: string): void => {
            const batch = Array.from({ length: count }, () => random.next().message);
            tally.add(kind, count);
            server.send(...batch);
        };
        some(chance.below(60), 'before initialize');
        server.send({ id: 'initialize', method: 'initialize', params: { processId: null, rootUri: server.root, capabilities: {}, workspaceFolders: [{ name: 'x', uri: server.root }] } });
        some(chance.below(40), 'between initialize and initialized');
        server.send({ method: 'initialized', params: {} });
        some(chance.below(100), 'while it runs');
        await server.answered();
        expect({ session, errors: server.errors, unanswered: server.unanswered }).toEqual({ session, errors: '', unanswered: [] });
        server.send({ id: 'shutdown', method: 'shutdown' });
        some(chance.below(60), 'after shutdown');
        await server.answered();
        expect({ session, errors: server.errors, alive: server.alive }).toEqual({ session, errors: '', alive: true });
        expect([...server.answers].filter(([, answers]) => answers.length !== 1).map(([id]) => id)).toEqual([]);
        // What stands behind an exit in the same batch finds nobody; nothing may be said of it.
        server.send({ method: 'exit' }, ...Array.from({ length: 20 }, () => random.next().message));
        tally.add('after exit', 20);
        expect({ session, code: await server.gone(), errors: server.errors }).toEqual({ session, code: 0, errors: '' });
    }
    console.log(`${tally.total} messages in bad order, seed ${seed}: ${tally}.`);
});
