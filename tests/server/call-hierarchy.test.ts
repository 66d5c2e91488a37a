import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CallHierarchyIncomingCall, CallHierarchyItem, CallHierarchyOutgoingCall, Range } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const inventory = 'inventory.kit';
const listen = 'lessons/listen-1.lesson';

const nameIn = (uri: string): string => uri.slice(client.uri('').length).replace(/^\//, '');

async function prepared(file: string, marked: string): Promise<CallHierarchyItem> {
    const items = await client.ask<CallHierarchyItem[] | null>('textDocument/prepareCallHierarchy', file, marked);
    expect(items).toHaveLength(1);
    return items![0]!;
}

/** "detail: the texts of the places", sorted. */
const told = (detail: string | undefined, file: string, ranges: readonly Range[]): string => `${detail}: ${ranges.map(range => client.inRange(file, range)).join(', ')}`;

async function usedBy(item: CallHierarchyItem): Promise<string[]> {
    const calls = await client.connection.sendRequest<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
    return calls.map(({ from, fromRanges }) => told(from.detail, nameIn(from.uri), fromRanges)).sort();
}

async function uses(item: CallHierarchyItem): Promise<string[]> {
    const calls = await client.connection.sendRequest<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', { item });
    return calls.map(({ to, fromRanges }) => told(to.detail, nameIn(item.uri), fromRanges)).sort();
}

describe('used by', () => {
    test('a material: kits and lessons, with each place', async () => {
        const item = await prepared(listen, '    hand-b|ell ');
        expect({ name: item.name, file: nameIn(item.uri), at: item.selectionRange.start }).toEqual({ name: 'Hand bell', file: inventory, at: client.at(inventory, 'material |hand-bell') });
        const found = await usedBy(item);
        expect(found).toContain('lesson listen-1: hand-bell, hand-bell');
        expect(found).toContain('kit sound-bag: hand-bell');
        expect(found).not.toContain('material hand-bell: hand-bell');
    });

    test('a lesson: the course that lists it, the lessons that follow it, adaptations that change it', async () => {
        expect(await usedBy(await prepared(listen, 'lesson listen|-1'))).toEqual(expect.arrayContaining(['course cupboard-orchestra: listen-1', 'lesson listen-2: listen-1']));
        expect(await usedBy(await prepared('lessons/concert-1.lesson', 'lesson conc|ert-1'))).toContain('adaptation small-attic: concert-1');
    });

    test('an activity: the checkpoint of its lesson, and adaptations', async () => {
        expect(await usedBy(await prepared(listen, 'activity loud-and|-soft'))).toEqual(['checkpoint at-the-door in listen-1: loud-and-soft']);
        expect(await usedBy(await prepared('lessons/travel-2.lesson', 'activity longer|-line'))).toContain('adaptation small-attic: longer-line');
    });

    test('a course, a class, an objective, a kit, a game, a word', async () => {
        expect(await usedBy(await prepared('programme.course', 'course cup|board-orchestra'))).toEqual(['adaptation small-attic: cupboard-orchestra', 'class attic: cupboard-orchestra']);
        expect(await usedBy(await prepared('programme.course', 'class att|ic'))).toEqual(['adaptation small-attic: attic']);
        expect(await usedBy(await prepared('programme.course', 'objective describe|-sounds'))).toEqual(expect.arrayContaining(['lesson listen-1: describe-sounds', 'objective find-direction: describe-sounds']));
        expect(await usedBy(await prepared(inventory, 'kit sound|-bag'))).toEqual(['class attic: sound-bag', 'course cupboard-orchestra: sound-bag']);
        expect(await usedBy(await prepared(inventory, 'game sleeping|-cat'))).toEqual(['lesson listen-2: sleeping-cat']);
        expect(await usedBy(await prepared(listen, 'words lou|d'))).toEqual(expect.arrayContaining(['activity loud-and-soft in listen-1: loud', 'lesson listen-2: loud']));
    });

    test('goes on from what it found', async () => {
        const item = await prepared(listen, '    hand-b|ell ');
        const calls = await client.connection.sendRequest<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
        const lesson = calls.find(({ from }) => from.detail === 'lesson listen-1')!.from;
        expect(await usedBy(lesson)).toContain('course cupboard-orchestra: listen-1');
    });
});

describe('uses', () => {
    test('a lesson: things, objectives, words of others, games; not its own parts', async () => {
        const found = await uses(await prepared('lessons/listen-2.lesson', 'lesson listen|-2'));
        expect(found).toEqual(expect.arrayContaining(['game sleeping-cat: sleeping-cat', 'lesson listen-1: listen-1', 'material scarf: scarf, scarf', 'objective find-direction: find-direction', 'word loud in listen-1: loud']));
        expect(found.filter(one => one.includes('listen-2') || one.includes('clock-points'))).toEqual([]);
    });

    test('a course, a class and a part', async () => {
        expect(await uses(await prepared('programme.course', 'course cup|board-orchestra'))).toEqual(expect.arrayContaining(['kit sound-bag: sound-bag', 'lesson listen-1: listen-1', 'lesson concert-1: concert-1']));
        expect(await uses(await prepared('programme.course', 'class att|ic'))).toEqual(expect.arrayContaining(['course cupboard-orchestra: cupboard-orchestra', 'material rice: rice']));
        expect(await uses(await prepared(listen, 'checkpoint at-the|-door'))).toEqual(expect.arrayContaining(['activity loud-and-soft in listen-1: loud-and-soft', 'print sound-sheet: sound-sheet']));
    });
});

test('finds the item again after lines came above it, and nothing once it is gone', async () => {
    const item = await prepared(inventory, 'material hand|-bell');
    const before = await usedBy(item);
    await client.open(inventory);
    await client.edit(inventory, 'material hand-bell', '# One more line.\n# And one.\nmaterial hand-bell');
    expect(await usedBy(item)).toEqual(before);
    await client.edit(inventory, 'material hand-bell', 'material hand-drum');
    expect(await client.connection.sendRequest('callHierarchy/incomingCalls', { item })).toBeNull();
    expect(await client.connection.sendRequest('callHierarchy/outgoingCalls', { item })).toBeNull();
    await client.edit(inventory, '# One more line.\n# And one.\nmaterial hand-drum', 'material hand-bell');
});

test('finds again the part of its own lesson, where another lesson has one of that name', async () => {
    const file = 'two.lesson';
    await client.open(file, 'lesson first\n  activity open 5 min\n    materials\n      hand-bell 1 per class\nlesson second\n  activity open 5 min\n    materials\n      rice 10 g per class\n');
    const item = await prepared(file, 'lesson second\n  activity op|en');
    const before = await uses(item);
    expect(before).toEqual(['material rice: rice']);
    await client.edit(file, 'lesson second', '# One more line.\n\nlesson second');
    expect(await uses(item)).toEqual(['material rice: rice']);
    await client.close(file);
});

test('over plain words and in a broken file: nothing', async () => {
    expect(await client.ask('textDocument/prepareCallHierarchy', listen, 'Children li|sten for')).toBeNull();
    await client.open('broken.lesson', 'lesson\n  zzz {\n  materials\n    a (b\n');
    for (const marked of ['les|son', 'zz|z', 'a (|b']) expect(await client.ask('textDocument/prepareCallHierarchy', 'broken.lesson', marked)).toBeNull();
    await client.close('broken.lesson');
});
