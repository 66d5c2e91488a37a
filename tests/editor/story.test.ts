import { existsSync } from 'node:fs';
// import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Editor, type EditorOptions } from './harness.js';
import { until } from './until.js';

const repository = resolve(fileURLToPath(new URL('../..', import.meta.url)));
const extension = join(repository, '.build/haversack.vsix');
const firstSteps = join(repository, 'examples/first-steps');

/** Tests in a describe block are one writer's session: each goes on where the one before it stopped. */
function session(options: Partial<EditorOptions> = {}): () => Editor {
    let editor: Editor | undefined;
    beforeAll(async () => {
        if (!existsSync(extension)) throw new Error(`${extension} is missing. Run "npm run package" first.`);
        editor = await Editor.open({ extension, folder: firstSteps, ...options });
    });
    afterEach(async context => {
        if (context.task.result?.state === 'fail') await editor?.screenshot(`failed ${context.task.name}`.replaceAll(/[^a-z0-9]+/gi, '-'));
    });
    afterAll(async () => {
        try {
            expect(editor?.pageErrors ?? []).toEqual([]);
        } finally {
            await editor?.stop();
        }
    });
    return () => editor!;
}

describe('a writer changes a lesson', () => {
    const editor = session();

    it('sees no problem in the example', async () => {
        await editor().openFile('shake-1.lesson');
        await editor().problems.waitForCounts(0);
        await editor().screenshot('lesson');
    });

    it('sees at once that no inventory holds a thing, and mends it', async () => {
        const { code, problems, help } = editor();
        await code.goToLine(15, 40);
        await code.press('End');
        await code.press('Enter');
        await code.typeText('triangle-bell 1 per pair');
        await code.press('Escape');
        const [problem] = await problems.list(list => list.some(({ severity }) => severity === 'error'));
        expect(problem).toMatchObject({ file: 'shake-1.lesson', line: 16 });
        expect(problem!.message).toContain('triangle-bell');
        await editor().screenshot('problem');
        const titles = await help.quickFixes();
        console.log(problem, titles);
    });
});
