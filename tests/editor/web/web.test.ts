/** The extension in VS Code for the web, at the oldest version that it supports: the server in a worker, the files of a folder that lies on no disk. */
import { describe, expect, it } from 'vitest';
import { amountOf, brief, openBrief } from '../session.js';
import { until } from '../until.js';
import { webSession } from './web-editor.js';

const lessonFile = 'lessons/shake-1.lesson';

describe('a writer in a browser', () => {
    const web = webSession();

    it('opens the example without a problem', async () => {
        const editor = web();
        await editor.openFile(lessonFile);
        await editor.problems.waitForCounts(0);
        expect(await editor.code.lineText(1)).toBe('lesson shake-1 "Dancing rice"');
        // What an amount comes to for the whole class stands behind its line: the inventory and the class in other files are read.
        await editor.code.lineText(13, text => text.includes('6'));
        await editor.screenshot('web-lesson');
    });

    it('sees at once that no inventory holds a thing, and mends it with one key', async () => {
        const editor = web();
        await editor.code.goToLine(14, 40);
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('triangle-bell 1 per pair');
        await editor.code.press('Escape');
        await until('the underline', () => editor.code.squiggles(), ({ errors }) => errors === 1);
        // Not the error of a name half typed.
        const list = await editor.problems.list(found => found.some(({ message }) => message.includes("'triangle-bell'")));
        expect(list.filter(({ severity }) => severity === 'error')).toMatchObject([{ file: 'shake-1.lesson', line: 15, message: "Lesson shake-1 needs 'triangle-bell', which is not in any inventory." }]);
        await editor.screenshot('web-problem');
        await editor.code.goToLine(15, 6);
        expect(await editor.help.quickFixes()).toContain("Add 'triangle-bell' to the inventory");
        await editor.code.press('Shift+Alt+Period');
        await until('the error to be gone', () => editor.problems.counts(), ({ errors }) => errors === 0);
    });

    it('reads amounts for the class in the brief, which follows a keystroke', async () => {
        const editor = web();
        await editor.runCommand('View: Toggle Panel Visibility');
        await editor.code.goToLine(13, 19);
        await openBrief(editor);
        expect(await brief(editor).locator('h1').innerText()).toMatch(/^Week \d+ of \d+$/);
        // 5 learners are 3 pairs: 2 spoons a pair.
        expect(await amountOf(editor, 'Wooden spoons')).toBe('6');
        await editor.code.goToLine(13, 19);
        await editor.code.press('Delete');
        await editor.code.typeText('4');
        await until('4 spoons a pair', () => amountOf(editor, 'Wooden spoons'), amount => amount === '12');
        expect(await editor.webview().locator('#says').innerText()).toBe('');
        await editor.screenshot('web-brief');
    });

    it('is led from the brief to the line', async () => {
        const editor = web();
        await brief(editor).locator('#lesson-shake-1 .uses .thing').filter({ hasText: 'Cling film' }).locator('button.lead').first().click();
        await until('the cursor at its line', () => editor.page.locator('#status\\.editor\\.selection').innerText(), at => at.startsWith('Ln 11,'));
    });

    it('gives a thing another name in all files', async () => {
        const editor = web();
        await editor.code.goToLine(12, 6);
        await editor.code.press('F2');
        const input = editor.page.locator('.rename-box input');
        await input.fill('dry-rice');
        await input.press('Enter');
        await editor.code.lineText(12, text => text.includes('dry-rice'));
        await editor.problems.waitForCounts(0);
        await editor.runCommand('File: Save All Files');
        await until('the inventory with the new name', () => Promise.resolve(editor.server.text('inventory.kit')), text => text.includes('dry-rice'));
        expect(editor.server.text('programme.course')).toContain('dry-rice');
        await editor.screenshot('web-renamed');
    });

    it('sees what somebody else changes: a file, a new folder, a folder that goes', async () => {
        const editor = web();
        const inventory = editor.server.text('inventory.kit');
        editor.server.changeOutside('inventory.kit', inventory.replaceAll('cling-film', 'thin-film'));
        await until('the missing thing', () => editor.problems.counts(), ({ errors }) => errors > 0);
        editor.server.changeOutside('more/cupboard.kit', 'material cling-film "Cling film"\n  consumable\n  measured in m\n  from shop\n');
        await until('the thing to be found in a new folder', () => editor.problems.counts(), ({ errors }) => errors === 0);
        editor.server.changeOutside('more', undefined);
        await until('the thing to be missed', () => editor.problems.counts(), ({ errors }) => errors > 0);
        editor.server.changeOutside('inventory.kit', inventory);
        await editor.problems.waitForCounts(0);
    });

    it('saves the brief as a page', async () => {
        const editor = web();
        await editor.runCommand('Haversack: Save the brief as a file');
        const input = editor.page.locator('.quick-input-box input');
        const name = await until('the name of the file', () => input.inputValue(), value => /week-\d+\.html$/.test(value));
        await editor.page.keyboard.press('Enter');
        const page = await until('the page', () => Promise.resolve(editor.server.text(name.slice('/first-steps/'.length))), text => text.includes('</html>'));
        expect(page).toContain('Wooden spoons');
        expect(page).not.toContain('<script');
    });

    it('has the checks again after the worker has died', async () => {
        const editor = web();
        const workers = editor.page.workers();
        const names = await Promise.all(workers.map(worker => worker.evaluate(() => self.name).catch(() => '')));
        const ours = names.findIndex(name => name.includes('haversack-'));
        expect(ours, names.join()).toBeGreaterThanOrEqual(0);
        await workers[ours]!.evaluate(() => self.close());
        await until('another worker', async () => {
            const now = await Promise.all(editor.page.workers().map(worker => worker.evaluate(() => self.name).catch(() => '')));
            return now.filter(name => name.includes('haversack-') && name !== names[ours]);
        }, found => found.length === 1);
        await editor.code.goToLine(13, 19);
        await editor.code.press('Delete');
        await editor.code.typeText('2');
        await until('2 spoons a pair', () => amountOf(editor, 'Wooden spoons'), amount => amount === '6');
        expect(await editor.notifications()).toEqual([]);
    });

    it('starts the server again by the command', async () => {
        const editor = web();
        await editor.runCommand('Haversack: Read all files again');
        await editor.code.goToLine(13, 19);
        await editor.code.press('Delete');
        await editor.code.typeText('3');
        await until('3 spoons a pair', () => amountOf(editor, 'Wooden spoons'), amount => amount === '9');
    });
});

describe('a class with a calendar, in a browser', () => {
    const calendar = (date: string): string => `BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:x\r\nSUMMARY:Hall is painted\r\nDTSTART;VALUE=DATE:${date}\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n`;
    const web = webSession({ files: { 'calendars/town.ics': calendar('20261010') } });

    it('names it, and its day off is kept', async () => {
        const editor = web();
        await editor.openFile('programme.course');
        await editor.problems.waitForCounts(0);
        await editor.runCommand('Haversack: Open the whole term');
        await brief(editor).locator('h1').waitFor();
        expect(await brief(editor).innerText()).not.toContain('Hall is painted');
        await editor.code.goToLine(65, 3);
        expect(await editor.code.lineText(65)).toContain('off 2026-10-24');
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('off from "calendars/town.ics');
        await editor.code.press('Escape');
        await until('the day off', () => brief(editor).innerText(), text => text.includes('Hall is painted'));
        await editor.screenshot('web-term');
    });

    it('follows the calendar when somebody else changes it', async () => {
        const editor = web();
        editor.server.changeOutside('calendars/town.ics', calendar('20261017').replace('Hall is painted', 'Market day'));
        await until('the other day off', () => brief(editor).innerText(), text => text.includes('Market day') && !text.includes('Hall is painted'));
    });
});
