import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';
import { planProgramme } from './plan-programme.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: planProgramme, today: '2026-09-07' }); });
afterAll(() => client.stop());

const lesson = 'weigh.lesson';
const course = 'weighing.course';
const short = 'short-at-meeting';
const is = (file: string, code: string): boolean => client.codes(file).includes(code);

async function fixesAt(file: string, code: string): Promise<CodeAction[]> {
    const diagnostic = client.problems(file).find(problem => problem.code === code)!;
    return client.connection.sendRequest('textDocument/codeAction', { textDocument: { uri: client.uri(file) }, range: diagnostic.range, context: { diagnostics: [diagnostic] } });
}

describe('problems of the plan', () => {
    beforeEach(async () => {
        await client.open(lesson, planProgramme[lesson]);
        await client.open(course, planProgramme[course]);
        await client.until('no problem of the plan', () => !is(lesson, short));
    });

    test('a programme without any has none', () => {
        expect([lesson, course, 'things.kit'].flatMap(file => client.codes(file))).toEqual([]);
    });

    test('come when typing rests, in the file where they are mended, and go again', async () => {
        await client.edit(course, 'kits weighing-box 4', 'kits weighing-box 3');
        await client.until('the lesson to be short of cubes', () => is(lesson, short));
        const problem = client.problems(lesson).find(({ code }) => code === short)!;
        expect(problem).toMatchObject({ severity: 2, message: 'Harbour co-op is short of 20 gram cubes on Mon 14 Sep: 80 needed, 60 at hand.' });
        expect(client.inRange(lesson, problem.range)).toBe('gram-cube  20 per pair  in kit');
        await client.edit(course, 'kits weighing-box 3', 'kits weighing-box 4');
        await client.until('the lesson to be content again', () => client.problems(lesson).length === 0);
    });

    test('stay with their lines while somebody types above them', async () => {
        await client.edit(course, 'kits weighing-box 4', 'kits weighing-box 3');
        await client.until('the lesson to be short of cubes', () => is(lesson, short));
        await client.edit(lesson, 'lesson weigh-1', '# One more line.\nlesson weigh-1');
        await client.settled();
        const problem = client.problems(lesson).find(({ code }) => code === short)!;
        expect(client.inRange(lesson, problem.range)).toBe('gram-cube  20 per pair  in kit');
    });

    test('have quick fixes, and each of them mends', async () => {
        await client.edit(course, 'kits weighing-box 4', 'kits weighing-box 3');
        await client.until('the lesson to be short of cubes', () => is(lesson, short));
        const titles = (await fixesAt(lesson, short)).map(({ title }) => title);
        expect(titles).toEqual([
            "Let 'bean' do as well", "There are 4 of the kit 'weighing-box', not 3", "They are there: note 'gram-cube 20' on hand in class 'harbour'",
            "It is ordered: note 'gram-cube 20 arriving 2026-09-14' in class 'harbour'"
        ]);
        for (const title of titles) {
            const fix = (await fixesAt(lesson, short)).find(one => one.title === title)!;
            const before = { [lesson]: client.text(lesson), [course]: client.text(course) };
            await client.apply(fix.edit!);
            await client.until(`no shortage after: ${title}`, () => !is(lesson, short));
            for (const [file, text] of Object.entries(before)) await client.change(file, text);
            await client.until('the shortage to be back', () => is(lesson, short));
        }
    });

    test('are as serious as the settings say', async () => {
        await client.edit(course, 'kits weighing-box 4', 'kits weighing-box 3');
        await client.until('the lesson to be short of cubes', () => is(lesson, short));
        const set = (severities: object): Promise<void> => client.connection.sendNotification('workspace/didChangeConfiguration', { settings: { haversack: { severities } } });
        await set({ [short]: 'error' });
        await client.until('the shortage to be an error', () => client.problems(lesson).some(({ code, severity }) => code === short && severity === 1));
        await set({ [short]: 'off' });
        await client.until('the shortage to be off', () => !is(lesson, short));
        await set({});
        await client.until('the shortage to be back', () => is(lesson, short));
    });
});
