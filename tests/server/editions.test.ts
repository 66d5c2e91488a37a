/** Former editions out of the git history, in the editor. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-protocol';
import { commit, git } from '../cli/git.js';
import { base, edited, renamed } from '../planning/edition-texts.js';
import { Client } from './client.js';

const file = 'programme.course';
const adaptation = 'adaptation shorter of measure edition 1 for harbour\n  retime activity weigh-1.two-bags to 10 min because: The room is small.\n  skip activity weigh-3.stall\n';
const first = base + adaptation;
const second = edited(first, ['"Measure and Make" edition 1', '"Measure and Make" edition 2'], ['"Two mystery bags" 15 min', '"Two mystery bags" 20 min']);
/** A lesson has another name; the lines of the adaptation still say the old one. */
const third = edited(renamed(edited(first, ['"Measure and Make" edition 1', '"Measure and Make" edition 2']), 'weigh-3', 'market-1'), ['market-1.stall', 'weigh-3.stall']);

const made: string[] = [];
afterAll(() => made.forEach(path => rmSync(path, { recursive: true, force: true })));

function repository(...states: string[]): string {
    const path = mkdtempSync(join(tmpdir(), 'haversack-editions-'));
    made.push(path);
    git(path, 'init', '-q');
    for (const text of states) commit(path, { [file]: text });
    return path;
}

let client: Client | undefined;
afterEach(async () => {
    const { code, errors } = await client!.stop();
    client = undefined;
    expect({ code, errors }).toEqual({ code: 0, errors: '' });
});

const start = async (programme: string | Record<string, string>, trusted?: boolean): Promise<Client> => {
    client = await Client.start({ programme, trusted });
    await client.open(file);
    return client;
};
const until = (running: Client, code: string, there = true): Promise<void> => running.until(`${code} to ${there ? 'come' : 'go'}`, () => running.codes(file).includes(code) === there);
const editionCodes = (running: Client): unknown[] => running.codes(file).filter(code => /^(?:course-edition-changed|change-)/.test(String(code)));

async function fixes(running: Client, code: string): Promise<CodeAction[]> {
    const [problem] = running.problems(file).filter(one => one.code === code);
    return running.connection.sendRequest('textDocument/codeAction', { textDocument: { uri: running.uri(file) }, range: problem!.range, context: { diagnostics: [problem] } });
}

async function take(running: Client, code: string, title: string): Promise<void> {
    const action = (await fixes(running, code)).find(one => one.title === title);
    await running.apply(action!.edit!);
}

describe('in a trusted workspace', () => {
    test('a conflict stands at its line with both sides; kept, the line says for which edition, and then the adaptation can', async () => {
        const running = await start(repository(first, second), true);
        await until(running, 'change-in-conflict');
        const [problem] = running.problems(file).filter(({ code }) => code === 'change-in-conflict');
        expect(problem).toMatchObject({ severity: 2 });
        expect(problem!.message).toBe('This was written against edition 1. The adaptation: “Two mystery bags” of “Which is heavier?” takes 10 min. Edition 2: “Two mystery bags”: 20 min instead of 15 min. Keep the change, or take the new edition’s way?');
        expect(running.inRange(file, problem!.range)).toBe('retime activity weigh-1.two-bags to 10 min because: The room is small.');
        expect((await fixes(running, 'change-in-conflict')).map(({ title }) => title)).toEqual(['Keep this change', 'Take the new edition’s']);
        await take(running, 'change-in-conflict', 'Keep this change');
        expect(running.text(file)).toContain('  retime activity weigh-1.two-bags to 10 min as of edition 2 because: The room is small.\n');
        await until(running, 'course-edition-changed');
        expect(editionCodes(running)).toEqual(['course-edition-changed']);
        await take(running, 'course-edition-changed', 'Written against edition 2 now');
        expect(running.text(file)).toContain('adaptation shorter of measure edition 2 for harbour\n');
        await until(running, 'course-edition-changed', false);
        expect(editionCodes(running)).toEqual([]);
    });

    test('the new edition’s way takes the line out', async () => {
        const running = await start(repository(first, second), true);
        await until(running, 'change-in-conflict');
        await take(running, 'change-in-conflict', 'Take the new edition’s');
        expect(running.text(file)).not.toContain('retime activity');
        await until(running, 'course-edition-changed');
    });

    test('what has another name now is written anew', async () => {
        const running = await start(repository(first, third), true);
        await until(running, 'change-moved');
        expect(running.codes(file)).toContain('unknown-name');
        await take(running, 'change-moved', 'Write the new names');
        expect(running.text(file)).toContain('  skip activity market-1.stall as of edition 2\n');
        await until(running, 'change-moved', false);
        await until(running, 'unknown-name', false);
    });

    test('an edition that is only typed so far', async () => {
        const running = await start(repository(first), true);
        expect(editionCodes(running)).toEqual([]);
        await running.change(file, second);
        await until(running, 'change-in-conflict');
    });

    test('without a history there is one information, with a way on', async () => {
        const running = await start({ [file]: second }, true);
        await until(running, 'course-edition-changed');
        expect(editionCodes(running)).toEqual(['course-edition-changed']);
        const [problem] = running.problems(file).filter(({ code }) => code === 'course-edition-changed');
        expect(problem).toMatchObject({ severity: 3 });
        expect(problem!.message).toContain('`haversack compare` with a copy of edition 1 tells what changed.');
        expect(running.inRange(file, problem!.range)).toBe('1');
        expect((await fixes(running, 'course-edition-changed')).map(({ title }) => title)).toEqual(['Written against edition 2 now']);
    });
});

describe('in restricted mode', () => {
    test.each([[false], [undefined]])('nothing is looked up (trusted: %s) until the person trusts the workspace', async trusted => {
        const running = await start(repository(first, second), trusted);
        await until(running, 'course-edition-changed');
        expect(editionCodes(running)).toEqual(['course-edition-changed']);
        await running.connection.sendNotification('haversack/trusted');
        await until(running, 'change-in-conflict');
        expect(editionCodes(running)).toEqual(['change-in-conflict']);
    });
});
