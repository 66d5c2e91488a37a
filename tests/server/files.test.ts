import { mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { FileChangeType, type Hover } from 'vscode-languageserver-protocol/node';
import { Client, firstSteps } from './client.js';

let client: Client;

const lesson = 'lessons/listen-1.lesson';
const bad = (text: string): string => text.replace('hand-bell     1', 'hand-drum     1');
const unknown = (file = lesson): boolean => client.codes(file).includes('unknown-name');

describe('text in the editor and text on disk', () => {
    beforeAll(async () => { client = await Client.start(); });
    afterEach(() => client.reset());
    afterAll(() => client.stop());

    test('unsaved text wins over what is on disk', async () => {
        await client.open(lesson);
        await client.writeOutside(lesson, bad(client.text(lesson)));
        await client.settled();
        expect(unknown()).toBe(false);
        await client.change(lesson, bad(client.text(lesson)));
        await client.settled();
        expect(unknown()).toBe(true);
    });

    test('closing a file without saving goes back to what is on disk', async () => {
        await client.open(lesson);
        await client.change(lesson, bad(client.text(lesson)));
        await client.settled();
        expect(unknown()).toBe(true);
        await client.close(lesson);
        await client.settled();
        expect(unknown()).toBe(false);
    });

    test('a file that is deleted on disk lives on while it is open, and goes when it is closed', async () => {
        await client.open('inventory.kit');
        await client.deleteOutside('inventory.kit');
        await client.settled();
        expect(unknown()).toBe(false);
        await client.close('inventory.kit');
        await client.settled();
        expect(unknown()).toBe(true);
    });

    test('a file is changed, created and deleted outside the editor', async () => {
        await client.writeOutside(lesson, bad(client.text(lesson)));
        await client.settled();
        expect(unknown()).toBe(true);
        await client.writeOutside('drum.kit', 'material hand-drum\n  reusable\n');
        await client.settled();
        expect(unknown()).toBe(false);
        await client.deleteOutside('drum.kit');
        await client.settled();
        expect(unknown()).toBe(true);
        await client.deleteOutside(lesson);
        await client.settled();
        expect(client.problems(lesson)).toEqual([]);
        await client.until('the course to miss the lesson', () => unknown('programme.course'));
    });

    test('a change to a file that has just gone does no harm', async () => {
        rmSync(join(client.folder, lesson));
        await client.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: client.uri(lesson), type: FileChangeType.Changed }] });
        await client.until('the course to miss the lesson', () => unknown('programme.course'));
    });

    test('a file from outside the folder counts only while it is open', async () => {
        await client.open(lesson);
        await client.change(lesson, bad(client.text(lesson)));
        const elsewhere = mkdtempSync(join(tmpdir(), 'haversack-outside-'));
        const other = pathToFileURL(join(elsewhere, 'drum.kit')).toString();
        writeFileSync(new URL(other), 'material hand-drum\n  reusable\n');
        await client.open(other, 'material hand-drum\n  reusable\n');
        await client.settled();
        expect(unknown()).toBe(false);
        await client.close(other);
        await client.settled();
        expect(unknown()).toBe(true);
        rmSync(elsewhere, { recursive: true });
    });
});

describe('other programmes', () => {
    afterEach(() => client.stop());

    test('a link to a file is read like the file, and one that leads nowhere does no harm', async () => {
        const elsewhere = mkdtempSync(join(tmpdir(), 'haversack-linked-'));
        writeFileSync(join(elsewhere, 'drum.kit'), 'material hand-drum\n  reusable\n');
        const folder = mkdtempSync(join(tmpdir(), 'haversack-linking-'));
        symlinkSync(join(elsewhere, 'drum.kit'), join(folder, 'linked.kit'));
        symlinkSync(join(elsewhere, 'gone.kit'), join(folder, 'nowhere.kit'));
        symlinkSync(folder, join(folder, 'round'));
        writeFileSync(join(folder, 'one.lesson'), 'lesson one\n  materials\n    hand-drum 1 per pair\n');
        client = await Client.start({ programme: folder });
        expect(client.codes('one.lesson')).not.toContain('unknown-name');
        for (const used of [elsewhere, folder]) rmSync(used, { recursive: true });
    });

    test('an untitled file without a folder works by itself', async () => {
        client = await Client.start({ programme: null });
        const file = 'untitled:Untitled-1';
        await client.open(file, 'material cup\n  reusable\nlesson one "One"\n  materials\n    cup 1 per pair\n    mug 1 per pair\n');
        await client.settled();
        expect(client.codes(file)).toContain('unknown-name');
        const hover = await client.connection.sendRequest<Hover>('textDocument/hover', { textDocument: { uri: file }, position: { line: 4, character: 5 } });
        expect(JSON.stringify(hover.contents)).toContain('Cup');
        await client.close(file);
        await client.settled();
        expect(client.problems(file)).toEqual([]);
    });
});

describe('line ends and tabs', () => {
    let expected: string | undefined;
    beforeAll(async () => {
        client = await Client.start();
        expected = (await client.brief({ week: 2, format: 'md' })).text;
    });
    afterAll(() => client.stop());

    test.each([
        ['CRLF', (text: string) => text.replace(/\n/g, '\r\n')],
        ['CR', (text: string) => text.replace(/\n/g, '\r')],
        ['tabs', (text: string) => text.replace(/^ +/gm, blanks => '\t'.repeat(blanks.length / 2))],
        ['a byte order mark', (text: string) => `\uFEFF${text}`]
    ])('the example with %s has no problems and the same brief', async (_, change) => {
        await client.reset();
        for (const file of ['inventory.kit', 'programme.course', ...readdirSync(join(firstSteps, 'lessons')).map(name => `lessons/${name}`)]) {
            await client.writeOutside(file, change(client.text(file)));
        }
        await client.settled();
        for (const file of ['inventory.kit', 'programme.course', lesson]) expect(client.problems(file)).toEqual([]);
        expect((await client.brief({ week: 2, format: 'md' })).text).toBe(expected);
        await client.open(lesson);
        await client.change(lesson, bad(client.text(lesson)));
        await client.settled();
        const problem = client.problems(lesson).find(({ code }) => code === 'unknown-name')!;
        expect(client.inRange(lesson, problem.range)).toBe('hand-drum');
    });
});
