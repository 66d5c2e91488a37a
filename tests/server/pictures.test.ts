/** `show` lines in the editor: what hover tells and draws, what completion offers, and how a wrong one is mended. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, CompletionItem, Hover, MarkupContent } from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { pictureKinds } from '@haversack/language/pictures/read-picture';
import { Client } from './client.js';

let drawing: Client;
let plain: Client;
beforeAll(async () => {
    drawing = await Client.start({ showsPictures: true });
    plain = await Client.start();
});
afterAll(async () => {
    await drawing.stop();
    await plain.stop();
});

const file = 'draft.lesson';
const inActivity = (line: string): string => `lesson one "One"\n  activity two "Two" 5 min\n    ${line}`;

async function hover(client: Client, marked: string): Promise<string | undefined> {
    await client.open(file, marked.replace('|', ''));
    const position = TextDocument.create('', '', 0, marked.replace('|', '')).positionAt(marked.indexOf('|'));
    const found = await client.connection.sendRequest<Hover | null>('textDocument/hover', { textDocument: { uri: client.uri(file) }, position });
    await client.close(file);
    return found ? (found.contents as MarkupContent).value : undefined;
}

async function offers(client: Client, marked: string): Promise<CompletionItem[]> {
    await client.open(file, marked.replace('|', ''));
    const position = TextDocument.create('', '', 0, marked.replace('|', '')).positionAt(marked.indexOf('|'));
    const { items } = await client.connection.sendRequest<{ items: CompletionItem[] }>('textDocument/completion', { textDocument: { uri: client.uri(file) }, position });
    await client.close(file);
    return items.sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
}

/** The SVG of a Markdown image, decoded as a reader of Markdown would find it: up to the first closing bracket. */
function imageIn(text: string): string | undefined {
    const address = /!\[[^\]]*\]\((data:image\/svg\+xml,[^)\s]*)\)/.exec(text)?.[1];
    return address && decodeURIComponent(address.slice('data:image/svg+xml,'.length));
}

describe('hover', () => {
    test.each(['sho|w ten-frame 8', 'show ten-fr|ame 8', 'show ten-frame |8'])('%s: the words, then the picture', async line => {
        const text = (await hover(drawing, inActivity(line)))!;
        expect(text).toMatch(/^Ten-frame: 8, as 5 and 3; 2 cells are empty\./);
        const svg = imageIn(text)!;
        expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" /);
        expect(svg.match(/class="counter /g)).toHaveLength(8);
        expect(svg).toContain('<title>Ten-frame: 8, as 5 and 3; 2 cells are empty.</title>');
        expect(text).toContain('A whole number from 0 to 20.');
    });

    test('a client that does not show Markdown as a page gets the words alone', async () => {
        const text = (await hover(plain, inActivity('show ten-fr|ame 8')))!;
        expect(text).toMatch(/^Ten-frame: 8/);
        expect(text).not.toContain('data:');
    });

    test('its own title stands first and cannot become markup', async () => {
        expect(await hover(drawing, inActivity('show tal|ly 7 "[Seven](command:evil)"'))).toMatch(/^\*\*\\\[Seven\\\]\(command:evil\)\*\*\n\nTally: 7, as 1 five and 2\./);
    });

    test('one that cannot be drawn says why', async () => {
        const text = (await hover(drawing, inActivity('show ten-fr|ame 23')))!;
        expect(text).toMatch(/^A ten-frame holds 0 to 20; 23 does not fit\. Write: show base-ten 23/);
        expect(text).not.toContain('data:');
        expect(await hover(drawing, inActivity('show ten-fra|mes 3'))).toContain("There is no picture 'ten-frames'");
    });

    test('in a game', async () => {
        expect(await hover(drawing, 'game jump "Jump"\n  show clo|ck 9:30\n')).toMatch(/^Clock: 9:30, half past nine\./);
    });
});

describe('completion', () => {
    test('every kind with what it shows, and a picture where one is seen', async () => {
        const items = await offers(drawing, inActivity('show |'));
        expect(items.map(({ label }) => label)).toEqual(pictureKinds.map(({ kind }) => kind));
        for (const { documentation, insertText, label } of items) {
            expect(imageIn((documentation as MarkupContent).value)).toContain('<svg');
            expect(insertText).toBe(`${label} `);
        }
        const inWords = await offers(plain, inActivity('show |'));
        expect((inWords[0]!.documentation as MarkupContent).value).toContain('A quantity in a frame of two rows of five');
        expect(inWords.some(({ documentation }) => (documentation as MarkupContent).value.includes('data:'))).toBe(false);
    });

    test('settings by example, then only the words that may follow', async () => {
        const labels = async (line: string): Promise<string[]> => (await offers(plain, inActivity(line))).map(({ label }) => label);
        expect(await labels('show number-line |')).toEqual(['0 to 20', '0 to 100 by 10', '0 to 20 by 5 mark 7, 12', '0 to 1 by 0.1 mark 0.35']);
        expect(await labels('show number-line 0 |')).toEqual(['to']);
        expect(await labels('show number-line 0 to 20 |')).toEqual(['by', 'mark']);
        expect(await labels('show number-line 0 to 20 by 5 |')).toEqual(['mark']);
        expect(await labels('show number-line 0 to 20 by |')).toEqual([]);
        expect(await labels('show balance 12 |')).toEqual(['and', 'plus']);
        expect(await labels('show balance 12 and 7 |')).toEqual(['plus']);
        expect(await labels('show fraction-bar 3/4 |')).toEqual(['and']);
        expect(await labels('show array 3 |')).toEqual(['by']);
        expect(await labels('show bead-string 13 |')).toEqual(['of']);
        expect(await labels('show ten-frame 8 |')).toEqual([]);
        expect(await labels('show unknown |')).toEqual([]);
    });
});

test('a wrong number is told at its place and mended by a quick fix', async () => {
    const wrong = 'wrong.lesson';
    const text = inActivity('show ten-frame 23 "Many"\n');
    await plain.open(wrong, text);
    await plain.until('the problem', () => plain.codes(wrong).includes('impossible-picture'));
    const problem = plain.problems(wrong).find(({ code }) => code === 'impossible-picture')!;
    expect(plain.inRange(wrong, problem.range)).toBe('23');
    const actions = await plain.connection.sendRequest<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: plain.uri(wrong) }, range: problem.range, context: { diagnostics: [problem] } });
    const fix = actions.find(({ title }) => title === "Change to 'base-ten 23'")!;
    expect(fix.isPreferred).toBe(true);
    await plain.apply(fix.edit!);
    await plain.until('the problem to go', () => !plain.codes(wrong).includes('impossible-picture'));
    expect(plain.text(wrong)).toBe(text.replace('ten-frame 23', 'base-ten 23'));
    await plain.close(wrong);
});
