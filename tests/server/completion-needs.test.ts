import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Client } from './client.js';

const things = `material pan-balance "Pan balance"
  reusable
material gram-cube "Gram cubes"
  reusable
material sand "Sand"
  consumable
  measured in g
material card "Cards"
  reusable
  counted in set / sets
material soft "Soft things"
  reusable
print record-sheet "Record sheet"
  pages 1
book table-games "Table games"
game grocer "Grocer"
  materials
    gram-cube 4 per group
kit box "Box"
  holds
    pan-balance 2
course measuring "Measuring"
  uses box 1 per family
  unit one "One"
    told
`;
const others = `lesson use-1
  materials
    gram-cube 10 per learner
lesson use-2
  materials
    gram-cube 20 per pair
lesson use-3
  materials
    gram-cube 20 per pair
  words soft
`;

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: { 'things.kit': things, 'others.lesson': others } }); });
afterAll(() => client.stop());

const file = 'told.lesson';

async function offer(marked: string, name: string, lineBreak = '\n'): Promise<CompletionItem & { textBefore: string }> {
    const text = marked.replace('|', '').replaceAll('\n', lineBreak);
    await client.open(file, text);
    const position = TextDocument.create('', '', 0, text).positionAt(marked.replaceAll('\n', lineBreak).indexOf('|'));
    const { items } = await client.connection.sendRequest<CompletionList>('textDocument/completion', { textDocument: { uri: client.uri(file) }, position });
    const found = items.find(({ label }) => label === name);
    if (!found) throw new Error(`${name} is not offered among ${items.map(({ label }) => label).join(', ')}`);
    return { ...found, textBefore: text };
}

/** The text after somebody has chosen a name at `|`, and what is then told about it. */
async function chosen(marked: string, name: string, lineBreak = '\n'): Promise<string> {
    const { textBefore, textEdit, additionalTextEdits = [] } = await offer(marked, name, lineBreak);
    const text = TextDocument.applyEdits(TextDocument.create('', '', 0, textBefore), [textEdit as { range: CompletionList['items'][0] & never; newText: string }, ...additionalTextEdits]);
    await client.change(file, text);
    await client.settled();
    expect(client.codes(file).filter(code => ['not-in-materials', 'missing-amount', 'kit-flag-missing', 'kit-flag-wrong', 'unknown-statement', 'unfinished-line', 'indentation', 'said-twice', 'wrong-place', 'name-in-braces', 'open-brace'].includes(String(code)))).toEqual([]);
    await client.close(file);
    return text;
}

const steps = '  activity lift 5 min\n    do: Take the {|\n';

describe('a thing that the materials lack', () => {
    test('comes with its line, below the others', async () => {
        expect(await chosen(`lesson told\n  materials\n    record-sheet 1 per learner\n${steps}`, 'gram-cube'))
            .toBe('lesson told\n  materials\n    record-sheet 1 per learner\n    gram-cube 20 per pair not in kit\n  activity lift 5 min\n    do: Take the {gram-cube}\n');
    });

    test('as most lessons ask for it, and the list says so', async () => {
        const { detail } = await offer(`lesson told\n${steps}`, 'gram-cube');
        expect(detail).toBe('material, reusable; adds “gram-cube 20 per pair not in kit” to the materials');
    });

    test('one for each group where no lesson asks for it, a set where it is counted so, in the kit that holds it', async () => {
        expect(await chosen(`lesson told\n${steps}`, 'pan-balance')).toContain('  materials\n    pan-balance 1 per group in kit\n  activity');
        expect(await chosen(`lesson told\n${steps}`, 'card')).toContain('    card 1 set per group not in kit\n');
        expect(await chosen(`lesson told\n${steps}`, 'record-sheet')).toContain('    record-sheet 1 per learner\n  activity');
    });

    test('in the columns of its neighbours', async () => {
        expect(await chosen('lesson told\n  materials\n    card          1 set per pair   not in kit\n    record-sheet  1 per learner\n  activity lift 5 min\n    do: Lay the {card} on the {|}.\n', 'gram-cube'))
            .toContain('    record-sheet  1 per learner\n    gram-cube     20 per pair      not in kit\n  activity');
    });

    test('with the block where there is none, in front of the parts and behind what is said of the lesson', async () => {
        expect(await chosen(`lesson told\n  about: One.\n  words cube\n\n${steps}`, 'gram-cube')).toBe('lesson told\n  about: One.\n  words cube\n  materials\n    gram-cube 20 per pair not in kit\n\n  activity lift 5 min\n    do: Take the {gram-cube}\n');
    });

    test('under an empty `materials`, with the tabs and the line breaks of the file', async () => {
        expect(await chosen('lesson told\n\tmaterials\n\tactivity lift 5 min\n\t\tdo: Take the {|\n', 'gram-cube', '\r\n')).toBe('lesson told\r\n\tmaterials\r\n\t\tgram-cube 20 per pair not in kit\r\n\tactivity lift 5 min\r\n\t\tdo: Take the {gram-cube}\r\n');
    });

    test('in the last line of a file without a line break', async () => {
        expect(await chosen('lesson told\n  about: Take the {|', 'gram-cube')).toBe('lesson told\n  materials\n    gram-cube 20 per pair not in kit\n  about: Take the {gram-cube}');
    });

    test('in a part that has materials of its own', async () => {
        expect(await chosen('lesson told\n  materials\n    record-sheet 1 per learner\n  activity lift 5 min\n    materials\n      card 1 set per pair not in kit\n    do: Take the {|}.\n', 'gram-cube'))
            .toContain('      card 1 set per pair not in kit\n      gram-cube 20 per pair not in kit\n    do: Take the {gram-cube}.');
    });

    test('in a game', async () => {
        expect(await chosen('game weighing "Weighing"\n  players 2\n  do: Take the {|}.\n', 'card')).toBe('game weighing "Weighing"\n  materials\n    card 1 set per group\n  players 2\n  do: Take the {card}.\n');
    });

    test('where the amount is measured and nobody has said how much, the line asks for it', async () => {
        const { detail, additionalTextEdits } = await offer(`lesson told\n${steps}`, 'sand');
        expect(detail).toContain('adds “sand');
        expect(additionalTextEdits![0]!.newText).toContain('    sand');
    });
});

describe('nothing comes with', () => {
    test.each([
        ['a thing that is there', `lesson told\n  materials\n    gram-cube 1 per pair\n${steps}`, 'gram-cube'],
        ['a thing that a part lists', 'lesson told\n  activity lift 5 min\n    materials\n      gram-cube 1 per pair\n    do: Take the {|', 'gram-cube'],
        ['a thing that a game brings', `lesson told\n  game grocer 5 min\n${steps}`, 'gram-cube'],
        ['a thing that stays on the shelf', `lesson told\n  not needed gram-cube\n${steps}`, 'gram-cube'],
        ['a book', `lesson told\n${steps}`, 'table-games'],
        ['a game', `lesson told\n${steps}`, 'grocer'],
        ['a lesson', `lesson told\n${steps}`, 'use-1'],
        ['a word that is a thing too', `lesson told\n${steps}`, 'soft'],
        ['a thing in the text of a material', 'material one\n  note: Keep it by the {|', 'gram-cube'],
        ['a thing in the text of an objective', 'objective one\n  about: Lift a {|', 'gram-cube']
    ])('%s', async (_, marked, name) => {
        const { detail, additionalTextEdits } = await offer(marked, name);
        expect(additionalTextEdits).toBeUndefined();
        expect(detail).not.toContain('adds');
        await client.close(file);
    });
});
