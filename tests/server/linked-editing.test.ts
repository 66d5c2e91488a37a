import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LinkedEditingRanges } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

/** The lines (from 1) and texts of all places that are edited together. */
async function together(file: string, marked: string): Promise<string[] | null> {
    const answer = await client.ask<LinkedEditingRanges | null>('textDocument/linkedEditingRange', file, marked);
    if (answer) expect(new RegExp(`^${answer.wordPattern!}$`).test('two-bags')).toBe(true);
    return answer && answer.ranges.map(range => `${range.start.line + 1} ${client.inRange(file, range)}`).sort();
}

const file = 'alone.lesson';
const text = `material bean-bag "Bean bags"
  reusable

lesson alone-1 "Alone"
  materials
    bean-bag 1 per pair
  activity two-bags "Two bags" 15 min
    do: Lift one {bean-bag}.
  checkpoint wrap-up "At the end"
    ask: Which?
    if unsure: repeat two-bags tomorrow

lesson alone-2 "Alone again"
  follows alone-1
`;

test('an activity and where the same lesson repeats it', async () => {
    await client.open(file, text);
    expect(await together(file, 'activity two-|bags')).toEqual(['11 two-bags', '7 two-bags']);
});

test('a thing and a lesson that only this file names', async () => {
    expect(await together(file, 'material bean|-bag')).toEqual(['1 bean-bag', '6 bean-bag', '8 bean-bag']);
    expect(await together(file, 'lesson alo|ne-1')).toEqual(['14 alone-1', '4 alone-1']);
});

test('not from where a name is only used: another one written there gives nothing another name', async () => {
    for (const marked of ['repeat |two-bags', '{bean-b|ag}', '    bean-bag| 1 per pair', 'follows alo|ne-1']) expect(await together(file, marked)).toBeNull();
});

test('not where another file names it, or declares it', async () => {
    await client.open('other.lesson', 'lesson other\n  follows alone-1\n  activity look 5 min\n    do: See the {bean-bag}.\n');
    await client.settled();
    expect(await together(file, 'material bean|-bag')).toBeNull();
    expect(await together('other.lesson', 'follows alone|-1')).toBeNull();
    expect(await together('inventory.kit', 'material hand|-bell')).toBeNull();
    expect(await together(file, 'activity two-|bags')).toEqual(['11 two-bags', '7 two-bags']);
    await client.close('other.lesson');
    await client.settled();
    expect(await together(file, 'material bean|-bag')).not.toBeNull();
});

test('not where a line that cannot be read may name it, nor for one place alone, nor over plain words', async () => {
    await client.open('other.lesson', 'lesson other\n  zzz bean-bag\n');
    await client.settled();
    expect(await together(file, 'material bean|-bag')).toBeNull();
    await client.close('other.lesson');
    expect(await together(file, 'lesson alone|-2')).toBeNull();
    expect(await together(file, 'do: Li|ft')).toBeNull();
    expect(await together(file, '"Two b|ags"')).toBeNull();
});
