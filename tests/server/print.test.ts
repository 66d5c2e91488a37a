/** Pages to print, as the editor asks for them: on which paper, and whether the print window opens by itself. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { printScript } from '../../server/brief/print-at-once.js';
import { briefRequest, changesRequest, termRequest } from '../../server/protocol/pages.js';
import { practiceRequest } from '../../server/protocol/practice.js';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: join(import.meta.dirname, '../../examples/year'), today: '2026-10-01' }); });
afterAll(() => client.stop());

const requests: [string, object][] = [
    [briefRequest, { class: 'millpond', week: 1 }], [termRequest, { class: 'millpond' }], [changesRequest, { class: 'millpond' }], [practiceRequest, {}]
];

describe.each(requests)('%s', (request, which) => {
    const page = async (how: object): Promise<string> => {
        const answer = await client.connection.sendRequest<{ text?: string; lessons?: { name: string }[] }>(request, { ...which, format: 'html', ...how });
        if (answer.text !== undefined || !answer.lessons) return answer.text ?? '';
        return (await client.connection.sendRequest<{ text: string }>(request, { lesson: answer.lessons[0]!.name, format: 'html', ...how })).text;
    };

    test('has the paper that is asked for', async () => {
        expect(await page({ paper: 'a4' })).toContain('@page { size: A4; }');
        expect(await page({ paper: 'letter' })).toContain('@page { size: letter; }');
    });

    test('has none, and no script, where nothing or nonsense is asked for', async () => {
        const plain = await page({});
        expect(plain).toContain('</html>');
        expect(plain).not.toMatch(/@page \{ size|<script/);
        for (const how of [{ paper: 'a3' }, { paper: 'a4; } body { display: none' }, { paper: 7 }, { paper: ['a4'] }, { printing: 'yes' }, { printing: false }]) expect(await page(how)).toBe(plain);
    });

    test('opens the print window by itself where that is asked for', async () => {
        expect((await page({ printing: true })).match(/<script>(.*)<\/script>/)?.[1]).toBe(printScript);
    });
});
