import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Editor } from './harness.js';
import { amountOf, brief, openBrief, session } from './session.js';
import { until } from './until.js';

const cursorLine = (editor: Editor): Promise<string> => editor.page.locator('#status\\.editor\\.selection').innerText();
const marked = (editor: Editor): Locator => brief(editor).locator('[aria-current]');

describe('a writer changes a lesson', () => {
    const session1 = session();

    it('sees no problem in the example', async () => {
        const editor = session1();
        await editor.openFile('shake-1.lesson');
        await editor.problems.waitForCounts(0);
        expect(await editor.code.lineText(1)).toBe('lesson shake-1 "Dancing rice"');
        await editor.screenshot('lesson');
    });

    it('sees at once that no inventory holds a thing', async () => {
        const editor = session1();
        await editor.code.goToLine(14, 40);
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('triangle-bell 1 per pair');
        await editor.code.press('Escape');
        // Not the error of a name half typed.
        const list = await editor.problems.list(found => found.some(({ message }) => message.includes("'triangle-bell'")));
        expect(list.filter(({ severity }) => severity === 'error')).toMatchObject([{ file: 'shake-1.lesson', line: 15, message: "Lesson shake-1 needs 'triangle-bell', which is not in any inventory." }]);
        await editor.screenshot('problem');
    });

    it('mends it with one key', async () => {
        const editor = session1();
        await editor.code.goToLine(15, 6);
        expect(await editor.help.quickFixes()).toContain("Add 'triangle-bell' to the inventory");
        // The editor's own key for the preferred mend at the cursor.
        await editor.code.press('Shift+Alt+Period');
        await until('the error to be gone', () => editor.problems.counts(), ({ errors }) => errors === 0);
        await editor.screenshot('mended');
    });

    it('opens the brief beside the text and reads amounts for the class', async () => {
        const editor = session1();
        await editor.runCommand('View: Toggle Panel Visibility');
        await editor.code.goToLine(13, 19);
        await openBrief(editor);
        expect(await brief(editor).locator('h1').innerText()).toMatch(/^Week \d+ of \d+$/);
        // 5 learners are 3 pairs: 2 spoons a pair.
        expect(await amountOf(editor, 'Wooden spoons')).toBe('6');
        expect(await amountOf(editor, 'Triangle bell')).toBe('3');
        expect(await editor.webview().locator('#says').innerText()).toBe('');
        await editor.screenshot('brief');
    });

    it('sees the figure change as it is typed', async () => {
        const editor = session1();
        await editor.code.goToLine(13, 19);
        await editor.code.press('Delete');
        await editor.page.evaluate(() => window.addEventListener('keydown', () => { document.body.dataset.key = String(Date.now()); }, { capture: true }));
        await brief(editor).evaluate(main => new MutationObserver(() => {
            if (main.querySelector('#lesson-shake-1 .uses')?.textContent?.includes('12')) main.dataset.changed ??= String(Date.now());
        }).observe(main, { subtree: true, characterData: true, childList: true }));
        await editor.code.typeText('4');
        await until('the new figure', () => amountOf(editor, 'Wooden spoons'), amount => amount === '12');
        const key = await editor.page.evaluate(() => Number(document.body.dataset.key));
        const changed = await brief(editor).evaluate(main => Number(main.dataset.changed));
        // Told, not judged: 150 ms is what is aimed at, and the benchmark measures it.
        console.log(`The brief changed ${changed - key} ms after the key.`);
        expect(changed - key).toBeGreaterThan(0);
        await editor.screenshot('changed');
    });

    it('keeps the last good brief while a line cannot be read, and says so', async () => {
        const editor = session1();
        await editor.code.goToLine(13, 19);
        await editor.code.typeText('four ');
        await until('the words above the brief', () => editor.webview().locator('#says').innerText(), says => says.includes('error in this file'));
        expect(await brief(editor).locator('.lesson').count()).toBeGreaterThan(0);
        // What could be read of the line still counts.
        await until('the amount that can be read', () => amountOf(editor, 'Wooden spoons'), amount => amount === '12');
        await editor.screenshot('stale');
        for (let letter = 0; letter < 5; letter++) await editor.code.press('Backspace');
        await until('the words to go', () => editor.webview().locator('#says').innerText(), says => says === '');
        expect(await amountOf(editor, 'Wooden spoons')).toBe('12');
    });

    it('finds the item of the cursor marked and in view', async () => {
        const editor = session1();
        await editor.code.goToLine(26);
        await until('the mark at the cursor\'s line', () => marked(editor).innerText(), text => text.includes('What moved the rice'));
        const box = await marked(editor).boundingBox();
        expect(box!.y).toBeGreaterThan(0);
        expect(box!.y + box!.height).toBeLessThan(1000);
        await editor.screenshot('cursor');
    });

    it('is led back to the line by a click', async () => {
        const editor = session1();
        const step = brief(editor).locator('.step', { hasText: 'They all tremble while they sound.' }).last();
        await step.locator('.prose').last().click();
        await until('the cursor at the line', async () => editor.code.lineText(Number(/Ln (\d+)/.exec(await cursorLine(editor))![1])), text => text.includes('They all tremble while they sound.'));
        const thing = brief(editor).locator('#fetch .thing').first();
        const title = await thing.locator('.head button').innerText();
        const week = await brief(editor).locator('h1').innerText();
        await thing.locator('button.lead').first().click();
        await editor.page.locator('.editor-group-container.active .tab.active', { hasText: 'inventory.kit' }).waitFor();
        const line = Number(/Ln (\d+)/.exec(await cursorLine(editor))![1]);
        expect(await editor.code.lineText(line)).toContain(`"${title}"`);
        await until('the mark at what was clicked', () => marked(editor).locator('.head').innerText(), text => text.startsWith(title));
        expect(await brief(editor).locator('h1').innerText()).toBe(week);
        await editor.screenshot('led-back');
    });

    it('keeps a fold open and the page where it is while typing', async () => {
        const editor = session1();
        await editor.openFile('shake-1.lesson');
        await editor.code.goToLine(12, 19);
        const fold = brief(editor).locator('#lesson-shake-1 .uses details').nth(2);
        await fold.locator('summary').click();
        const top = (await fold.boundingBox())!.y;
        await editor.code.press('End');
        await editor.code.press('Home');
        await editor.code.goToLine(10, 19);
        await editor.code.press('Delete');
        await editor.code.typeText('2');
        await until('the new figure', () => amountOf(editor, 'Mixing bowls'), amount => amount === '6');
        expect(await fold.getAttribute('open')).toBe('');
        expect(Math.abs((await fold.boundingBox())!.y - top)).toBeLessThan(30);
    });

    it('is offered names in prose after a brace', async () => {
        const editor = session1();
        await editor.code.goToLine(21, 400);
        await editor.code.press('End');
        await editor.code.typeText(' Ring the {tria');
        expect(await editor.help.completions(labels => labels.includes('triangle-bell'))).toContain('triangle-bell');
        await editor.help.complete('triangle-bell');
        expect(await editor.code.lineText(21)).toContain('{triangle-bell}');
    });

    it('reads facts in the hover', async () => {
        const editor = session1();
        const hover = await editor.help.hoverText(11, 8);
        expect(hover).toMatch(/Cling film/);
        await editor.screenshot('hover');
    });

    it('renames a thing everywhere, in prose too', async () => {
        const editor = session1();
        await editor.code.goToLine(15, 8);
        await editor.code.press('F2');
        const box = editor.page.locator('.rename-box input.rename-input, .rename-box input');
        await box.first().waitFor();
        await box.first().fill('small-triangle');
        await box.first().press('Enter');
        await until('the new name in the materials', () => editor.code.lineText(15), text => text.includes('small-triangle 1 per pair'));
        expect(await editor.code.lineText(21)).toContain('{small-triangle}');
        await until('no error', () => editor.problems.counts(), ({ errors }) => errors === 0);
    });

    it('goes to another week and stays there, and follows the text again', async () => {
        const editor = session1();
        const page = editor.webview();
        const week = await brief(editor).locator('h1').innerText();
        await page.locator('#next').click();
        await until('another week', () => brief(editor).locator('h1').innerText(), text => text !== week);
        expect(await page.locator('#stay').isChecked()).toBe(true);
        await editor.screenshot('next-week');
        await page.locator('#stay').uncheck();
        await until('the week of the text', () => brief(editor).locator('h1').innerText(), text => text === week);
    });
});
