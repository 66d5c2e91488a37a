import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, Diagnostic } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterEach(() => client.reset());
afterAll(() => client.stop());

const listen = 'lessons/listen-1.lesson';
const travel = 'lessons/travel-1.lesson';

/** Breaks a file, waits for the problem, takes the fix as an editor would, and sees that nothing is left to tell. */
async function mends({ file, from, to, code, title, gives, settles = true }: {
    file: string; from: string; to: string; code: string; title: string;
    /** What stands in a file afterwards. */
    gives: [file: string, text: string]; settles?: boolean;
}): Promise<void> {
    await client.open(file);
    await client.edit(file, from, to);
    await client.until(`'${code}' in ${file}`, () => client.codes(file).includes(code));
    const problem = client.problems(file).find(one => one.code === code)!;
    const action = await actionFor(file, problem, title);
    expect(action.kind).toBe('quickfix');
    expect(action.diagnostics).toEqual([problem]);
    await client.apply(action.edit!);
    await client.until(`'${code}' to go`, () => !client.codes(file).includes(code));
    expect(client.text(gives[0])).toContain(gives[1]);
    if (settles) for (const name of [file, 'inventory.kit', 'programme.course']) expect([name, client.problems(name).filter(({ severity }) => severity === 1)]).toEqual([name, []]);
}

async function actionFor(file: string, problem: Diagnostic, title: string): Promise<CodeAction> {
    const actions = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: client.uri(file) }, range: problem.range, context: { diagnostics: [problem] } });
    const action = actions.find(one => one.title === title);
    if (!action) throw new Error(`'${title}' is not offered, only ${actions.map(one => `'${one.title}'`).join(', ')}.`);
    return action;
}

describe('over the wire, each fix is offered, made, and the problem is gone', () => {
    test('the nearest name', () => mends({
        file: listen, from: 'hand-bell     1', to: 'hand-bel     1', code: 'unknown-name', title: "Change to 'hand-bell'", gives: [listen, 'hand-bell     1 per group']
    }));

    test('the nearest name in prose', () => mends({
        file: listen, from: '{hand-bell}', to: '{hand-bll}', code: 'unknown-name', title: "Change to 'hand-bell'", gives: [listen, 'Ring the {hand-bell}.']
    }));

    test('add to the inventory', () => mends({
        file: listen, from: '    sound-sheet   1 per learner\n', to: '    sound-sheet   1 per learner\n    xylophone 1 per pair not in kit\n', code: 'unknown-name',
        title: "Add 'xylophone' to the inventory", gives: ['inventory.kit', 'material xylophone "Xylophone"\n  reusable\n']
    }));

    test('correct the in-kit flag', () => mends({
        file: listen, from: '1 per group    in kit', to: '1 per group    not in kit', code: 'kit-flag-wrong', title: "Change to 'in kit'", gives: [listen, 'hand-bell     1 per group    in kit']
    }));

    test('write the in-kit flag that is missing', () => mends({
        file: travel, from: '1 per pair    not in kit', to: '1 per pair', code: 'kit-flag-missing', title: "Add 'not in kit'", gives: [travel, 'metal-spoon   1 per pair not in kit']
    }));

    test('declare the objective', () => mends({
        file: listen, from: 'introduces describe-sounds', to: 'introduces describe-sounds, hum-along', code: 'unknown-name',
        title: "Declare the objective 'hum-along'", gives: ['programme.course', 'objective hum-along "Hum along"']
    }));

    test('respell a word of the language', () => mends({
        file: listen, from: '  activity two-minutes', to: '  acitvity two-minutes', code: 'unknown-statement', title: "Change to 'activity'", gives: [listen, '  activity two-minutes']
    }));

    test('line up a line that slipped', () => mends({
        file: listen, from: '    why: Children hear more', to: '   why: Children hear more', code: 'indentation', title: 'Line it up', gives: [listen, '\n    why: Children hear more']
    }));

    test('put in a colon', () => mends({
        file: listen, from: '    why: Children hear', to: '    why Children hear', code: 'missing-colon', title: 'Put in the colon', gives: [listen, '    why: Children hear']
    }));
});

/** The offers for the first problem of a code, by title. */
async function offers(file: string, code: string): Promise<CodeAction[]> {
    await client.until(`'${code}' in ${file}`, () => client.codes(file).includes(code));
    const problem = client.problems(file).find(one => one.code === code)!;
    return client.connection.sendRequest('textDocument/codeAction', { textDocument: { uri: client.uri(file) }, range: problem.range, context: { diagnostics: [problem] } });
}

describe('a lesson’s materials and its text', () => {
    test('what the text names is added to the materials', async () => {
        await client.open(listen);
        await client.edit(listen, 'Ring the {hand-bell}.', 'Ring the {hand-bell} or a {glass-bottle}.');
        const [action] = await offers(listen, 'not-in-materials');
        await client.apply(action!.edit!);
        await client.until('the problem to go', () => !client.codes(listen).includes('not-in-materials'));
        expect(client.text(listen)).toMatch(/\n {4}glass-bottle\b/);
    });

    test('what no step uses is removed', async () => {
        await client.open(listen);
        await client.edit(listen, '    sound-sheet   1 per learner\n', '    sound-sheet   1 per learner\n    scarf 1 per pair not in kit\n');
        const [action] = await offers(listen, 'unused-need');
        await client.apply(action!.edit!);
        await client.until('the problem to go', () => !client.codes(listen).includes('unused-need'));
        expect(client.text(listen)).not.toContain('scarf');
    });
});

describe('what is offered', () => {
    test('only quick fixes, and only where the cursor is', async () => {
        await client.open(listen);
        await client.edit(listen, 'hand-bell     1', 'hand-bel     1');
        await client.settled();
        const problem = client.problems(listen)[0]!;
        const ask = (range: object, only?: string[]): Promise<CodeAction[] | null> =>
            client.connection.sendRequest('textDocument/codeAction', { textDocument: { uri: client.uri(listen) }, range, context: { diagnostics: [], only } });
        expect((await ask(problem.range, ['quickfix']))!.length).toBeGreaterThan(0);
        expect(await ask(problem.range, ['refactor']) ?? []).toEqual([]);
        expect(await ask({ start: { line: 0, character: 0 }, end: { line: 0, character: 5 } }) ?? []).toEqual([]);
        expect((await ask(problem.range))!.filter(({ isPreferred, diagnostics }) => isPreferred && diagnostics![0]!.code === problem.code)).toHaveLength(1);
    });

    test('a fix keeps CRLF and tabs', async () => {
        const text = client.text(listen).replace(/^ +/gm, blanks => '\t'.repeat(blanks.length / 2)).replace(/\n/g, '\r\n');
        await client.open(listen, text);
        await client.edit(listen, 'Ring the {hand-bell}.', 'Ring the {hand-bell} or a {glass-bottle}.');
        const [action] = await offers(listen, 'not-in-materials');
        await client.apply(action!.edit!);
        expect(client.text(listen)).toMatch(/\r\n\t\tglass-bottle\b/);
        expect(client.text(listen).replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    });
});
