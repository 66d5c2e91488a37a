import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const shake = 'lessons/shake-1.lesson';

async function hover(file: string, marked: string): Promise<{ text: string; over: string } | null> {
    const found = await client.ask<Hover | null>('textDocument/hover', file, marked);
    return found && { text: (found.contents as MarkupContent).value, over: client.inRange(file, found.range!) };
}

test('a thing: its facts and what the week needs of it', async () => {
    await client.open(shake);
    const found = await hover(shake, '    ri|ce          10 g');
    expect(found!.over).toBe('rice');
    expect(found!.text).toContain('**Uncooked rice** (material)');
    expect(found!.text).toContain('- consumable');
    expect(found!.text).toContain('pack of 500 g costs 1.30 EUR');
    // Five learners are three pairs; 10 g for each is 30 g; 5 % is lost, so 30 / 0.95 = 31.58 g have to be at hand, rounded up.
    expect(found!.text).toMatch(/week 3: 3[0-9.]+ g needed, 200 g at hand/);
});

test('where a thing is kept', async () => {
    const listen = 'lessons/listen-1.lesson';
    await client.open(listen);
    expect((await hover(listen, 'sound-|sheet'))!.text).toContain('- kept in the yellow folder in the attic');
});

test('the amount follows the text', async () => {
    const before = await hover(shake, '    ri|ce          10 g');
    await client.edit(shake, 'rice          10 g per pair', 'rice          90 g per pair');
    const after = await hover(shake, '    ri|ce          90 g');
    expect(after!.text).not.toBe(before!.text);
    expect(after!.text).toMatch(/week 3: 2[0-9.]+ g needed, 200 g at hand, [0-9.]+ g missing/);
    await client.edit(shake, 'rice          90 g per pair', 'rice          10 g per pair');
});

test('a name in prose', async () => {
    const found = await hover(shake, 'pinch of {ri|ce}');
    expect(found!.over).toBe('rice');
    expect(found!.text).toContain('**Uncooked rice**');
});

test('lessons, objectives, games, words and kits', async () => {
    expect((await hover(shake, 'follows listen|-1'))!.text).toContain('(lesson, 45 min, week 1)');
    expect((await hover(shake, 'introduces feel-|vibration'))!.text).toMatch(/introduced in shake\\?-1/);
    const listen2 = 'lessons/listen-2.lesson';
    expect((await hover(listen2, 'game sleeping|-cat'))!.text).toContain('Rules: Games for Sharp Ears, edition 1, chapter “Circle games”, number 4');
    expect((await hover(listen2, 'it was {lo|ud}'))!.text).toContain('word, taught in What can you hear?');
    expect((await hover('programme.course', 'uses sound|-bag'))!.text).toContain('Sound bag');
});

test('what holds or lists others: a kit, a course, a unit, an adaptation, a part', async () => {
    const bag = (await hover('programme.course', 'uses sound|-bag'))!.text;
    expect(bag).toContain('**Sound bag** (kit)');
    expect(bag).toMatch(/- Hand bell: \d/);
    const course = (await hover('programme.course', 'course cup|board-orchestra'))!.text;
    expect(course).toContain('- edition 1\n- ages 6 to 8\n- 8 lessons in 3 units, ');
    expect(course).toMatch(/- Saturday group in the attic: \d+ meetings, Sat 3 Oct to /);
    expect((await hover('programme.course', 'unit listen|ing "Listening"'))!.text).toContain('**Listening** (unit)\n- 2 lessons, 95 min');
    expect((await hover('programme.course', 'adaptation small|-attic'))!.text).toContain('- 4 changes · ');
    const part = (await hover('lessons/listen-1.lesson', 'repeat loud|-and-soft'))!.text;
    expect(part).toContain('- 15 min');
    expect(part).toContain('Loud and soft are told by comparing');
});

test('a word of the language: what it means, with an example', async () => {
    expect((await hover(shake, '  mater|ials\n'))!.text).toContain('What is needed, a line for each thing.');
    expect((await hover(shake, '    wa|tch: A child blows'))!.text).toContain('Where children slip.');
    expect((await hover('lessons/listen-2.lesson', '  ga|me sleeping-cat'))!.text).toContain('Plays a game that the inventory describes.');
    expect((await hover('inventory.kit', 'ga|me sleeping-cat "The'))!.text).toContain('A game: where its rules stand');
});

test('nothing over plain words, numbers, comments and blank lines', async () => {
    expect(await hover(shake, 'trembling of mo|st things')).toBeNull();
    expect(await hover(shake, '    rice          1|0 g')).toBeNull();
    expect(await hover('lessons/listen-1.lesson', '# A les|son.')).toBeNull();
    expect(await hover(shake, 'trembling.\n|  follows')).toBeNull();
});

test('titles cannot become markup', async () => {
    await client.open('odd.kit', 'material odd "[Click](command:evil) <b>*bold*</b>"\n  reusable\n');
    const { text } = (await hover('odd.kit', 'material o|dd'))!;
    expect(text).toContain('\\[Click\\]\\(command:evil\\) \\<b\\>\\*bold\\*');
    await client.close('odd.kit');
});
