import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FileChangeType } from 'vscode-languageserver-protocol/node';
import { FedFiles } from '../../server/workspace/fed-files.js';
import { createServerServices } from '../../server/workspace/services.js';
import { Client } from './client.js';

let client: Client;

const { Created, Changed, Deleted } = FileChangeType;
const kit = 'material cup "Cup"\n  reusable\n';
const lesson = (name: string, thing = 'cup'): string => `lesson ${name}\n  materials\n    ${thing} 1 per pair\n  activity one 20 min\n    do: Pour into the {${thing}}.\n`;
const programme: Record<string, string> = {
    'inventory.kit': kit, 'lessons/pour.lesson': lesson('pour-1'), 'lessons/water/stir.lesson': lesson('stir-1'), 'kitchen.course': 'course kitchen\n  unit water\n    pour-1\n    stir-1\n'
};
const errors = (): string[] => [...client.allProblems()].flatMap(([uri, problems]) => problems.filter(({ severity }) => severity === 1).map(({ code }) => `${uri.slice(uri.lastIndexOf('/') + 1)} ${code}`)).sort();
const path = (name: string): string => join(client.folder, name);
const write = (name: string, text: string): void => {
    mkdirSync(join(path(name), '..'), { recursive: true });
    writeFileSync(path(name), text);
};

beforeEach(async () => { client = await Client.start({ programme }); });
afterEach(() => client.stop());

describe('folders', () => {
    test('one that is deleted is told of as one thing: all its files go', async () => {
        rmSync(path('lessons'), { recursive: true });
        await client.tellOutside({ lessons: Deleted });
        expect(errors()).toEqual(['kitchen.course unknown-name', 'kitchen.course unknown-name']);
        expect(client.problems('lessons/pour.lesson')).toEqual([]);
    });

    test('one that is moved in is read, all that lies in it, but for hidden folders', async () => {
        rmSync(path('lessons'), { recursive: true });
        await client.tellOutside({ lessons: Deleted });
        write('../moved-in/pour.lesson', lesson('pour-1'));
        write('../moved-in/deep/er/stir.lesson', lesson('stir-1'));
        write('../moved-in/.old/stir.lesson', lesson('stir-1'));
        renameSync(path('../moved-in'), path('lessons'));
        await client.tellOutside({ lessons: Created });
        expect(errors()).toEqual([]);
    });

    test('one is replaced by another of the same name', async () => {
        rmSync(path('lessons'), { recursive: true });
        write('lessons/pour.lesson', lesson('pour-1', 'mug'));
        await client.tellOutside({ lessons: Deleted });
        await client.tellOutside({ lessons: Created });
        expect(errors()).toEqual(['kitchen.course unknown-name', 'pour.lesson unknown-name', 'pour.lesson unknown-name']);
    });

    test('a file is replaced by a folder, and a folder by a file', async () => {
        rmSync(path('inventory.kit'));
        write('inventory.kit/cups.kit', kit);
        await client.tellOutside({ 'inventory.kit': Changed, 'inventory.kit/cups.kit': Created });
        expect(errors()).toEqual([]);
        rmSync(path('inventory.kit'), { recursive: true });
        write('inventory.kit', `${kit}\nmaterial mug\n  reusable\n`);
        await client.tellOutside({ 'inventory.kit': Changed, 'inventory.kit/cups.kit': Deleted });
        await client.writeOutside('mug.lesson', lesson('mug-1', 'mug'));
        await client.settled();
        expect(errors()).toEqual([]);
    });
});

describe('files', () => {
    test('one that was deleted and written again at once is there', async () => {
        write('inventory.kit', `${kit}\nmaterial mug\n  reusable\n`);
        await client.tellOutside({ 'inventory.kit': Deleted });
        expect(errors()).toEqual([]);
        await client.tellOutside({ 'inventory.kit': Created });
        expect(errors()).toEqual([]);
    });

    test('one that changes on the disk while it is open keeps its unsaved text, until it is closed', async () => {
        await client.open('inventory.kit');
        await client.edit('inventory.kit', 'material cup', 'material mug\n  reusable\n\nmaterial cup');
        write('inventory.kit', 'material spoon\n  reusable\n');
        write('mug.lesson', lesson('mug-1', 'mug'));
        await client.tellOutside({ 'inventory.kit': Changed, 'mug.lesson': Created });
        expect(errors()).toEqual([]);
        await client.close('inventory.kit');
        await client.settled();
        expect(errors()).toContain('mug.lesson unknown-name');
    });

    test('unsaved text counts in other files and in the brief', async () => {
        await client.open('lessons/pour.lesson');
        await client.edit('lessons/pour.lesson', 'lesson pour-1', 'lesson pour-2');
        await client.settled();
        expect(errors()).toEqual(['kitchen.course unknown-name']);
        await client.edit('lessons/pour.lesson', 'lesson pour-2', 'lesson pour-1 "Out of the jug"');
        expect((await client.brief({ week: 1, format: 'md' })).text).toContain('Out of the jug');
        expect(client.problems('kitchen.course').filter(({ severity }) => severity === 1)).toEqual([]);
    });

    test('text that was never saved counts, and goes with its tab or becomes a file', async () => {
        await client.writeOutside('mug.lesson', lesson('mug-1', 'mug'));
        await client.settled();
        expect(errors()).toContain('mug.lesson unknown-name');
        const text = 'material mug "Mug"\n  reusable\n';
        await client.open('untitled:Untitled-1', text);
        await client.settled();
        expect(errors()).toEqual([]);
        // It is saved: the editor opens the file in its place.
        write('mug.kit', text);
        await client.open('mug.kit', text);
        await client.close('untitled:Untitled-1');
        await client.tellOutside({ 'mug.kit': Created });
        expect(errors()).toEqual([]);
        await client.close('mug.kit');
        await client.settled();
        expect(errors()).toEqual([]);
    });

    test('a file in a hidden folder or among installed packages is nobody\'s, unless it is open', async () => {
        for (const folder of ['.drafts', 'node_modules/x']) {
            const name = `${folder}/more.kit`;
            write(name, kit);
            await client.tellOutside({ [name]: Created });
            expect(errors()).toEqual([]);
            await client.open(name);
            await client.until('it to count', () => errors().some(error => error.includes('declared-twice')));
            await client.close(name);
            await client.until('it to be nobody\'s again', () => errors().length === 0);
        }
    });

    test('what lies outside of the folder and is not open is nobody\'s', async () => {
        const outside = `${client.folder}-outside`;
        mkdirSync(outside);
        writeFileSync(join(outside, 'more.kit'), kit);
        await client.tellOutside({ [`file://${outside}/more.kit`]: Created });
        expect(errors()).toEqual([]);
        rmSync(outside, { recursive: true });
    });
});

describe('many at once', () => {
    test('another branch is checked out: files come, go and change in one message', async () => {
        for (let number = 1; number <= 40; number++) write(`lessons/unit/extra-${number}.lesson`, lesson(`extra-${number}`));
        write('inventory.kit', kit.replace('cup', 'mug'));
        rmSync(path('lessons/pour.lesson'));
        await client.tellOutside({
            'inventory.kit': Changed, 'lessons/pour.lesson': Deleted, 'lessons/unit': Created,
            ...Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`lessons/unit/extra-${index + 1}.lesson`, Created]))
        });
        expect(errors().filter(error => error.startsWith('extra-')).length).toBe(80);
        write('inventory.kit', kit);
        write('lessons/pour.lesson', lesson('pour-1'));
        rmSync(path('lessons/unit'), { recursive: true });
        await client.tellOutside({
            ...Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`lessons/unit/extra-${index + 1}.lesson`, Deleted])), 'lessons/unit': Deleted, 'inventory.kit': Changed, 'lessons/pour.lesson': Created
        });
        expect(errors()).toEqual([]);
    });

    test('a thousand files that other tools write do not even wake the server; folders and our own files do', async () => {
        const fed = new FedFiles();
        const { shared } = createServerServices({ fileSystemProvider: () => fed }, fed);
        const { WorkspaceManager, WorkspaceLock, DocumentBuilder } = shared.workspace;
        for (const name of ['inventory.kit', 'build/out.txt', 'lessons/one.lesson']) fed.take({ uri: `file:///a/${name}`, bytes: '' });
        WorkspaceManager.initialize({ processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ name: 'a', uri: 'file:///a' }] });
        await WorkspaceManager.initialized({});
        let updates = 0;
        DocumentBuilder.onUpdate(() => { updates++; });
        const tell = async (changes: [string, FileChangeType][]): Promise<number> => {
            updates = 0;
            shared.lsp.DocumentUpdateHandler.didChangeWatchedFiles!({ changes: changes.map(([name, type]) => ({ uri: `file:///${name}`, type })) });
            await WorkspaceManager.ready;
            await WorkspaceLock.read(() => undefined);
            return updates;
        };
        const numbers = Array.from({ length: 1000 }, (_, number) => number);
        expect(await tell(numbers.map(number => [`a/build/${number}.txt`, number % 2 === 0 ? Created : Deleted]))).toBe(0);
        expect(await tell([['a/build/out.txt', Created], ['a/build/out.txt', Changed], ['a/notes.json', Changed]])).toBe(0);
        expect(await tell(numbers.map(number => [`a/.git/objects/${number}.lesson`, Created]))).toBe(0);
        expect(await tell([['a/node_modules/x/one.kit', Created], ['b/one.kit', Created], ['b/one.kit', Deleted]])).toBe(0);
        expect(await tell([['a/inventory.kit', Changed]])).toBe(1);
        expect(await tell([['a/lessons', Created]])).toBe(1);
        expect(await tell(numbers.map(() => ['a/lessons', Deleted]))).toBe(1);
    });

    test('a thousand new lessons in one message', async () => {
        const names = Array.from({ length: 1000 }, (_, number) => `many/lesson-${number}.lesson`);
        names.forEach((name, number) => write(name, lesson(`many-${number}`, number === 777 ? 'mug' : 'cup')));
        await client.tellOutside(Object.fromEntries(names.map(name => [name, Created])));
        expect(errors()).toEqual(['lesson-777.lesson unknown-name', 'lesson-777.lesson unknown-name']);
        rmSync(path('many'), { recursive: true });
        await client.tellOutside({ many: Deleted });
        expect(errors()).toEqual([]);
    });
});
