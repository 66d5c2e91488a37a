import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { done, firstStepIds, openStep, showFirstSteps } from './first-steps-page.js';
import type { EditorOptions } from './harness.js';
import { openBrief, session } from './session.js';
import { until } from './until.js';

let empty = '';
beforeAll(async () => {
    empty = join(await mkdtemp(join(tmpdir(), 'haversack-steps-')), 'my-programme');
    await mkdir(empty);
});
afterAll(() => rm(resolve(empty, '..'), { recursive: true, force: true }));

describe('somebody takes the first steps from an empty folder', () => {
    const fresh = session({ get folder() { return empty; } } as Partial<EditorOptions>);

    it('sees all steps, none done', async () => {
        const editor = fresh();
        await showFirstSteps(editor);
        for (const id of firstStepIds) {
            await openStep(editor, id);
            await editor.screenshot(`first-steps-${id}`);
        }
        expect(await done(editor)).toEqual([]);
    });

    it('starts a programme by the step’s button', async () => {
        const editor = fresh();
        await openStep(editor, 'start');
        await editor.page.getByRole('button', { name: 'Start a new programme' }).click();
        await editor.code.ready('stones-1.lesson');
        await editor.problems.waitForCounts(0);
        await showFirstSteps(editor);
        await until('the step', () => done(editor), ids => ids.includes('start'));
        expect(await done(editor)).toEqual(['start']);
    });

    it('writes, makes a mistake and mends it', async () => {
        const editor = fresh();
        await editor.openFile('stones-1.lesson');
        await editor.code.goToLine(11, 5);
        expect(await editor.code.lineText(11)).toContain('clay');
        await editor.code.press('Delete');
        await editor.code.typeText('q');
        await editor.code.press('Escape');
        await until('an error', () => editor.problems.counts(), ({ errors }) => errors > 0);
        // What is mended at once was no mistake that anybody saw: it stands a while.
        await editor.page.waitForTimeout(2000);
        await editor.code.goToLine(11, 6);
        await editor.code.press('Shift+Alt+Period');
        await editor.problems.waitForCounts(0);
        expect(await editor.code.lineText(11)).toContain('clay');
        await showFirstSteps(editor);
        expect(await until('the steps', () => done(editor), ids => ids.length >= 3)).toEqual(['start', 'write', 'mend']);
    });

    it('reads the brief, goes there and back by the keyboard', async () => {
        const editor = fresh();
        await editor.openFile('stones-1.lesson');
        await editor.code.goToLine(11, 5);
        await openBrief(editor);
        const inBrief = (): Promise<boolean> => editor.page.evaluate(() => document.activeElement?.tagName === 'IFRAME');
        expect(await inBrief()).toBe(false);
        const go = async (): Promise<void> => {
            await editor.page.keyboard.press('Control+k');
            await editor.page.keyboard.press('Shift+b');
        };
        await go();
        await until('the keyboard in the brief', inBrief, is => is);
        await editor.page.keyboard.press('Tab');
        await until('a control', () => editor.webview().locator(':focus').getAttribute('id'), id => id === 'show-week');
        await editor.screenshot('first-steps-brief-focus');
        await go();
        await until('the keyboard in the text', () => editor.page.locator('.monaco-editor.focused').count(), count => count === 1);
        expect(await editor.page.locator('#status\\.editor\\.selection').innerText()).toContain('Ln 11, Col 5');
    });

    it('prints by a download, where the editor itself runs in a browser, and may save the page instead', async () => {
        const editor = fresh();
        const [download] = await Promise.all([editor.page.waitForEvent('download'), editor.webview().getByRole('button', { name: 'Print' }).click()]);
        expect(download.suggestedFilename()).toMatch(/^week-1-.*\.html$/);
        expect(await readFile(await download.path(), 'utf8')).toContain('Story stones');
        const offer = await editor.notification(/Your browser downloads the page/);
        await editor.screenshot('first-steps-print');
        await offer.getByRole('button', { name: 'Save as a file' }).click();
        await until('the name of the file', async () => editor.page.locator('.quick-input-widget input').first().inputValue(), value => value.endsWith('week-1.html'));
        await editor.page.keyboard.press('Enter');
        await until('the file', () => readFile(join(editor.folder, 'week-1.html'), 'utf8'), text => text.includes('</html>'));
        await showFirstSteps(editor);
        await until('the steps', () => done(editor), ids => ids.includes('print'));
        expect(await done(editor)).toEqual(['start', 'write', 'mend', 'read', 'print']);
    });

    it('gathers the things of the week, and is through', async () => {
        const editor = fresh();
        await openStep(editor, 'gather');
        await editor.page.getByRole('button', { name: 'Show the things of the week' }).click();
        const stones = editor.page.locator('.pane-body .monaco-list-row').filter({ hasText: 'Story stones' });
        await stones.getByRole('checkbox').click();
        await showFirstSteps(editor);
        await until('the steps', () => done(editor), ids => ids.length === firstStepIds.length);
        await editor.screenshot('first-steps-done');
    });
});

describe('the paper', () => {
    const onLetter = session({ settings: { 'haversack.paper': 'letter' } });

    it('is that of the setting, from one save to the next', async () => {
        const editor = onLetter();
        await editor.openFile('shake-1.lesson');
        await editor.code.codeLenses();
        const saved = async (name: string, accept: (text: string) => boolean): Promise<void> => {
            await editor.runCommand('Haversack: Save the brief as a file');
            const input = editor.page.locator('.quick-input-widget input').first();
            await until('the name of the file', () => input.inputValue(), value => value.endsWith('.html'));
            await input.fill(join(editor.folder, name));
            await editor.page.keyboard.press('Enter');
            await until('the file', async () => accept(await readFile(join(editor.folder, name), 'utf8')), right => right);
        };
        await saved('one.html', text => text.includes('@page { size: letter; }'));
        await mkdir(join(editor.folder, '.vscode'), { recursive: true });
        await writeFile(join(editor.folder, '.vscode/settings.json'), '{ "haversack.paper": "a4", "haversack.codeLenses": false }');
        await editor.code.focus();
        await until('no lens', () => editor.page.locator('.codelens-decoration a').count(), count => count === 0);
        await saved('two.html', text => text.includes('@page { size: A4; }'));
    });
});

describe('a folder that is not trusted', () => {
    const restricted = session({ trust: 'restricted', settings: { 'haversack.severities': { 'unused-need': 'hint' } } });

    it('cannot switch problems off by settings of its own', async () => {
        const editor = restricted();
        await mkdir(join(editor.folder, '.vscode'), { recursive: true });
        await writeFile(join(editor.folder, '.vscode/settings.json'), '{ "haversack.severities": { "unknown-name": "off" } }');
        await editor.openFile('shake-1.lesson');
        await editor.code.goToLine(14, 40);
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('triangle-bell 1 per pair');
        await editor.code.press('Escape');
        // Not the error of a name half typed.
        const list = await editor.problems.list(found => found.some(({ message }) => message.includes("'triangle-bell'")));
        expect(list.filter(({ severity }) => severity === 'error')).toMatchObject([{ message: "Lesson shake-1 needs 'triangle-bell', which is not in any inventory." }]);
    });

    it('has printing and the first steps', async () => {
        const editor = restricted();
        await Promise.all([editor.page.waitForEvent('download'), editor.runCommand('Haversack: Print the brief, the term or the changes')]);
        await openStep(editor, 'read');
        await editor.screenshot('first-steps-restricted');
    });
});

describe.each([
    ['dark', 'Default Dark Modern'], ['high-contrast', 'Default High Contrast'], ['high-contrast-light', 'Default High Contrast Light']
])('in the %s theme', (name, theme) => {
    const themed = session({ settings: { 'workbench.colorTheme': theme } });

    it('pictures take the colours of the editor', async () => {
        const editor = themed();
        for (const id of ['mend', 'read', 'gather']) {
            await openStep(editor, id);
            await editor.screenshot(`first-steps-${id}-${name}`);
        }
        const card = editor.webview().locator('svg rect').first();
        const page = editor.page.locator('.editor-group-container .editor-container').first();
        const background = (locator: Locator, of: 'fill' | 'backgroundColor'): Promise<string> => locator.evaluate((element, property) => getComputedStyle(element)[property], of);
        // The editor may load the picture anew meanwhile.
        await until('the colour of the page in the picture', async () => [await background(card, 'fill'), await background(page, 'backgroundColor')], ([drawn, behind]) => drawn === behind);
    });
});
