import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const listen = 'lessons/listen-1.lesson';

describe('problems in the file that is being written', () => {
    test('the example has none', async () => {
        await client.open(listen);
        await client.settled();
        expect(client.problems(listen)).toEqual([]);
    });

    test('an unknown material is told with its code, its exact place and the nearest name, and goes when mended', async () => {
        await client.edit(listen, 'hand-bell     1', 'hand-bel     1');
        await client.settled();
        const [problem, ...more] = client.problems(listen).filter(({ code }) => code === 'unknown-name');
        expect(more).toEqual([]);
        expect(problem).toMatchObject({ severity: 1, source: 'haversack', message: "Lesson listen-1 needs 'hand-bel', which is not in any inventory; did you mean 'hand-bell'?" });
        expect(client.inRange(listen, problem!.range)).toBe('hand-bel');
        expect(problem!.range.start).toEqual(client.at(listen, '|hand-bel '));
        await client.edit(listen, 'hand-bel ', 'hand-bell ');
        await client.settled();
        expect(client.problems(listen)).toEqual([]);
    });

    test('an unknown name in prose is told too', async () => {
        await client.edit(listen, '{hand-bell}', '{hand-drum}');
        await client.settled();
        const problem = client.problems(listen).find(({ code }) => code === 'unknown-name');
        expect(client.inRange(listen, problem!.range)).toBe('hand-drum');
        await client.edit(listen, '{hand-drum}', '{hand-bell}');
        await client.settled();
        expect(client.problems(listen)).toEqual([]);
    });

    test('a line that cannot be read is told in words, and the rest still counts', async () => {
        await client.edit(listen, '  activity two-minutes', '  acitvity two-minutes');
        await client.settled();
        expect(client.problems(listen)).toHaveLength(1);
        expect(client.problems(listen)[0]).toMatchObject({ code: 'unknown-statement', message: "'acitvity' means nothing here in a lesson block; did you mean 'activity'?" });
        await client.edit(listen, '  acitvity', '  activity');
        await client.settled();
        expect(client.problems(listen)).toEqual([]);
    });

    test('many quick keystrokes end with the problems of the last text', async () => {
        const good = client.text(listen);
        for (let typed = 1; typed <= 40; typed++) void client.change(listen, good.replace('hand-bell     1', `hand-${'x'.repeat(typed)} 1`));
        void client.change(listen, good);
        await client.settled();
        expect(client.problems(listen)).toEqual([]);
    });
});

// Positions count UTF-16 code units: the protocol's default, "positionEncoding" in the Language Server Protocol 3.17.
describe('places in lines with letters beyond ASCII', () => {
    test.each([
        ['accents', '    do: Où est la clé été ? '],
        ['combining marks', '    do: Ou\u0300 e\u0301te\u0301 '],
        ['emoji of two code units', '    do: 🔔🔔 '],
        ['joined emoji', '    do: 👩🏽‍🏫👨‍👩‍👧 '],
        ['letters beyond the basic plane', '    do: 𝒜𝒷𝒸 𐐷 '],
        ['right-to-left letters', '    do: שלום سلام ']
    ])('%s', async (_, before) => {
        const file = 'letters.lesson';
        await client.open(file, `lesson letters "Letters 🔤"\n  activity look "Look" 5 min\n${before}{no-such-thing} 🔚 {nor-this}\n`);
        await client.settled();
        const unknown = client.problems(file).filter(({ code }) => code === 'unknown-name').map(({ range }) => range);
        expect(unknown).toEqual([
            { start: { line: 2, character: before.length + 1 }, end: { line: 2, character: before.length + 14 } },
            { start: { line: 2, character: before.length + 20 }, end: { line: 2, character: before.length + 28 } }
        ]);
        await client.close(file);
    });

    test('names in other scripts are names', async () => {
        const file = 'letters.lesson';
        await client.open(file, 'material épée "Épée"\n  reusable\nmaterial מאזניים\n  reusable\nlesson letters\n  materials\n    épée 1 per pair\n    מאזניים 1 per pair\n  activity look "Look" 5 min\n    do: Look at the {épée} and {מאזניים}.\n');
        await client.settled();
        expect(client.codes(file).filter(code => code === 'unknown-name' || code === 'name-spelling')).toEqual([]);
        const definition = await client.ask<{ range?: unknown }[]>('textDocument/definition', file, '{|épée}');
        expect(definition).toHaveLength(1);
        expect(await client.ask('textDocument/definition', file, '{|מאזניים}')).toHaveLength(1);
        expect(await client.ask('textDocument/definition', file, '{מאזניי|ם}')).toHaveLength(1);
        await client.close(file);
    });
});
