import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { SemanticTokenModifiers, SemanticTokenTypes, type SemanticTokens, type SemanticTokensOptions } from 'vscode-languageserver-protocol/node';
import { Client, firstSteps } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

interface Token { line: number; character: number; length: number; word: string; type: string; declared: boolean }
const legend = (): SemanticTokensOptions['legend'] => (client.initialized.capabilities.semanticTokensProvider as SemanticTokensOptions).legend;

/** Tokens from the protocol's numbers: five for each, line and column counted from the token before (LSP 3.17, textDocument/semanticTokens). */
function decoded({ data }: SemanticTokens, text: string): Token[] {
    const lines = text.split(/\r\n|\r|\n/);
    const tokens: Token[] = [];
    let [line, character] = [0, 0];
    for (let at = 0; at < data.length; at += 5) {
        const [down, right, length, type, modifiers] = data.slice(at, at + 5) as [number, number, number, number, number];
        character = down === 0 ? character + right : right;
        line += down;
        tokens.push({ line, character, length, word: lines[line]!.slice(character, character + length), type: legend().tokenTypes[type]!, declared: modifiers === 1 });
    }
    return tokens;
}

const ask = (file: string, method = 'full', more: object = {}): Promise<SemanticTokens> => client.connection.sendRequest(`textDocument/semanticTokens/${method}`, { textDocument: { uri: client.uri(file) }, ...more });
async function tokensOf(text: string, file = 'written.course'): Promise<Token[]> {
    await client.open(file, text);
    const tokens = decoded(await ask(file), text);
    await client.close(file);
    return tokens;
}
const told = (tokens: readonly Token[]): string[] => tokens.map(({ word, type, declared }) => `${word}: ${type}${declared ? ', declared' : ''}`);

describe('semantic tokens', () => {
    test('are the types and modifiers of the protocol, and no others', () => {
        expect(Object.values<string>(SemanticTokenTypes)).toEqual(expect.arrayContaining(legend().tokenTypes));
        expect(Object.values<string>(SemanticTokenModifiers)).toEqual(expect.arrayContaining(legend().tokenModifiers));
    });

    test('a lesson: names by the kind they lead to, amounts, flags, titles; text and remarks none', async () => {
        const text = 'lesson a "A day"\n  # Remark\n  materials\n    rice           10 g per pair   not in kit # to weigh\n    hand-bell      1 1/2 per learner  in kit optional\n  activity b "B" 15 min\n    do: Take the {rice}, say {loud} and do 2 things.\n      Ring the {hand-bell} as in {listen-1}, or {nothing-such}.\n';
        expect(told(await tokensOf(text, 'a.lesson'))).toEqual([
            'lesson: keyword', 'a: class, declared', '"A day": string', 'materials: keyword',
            'rice: variable', '10: number', 'g: number', 'per: keyword', 'pair: keyword', 'not: modifier', 'in: modifier', 'kit: modifier',
            'hand-bell: variable', '1: number', '1/2: number', 'per: keyword', 'learner: keyword', 'in: modifier', 'kit: modifier', 'optional: modifier',
            'activity: keyword', 'b: method, declared', '"B": string', '15: number', 'min: number',
            'do: keyword', 'rice: variable', 'loud: property', 'hand-bell: variable', 'listen-1: class'
        ]);
    });

    test('an inventory', async () => {
        const text = 'material cup "Cup"\n  reusable\n  counted in set / sets\n  parts small, large\n  size 10 x 20 mm\n  pack of 4 fl oz costs 2.50 EUR\n  arrives in 6 working days\n  spare 10%\n  from home\n  stand-in hand-bell 1 for 2\n  caution sharp: Mind it.\nbook tales edition 3\ngame round\n  found in tales edition 3, chapter "One"\nprint leaf\n  two-sided\n';
        expect(told(await tokensOf(text, 'more.kit'))).toEqual([
            'material: keyword', 'cup: variable, declared', '"Cup": string', 'reusable: modifier', 'counted: keyword', 'in: keyword', 'set: number', 'sets: number',
            'parts: keyword', 'small: property, declared', 'large: property, declared', 'size: keyword', '10: number', 'x: keyword', '20: number', 'mm: number',
            'pack: keyword', 'of: keyword', '4: number', 'fl: number', 'oz: number', 'costs: keyword', '2.50: number', 'EUR: number',
            'arrives: keyword', 'in: keyword', '6: number', 'working: keyword', 'days: number', 'spare: keyword', '10%: number', 'from: keyword', 'home: enumMember',
            'stand-in: keyword', 'hand-bell: variable', '1: number', 'for: keyword', '2: number', 'caution: keyword', 'sharp: enumMember',
            'book: keyword', 'tales: enum, declared', 'edition: keyword', '3: number', 'game: keyword', 'round: function, declared',
            'found: keyword', 'in: keyword', 'tales: enum', 'edition: keyword', '3: number', 'chapter: keyword', '"One": string', 'print: keyword', 'leaf: parameter, declared', 'two-sided: modifier'
        ]);
    });

    test('a course, a class and its adaptation', async () => {
        const text = 'objective hear\n  in listening\n  aligns to frame M.2.4\nframework frame from "f.json"\ncourse tour edition 1\n  uses sound-bag 1 per 3 learners\n  unit first\n    listen-1\nclass band\n  teaches tour\n  meets mon\n  section early\n    at 9:30\n  starts 2026-09-07\nadaptation short of tour for band\n  split listen-1 after two-minutes\n';
        const tokens = told(await tokensOf(text)).filter(word => !word.endsWith(': keyword'));
        expect(tokens).toEqual([
            'hear: enumMember, declared', 'listening: type', 'frame: interface', 'M.2.4: enumMember', 'frame: interface, declared', '"f.json": string',
            'tour: namespace, declared', '1: number', 'sound-bag: struct', '1: number', '3: number', 'first: namespace, declared', 'listen-1: class',
            'band: type, declared', 'tour: namespace', 'mon: enumMember', 'early: type, declared', '9:30: number', '2026-09-07: number',
            'short: macro, declared', 'tour: namespace', 'band: type', 'listen-1: class', 'two-minutes: method'
        ]);
    });

    test('columns count as the protocol has them, in units of UTF-16, and with any line ends', async () => {
        const text = 'material 天秤 "Waage 🔔"\r\n  note: 🔔🔔 e\u0301 {天秤} 𐐷 {hand-bell}\r\n  reusable\r\n';
        const tokens = await tokensOf(text, 'wide.kit');
        expect(told(tokens)).toEqual(['material: keyword', '天秤: variable, declared', '"Waage 🔔": string', 'note: keyword', '天秤: variable', 'hand-bell: variable', 'reusable: modifier']);
        expect(tokens[5]).toMatchObject({ line: 1, character: '  note: 🔔🔔 e\u0301 {天秤} 𐐷 {'.length, length: 9 });
    });

    test('a range has the tokens of its lines', async () => {
        const file = 'lessons/shake-1.lesson';
        const text = client.text(file);
        const all = decoded(await ask(file), text);
        const some = decoded(await ask(file, 'range', { range: { start: { line: 9, character: 0 }, end: { line: 20, character: 3 } } }), text);
        expect(some.length).toBeGreaterThan(20);
        expect(some).toEqual(all.filter(({ line }) => line >= 9 && line <= 20));
        expect(decoded(await ask(file, 'range', { range: { start: { line: 900, character: 0 }, end: { line: 901, character: 0 } } }), text)).toEqual([]);
    });

    test('lines that cannot be read cost only themselves', async () => {
        const text = 'lesson a "A"\n  materials\n    hand-bell 1 pr pair\n    ,, ??\n    rice 10 g per pair\n  actvity b "B" 5 min\n    do: Take {rice\n   ask Who?\n';
        const tokens = await tokensOf(text, 'b.lesson');
        expect(told(tokens)).toEqual(expect.arrayContaining(['hand-bell: variable', 'rice: variable', 'g: number']));
        for (const [index, { line, character, length, word }] of tokens.entries()) {
            expect(word).toHaveLength(length);
            const before = tokens[index - 1];
            if (before) expect(line > before.line || character >= before.character + before.length).toBe(true);
        }
        expect(await tokensOf('\0\0 {{{ ???\n', 'c.lesson')).toEqual([]);
        expect(await tokensOf('', 'd.lesson')).toEqual([]);
    });

    test('every name of the first steps is known, and no word of text or remark is marked', async () => {
        let counted = 0;
        for (const file of ['inventory.kit', 'programme.course', 'lessons/listen-1.lesson', 'lessons/travel-2.lesson']) {
            const text = readFileSync(join(firstSteps, file), 'utf8');
            const lines = text.split('\n');
            for (const { line, character, word, type } of decoded(await ask(file), text)) {
                counted++;
                const before = lines[line]!.slice(0, character);
                expect(before, `${file}:${line + 1} ${word}`).not.toMatch(/^\s*#/);
                // In a text after its word only names between braces.
                if (/^\s*(?:about|do|ask|expect|note|why|say|watch|help|instead|more|ready when): /.test(before)) expect(`${before.slice(-1)}${word}`).toBe(`{${word}`);
                expect(type).not.toBe('comment');
            }
            const braced = [...text.matchAll(/\{([a-z0-9-]+)\}/g)].length;
            expect(decoded(await ask(file), text).filter(({ line, character }) => lines[line]![character - 1] === '{')).toHaveLength(braced);
        }
        expect(counted).toBeGreaterThan(300);
    });
});

test('a client that asks again is told when another file makes a name known, and no other client is', async () => {
    const asked = new Map<Client, number>();
    const start = async (refreshSupport: boolean): Promise<Client> => {
        const one = await Client.start({ capabilities: { workspace: { semanticTokens: { refreshSupport } } } });
        asked.set(one, 0);
        one.connection.onRequest('workspace/semanticTokens/refresh', () => { asked.set(one, asked.get(one)! + 1); return null; });
        return one;
    };
    const coloured = async (one: Client): Promise<boolean> => {
        const tokens: SemanticTokens = await one.connection.sendRequest('textDocument/semanticTokens/full', { textDocument: { uri: one.uri('a.lesson') } });
        return decoded(tokens, one.text('a.lesson')).some(({ word, type }) => word === 'triangle' && type === 'variable');
    };
    const [asking, quiet] = await Promise.all([start(true), start(false)]);
    for (const one of [asking, quiet]) {
        await one.open('a.lesson', 'lesson a\n  materials\n    triangle 1 per pair\n');
        expect(await coloured(one)).toBe(false);
    }
    const before = asked.get(asking)!;
    for (const one of [asking, quiet]) {
        await one.writeOutside('more.kit', 'material triangle\n  reusable\n');
        await one.settled();
        expect(await coloured(one)).toBe(true);
    }
    await vi.waitFor(() => expect(asked.get(asking)).toBeGreaterThan(before), { timeout: 15_000 });
    expect(asked.get(quiet)).toBe(0);
    for (const one of [asking, quiet]) expect((await one.stop()).errors).toBe('');
});
