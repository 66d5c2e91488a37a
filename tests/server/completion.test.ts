import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CompletionItem, CompletionList, TextEdit } from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => {
    client = await Client.start();
    await client.writeOutside('cards.kit', 'material place-card "Place-value cards"\n  reusable\n  counted in set / sets\n  parts ones, tens, hundreds\n');
});
afterAll(() => client.stop());

const file = 'draft.lesson';

/** Offers at `|` in a text that is written as a file of its own. */
async function offers(marked: string, name = file): Promise<CompletionItem[]> {
    await client.open(name, marked.replace('|', ''));
    const text = marked.replace('|', '');
    const position = TextDocument.create('', '', 0, text).positionAt(marked.indexOf('|'));
    const { items } = await client.connection.sendRequest<{ items: CompletionItem[] }>('textDocument/completion', { textDocument: { uri: client.uri(name) }, position });
    await client.close(name);
    return items.sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
}

const labels = async (marked: string, name?: string): Promise<string[]> => (await offers(marked, name)).map(({ label }) => label);

/** The text after the offer of that label is taken, as an editor takes it. */
async function taken(marked: string, label: string, name = file): Promise<string> {
    const item = (await offers(marked, name)).find(offer => offer.label === label);
    if (!item) throw new Error(`'${label}' is not offered.`);
    const text = marked.replace('|', '');
    const document = TextDocument.create('', '', 0, text);
    const cursor = marked.indexOf('|');
    const word = /[\p{L}\p{N}-]*$/u.exec(text.slice(0, cursor))![0];
    const edit = item.textEdit as TextEdit | undefined
        ?? { range: { start: document.positionAt(cursor - word.length), end: document.positionAt(cursor) }, newText: item.insertText ?? item.label };
    return TextDocument.applyEdits(document, [edit]);
}

describe('at the start of a line', () => {
    test('of a file: every declaration', async () => {
        expect((await labels('|')).filter(label => !label.endsWith(' …')).sort()).toEqual(['adaptation', 'book', 'class', 'course', 'framework', 'game', 'kit', 'lesson', 'material', 'objective', 'print']);
    });

    test('in a lesson: what a lesson says, each with an example and an explanation', async () => {
        const items = await offers('lesson one "One"\n  |');
        expect(items.map(({ label }) => label)).toEqual(expect.arrayContaining(['about', 'objectives', 'materials', 'activity', 'checkpoint', 'not needed']));
        expect(items.map(({ label }) => label)).not.toContain('pack of');
        const activity = items.find(({ label }) => label === 'activity')!;
        expect(activity.detail).toMatch(/^activity /);
        expect(activity.documentation).toBeTruthy();
        expect(activity.insertText).toBe('activity ');
        expect(items.find(({ label }) => label === 'about')!.insertText).toBe('about: ');
    });

    test('in an activity, half a word typed', async () => {
        const offered = await labels('lesson one "One"\n  activity two "Two" 5 min\n    wa|');
        expect(offered).toContain('watch');
        expect(offered).not.toContain('expect');
        expect(await taken('lesson one "One"\n  activity two "Two" 5 min\n    wa|', 'watch')).toBe('lesson one "One"\n  activity two "Two" 5 min\n    watch: ');
    });

    test('under a question: the answer to expect', async () => {
        expect(await labels('lesson one "One"\n  activity two "Two" 5 min\n    ask: Which one?\n      |')).toEqual(['expect']);
    });

    test('nothing in a remark', async () => {
        expect(await labels('lesson one "One"\n  # |')).toEqual([]);
        expect(await labels('lesson one "One"\n  words loud # and |')).toEqual([]);
    });

    test('a word that wants a colon brings it', async () => {
        expect(await taken('lesson one "One"\n  checkpoint two "Two"\n    if |', 'unsure')).toBe('lesson one "One"\n  checkpoint two "Two"\n    if unsure: ');
        expect(await taken('adaptation other of cupboard-orchestra\n  skip lesson listen-1 |', 'because')).toMatch(/ because: $/);
    });

    test('of a line between others', async () => {
        expect(await labels('lesson one "One"\n  about: Something.\n  |\n  words loud\n')).toEqual(expect.arrayContaining(['objectives', 'materials']));
    });
});

describe('under materials', () => {
    const needs = (line: string): string => `lesson one "One"\n  materials\n    ${line}`;

    test('every thing, with its title; no lesson, no game', async () => {
        const items = await offers(needs('|'));
        expect(items.map(({ label }) => label)).toEqual(expect.arrayContaining(['hand-bell', 'rice', 'sound-sheet', 'ear-book']));
        expect(items.map(({ label }) => label)).not.toContain('listen-1');
        expect(items.map(({ label }) => label)).not.toContain('sleeping-cat');
        expect(items.find(({ label }) => label === 'hand-bell')).toMatchObject({ detail: 'material, reusable', labelDetails: { description: 'Hand bell' } });
    });

    test('on the line after a whole one', async () => {
        expect(await labels(needs('hand-bell 1 per pair\n    |'))).toContain('rice');
    });

    test('parts in parentheses', async () => {
        expect(await labels(needs('place-card (|'))).toEqual(['hundreds', 'ones', 'tens']);
        expect(await labels(needs('place-card (ones, |'))).toEqual(['hundreds', 'ones', 'tens']);
    });

    test('the words of a counted thing, the units of a measured one with its own first, then for whom', async () => {
        const after = ['per', 'in kit', 'not in kit', 'optional'];
        expect(await labels(needs('place-card 1 |'))).toEqual(['set', 'sets', ...after]);
        expect(await labels(needs('hand-bell 1 |'))).toEqual(after);
        expect(await labels(needs('sound-sheet 1 |'))).toEqual(['copies', 'copy', ...after]);
        expect(await labels(needs('rice 100 |'))).toEqual(['g', 'kg', 'lb', 'oz', ...after]);
        expect(await labels(needs('not-known-yet 100 |'))).toEqual(expect.arrayContaining(['g', 'ml', 'fl oz', 'in', ...after]));
    });

    test('a unit of two words is one offer', async () => {
        expect(await labels('material tea "Tea"\n  consumable\n  measured in |')).toContain('fl oz');
        expect(await labels('material tea "Tea"\n  consumable\n  measured in fl oz\n  pack of 3 |')).toEqual(['fl oz', 'cup', 'gallon', 'l', 'ml', 'pint', 'quart', 'costs']);
        expect(await labels('material box "Box"\n  reusable\n  size 3 x 3 |')).toEqual(['cm', 'ft', 'in', 'm', 'mm', 'yd', 'x']);
    });

    test('for whom', async () => {
        expect((await labels(needs('rice 100 g per |'))).sort()).toEqual(['adult', 'class', 'group', 'learner', 'pair']);
    });

    test('whether it is in the kit, both words at once', async () => {
        const offered = await labels(needs('rice 100 g per pair |'));
        expect(offered).toEqual(expect.arrayContaining(['in kit', 'not in kit', 'optional']));
        expect(await taken(needs('rice 100 g per pair no|'), 'not in kit')).toBe(needs('rice 100 g per pair not in kit'));
    });
});

describe('in prose', () => {
    const prose = (line: string, more = ''): string => `lesson one "One"\n  materials\n    rice 10 g per pair\n    hand-bell 1 per pair\n  words rattle\n  activity two "Two" 5 min\n    do: ${line}${more}\n`;

    test('after a brace: the lesson’s own things, then its words, then everything else', async () => {
        const offered = await labels(prose('Shake the {|'));
        expect(offered.slice(0, 3)).toEqual(['hand-bell', 'rice', 'rattle']);
        expect(offered).toEqual(expect.arrayContaining(['scarf', 'sleeping-cat', 'listen-1', 'describe-sounds', 'loud']));
    });

    test('takes the place of the rest of the word and the brace', async () => {
        expect(await taken(prose('Shake the {ri|'), 'rice')).toBe(prose('Shake the {rice}'));
        expect(await taken(prose('Shake the {|sca} now.'), 'rice')).toBe(prose('Shake the {rice} now.'));
        expect(await taken(prose('Shake the {r|attle} now.'), 'rice')).toBe(prose('Shake the {rice} now.'));
        expect(await taken(prose('Shake 🔔 the {|} now.'), 'rice')).toBe(prose('Shake 🔔 the {rice} now.'));
    });

    test('offers nothing in plain words and after a plain brace', async () => {
        expect(await labels(prose('Shake the ri|'))).toEqual([]);
        expect(await labels(prose('Shake the \\{|'))).toEqual([]);
    });

    test('goes on over deeper lines', async () => {
        expect(await labels(prose('Shake it,', '\n      then the {|'))).toContain('rice');
    });
});

describe('in course files', () => {
    const course = 'more.course';

    test('lessons in a unit', async () => {
        const offered = await labels('course other "Other"\n  unit first "First"\n    |', course);
        expect(offered).toEqual(expect.arrayContaining(['listen-1', 'concert-1', 'about']));
        expect(offered).not.toContain('hand-bell');
    });

    test('the parts of the lesson that is named before the full stop', async () => {
        const adaptation = (line: string): string => `adaptation shorter of cupboard-orchestra for attic\n  ${line}`;
        expect(await labels(adaptation('skip activity travel-2.|'), course)).toEqual(expect.arrayContaining(['build-a-line', 'longer-line', 'pass-it-on']));
        expect(await labels(adaptation('skip activity travel-2.lon|'), course)).toContain('longer-line');
        expect(await labels(adaptation('split concert-1 after |'), course)).toContain('rehearsal');
        expect(await labels(adaptation('skip activity travel-2.|'), course)).not.toContain('rice-drum');
    });

    test('classes, courses, kits and days', async () => {
        expect(await labels('class other "Other"\n  teaches |', course)).toEqual(['cupboard-orchestra']);
        expect(await labels('class other "Other"\n  kits |', course)).toEqual(['sound-bag']);
        expect(await labels('class other "Other"\n  meets mon, |', course)).toEqual(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']);
        expect(await labels('class other "Other"\n  present |', course)).toEqual(['under-threes']);
        expect(await labels('adaptation other of |', course)).toEqual(['cupboard-orchestra']);
    });

    test('the parts that a checkpoint may repeat', async () => {
        const offered = await labels('lesson one "One"\n  activity two "Two" 5 min\n  checkpoint three "Three"\n    if unsure: repeat |');
        expect(offered).toEqual(expect.arrayContaining(['two', 'lesson']));
        expect(offered).not.toContain('three');
    });
});

test('what a blank opens is asked for anew with the next letter; what somebody asks for is whole', async () => {
    await client.open('blank.lesson', 'lesson a\n  materials\n    scarf 1 per pair \n');
    const isIncomplete = async (context: object): Promise<boolean> => (await client.ask<CompletionList>('textDocument/completion', 'blank.lesson', 'per pair |', { context })).isIncomplete;
    expect(await isIncomplete({ triggerKind: 2, triggerCharacter: ' ' })).toBe(true);
    expect(await isIncomplete({ triggerKind: 1 })).toBe(false);
    await client.close('blank.lesson');
});
