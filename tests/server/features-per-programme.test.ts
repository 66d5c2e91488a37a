import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CallHierarchyIncomingCall, CallHierarchyItem, CompletionItem, LinkedEditingRanges, MarkupContent, WorkspaceSymbol } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

const lesson = (name: string, amount: string): string => `lesson ${name} "${name}"
  materials
    bell ${amount} per learner
  activity ring-it 5 min
    do: Ring the {bell}.
`;

let client: Client;
beforeAll(async () => {
    client = await Client.start({
        folders: ['east', 'west'],
        programme: {
            'east/things.kit': 'material bell "Eastern bell"\n  reusable\nmaterial drum "Drum"\n  reusable\n', 'east/one.lesson': lesson('one', '2'), 'east/two.lesson': lesson('two', '2'), 'east/new.lesson': 'lesson new\n  activity a 5 min\n    do: Ring the {}.\n',
            'west/things.kit': 'material bell "Western bell"\n  reusable\n', 'west/one.lesson': lesson('one', '7'), 'west/new.lesson': 'lesson new\n  activity a 5 min\n    do: Ring the {}.\n', 'west/alone.course': 'material gong "Gong"\n  reusable\nlesson alone\n  materials\n    gong 1 per class\n'
        }
    });
});
afterAll(() => client.stop());

const bellIn = async (folder: string): Promise<CompletionItem> => (await client.complete(`${folder}/new.lesson`, 'Ring the {|}')).find(({ label }) => label === 'bell')!;

test('completion offers, tells and adds what its own programme says', async () => {
    for (const [folder, title, amount] of [['east', 'Eastern bell', '2'], ['west', 'Western bell', '7']] as const) {
        await client.open(`${folder}/new.lesson`);
        const item = await bellIn(folder);
        expect(item.additionalTextEdits![0]!.newText).toContain(`bell ${amount} per learner`);
        const resolved = await client.connection.sendRequest<CompletionItem>('completionItem/resolve', item);
        expect((resolved.documentation as MarkupContent).value).toContain(title);
        const offered = (await client.complete(`${folder}/new.lesson`, 'Ring the {|}')).map(({ label }) => label);
        expect(offered.includes('drum')).toBe(folder === 'east');
    }
});

test('used by: those of its own programme', async () => {
    const [item] = await client.ask<CallHierarchyItem[]>('textDocument/prepareCallHierarchy', 'west/one.lesson', '    be|ll 7');
    expect(item!.name).toBe('Western bell');
    const calls = await client.connection.sendRequest<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
    expect(calls.map(({ from }) => from.uri)).toEqual([client.uri('west/one.lesson')]);
});

test('names that another programme has too are edited together here alone', async () => {
    await client.open('east/gong.kit', 'material gong "Gong"\n  reusable\n');
    const linked = await client.ask<LinkedEditingRanges | null>('textDocument/linkedEditingRange', 'west/alone.course', 'material go|ng');
    expect(linked!.ranges).toHaveLength(2);
    await client.close('east/gong.kit');
});

test('symbols of all programmes, each with its folder', async () => {
    const found = await client.connection.sendRequest<WorkspaceSymbol[]>('workspace/symbol', { query: 'bell' });
    expect(found.map(({ name, containerName }) => `${name} | ${containerName}`).sort()).toEqual(['Eastern bell (bell) | material, east/things.kit', 'Western bell (bell) | material, west/things.kit']);
});
