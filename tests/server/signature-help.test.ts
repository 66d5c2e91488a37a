import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SignatureHelp } from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => {
    client = await Client.start({ capabilities: { textDocument: { signatureHelp: { signatureInformation: { parameterInformation: { labelOffsetSupport: true } } } } } });
    await client.writeOutside('cards.kit', 'material place-card "Place-value cards"\n  reusable\n  counted in set / sets\n  parts ones, tens, hundreds\n');
});
afterAll(() => client.stop());

/** The help at `|` in a text that is written as a file of its own. */
async function help(marked: string, context: object = { triggerKind: 1, isRetrigger: false }, name = 'draft.lesson'): Promise<SignatureHelp | null> {
    const text = marked.replace('|', '');
    await client.open(name, text);
    const position = TextDocument.create('', '', 0, text).positionAt(marked.indexOf('|'));
    const answer = await client.connection.sendRequest<SignatureHelp | null>('textDocument/signatureHelp', { textDocument: { uri: client.uri(name) }, position, context });
    await client.close(name);
    return answer;
}

/** The part that is marked, as it stands in the label; with the whole label in front where that is wanted. */
async function active(marked: string): Promise<string | undefined> {
    const answer = await help(marked);
    const signature = answer?.signatures[answer.activeSignature!];
    const at = signature?.parameters![answer!.activeParameter!]!.label as [number, number] | undefined;
    return at && signature!.label.slice(...at);
}

const needs = (line: string): string => `lesson one "One"\n  materials\n    ${line}`;

test('a need: the whole line, the part at the cursor marked, with a line about it', async () => {
    const answer = await help(needs('hand-bell |'));
    expect(answer!.signatures[0]!.label).toBe('material (parts) · amount · per whom · in kit / not in kit · optional');
    expect(answer!.activeParameter).toBe(1);
    expect(JSON.stringify(answer!.signatures[0]!.parameters![1]!.documentation)).toContain('How many, or how much');
});

test.each([
    ['|', 'material (parts)'],
    ['hand-b|', 'material (parts)'],
    ['place-card (|', 'material (parts)'],
    ['place-card (ones, |', 'material (parts)'],
    ['place-card (ones, tens) |', 'amount'],
    ['wooden-spoon or |', 'material (parts)'],
    ['hand-bell 1|', 'amount'],
    ['hand-bell 1 |', 'per whom'],
    ['place-card 1 |', 'amount'],
    ['rice 150 |', 'amount'],
    ['rice 150 g |', 'per whom'],
    ['rice 150 g p|', 'per whom'],
    ['rice 150 g per |', 'per whom'],
    ['rice 150 g per group |', 'in kit / not in kit'],
    ['rice 150 g per group of |', 'per whom'],
    ['rice 150 g per group n|', 'in kit / not in kit'],
    ['rice 150 g per group not in |', 'in kit / not in kit'],
    ['rice 150 g per group not in kit |', 'optional'],
    ['rice 150 g per group not in kit opt|', 'optional'],
    ['rice 150 g |per group not in kit', 'per whom']
])('a need, at %s', async (line, part) => {
    expect(await active(needs(line))).toBe(part);
});

test.each([
    ['a pack', 'material rice-cake\n  pack of |', 'pack of amount'],
    ['its price', 'material rice-cake\n  pack of 500 g |', 'costs price'],
    ['its currency', 'material rice-cake\n  pack of 500 g costs 2.10 |', 'costs price'],
    ['what is ordered', 'class a\n  on order\n    rice 20 g |', 'arriving day'],
    ['what is on hand', 'class a\n  on hand\n    rice |', 'amount'],
    ['a stand-in', 'material rice-cake\n  stand-in rice |', 'how much for how much'],
    ['days off', 'class a\n  off 2026-10-10 |', 'to day'],
    ['a lesson that children were unsure of', 'class a\n  log\n    unsure listen-1 |', 'on day'],
    ['an activity', 'lesson a\n  activity b "B" |', 'minutes'],
    ['a title', 'lesson a|\n', 'name'],
    ['the settings of a picture', 'lesson a\n  activity b "B" 5 min\n    show tally |', 'settings'],
    ['the caption of a picture', 'lesson a\n  activity b "B" 5 min\n    show clock 3:30 |', '"caption"'],
    ['practice', 'lesson a\n  practice b "B"\n    name numbers 11 to 99 |', 'in words / in places'],
    ['what to do when unsure', 'lesson a\n  activity b "B" 5 min\n  checkpoint c\n    if unsure: repeat b |', 'when'],
    ['a move', 'adaptation a of cupboard-orchestra\n  move listen-1 |', 'after / before lesson'],
    ['a move behind its side', 'adaptation a of cupboard-orchestra\n  move listen-1 after |', 'after / before lesson'],
    ['the other thing of a swap', 'adaptation a of cupboard-orchestra\n  swap rice for |', 'for other'],
    ['the ratio of a swap', 'adaptation a of cupboard-orchestra\n  swap rice for string 2 |', 'how much for how much'],
    ['where a swap holds', 'adaptation a of cupboard-orchestra\n  swap rice for string 2 for 1 in |', 'in lesson'],
    ['the second part of a move', 'adaptation a of cupboard-orchestra\n  move activity listen-1.hand-echo after listen-2.|', 'after / before lesson.part'],
    ['the course of an adaptation', 'adaptation a |', 'of course']
])('%s', async (_, text, part) => {
    const answer = await active(text);
    // A title may come before the course; the next in order is marked.
    expect(answer === '"title"' ? 'of course' : answer).toBe(part);
});

describe('nothing', () => {
    test.each([
        ['in prose', 'lesson a\n  about: Children lift |'],
        ['in prose that goes on', 'lesson a\n  about: Children lift\n    two |'],
        ['in a remark', 'lesson a\n  materials\n    rice 5 g # per |'],
        ['in a line of remarks', 'lesson a\n  # rice |'],
        ['behind a line that is whole', needs('rice 150 g per group not in kit optional |')],
        ['while the first word is still written', 'material a\n  pack o|'],
        ['in a line without a fixed order', 'lesson a\n  follows |'],
        ['in an empty file', '|']
    ])('%s', async (_, text) => {
        expect(await help(text)).toBeNull();
    });

    test('where only blanks step in, unless somebody asks', async () => {
        expect(await help(needs('|'), { triggerKind: 2, triggerCharacter: ' ', isRetrigger: false })).toBeNull();
        // As VS Code asks again after Enter, while the help for the line above is shown.
        expect(await help(needs('rice 5 g\n    |'), { triggerKind: 3, isRetrigger: true })).toBeNull();
        expect(await help(needs('rice 5 g\n    hand-bell |'), { triggerKind: 3, isRetrigger: true })).not.toBeNull();
        expect(await help(needs('|'))).not.toBeNull();
    });
});

test('the kind of picture says what may be in it', async () => {
    const answer = await help('lesson a\n  activity b "B" 5 min\n    show clock |');
    expect(JSON.stringify(answer!.signatures[0]!.parameters![answer!.activeParameter!]!.documentation)).toMatch(/time|hour/);
});

test('a client that knows no offsets gets the words of each part', async () => {
    const plain = await Client.start();
    await plain.open('draft.lesson', needs('rice '));
    const answer = await plain.ask<SignatureHelp>('textDocument/signatureHelp', 'draft.lesson', 'rice |');
    expect(answer.signatures[0]!.parameters![answer.activeParameter!]!.label).toBe('amount');
    expect(answer.signatures[0]!.label).toContain('amount');
    await plain.stop();
});
