import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CompletionItem, MarkupContent } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';
import { planProgramme } from './plan-programme.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: planProgramme }); });
afterAll(() => client.stop());

const resolve = (item: CompletionItem): Promise<CompletionItem> => client.connection.sendRequest('completionItem/resolve', item);

async function told(file: string, marked: string, label: string): Promise<string> {
    const item = (await client.complete(file, marked)).find(one => one.label === label)!;
    return (((await resolve(item)).documentation) as MarkupContent).value;
}

test('the server says that it can tell more', () => {
    expect(client.initialized.capabilities.completionProvider!.resolveProvider).toBe(true);
});

test('a material in a need: what hover shows of it, with what the week needs and where it comes from', async () => {
    await client.open('weigh.lesson');
    const text = await told('weigh.lesson', '      |sand ', 'sand');
    // Seven children of 50 g each; 400 g are at hand.
    expect(text).toContain('**Fine sand** \\(material\\)'.replaceAll('\\', ''));
    expect(text).toMatch(/week 1: 350 g needed, 400 g at hand/);
    expect(text).toContain('pack of 500 g costs 2\\.00 EUR'.replace('\\.', '.'));
    expect(text).toContain('arrives in 10 days');
});

test('names in braces, lessons, courses', async () => {
    expect(await told('weigh.lesson', '{|gram-cube}s', 'gram-cube')).toContain('**Gram cubes**');
    expect(await told('weigh.lesson', 'follows |weigh-1', 'weigh-1')).toContain('lesson, 15 min, week 1');
    await client.open('weighing.course');
    expect(await told('weighing.course', 'teaches |weighing', 'weighing')).toContain('**Weighing** (course)');
});

test('the list itself stays short: nothing that has to be worked out', async () => {
    const item = (await client.complete('weigh.lesson', '      |sand ')).find(({ label }) => label === 'sand')!;
    expect(item.documentation).toBe('Fine sand');
});

test('what has gone meanwhile, and what was never offered, come back as they are', async () => {
    const item = (await client.complete('weigh.lesson', '      |sand ')).find(({ label }) => label === 'gram-cube')!;
    await client.open('things.kit');
    await client.edit('things.kit', 'material gram-cube', 'material iron-cube');
    expect(await resolve(item)).toEqual(item);
    await client.edit('things.kit', 'material iron-cube', 'material gram-cube');
    for (const data of [undefined, null, 7, 'x', {}, { uri: 7 }, { uri: 'untitled:gone', at: { line: 0, character: 0 } }, { uri: client.uri('things.kit'), at: { line: 1e9, character: -1 } }, { uri: client.uri('things.kit'), at: 'x' }]) {
        const odd = { label: 'gram-cube', data } as CompletionItem;
        expect(await resolve(odd)).toEqual(JSON.parse(JSON.stringify(odd)));
    }
});
