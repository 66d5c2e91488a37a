import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentSymbol, FoldingRange, WorkspaceSymbol } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const symbols = (file: string): Promise<DocumentSymbol[]> => client.connection.sendRequest('textDocument/documentSymbol', { textDocument: { uri: client.uri(file) } });
const flat = (list: readonly DocumentSymbol[]): DocumentSymbol[] => list.flatMap(symbol => [symbol, ...flat(symbol.children ?? [])]);

describe('outline', () => {
    test('a lesson with its parts, titles and minutes', async () => {
        const [lesson, ...more] = await symbols('lessons/listen-1.lesson');
        expect(more).toEqual([]);
        expect(lesson).toMatchObject({ name: 'What can you hear?', detail: 'lesson listen-1' });
        expect(lesson!.children!.map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
            'Hand echo: warm-up, 5 min', 'Two quiet minutes: activity, 15 min', 'As loud as, as soft as: activity, 15 min', 'Who heard more?: practice, 5 min', 'At the door: checkpoint, 5 min'
        ]);
        expect(client.inRange('lessons/listen-1.lesson', lesson!.selectionRange)).toBe('listen-1');
        expect(client.inRange('lessons/listen-1.lesson', lesson!.children![1]!.range)).toMatch(/^activity two-minutes[\s\S]*really there\.$/);
    });

    test('a course file, in its order', async () => {
        const found = await symbols('programme.course');
        expect(found.map(({ detail }) => detail!.split(' ')[0])).toEqual([...Array<string>(6).fill('objective'), 'course', 'class', 'adaptation']);
        expect(found.find(({ detail }) => detail === 'course cupboard-orchestra')!.children!.map(({ name }) => name)).toEqual(['Listening', 'Making sounds', 'Sending sounds']);
    });

    // "selectionRange ... Must be contained by the `range`" (Language Server Protocol 3.17, DocumentSymbol); and editors drop an outline with an empty name.
    test('every symbol has a name and lies within its range, also while a line is being written', async () => {
        const file = 'half.course';
        for (const text of [
            'lesson one "One"\n  activity \n  activity two "" 5 min\n  game \n  checkpoint\n', 'course c "C"\n  unit \n    listen-1\n', 'lesson ""\nlesson\nmaterial ', 'lesson one " "\n', 'class c\n  section\n'
        ]) {
            await client.open(file, text);
            for (const { name, range, selectionRange } of flat(await symbols(file))) {
                expect(name.trim()).not.toBe('');
                const offset = (at: { line: number; character: number }): number => at.line * 1000 + at.character;
                expect(offset(range.start)).toBeLessThanOrEqual(offset(selectionRange.start));
                expect(offset(selectionRange.end)).toBeLessThanOrEqual(offset(range.end));
            }
            await client.close(file);
        }
    });
});

describe('symbols of the programme', () => {
    test('found by a part of their name, in every file', async () => {
        const found = await client.connection.sendRequest<WorkspaceSymbol[]>('workspace/symbol', { query: 'listen' });
        expect(found.map(({ name }) => name)).toEqual(expect.arrayContaining(['What can you hear? (listen-1)', 'Where does it come from? (listen-2)']));
        const listen = found.find(({ name }) => name === 'What can you hear? (listen-1)')!;
        expect(listen.location).toEqual({ uri: client.uri('lessons/listen-1.lesson'), range: { start: client.at('lessons/listen-1.lesson', 'lesson |listen-1'), end: client.at('lessons/listen-1.lesson', 'lesson listen-1|') } });
        expect(await client.connection.sendRequest('workspace/symbol', { query: 'zzzz' })).toEqual([]);
    });
});

describe('folding', () => {
    test('each block folds from its first line to its last', async () => {
        const file = 'lessons/listen-1.lesson';
        const ranges = await client.connection.sendRequest<FoldingRange[]>('textDocument/foldingRange', { textDocument: { uri: client.uri(file) } });
        const lines = client.text(file).split('\n');
        const folded = ranges.map(({ startLine, endLine }) => [lines[startLine]!.trim(), lines[endLine]!.trim()]);
        expect(folded).toContainEqual([expect.stringMatching(/^lesson listen-1/), 'if unsure: repeat loud-and-soft tomorrow']);
        expect(folded).toContainEqual(['activity two-minutes "Two quiet minutes" 15 min', 'ready when: The sheet shows at least three sounds that were really there.']);
        expect(folded).toContainEqual(['materials', 'sound-sheet   1 per learner']);
        expect(folded).toContainEqual(['ask: Which sound did nobody make on purpose?', 'expect: The tap, the heating, a bird, a car.']);
        expect(folded).toContainEqual(['# One line for each thing: how many, for whom, and whether the kit holds it.', '# Prints are copied for you, so they need no such word.']);
        expect(folded).not.toContainEqual([expect.stringMatching(/^words/), expect.anything()]);
        expect(ranges.every(({ startLine, endLine }) => startLine < endLine && endLine < lines.length)).toBe(true);
    });
});
