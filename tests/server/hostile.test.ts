import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(async () => {
    // Not a word on the error output: nothing was caught and hidden.
    expect(await client.stop()).toEqual({ code: 0, errors: '' });
});

const deep = (unit: string): string => Array.from({ length: 3000 }, (_, depth) => `${unit.repeat(depth)}activity a${depth} "A" 5 min`).join('\n');
const unclosed = 'material "\n  pack of 10 costs\n  parts one,\nlesson x "never closed\n  about: {open {again {and-again\n  materials\n    place-card (ones, (two 1 per\n  activity y "\n    ask\n      expect\n  checkpoint z\n    if unsure: repeat';

const texts: [string, string][] = [
    ['an empty file', ''],
    ['blanks and line ends only', ' \t\r\n\r\r\n \n\f\v'],
    ['NUL characters', 'lesson nul "N\0ul"\0\n\0  about: a\0b {c\0d}\n\0\0\0\n'],
    ['a line of one million letters', 'x'.repeat(1_000_000)],
    ['a line of one million letters in prose', `lesson long\n  about: ${'word '.repeat(200_000)}`],
    ['a line of one million opening braces', `lesson long\n  about: ${'{'.repeat(1_000_000)}`],
    ['a line of braces around long names', `lesson long\n  about: ${`{${'a'.repeat(1000)}}`.repeat(500)}`],
    ['a line of one million quotation marks', `lesson long ${'“'.repeat(1_000_000)}`],
    ['a line of one million digits', `lesson long\n  materials\n    rice ${'1'.repeat(1_000_000)} g`],
    ['a name of one million hyphens', `lesson ${'a-'.repeat(500_000)}`],
    ['a list of many names', `lesson long\n  follows ${'listen-1, '.repeat(20_000)}`],
    ['3,000 steps to the right, spaces', deep(' ')],
    ['3,000 steps to the right, tabs', deep('\t')],
    ['3,000 steps to the left', deep(' ').split('\n').reverse().join('\n')],
    ['lone surrogates', 'lesson sur "\uD800 title \uDFFF"\n  about: \uDC00{\uD83D}\uD83D {hand-bell}\n\uDBFF'],
    ['unclosed everything', unclosed],
    ['every control character', Array.from({ length: 160 }, (_, code) => `  about: ${String.fromCharCode(code)} x${String.fromCharCode(code)}`).join('\nlesson a\n')],
    ['line separators beyond the usual', 'lesson sep "A\u2028B"\u2029\u0085  about: x\u2028y\n  words a\u2028b'],
    ['lines of blanks from everywhere', '\u2028\n  \u2029\n\u3000lesson a\n\u3000\u3000\u0085\n\u1680\u202f\u205f\n\u180e\n\u200b\n'],
    ['ten thousand broken lines', 'zzz qqq\n  '.repeat(10_000)],
    ['ten thousand unknown names', `lesson many\n  materials\n${Array.from({ length: 10_000 }, (_, n) => `    thing-${n} 1 per pair`).join('\n')}`],
    ['names of every object', 'lesson constructor\n  materials\n    __proto__ 1\n    toString 1 per pair\n    constructor 1\nmaterial constructor\nmaterial to-string\nclass prototype\n  teaches constructor\n']
];

describe('never crashes, never hangs, never loses the way', () => {
    test.each(texts)('%s', async (_, text) => {
        const file = 'hostile.lesson';
        await client.open(file, text);
        await client.settled();
        const textDocument = { uri: client.uri(file) };
        const last = { line: text.split(/\r\n|\r|\n/).length - 1, character: 3 };
        for (const position of [{ line: 0, character: 0 }, { line: 1, character: 12 }, last, { line: 1e6, character: 1e6 }]) {
            for (const method of ['hover', 'completion', 'definition', 'documentHighlight', 'prepareRename', 'signatureHelp', 'linkedEditingRange', 'prepareCallHierarchy']) {
                await client.connection.sendRequest(`textDocument/${method}`, { textDocument, position });
            }
        }
        await client.connection.sendRequest('textDocument/documentSymbol', { textDocument });
        await client.connection.sendRequest('textDocument/foldingRange', { textDocument });
        await client.connection.sendRequest('textDocument/documentLink', { textDocument });
        await client.connection.sendRequest('textDocument/selectionRange', { textDocument, positions: [{ line: 0, character: 0 }, { line: 1, character: 12 }, last] });
        await client.connection.sendRequest('textDocument/codeAction', { textDocument, range: { start: { line: 0, character: 0 }, end: last }, context: { diagnostics: [] } });
        expect(await client.brief({ uri: textDocument.uri, line: 1 })).toBeTruthy();
        // Everything beside it is still read.
        expect(client.codes('lessons/listen-1.lesson')).not.toContain('unknown-name');
        await client.close(file);
    }, 20_000);

    test('a change beyond the end of the text, and one that is no change', async () => {
        const file = 'hostile.lesson';
        await client.open(file, 'lesson a\n');
        const textDocument = { uri: client.uri(file), version: 2 };
        await client.connection.sendNotification('textDocument/didChange', {
            textDocument, contentChanges: [{ range: { start: { line: 90, character: 90 }, end: { line: 99, character: 99 } }, text: 'lesson b\n' }]
        });
        await client.connection.sendNotification('textDocument/didChange', { textDocument: { ...textDocument, version: 3 }, contentChanges: [] });
        await client.settled();
        const symbols = await client.connection.sendRequest<{ name: string }[]>('textDocument/documentSymbol', { textDocument });
        expect(symbols.map(({ name }) => name)).toEqual(['A', 'B']);
        await client.close(file);
    });
});
