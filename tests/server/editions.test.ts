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
/** The new edition leaves out itself what the adaptation leaves out. */
const fourth = edited(first, ['"Measure and Make" edition 1', '"Measure and Make" edition 2'], ['  activity stall "A stall of our own" 25 min\n    do: Weigh out what the customers ask for.\n', '']);

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
        // One cause, one message: the name is unknown because it is another one now, and so no nearest name is offered.
        await until(running, 'unknown-name', false);
        expect((await fixes(running, 'change-moved')).map(({ title }) => title)).toEqual(['Write the new names']);
        expect(running.problems(file).find(({ code }) => code === 'change-moved')).toMatchObject({ severity: 2 });
        await take(running, 'change-moved', 'Write the new names');
        expect(running.text(file)).toContain('  skip activity market-1.stall as of edition 2\n');
        await until(running, 'change-moved', false);
        await until(running, 'unknown-name', false);
    });

    test('what the new edition does itself is no longer needed, though its name is gone; the line goes', async () => {
        const running = await start(repository(first, fourth), true);
        await until(running, 'change-not-needed');
        await until(running, 'unknown-name', false);
        const [problem] = running.problems(file).filter(({ code }) => code === 'change-not-needed');
        expect(problem).toMatchObject({ severity: 3 });
        expect(problem!.message).toBe('Edition 2 of the course does this itself: it has no “A stall of our own” in “Market sums”. This line is no longer needed.');
        expect((await fixes(running, 'change-not-needed')).map(({ title }) => title)).toEqual(['Remove this change']);
        await take(running, 'change-not-needed', 'Remove this change');
        expect(running.text(file)).not.toContain('skip activity');
        expect(running.text(file)).toContain('  retime activity weigh-1.two-bags to 10 min because: The room is small.\n');
        await until(running, 'change-not-needed', false);
        await until(running, 'unknown-name', false);
    });

    test('while the lines above are typed, the name stays told once', async () => {
        const running = await start(repository(first, third), true);
        await until(running, 'change-moved');
        await until(running, 'unknown-name', false);
        await running.change(file, `# A remark.\n${third}`);
        await running.until('the message to move', () => running.problems(file).some(({ code, range }) => code === 'change-moved' && running.inRange(file, range) === 'skip activity weigh-3.stall'));
        expect(running.codes(file)).not.toContain('unknown-name');
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

test('without a history, a line that names what is gone can be removed', async () => {
    const running = await start({ [file]: fourth });
    await until(running, 'unknown-name');
    expect((await fixes(running, 'unknown-name')).map(({ title }) => title)).toContain('Remove this change');
    await take(running, 'unknown-name', 'Remove this change');
    expect(running.text(file)).not.toContain('skip activity');
    await until(running, 'unknown-name', false);
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
