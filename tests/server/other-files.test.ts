import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const inventory = 'inventory.kit';
const listen2 = 'lessons/listen-2.lesson';

describe('problems in other files after an edit', () => {
    test('removing the only use of a thing tells so in the inventory once typing rests', async () => {
        await client.open(listen2);
        await client.edit(listen2, '    scarf                        1 per pair   not in kit\n', '');
        await client.edit(listen2, 'the {scarf} over', 'a scarf over');
        await client.until('the inventory to say that the scarf is unused', () => client.problems(inventory).some(({ code, message }) => code === 'unused-thing' && String(message).includes("'scarf'")));
        const problem = client.problems(inventory).find(({ code }) => code === 'unused-thing')!;
        expect(client.inRange(inventory, problem.range)).toBe('scarf');
        await client.edit(listen2, 'a scarf over', 'the {scarf} over');
        await client.until('the inventory to be content again', () => client.problems(inventory).length === 0);
        await client.edit(listen2, '  words direction', '    scarf                        1 per pair   not in kit\n\n  words direction');
        await client.until('the lesson to be content again', () => client.problems(listen2).length === 0);
    });

    test('renaming a thing in the inventory alone tells every lesson that names it', async () => {
        await client.open(inventory);
        await client.edit(inventory, 'material scarf "Scarves"', 'material shawl "Shawls"');
        await client.settled();
        expect(client.codes(listen2)).toContain('unknown-name');
        await client.edit(inventory, 'material shawl "Shawls"', 'material scarf "Scarves"');
        await client.settled();
        expect(client.codes(listen2)).not.toContain('unknown-name');
        await client.until('every file to be content again', () => [inventory, listen2].every(file => client.problems(file).length === 0));
    });

    test('a new file makes a name known, and its end makes it unknown again', async () => {
        await client.edit(listen2, 'the {scarf} over', 'the {scarf} or {eye-mask} over');
        await client.settled();
        expect(client.codes(listen2)).toContain('unknown-name');
        await client.writeOutside('more.kit', 'material eye-mask "Eye masks"\n  reusable\n');
        await client.settled();
        expect(client.codes(listen2)).not.toContain('unknown-name');
        await client.deleteOutside('more.kit');
        await client.settled();
        expect(client.codes(listen2)).toContain('unknown-name');
        await client.edit(listen2, 'the {scarf} or {eye-mask} over', 'the {scarf} over');
    });

    test('a file declared unknown to the course is told at once when it is taught twice', async () => {
        await client.open('programme.course');
        await client.edit('programme.course', '    listen-2\n', '    listen-2\n    listen-2\n');
        await client.until('the course to say that a lesson is taught twice', () => client.codes('programme.course').includes('taught-twice'));
        await client.edit('programme.course', '    listen-2\n    listen-2\n', '    listen-2\n');
        await client.until('the course to be content again', () => client.problems('programme.course').length === 0);
    });
});
