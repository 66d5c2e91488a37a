import { afterAll, beforeAll, expect, test } from 'vitest';
import { SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const find = (query: string): Promise<WorkspaceSymbol[]> => client.connection.sendRequest('workspace/symbol', { query });
const labels = async (query: string): Promise<string[]> => (await find(query)).map(({ name, containerName }) => `${name} | ${containerName}`);

test('by name and by title, with what it is and where', async () => {
    expect(await labels('listen-1')).toEqual(['What can you hear? (listen-1) | lesson, lessons/listen-1.lesson']);
    expect(await labels('what can you')).toEqual(['What can you hear? (listen-1) | lesson, lessons/listen-1.lesson']);
    expect(await labels('Saturday')).toEqual(['Saturday group in the attic (attic) | class, programme.course']);
});

test('parts stand in their lesson, units in their course', async () => {
    expect(await labels('loud-and-soft')).toEqual(['As loud as, as soft as (loud-and-soft) | activity, What can you hear?']);
    expect(await labels('Sending sounds')).toEqual(['Sending sounds (sending) | unit, The Cupboard Orchestra']);
});

test('kinds and places', async () => {
    const [bell] = (await find('hand-bell')).filter(({ name }) => name === 'Hand bell (hand-bell)');
    expect(bell).toMatchObject({ kind: SymbolKind.Object, location: { uri: client.uri('inventory.kit'), range: { start: client.at('inventory.kit', 'material |hand-bell') } } });
});

test('an empty query gives everything that has a name, each once', async () => {
    const all = await find('');
    const places = all.map(({ location }) => JSON.stringify(location));
    expect(new Set(places).size).toBe(places.length);
    for (const label of ['Listening (listening)', 'Hand echo (hand-echo)', 'Uncooked rice (rice)', 'Small attic (small-attic)']) expect(all.map(({ name }) => name)).toContain(label);
});

test('what is being written has its name at once, and lines without a name are left out', async () => {
    await client.open('draft.lesson', 'lesson brand-new "Ünïcode 🔔"\n  activity\nlesson\nmaterial "x"\n');
    expect(await labels('brand-new')).toEqual(['Ünïcode 🔔 (brand-new) | lesson, draft.lesson']);
    expect((await find('')).filter(({ location }) => location.uri === client.uri('draft.lesson'))).toHaveLength(1);
    await client.close('draft.lesson');
});
