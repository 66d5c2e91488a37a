import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { FormattingOptions, Range, TextEdit } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const file = 'written.lesson';
const usual: FormattingOptions = { tabSize: 2, insertSpaces: true };
const line = (from: number, to = from + 1): Range => ({ start: { line: from, character: 0 }, end: { line: to, character: 0 } });

/** What an editor makes of the answer to a formatting request about a text. */
async function formatted(text: string, method = 'formatting', more: object = {}, options: FormattingOptions = usual): Promise<string> {
    await client.open(file, text);
    const edits = await client.connection.sendRequest<TextEdit[]>(`textDocument/${method}`, { textDocument: { uri: client.uri(file) }, options, ...more });
    await client.close(file);
    return TextDocument.applyEdits(TextDocument.create('file:///a', 'haversack', 0, text), edits);
}

/** The text after Enter where `|` stands, as an editor sends it that takes over the indentation it is told. */
async function afterEnter(marked: string, indent = ''): Promise<string> {
    const at = marked.indexOf('|');
    const text = `${marked.slice(0, at)}\n${indent}${marked.slice(at + 1)}`;
    const position = { line: marked.slice(0, at).split('\n').length, character: indent.length };
    return formatted(text, 'onTypeFormatting', { position, ch: '\n' });
}

const lesson = [
    'lesson weigh-1   "Which is heavier?"', '    about:   Two masses  are compared.', '        By feel.  ', '', '', '    materials', '        pan-balance 1 per pair in kit',
    '        place-card (ones,tens) 1 set per pair in kit  # one each', '        record-sheet    1 per learner', '    activity two-bags "Two bags" 15min', '        do:Put  one in each pan.', '# A remark.', 'game grocer', '  players   2 to 4'
].join('\n');
const laidOut = [
    'lesson weigh-1 "Which is heavier?"', '  about: Two masses  are compared.', '      By feel.', '', '  materials', '    pan-balance              1 per pair      in kit',
    '    place-card (ones, tens)  1 set per pair  in kit  # one each', '    record-sheet             1 per learner', '  activity two-bags "Two bags" 15 min', '    do: Put  one in each pan.', '', '# A remark.', 'game grocer', '  players 2 to 4', ''
].join('\n');

describe('formatting a file', () => {
    test('is announced', () => {
        expect(client.initialized.capabilities).toMatchObject({ documentFormattingProvider: true, documentRangeFormattingProvider: { rangesSupport: true }, documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' } });
    });

    test('indents, puts needs in columns and declarations apart; text and remarks keep their words', async () => {
        expect(await formatted(lesson)).toBe(laidOut);
        expect(await formatted(laidOut)).toBe(laidOut);
    });

    test('keeps line ends of the file, whichever they are', async () => {
        expect(await formatted(lesson.replaceAll('\n', '\r\n'))).toBe(laidOut.replaceAll('\n', '\r\n'));
        expect(await formatted(lesson.replaceAll('\n', '\r'))).toBe(laidOut.replaceAll('\n', '\r'));
    });

    test('keeps a byte order mark', async () => {
        expect(await formatted(`\uFEFF\n${lesson}`)).toBe(`\uFEFF${laidOut}`);
    });

    // FormattingOptions of the Language Server Protocol 3.17: tabSize, insertSpaces, trimTrailingWhitespace, insertFinalNewline, trimFinalNewlines.
    test('does as the options say', async () => {
        const text = 'kit bag  \n  holds\n    drum   1\n\n\n';
        expect(await formatted(text)).toBe('kit bag\n  holds\n    drum  1\n');
        expect(await formatted(text, 'formatting', {}, { tabSize: 4, insertSpaces: true })).toBe('kit bag\n    holds\n        drum  1\n');
        expect(await formatted(text, 'formatting', {}, { tabSize: 4, insertSpaces: false })).toBe('kit bag\n\tholds\n\t\tdrum  1\n');
        expect(await formatted(text, 'formatting', {}, { ...usual, trimFinalNewlines: false })).toBe('kit bag\n  holds\n    drum  1\n\n\n');
        expect(await formatted(text, 'formatting', {}, { ...usual, trimTrailingWhitespace: false })).toBe('kit bag  \n  holds\n    drum  1\n');
        expect(await formatted(text.trimEnd(), 'formatting', {}, { ...usual, insertFinalNewline: false })).toBe('kit bag\n  holds\n    drum  1');
        expect(await formatted(text.trimEnd(), 'formatting', {}, { ...usual, insertFinalNewline: true })).toBe('kit bag\n  holds\n    drum  1\n');
        for (const tabSize of [0, -1, 1e9, null]) expect(await formatted(text, 'formatting', {}, { ...usual, tabSize: tabSize as number })).toContain('kit bag\n');
    });

    test('leaves a block with a line that cannot be read as it is, and lays out the rest', async () => {
        const text = 'lesson a "A"\n  materials\n    drum   1 per pair\n    dr um,, um\n    bell 1   per pair\n  activity b   "B" 5 min\n    do:   Hit.\n\nkit bag\n   holds\n      drum 1\n';
        expect(await formatted(text)).toBe('lesson a "A"\n  materials\n    drum   1 per pair\n    dr um,, um\n    bell 1   per pair\n  activity b "B" 5 min\n    do: Hit.\n\nkit bag\n  holds\n    drum  1\n');
    });

    test('leaves lists as lists where the writer has begun no columns', async () => {
        const held = (gap: string): string => `class c\n  on hand\n    drum${gap}1\n    hand-bell 12\n`;
        expect(await formatted(held(' '))).toBe(held(' '));
        expect(await formatted(held('   '))).toBe('class c\n  on hand\n    drum       1\n    hand-bell  12\n');
    });

    test('lines up letters of every script', async () => {
        const text = 'kit bag\n  holds\n    天秤 1\n    e\u0301pe\u0301e 2\n    drums 3\n';
        expect(await formatted(text)).toBe('kit bag\n  holds\n    天秤   1\n    e\u0301pe\u0301e   2\n    drums  3\n');
    });

    test('comments stay with the lines they stand beside', async () => {
        const text = 'kit bag\n    # What it holds.\n    holds\n        drum 1\n        # More to come.\n    # The last word.\n    note: Light.\n        Very light.\n        # Is it?\n';
        expect(await formatted(text)).toBe('kit bag\n  # What it holds.\n  holds\n    drum  1\n    # More to come.\n  # The last word.\n  note: Light.\n      Very light.\n      # Is it?\n');
    });

    test('edits are small: nothing that is no blank is replaced', async () => {
        await client.open(file, lesson);
        const edits = await client.connection.sendRequest<TextEdit[]>('textDocument/formatting', { textDocument: { uri: client.uri(file) }, options: usual });
        for (const { range, newText } of edits) expect(client.inRange(file, range) + newText).toMatch(/^\s*$/);
        expect(edits.length).toBeGreaterThan(10);
        await client.close(file);
    });

    test('examples are laid out so already', async () => {
        for (const example of ['inventory.kit', 'programme.course', 'lessons/shake-1.lesson', 'lessons/listen-2.lesson']) {
            expect(await client.connection.sendRequest('textDocument/formatting', { textDocument: { uri: client.uri(example) }, options: usual })).toEqual([]);
        }
    });

    test('an empty file, and one of blanks alone', async () => {
        expect(await formatted('')).toBe('');
        expect(await formatted('  \n \n')).toBe('  \n \n');
    });
});

describe('formatting lines', () => {
    const needs = 'lesson a "A"\n  materials\n    drum 1  per pair   \n    hand-bell 2 per pair   \n  words  loud\n';

    test('gives them what formatting the file gives them, and others nothing', async () => {
        expect(await formatted(needs, 'rangeFormatting', { range: line(2) })).toBe('lesson a "A"\n  materials\n    drum       1 per pair\n    hand-bell 2 per pair   \n  words  loud\n');
        expect(await formatted(needs, 'rangeFormatting', { range: line(0, 99) })).toBe('lesson a "A"\n  materials\n    drum       1 per pair\n    hand-bell  2 per pair\n  words loud\n');
    });

    test('several ranges at once', async () => {
        expect(await formatted(needs, 'rangesFormatting', { ranges: [line(4), line(2), line(2)] })).toBe('lesson a "A"\n  materials\n    drum       1 per pair\n    hand-bell 2 per pair   \n  words loud\n');
    });

    test('keeps the indentation of a declaration of which only a part is asked for', async () => {
        const text = 'kit bag\n    holds\n        drum   1\n\nkit box\n    holds\n        bell   1\n';
        expect(await formatted(text, 'rangeFormatting', { range: line(2) })).toBe('kit bag\n    holds\n        drum  1\n\nkit box\n    holds\n        bell   1\n');
        expect(await formatted(text, 'rangeFormatting', { range: line(0, 3) })).toBe('kit bag\n  holds\n    drum  1\n\nkit box\n    holds\n        bell   1\n');
    });

    test('a range outside of the file', async () => {
        expect(await formatted(needs, 'rangeFormatting', { range: line(500, 600) })).toBe(needs);
        expect(await formatted(needs, 'rangesFormatting', { ranges: [] })).toBe(needs);
    });
});

describe('after Enter', () => {
    test('the table that was written in gets its columns', async () => {
        expect(await afterEnter('lesson a "A"\n  materials\n    drum  1 per pair\n    hand-bell 2 per pair|\n', '    ')).toBe('lesson a "A"\n  materials\n    drum       1 per pair\n    hand-bell  2 per pair\n    \n');
    });

    test('a line under one that begins a block goes in, where the editor did not see to it', async () => {
        expect(await afterEnter('lesson a "A"|')).toBe('lesson a "A"\n  ');
        expect(await afterEnter('lesson a "A"|', '  ')).toBe('lesson a "A"\n  ');
        expect(await afterEnter('lesson a "A"\n  materials|\n', '  ')).toBe('lesson a "A"\n  materials\n    \n');
        expect(await afterEnter('lesson a "A"\n   materials|\n      drum  1 per pair\n', '   ')).toBe('lesson a "A"\n   materials\n      \n      drum  1 per pair\n');
        expect(await afterEnter('lesson a "A"\n  activity b "B" 5 min\n    ask: Why?|\n', '    ')).toBe('lesson a "A"\n  activity b "B" 5 min\n    ask: Why?\n      \n');
        expect(await afterEnter('lesson a "A"\n  game b 5 min|\n', '  ')).toBe('lesson a "A"\n  game b 5 min\n  \n');
    });

    test('a line under another stands beside it, where the editor took nothing over', async () => {
        expect(await afterEnter('lesson a "A"\n  draft|')).toBe('lesson a "A"\n  draft\n  ');
        expect(await afterEnter('lesson a "A"\n  draft|', '  ')).toBe('lesson a "A"\n  draft\n  ');
        expect(await afterEnter('lesson a "A"\n  activity b "B" 5 min\n    do: Hit.|', '  ')).toBe('lesson a "A"\n  activity b "B" 5 min\n    do: Hit.\n  ');
    });

    test('text that was parted goes on as text', async () => {
        const part = 'lesson a "A"\n  activity b "B" 5 min\n    do: Hit it.';
        expect(await afterEnter(`${part}|Then wait.\n`, '    ')).toBe(`${part}\n      Then wait.\n`);
        expect(await afterEnter(`${part}\n       Then|wait.\n`)).toBe(`${part}\n       Then\n       wait.\n`);
        expect(await afterEnter(`${part}|ask: Why?\n`, '    ')).toBe(`${part}\n    ask: Why?\n`);
    });

    test('nothing else changes: not an empty line, not a broken one, not another key', async () => {
        for (const text of ['lesson a "A"\n  draft\n|', 'lesson a "A"\n  # Remark|', 'lesson a "A"\n  mat erials|', '|lesson a "A"\n', 'kit bag  |\n']) {
            const at = text.indexOf('|');
            const plain = `${text.slice(0, at)}\n${text.slice(at + 1)}`;
            const made = await afterEnter(text);
            expect(made.trimEnd()).toBe(plain.trimEnd());
        }
        expect(await formatted('lesson a "A"\n', 'onTypeFormatting', { position: { line: 1, character: 0 }, ch: ';' })).toBe('lesson a "A"\n');
        expect(await formatted('lesson a "A"\n', 'onTypeFormatting', { position: { line: 70, character: 0 }, ch: '\n' })).toBe('lesson a "A"\n');
    });
});
