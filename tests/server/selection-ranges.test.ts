import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Range, SelectionRange } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

/** What the selection takes in, from the smallest on; of more lines than one the first and the last. */
async function growing(file: string, marked: string): Promise<string[]> {
    const [only] = await client.connection.sendRequest<SelectionRange[]>('textDocument/selectionRange', { textDocument: { uri: client.uri(file) }, positions: [client.at(file, marked)] });
    const found: string[] = [];
    let last: Range | undefined;
    for (let at: SelectionRange | undefined = only; at; at = at.parent) {
        if (last) {
            // The protocol: a parent holds the range of its child.
            expect([at.range.start.line < last.start.line || (at.range.start.line === last.start.line && at.range.start.character <= last.start.character), at.range.end.line > last.end.line || (at.range.end.line === last.end.line && at.range.end.character >= last.end.character)]).toEqual([true, true]);
        }
        last = at.range;
        const lines = client.inRange(file, at.range).split('\n');
        found.push(lines.length > 1 ? `${lines[0]!.trim()} … ${lines.at(-1)!.trim()}` : lines[0]!);
    }
    return found;
}

const file = 'grow.lesson';
const text = `# A remark.
# And one more.
lesson one "First things"
  materials
    place-card (ones, tens) 1 set per pair in kit
  activity two-bags "Two bags" 15 min
    do: Put one bag down. Wait for the {pan-balance} to
      settle! Then look.
    ask: Which is heavier?
      expect: The lower one.

lesson two "Next"
  about: End.
`;
const whole = '# A remark. … ';

test('a name, the line, the block, the lesson, the file', async () => {
    await client.open(file, text);
    expect(await growing(file, 'place-|card')).toEqual(['place-card', 'place-card (ones, tens) 1 set per pair in kit', 'materials … place-card (ones, tens) 1 set per pair in kit', 'lesson one "First things" … expect: The lower one.', whole]);
    expect(await growing(file, '(on|es')).toEqual(['ones', 'ones, tens', '(ones, tens)', 'place-card (ones, tens) 1 set per pair in kit', 'materials … place-card (ones, tens) 1 set per pair in kit', 'lesson one "First things" … expect: The lower one.', whole]);
});

test('a title', async () => {
    expect(await growing(file, '"Two| bags"')).toEqual(['Two', 'Two bags', '"Two bags"', 'activity two-bags "Two bags" 15 min', 'activity two-bags "Two bags" 15 min … expect: The lower one.', 'lesson one "First things" … expect: The lower one.', whole]);
});

test('a word of a text: the name, the sentence over both lines, the paragraph, the statement', async () => {
    expect(await growing(file, 'pan-bal|ance')).toEqual([
        'pan-balance', '{pan-balance}', 'Wait for the {pan-balance} to … settle!', 'Put one bag down. Wait for the {pan-balance} to … settle! Then look.', 'do: Put one bag down. Wait for the {pan-balance} to … settle! Then look.',
        'activity two-bags "Two bags" 15 min … expect: The lower one.', 'lesson one "First things" … expect: The lower one.', whole
    ]);
    expect(await growing(file, 'Th|en look')).toEqual([
        'Then', 'Then look.', 'Put one bag down. Wait for the {pan-balance} to … settle! Then look.', 'do: Put one bag down. Wait for the {pan-balance} to … settle! Then look.',
        'activity two-bags "Two bags" 15 min … expect: The lower one.', 'lesson one "First things" … expect: The lower one.', whole
    ]);
    expect(await growing(file, 'Which is heav|ier')).toEqual([
        'heavier', 'Which is heavier?', 'ask: Which is heavier?', 'ask: Which is heavier? … expect: The lower one.',
        'activity two-bags "Two bags" 15 min … expect: The lower one.', 'lesson one "First things" … expect: The lower one.', whole
    ]);
});

test('remarks: the word, the line, all of them, the file', async () => {
    expect(await growing(file, '# And o|ne')).toEqual(['one', '# And one more.', '# A remark. … # And one more.', whole]);
});

test('several places at once, blank lines and places that are none', async () => {
    const positions = [client.at(file, 'place-|card'), { line: 10, character: 0 }, { line: 1e6, character: 1e6 }];
    const ranges = await client.connection.sendRequest<SelectionRange[]>('textDocument/selectionRange', { textDocument: { uri: client.uri(file) }, positions });
    expect(ranges).toHaveLength(3);
    expect(client.inRange(file, ranges[1]!.range)).toBe(text);
});

test('where lines are broken it goes by the indentation', async () => {
    await client.change(file, 'lesson one\n  zzz qqq\n      expect 17 "\n  about {: Two bags.\n   - gram-\n');
    expect(await growing(file, 'qq|q')).toEqual(['qqq', 'zzz qqq', 'zzz qqq … expect 17 "', 'lesson one … - gram-', 'lesson one … ']);
    await client.change(file, '');
    expect(await client.connection.sendRequest('textDocument/selectionRange', { textDocument: { uri: client.uri(file) }, positions: [{ line: 0, character: 0 }] })).toHaveLength(1);
});

test('a block in a block and so on for ever is no chain without an end', async () => {
    const deep = Array.from({ length: 600 }, (_, depth) => `${' '.repeat(depth)}x`).join('\n');
    await client.change(file, deep);
    const [only] = await client.connection.sendRequest<SelectionRange[]>('textDocument/selectionRange', { textDocument: { uri: client.uri(file) }, positions: [{ line: 599, character: 600 }] });
    const chain: Range[] = [];
    for (let at: SelectionRange | undefined = only; at; at = at.parent) chain.push(at.range);
    expect(chain.length).toBeGreaterThan(190);
    expect(chain.length).toBeLessThan(210);
    expect(client.inRange(file, chain.at(-1)!)).toBe(deep);
});

test('a file that is gone has none', async () => {
    await client.close(file);
    await client.settled();
    expect(await client.connection.sendRequest('textDocument/selectionRange', { textDocument: { uri: client.uri(file) }, positions: [{ line: 0, character: 0 }] })).toEqual([]);
});
