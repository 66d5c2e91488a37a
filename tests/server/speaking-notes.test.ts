import { afterAll, beforeAll, expect, test } from 'vitest';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

test('speaking notes for a week, at the rate that is asked for', async () => {
    const usual = await client.brief({ week: 1, format: 'notes' });
    expect(usual).toMatchObject({ week: 1, sections: [] });
    expect(usual.text).toMatch(/^# Speaking notes: week 1 of 9\n/);
    expect(usual.text).toContain('words at 170 a minute');
    expect((await client.brief({ week: 1, format: 'notes', rate: 150 })).text).toContain('words at 150 a minute');
    expect((await client.brief({ week: 1, format: 'notes', rate: -1 })).text).toContain('170 are counted');
});

test('no notes for a week that is not there', async () => {
    expect(await client.brief({ week: 99, format: 'notes' })).toMatchObject({ refusal: expect.stringContaining('no week 99') as string });
});
