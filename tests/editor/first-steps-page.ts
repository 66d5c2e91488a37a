import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { repository } from './session.js';
import { until } from './until.js';
import type { Workbench } from './workbench.js';

const { contributes: { walkthroughs: [{ steps }] } } = JSON.parse(await readFile(join(repository, 'extension/package.json'), 'utf8')) as { contributes: { walkthroughs: [{ steps: { id: string }[] }] } };

/** All steps of the walkthrough, in order. */
export const firstStepIds = steps.map(({ id }) => id);

export const showFirstSteps = (editor: Workbench): Promise<void> => editor.runCommand('Haversack: Show the first steps');
const stepOf = (editor: Workbench, id: string): Locator => editor.page.locator(`.gettingStartedContainer [data-step-id$="#${id}"]`);

/** The steps that have their tick. */
export async function done(editor: Workbench): Promise<string[]> {
    const ticked = await Promise.all(firstStepIds.map(async id => ((await stepOf(editor, id).locator('.codicon.complete').count()) > 0 ? id : '')));
    return ticked.filter(id => id !== '');
}

/** Opens the first steps at one of them, and waits until its picture is there. */
export async function openStep(editor: Workbench, id: string): Promise<void> {
    const step = stepOf(editor, id);
    if (!await step.isVisible()) await showFirstSteps(editor);
    await step.waitFor();
    if (!(await step.getAttribute('class'))?.includes('expanded')) await step.click();
    await until(`the step ${id} open`, async () => await step.getAttribute('class') ?? '', names => names.includes('expanded'));
    await until(`the picture of ${id}`, () => editor.webview().locator('svg').isVisible(), is => is);
}
