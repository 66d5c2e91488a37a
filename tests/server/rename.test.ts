import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Range, WorkspaceEdit } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const files = (): string[] => readdirSync(client.folder, { recursive: true, encoding: 'utf8' }).filter(name => /\.(lesson|kit|course)$/.test(name));
const everything = (): string => files().map(name => client.text(name)).join('\n');
const rename = (file: string, marked: string, newName: string): Promise<WorkspaceEdit> => client.ask('textDocument/rename', file, marked, { newName });

describe('rename', () => {
    test.each([
        ['a thing, from the inventory', 'inventory.kit', 'material rubber|-band', 'rubber-band', 'stretchy-band'],
        ['a thing, from prose', 'lessons/shake-1.lesson', 'over the {mixing|-bowl}', 'mixing-bowl', 'big-bowl'],
        ['an objective', 'programme.course', 'builds on feel|-vibration', 'feel-vibration', 'feel-trembling'],
        ['a lesson', 'programme.course', '    travel|-2\n', 'travel-2', 'cup-line'],
        ['a part that an adaptation names', 'lessons/travel-2.lesson', 'activity longer|-line', 'longer-line', 'round-the-corner'],
        ['a game', 'lessons/listen-2.lesson', 'game sleeping|-cat', 'sleeping-cat', 'dozing-cat'],
        ['a kit', 'inventory.kit', 'kit sound|-bag', 'sound-bag', 'noise-bag'],
        ['a book', 'inventory.kit', 'book ear|-book', 'ear-book', 'book-of-ears']
    ])('%s, wherever it is named, and there is no new problem', async (_, file, marked, from, to) => {
        // The expected text comes from plain replacement of the whole word in every file; none of these words stands in a comment or title.
        const expected = everything().replace(new RegExp(`(?<![\\w-])${from}(?![\\w-])(?!")`, 'g'), to);
        await client.apply(await rename(file, marked, to));
        expect(everything()).toBe(expected);
        await client.until('every file to be content', () => files().every(name => client.problems(name).length === 0));
    });

    test('a taught word: where it is taught and in prose, and no plain word', async () => {
        await client.apply(await rename('lessons/travel-2.lesson', 'words tight, sl|ack', 'loose'));
        expect(client.text('lessons/travel-2.lesson')).toContain('words tight, loose');
        expect(client.text('lessons/travel-2.lesson')).toContain('The string is {loose}');
        expect(client.text('lessons/pitch-1.lesson')).toContain('and the slack ones');
    });
});

test('in a closed file with a byte order mark, places are those of the text that an editor will open', async () => {
    await client.writeOutside('mark.kit', '\uFEFFmaterial tin-cup "Tin cup"\n  reusable\n');
    await client.writeOutside('use.lesson', 'lesson use-cup "Use the cup"\n  about: A {tin-cup}.\n');
    await client.settled();
    const { changes } = await rename('use.lesson', 'A {tin|-cup}', 'steel-cup');
    expect(changes?.[client.uri('mark.kit')]).toEqual([{ newText: 'steel-cup', range: { start: { line: 0, character: 9 }, end: { line: 0, character: 16 } } }]);
    await client.deleteOutside('mark.kit');
    await client.deleteOutside('use.lesson');
});

describe('refused, in words', () => {
    test.each([
        ['capitals', 'Rubber-Band', 'Names are lower-case words with hyphens. For example: rubber-band'],
        ['blanks', 'big scarf', 'Names are lower-case words with hyphens. For example: big-scarf'],
        ['nothing', '', 'Names are lower-case words with hyphens.'],
        ['a bare number', '12', 'Names are lower-case words with hyphens.'],
        ['marks', '{}', 'Names are lower-case words with hyphens.'],
        ['the name of another material', 'string', "There is another material 'string'. Choose a name that is free."]
    ])('%s', async (_, newName, message) => {
        await expect(rename('inventory.kit', 'material sc|arf', newName)).rejects.toMatchObject({ message });
    });

    test('the name of a thing of another kind is free', async () => {
        expect((await rename('inventory.kit', 'material sc|arf', 'attic')).changes).toBeDefined();
        expect((await rename('inventory.kit', 'material sc|arf', 'scarf')).changes).toBeDefined();
    });
});

describe('asked beforehand', () => {
    const prepare = (file: string, marked: string): Promise<Range | null> => client.ask('textDocument/prepareRename', file, marked);

    test('the whole name, hyphens included', async () => {
        for (const marked of ['|sound-sheet   1', 'sound|-sheet   1', 'sound-|sheet   1', 'sound-sheet|   1']) {
            const range = await prepare('lessons/listen-1.lesson', marked);
            expect(range && client.inRange('lessons/listen-1.lesson', range)).toBe('sound-sheet');
        }
    });

    test('not words of the language, numbers or plain text', async () => {
        expect(await prepare('lessons/listen-1.lesson', '  mater|ials\n')).toBeNull();
        expect(await prepare('lessons/listen-1.lesson', 'Children lis|ten')).toBeNull();
        expect(await prepare('lessons/listen-1.lesson', 'two-minutes "Two quiet minutes" 1|5')).toBeNull();
    });
});
