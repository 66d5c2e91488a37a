import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { Editor, type EditorOptions } from './harness.js';
import type { Workbench } from './workbench.js';

export const repository = resolve(fileURLToPath(new URL('../..', import.meta.url)));
const extension = join(repository, '.build/haversack.vsix');
export const firstSteps = join(repository, 'examples/first-steps');

/** Tests in a describe block are one writer's session: each goes on where the one before it stopped. */
export function session(options: Partial<EditorOptions> = {}): () => Editor {
    let editor: Editor | undefined;
    beforeAll(async () => {
        if (!existsSync(extension)) throw new Error(`${extension} is missing. Run "npm run package" first.`);
        editor = await Editor.open({ extension, folder: firstSteps, ...options });
    });
    afterEach(async context => {
        if (context.task.result?.state === 'fail') await editor?.screenshot(`failed ${context.task.name}`.replaceAll(/[^a-z0-9]+/gi, '-'));
    });
    afterAll(async () => {
        const errors = editor?.pageErrors ?? [];
        await editor?.stop();
        expect(errors).toEqual([]);
    });
    return () => editor!;
}

export const brief = (editor: Workbench): Locator => editor.webview().locator('#brief');

/** The amount that the brief gives for a thing in a lesson. */
export function amountOf(editor: Workbench, thing: string, lesson = 'shake-1'): Promise<string> {
    return brief(editor).locator(`#lesson-${lesson} .uses .thing`).filter({ hasText: thing }).locator('.figure .amount').innerText();
}

export async function openBrief(editor: Workbench): Promise<void> {
    await editor.code.press('Control+k');
    await editor.page.keyboard.press('b');
    await brief(editor).locator('h1').waitFor();
}
