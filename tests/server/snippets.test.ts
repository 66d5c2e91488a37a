import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { InsertTextFormat, type CompletionItem, type CompletionList } from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { readingCodes } from '@haversack/language/checks/reading';
import { Client } from './client.js';

const file = 'draft.course';
const reading = new Set<unknown>([...readingCodes.map(({ code }) => code), 'unread-text', 'unknown-name', 'declared-twice', 'impossible-number', 'turned-round', 'no-such-date']);

/** Whole blocks that are offered at `|`. */
async function offers(client: Client, marked: string): Promise<CompletionItem[]> {
    const text = marked.replace('|', '');
    await client.open(file, text);
    const position = TextDocument.create('', '', 0, text).positionAt(marked.indexOf('|'));
    const { items } = await client.connection.sendRequest<CompletionList>('textDocument/completion', { textDocument: { uri: client.uri(file) }, position });
    await client.close(file);
    return items.filter(({ label }) => label.endsWith(' …'));
}

/** A snippet of the protocol as somebody leaves it who goes on at once: the first of each choice, the text of each place. */
const untouched = (snippet: string): string => snippet.replace(/\$\{\d+\|([^,|]*)[^}]*\}|\$\{\d+:([^}]*)\}/g, (_, first?: string, text?: string) => first ?? text ?? '');

/** The places and the words in which each block is offered. */
const places: [string, string][] = [
    ['at the left edge of an empty file', '|'],
    ['behind other declarations', 'lesson first\n  about: One.\n\n|\n\nlesson last\n'],
    ['in a lesson', 'lesson first\n  activity look 5 min\n    do: Look.\n  |\n'],
    ['in a lesson, four blanks in', 'lesson first\n    activity look 5 min\n        do: Look.\n    |\n'],
    ['in a lesson, with tabs', 'lesson first\n\tactivity look 5 min\n\t\tdo: Look.\n\t|\n'],
    ['in what an adaptation adds', 'course c\n  unit u\n    first\nlesson first\n  activity look 5 min\n    do: Look.\nadaptation a of c\n  add to first\n    |\n']
];

describe.each([['in the example', undefined], ['in an empty programme', {}]])('%s', (_, programme) => {
    let snippets: Client;
    let plain: Client;
    beforeAll(async () => {
        snippets = await Client.start({ programme, snippets: true });
        plain = await Client.start({ programme });
    });
    afterAll(() => Promise.all([snippets.stop(), plain.stop()]));

    test.each(places)('%s, inserted untouched, nothing is wrong to read', async (_, marked) => {
        const marks = await offers(snippets, marked);
        const texts = await offers(plain, marked);
        expect(marks.length).toBeGreaterThan(2);
        expect(marks.map(({ label }) => label)).toEqual(texts.map(({ label }) => label));
        for (const [index, item] of texts.entries()) {
            expect(item.insertTextFormat).toBe(InsertTextFormat.PlainText);
            expect(marks[index]!.insertTextFormat).toBe(InsertTextFormat.Snippet);
            expect(untouched(marks[index]!.insertText!)).toBe(item.insertText);
            await plain.open(file, marked.replace('|', item.insertText!));
            await plain.settled();
            expect(plain.problems(file).filter(({ code }) => reading.has(code)), item.label).toEqual([]);
            await plain.close(file);
        }
    });
});

describe('what is offered', () => {
    let client: Client;
    beforeAll(async () => { client = await Client.start({ snippets: true }); });
    afterAll(() => client.stop());
    const labels = async (marked: string): Promise<string[]> => (await offers(client, marked)).map(({ label }) => label);

    test('where the grammar takes it, and nowhere else', async () => {
        expect(await labels('|')).toEqual(['lesson …', 'material …', 'game …', 'kit …', 'course …', 'class …', 'adaptation …']);
        expect(await labels('les|')).toEqual(['lesson …']);
        expect(await labels('lesson a\n  |')).toEqual(['warm-up …', 'activity …', 'checkpoint …']);
        for (const marked of ['lesson a\n  activity b\n    |', 'material a\n  |', 'lesson a\n  about: |', 'lesson a\n  about: b\n    |', '# |', 'lesson |', '| lesson b', 'lesson a\n  objectives\n    |']) expect(await labels(marked)).toEqual([]);
    });

    test('names are free, and those of others are known', async () => {
        const [lesson] = await offers(client, 'lesson new-lesson\n|');
        expect(lesson!.insertText).toContain('lesson ${1:new-lesson-2} ');
        const [, , checkpoint] = await offers(client, 'lesson a\n  activity mine 5 min\n  checkpoint new-checkpoint\n  |');
        expect(untouched(checkpoint!.insertText!)).toContain('checkpoint new-checkpoint-2 ');
        expect(untouched(checkpoint!.insertText!)).toContain('repeat mine tomorrow');
    });

    // Language Server Protocol 3.17, "Snippet Syntax": "\\$" is a dollar.
    test('an edition with a dollar stays text', async () => {
        const found = await offers(client, 'course pricey edition "5$ {or ${1:more}"\n|');
        const { insertText } = found.find(({ label }) => label === 'adaptation …')!;
        expect(insertText).not.toMatch(/(?<!\\)\$(?!\{\d+[:|]\p{L})/u);
    });

    test('the activity of a new lesson and where it is repeated are one place to write', async () => {
        const [lesson] = await offers(client, '|');
        const stops = [...lesson!.insertText!.matchAll(/\$\{(\d+):first-activity\}/g)].map(([, stop]) => stop);
        expect(stops).toHaveLength(2);
        expect(new Set(stops).size).toBe(1);
    });
});
