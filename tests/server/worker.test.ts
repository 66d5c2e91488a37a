/** The server as a worker of a browser: no disk, no Node; the client sends every file. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build, type BuildOptions } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import type { BriefAnswer } from '../../server/protocol/pages.js';
import { firstSteps } from './client.js';
import { folder, WorkerClient } from './worker-client.js';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const lesson = 'lesson weigh-1 "Two bags"\n  activity two-bags 15 min\n    do: Lift both bags.\n';
const course = (more: string): string => `course weighing "Weighing"\n  unit one "One"\n    weigh-1\n\nclass harbour "Harbour"\n  teaches weighing\n  learners 4\n  starts 2026-09-07\n  meets mon, tue\n${more}`;
const town = (date: string, title: string | Uint8Array = 'Harvest day'): Buffer =>
    Buffer.concat([Buffer.from('BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:x\r\nSUMMARY:'), Buffer.from(title), Buffer.from(`\r\nDTSTART;VALUE=DATE:${date}\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n`)]);
const firstDay = async (client: WorkerClient): Promise<string> => {
    const { text } = await client.connection.sendRequest<BriefAnswer>('haversack/brief', { class: 'harbour', week: 1, format: 'json' });
    return (JSON.parse(text!) as { brief: { from: string } }).brief.from;
};

describe('the bundles for the browser', () => {
    // Built as they ship; what esbuild leaves to be imported at run time stands in its own account of the bundle.
    test.each(['worker-server.js', 'extension-web.js'])('%s imports none of Node’s own modules', async name => {
        const { bundles } = await import(pathToFileURL(join(import.meta.dirname, '../../bundles.mjs')).href) as { bundles(production: boolean): { options: BuildOptions }[] };
        const { options } = bundles(true).find(bundle => bundle.options.outfile?.endsWith(`/${name}`))!;
        const { metafile, outputFiles } = await build({ ...options, metafile: true as const, write: false as const });
        const imported = Object.values(metafile.outputs).flatMap(output => output.imports.map(({ path }) => path));
        expect([...new Set(imported)]).toEqual(name === 'worker-server.js' ? [] : ['vscode']);
        const { contents } = outputFiles[0]!;
        console.log(`${name}: ${(contents.length / 1024).toFixed(0)} KB, packed ${(gzipSync(contents).length / 1024).toFixed(0)} KB`);
    });
});

describe('the example, sent in pieces', () => {
    const files = Object.fromEntries(readdirSync(firstSteps, { recursive: true, encoding: 'utf8' }).filter(name => /\.(?:lesson|kit|course)$/.test(name)).map(name => [name, readFileSync(join(firstSteps, name))]));
    let client: WorkerClient;
    beforeAll(async () => { client = await WorkerClient.start(files); });
    afterAll(async () => expect(await client.stop()).toEqual([]));

    test('is not built before all of it has come, and then has no problem', async () => {
        const names = Object.keys(files);
        const asked = client.connection.sendRequest<BriefAnswer>('haversack/brief', { class: 'attic' });
        for (const name of names) await client.send([name]);
        expect(client.states).toEqual([]);
        await client.send([], { whole: true });
        expect(await asked).toMatchObject({ class: 'attic', week: 1 });
        await client.until('all files to be looked at', () => client.published.size === names.length);
        expect(client.states.flatMap(({ codes }) => codes)).toEqual([]);
    });

    test('takes up a file that is changed, one that is new and one that is gone', async () => {
        client.files.set('lessons/shake-1.lesson', Buffer.from(String(files['lessons/shake-1.lesson']).replace('    rice ', '    rise ')));
        await client.send(['lessons/shake-1.lesson']);
        await client.until('the unknown material', () => client.codes('lessons/shake-1.lesson').includes('unknown-name'));
        client.files.set('more.kit', 'material rise "Rise"\n');
        await client.send(['more.kit']);
        await client.until('the material to be found', () => !client.codes('lessons/shake-1.lesson').includes('unknown-name'));
        await client.send([], { gone: [client.uri('more.kit')] });
        await client.until('the material to be missed', () => client.codes('lessons/shake-1.lesson').includes('unknown-name'));
    });

    test('loses all files of a folder that is gone', async () => {
        await client.send([], { gone: [client.uri('lessons')] });
        await client.until('the lessons to be missed', () => client.codes('programme.course').filter(code => code === 'unknown-name').length >= Object.keys(files).filter(name => name.startsWith('lessons/')).length);
        expect(client.published.get(client.uri('lessons/shake-1.lesson'))).toEqual([]);
    });

    test('survives messages that make no sense', async () => {
        for (const params of [null, 7, [], { files: 'all' }, { files: [null] }, { files: [{ uri: 5 }] }, { files: [{ uri: client.uri('odd.kit'), bytes: '%%%' }] }, { gone: [{}] }, { gone: [''] }, { files: [{ uri: '' }] }, { whole: 'yes' }]) {
            await client.connection.sendNotification('haversack/files', params as object);
        }
        expect(await client.connection.sendRequest('haversack/brief', {})).toBeTruthy();
    });

    test('holds a lock by its name for as long as it lives', async () => {
        expect(await client.locks()).toEqual(['haversack-test']);
        await client.worker.evaluate(() => self.close());
        await vi.waitUntil(async () => (await client.locks()).length === 0, { timeout: 15_000 });
    });
});

describe('files that the programme names', () => {
    let client: WorkerClient;
    const files = { 'weigh.lesson': lesson, 'w.course': course('  off from "calendars/town.ics"\n'), 'calendars/town.ics': town('20260907'), 'calendars/other.ics': town('20260908'), 'big.json': '{}' };
    beforeAll(async () => {
        client = await WorkerClient.start(files);
        await client.send(Object.keys(files), { whole: true });
    });
    afterAll(async () => expect(await client.stop()).toEqual([]));

    test('are fetched before anything is told, and no other', async () => {
        expect(await firstDay(client)).toBe('2026-09-08');
        expect(client.fetched).toEqual(['calendars/town.ics']);
        expect(client.states.flatMap(({ codes }) => codes)).not.toContain('file-not-usable');
    });

    test('are fetched again when they change, without a word in between', async () => {
        client.files.set('calendars/town.ics', town('20261001'));
        await client.send(['calendars/town.ics']);
        await client.until('the new calendar', () => client.fetched.length === 2);
        await vi.waitUntil(async () => await firstDay(client) === '2026-09-07', { timeout: 15_000 });
        expect(client.states.flatMap(({ codes }) => codes)).not.toContain('file-not-usable');
    });

    test('are not usable when they hold what is no text, and what is wrong is told', async () => {
        client.files.set('calendars/town.ics', town('20261001', Uint8Array.of(0x43, 0x61, 0x66, 0xE9)));
        await client.send(['calendars/town.ics']);
        await client.until('the wrong encoding to be told', () => client.codes('w.course').includes('file-not-usable'));
        expect(client.published.get(client.uri('w.course'))!.find(({ code }) => code === 'file-not-usable')!.message).toContain('not written in UTF-8');
    });

    test('are missed when they go, with those near that may be meant', async () => {
        await client.send([], { gone: [client.uri('calendars/town.ics')] });
        const problem = () => client.published.get(client.uri('w.course'))?.find(({ code }) => code === 'file-not-usable');
        await client.until('the calendar to be missed', () => problem()?.message.toString().includes('no such file') === true);
        const actions = await client.connection.sendRequest<{ title: string }[]>('textDocument/codeAction', { textDocument: { uri: client.uri('w.course') }, range: problem()!.range, context: { diagnostics: [problem()] } });
        expect(actions.map(({ title }) => title).join()).toContain('other.ics');
    });

    test('that are too large are told of', async () => {
        await client.connection.sendNotification('haversack/files', { files: [{ uri: client.uri('calendars/town.ics'), wrong: 'too-large' }] });
        await client.until('the size to be told', () => client.published.get(client.uri('w.course'))!.some(({ message }) => message.toString().includes('larger than 8 MB')));
    });
});

describe('a client that sends no files', () => {
    test('keeps nobody waiting: what is open is what there is', async () => {
        const client = await WorkerClient.start({}, { sendsFiles: false });
        const uri = `${folder}/alone.lesson`;
        await client.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'haversack', version: 1, text: lesson.replace('lesson', 'lessn') } });
        await client.until('its problems', () => (client.published.get(uri) ?? []).length > 0);
        expect(await client.stop()).toEqual([]);
    });
});
