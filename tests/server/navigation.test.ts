import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentHighlight, Hover, Location, LocationLink, WorkspaceEdit } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const listen = 'lessons/listen-1.lesson';
const inventory = 'inventory.kit';

/** "file:line" of each place, with the text that stands there. */
const places = (locations: readonly Location[]): string[] => locations.map(({ uri, range }) => {
    const file = uri.slice(client.uri('').length).replace(/^\//, '');
    return `${file}:${range.start.line + 1} ${client.inRange(file, range)}`;
}).sort();

async function definition(file: string, marked: string): Promise<string[]> {
    const links = await client.ask<LocationLink[] | null>('textDocument/definition', file, marked);
    return places((links ?? []).map(link => ({ uri: link.targetUri, range: link.targetSelectionRange })));
}

describe('definition', () => {
    test.each([
        ['a thing in a need', listen, '    hand-b|ell  ', inventory, 'material |hand-bell'],
        ['a thing in prose', listen, '{sound-|sheet} what', inventory, 'print |sound-sheet'],
        ['an objective', listen, 'introduces describe|-sounds', 'programme.course', 'objective |describe-sounds'],
        ['a lesson in a unit', 'programme.course', '    listen|-1\n', listen, 'lesson |listen-1'],
        ['a part of the lesson', listen, 'repeat loud-and|-soft tomorrow', listen, 'activity |loud-and-soft'],
        ['a part of another lesson', 'programme.course', 'travel-2.longer|-line', 'lessons/travel-2.lesson', 'activity |longer-line'],
        ['a taught word', listen, 'once {so|ft}', listen, 'words loud, |soft'],
        ['a game', 'lessons/listen-2.lesson', 'game sleeping|-cat 10', inventory, 'game |sleeping-cat'],
        ['a book', inventory, 'found in ear|-book', inventory, 'book |ear-book'],
        ['a kit', 'programme.course', 'kits sound|-bag 2', inventory, 'kit |sound-bag'],
        ['a declaration itself', inventory, 'kit sound|-bag', inventory, 'kit |sound-bag']
    ])('%s', async (_, file, marked, target, declared) => {
        expect(await definition(file, marked)).toEqual([`${target}:${client.at(target, declared).line + 1} ${declared.replace(/.*\|/, '')}`]);
    });

    test('of plain words: none', async () => {
        expect(await definition(listen, 'Children li|sten for')).toEqual([]);
    });
});

describe('references', () => {
    const references = async (file: string, marked: string, includeDeclaration = true): Promise<string[]> =>
        places(await client.ask<Location[] | null>('textDocument/references', file, marked, { context: { includeDeclaration } }) ?? []);

    /** Every place of a word in the whole programme, found by plain search. */
    const written = (word: string): string[] => readdirSync(client.folder, { recursive: true, encoding: 'utf8' }).filter(name => /\.(lesson|kit|course)$/.test(name))
        .flatMap(name => client.text(name).split('\n').flatMap((line, index) => Array.from(line.matchAll(new RegExp(`(?<![\\w-])${word}(?![\\w-])`, 'g')), () => `${name}:${index + 1} ${word}`))).sort();

    test('of a thing: needs, prose and kits in every file', async () => {
        const found = await references(inventory, 'material rubber|-band');
        expect(found.length).toBeGreaterThan(5);
        expect(found).toEqual(written('rubber-band'));
        expect(await references('lessons/shake-2.lesson', '{rubber|-band}s', false)).toEqual(found.filter(place => place !== `inventory.kit:${client.at(inventory, 'material |rubber-band').line + 1} rubber-band`));
    });

    test('of an objective and of a part', async () => {
        expect(await references('programme.course', 'objective feel|-vibration')).toEqual(written('feel-vibration'));
        expect(await references('lessons/travel-2.lesson', 'activity longer|-line')).toEqual(written('longer-line'));
    });

    test('stay right after lines were put in above, in the file itself and in the one that declares', async () => {
        const before = await references(listen, '    hand-b|ell  ');
        await client.open(inventory);
        await client.edit(inventory, 'material hand-bell', 'material drum\n  reusable\n\nmaterial hand-bell');
        const declared = `inventory.kit:${client.at(inventory, 'material |hand-bell').line + 1} hand-bell`;
        const after = await references(listen, '    hand-b|ell  ');
        expect(after).toHaveLength(before.length);
        expect(after).toContain(declared);
        expect(await definition(listen, '    hand-b|ell  ')).toEqual([declared]);
        await client.open(listen);
        await client.edit(listen, '# A lesson.', '# One more line.\n# A lesson.');
        expect(await references(inventory, 'material hand|-bell')).toContain(`lessons/listen-1.lesson:${client.at(listen, '{|hand-bell}').line + 1} hand-bell`);
        await client.edit(listen, '# One more line.\n', '');
        await client.edit(inventory, 'material drum\n  reusable\n\n', '');
    });
});

describe('after a change that leaves all names as they were', () => {
    const file = 'lessons/pitch-1.lesson';
    const declared = (): string => `inventory.kit:${client.at(inventory, 'material |glass-bottle').line + 1} glass-bottle`;

    test('nothing still looks at the old text', async () => {
        await client.open(inventory);
        for (const [from, to] of [
            ['# Things that families have', '# One more line.\n# And one.\n# Things that families have'],
            ['material glass-bottle "Glass bottles, all alike"\n  reusable', 'material glass-bottle "Glass bottles"\n  note: Wash them first.\n  reusable'],
            ['# One more line.\n# And one.\n', '']
        ] as const) {
            await client.edit(inventory, from, to);
            expect(await definition(file, '{glass|-bottle}')).toEqual([declared()]);
            const found = places(await client.ask<Location[]>('textDocument/references', file, '{glass|-bottle}', { context: { includeDeclaration: true } }));
            expect(found).toContain(declared());
            expect(found.every(place => place.endsWith(' glass-bottle'))).toBe(true);
            const { changes } = await client.ask<WorkspaceEdit>('textDocument/rename', file, '{glass|-bottle}', { newName: 'glass-jar' });
            const renamed = Object.entries(changes!).flatMap(([uri, edits]) => places(edits.map(({ range }) => ({ uri, range }))));
            expect(renamed.sort()).toEqual(found);
            const hover = await client.ask<Hover>('textDocument/hover', file, '{glass|-bottle}');
            expect(JSON.stringify(hover.contents)).toContain(to.includes('Glass bottles"') ? '**Glass bottles**' : '**Glass bottles');
        }
        await client.edit(inventory, 'material glass-bottle "Glass bottles"\n  note: Wash them first.\n  reusable', 'material glass-bottle "Glass bottles, all alike"\n  reusable');
    });
});

test('highlights every place of a name in its file', async () => {
    const highlights = await client.ask<DocumentHighlight[]>('textDocument/documentHighlight', listen, '{sound-|sheet} what');
    expect(highlights.map(({ range }) => client.inRange(listen, range))).toEqual(['sound-sheet', 'sound-sheet', 'sound-sheet']);
    const own = await client.ask<DocumentHighlight[]>('textDocument/documentHighlight', listen, 'activity loud-and|-soft');
    expect(own.map(({ range }) => range.start.line)).toHaveLength(2);
});
