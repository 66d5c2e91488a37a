/** What a teacher does in VS Code for the web, beside writing and reading: trees, paper, another class, a spreadsheet, the first steps. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Download } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { done, firstStepIds, openStep, showFirstSteps } from '../first-steps-page.js';
import { brief, openBrief, repository } from '../session.js';
import { box, description, goToWeek, isTicked, openTrees, position, programme, row, rows, statusItem, week } from '../tree-views.js';
import { until } from '../until.js';
import { webSession, type WebEditor } from './web-editor.js';

const sheet = await readFile(join(repository, 'tests/importing/co-op-inventory.csv'));
/** A second class, its own course with practice, and a calendar that it names. */
const family = {
    'calendars/town.ics': 'BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:x\r\nSUMMARY:Hall is painted\r\nDTSTART;VALUE=DATE:20261005\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n',
    'names.lesson': 'lesson names-1 "Long names"\n  practice say "Say it" 4 items\n    name numbers 411 to 499 in words\n    fives and tens 6 to 20\n',
    'year.course': 'course year "Numbers"\n  unit one "First"\n    names-1\n\nclass hill "The family on the hill"\n  teaches year\n  learners 4\n  starts 2026-10-05\n  meets mon\n  off from "calendars/town.ics"\n'
};
const asWritten = ['listen-1', 'listen-2', 'shake-1', 'shake-2', 'pitch-1', 'travel-1', 'travel-2', 'concert-1'];
const lessonsOf = (course: string): string[] => [...course.matchAll(/^ {4}((?:listen|shake|pitch|travel|concert)-\d)\r?$/gm)].map(([, name]) => name!);

const saved = (editor: WebEditor, path: string, accept: (text: string) => boolean): Promise<string> => until(path, () => Promise.resolve(editor.server.text(path)), accept);
const fileNamed = (editor: WebEditor, end: string): Promise<string> => until(`a file ${end}`, () => editor.page.locator('.quick-input-widget .quick-input-box input').inputValue(), value => value.endsWith(end));

/** Prints, and reads the page that the browser downloads. */
async function printed(editor: WebEditor, print: () => Promise<void>): Promise<{ name: string; html: string }> {
    const [download] = await Promise.all([editor.page.waitForEvent('download'), print()]) as [Download, void];
    await editor.notification(/Your browser downloads the page/);
    return { name: download.suggestedFilename(), html: await readFile(await download.path(), 'utf8') };
}

describe('a teacher at work in a browser', () => {
    const web = webSession({ files: family });

    it('finds the programme as a tree, and ticks things off by mouse and by the space bar', async () => {
        const editor = web();
        await openTrees(editor);
        const found = await until('the lessons', () => rows(programme(editor)), all => all.some(one => /^Dancing rice \| .*week 3/.test(one)) && all.some(one => /^Long names \| .*Mon 12 Oct/.test(one)));
        expect(found[0]).toBe('The Cupboard Orchestra | Saturday group in the attic · 8 lessons');
        await goToWeek(editor, 3);
        await until('the things', () => rows(week(editor)), all => all.includes('3 · Mixing bowls | Sat 17 Oct'));
        await box(row(week(editor), 'Mixing bowls')).click();
        await until('one gathered', () => description(week(editor)), told => told.startsWith('1 of '));
        await row(week(editor), 'Wooden spoons').click();
        await editor.page.locator('.tab.active', { hasText: 'inventory.kit' }).waitFor();
        await week(editor).locator('.monaco-list:focus .monaco-list-row.focused', { hasText: 'Wooden spoons' }).waitFor();
        await editor.page.keyboard.press('Space');
        await until('two gathered', () => description(week(editor)), told => told.startsWith('2 of '));
        await until('the ticks', async () => [await isTicked(row(week(editor), 'Mixing bowls')), await isTicked(row(week(editor), 'Wooden spoons'))], ticked => ticked.every(Boolean));
        await until('the week in the status bar', () => statusItem(editor).innerText(), text => /Week 3 · \d+ min/.test(text));
        await editor.screenshot('web-trees');
    });

    it('drags a lesson to another place, and takes it back', async () => {
        const editor = web();
        await row(programme(editor), 'Dancing rice').dragTo(row(programme(editor), 'Where does it come from?'));
        await editor.page.locator('.tab.active.dirty', { hasText: 'programme.course' }).waitFor();
        await until('the other order', () => rows(programme(editor)), all => position(all, 'Dancing rice') < position(all, 'Where does it come from?'));
        await editor.screenshot('web-dragged');
        await editor.code.press('Control+z');
        await until('the order as it was', () => rows(programme(editor)), all => position(all, 'Dancing rice') > position(all, 'Making sounds'));
        await editor.save();
        await saved(editor, 'programme.course', text => lessonsOf(text).join() === asWritten.join());
    });

    it('moves a lesson by the keyboard, and takes it back', async () => {
        const editor = web();
        await row(programme(editor), 'A box that sings').click();
        await editor.page.locator('.tab.active', { hasText: 'shake-2.lesson' }).waitFor();
        await programme(editor).locator('.monaco-list:focus .monaco-list-row.focused', { hasText: 'A box that sings' }).waitFor();
        await editor.page.keyboard.press('Alt+ArrowUp');
        await until('one further up', () => rows(programme(editor)), all => position(all, 'A box that sings') < position(all, 'Dancing rice'));
        await until('the keyboard still with it', () => programme(editor).locator('.monaco-list-row.focused .label-name').innerText(), label => label === 'A box that sings');
        await editor.page.keyboard.press('Alt+ArrowDown');
        await until('one further down', () => rows(programme(editor)), all => position(all, 'A box that sings') > position(all, 'Dancing rice'));
        await editor.page.keyboard.press('Alt+ArrowDown');
        await until('two further down', () => rows(programme(editor)), all => position(all, 'A box that sings') > position(all, 'High water, low water'));
        await editor.code.press('Control+z');
        await until('the order as it was', () => rows(programme(editor)), all => position(all, 'A box that sings') < position(all, 'High water, low water'));
        await editor.save();
        await saved(editor, 'programme.course', text => lessonsOf(text).join() === asWritten.join());
    });

    it('chooses the class of the brief', async () => {
        const editor = web();
        await editor.openFile('names.lesson');
        await editor.code.goToLine(2);
        await openBrief(editor);
        const whose = (title: string): Promise<string> => until(`the week of ${title}`, () => brief(editor).locator('#week .course').innerText(), text => text.includes(title));
        await editor.runCommand('Haversack: Choose the class for the brief');
        await editor.quickInput.choose('Saturday group in the attic');
        await whose('Saturday group in the attic');
        await editor.runCommand('Haversack: Choose the class for the brief');
        await editor.quickInput.choose('The family on the hill');
        await whose('The family on the hill');
        await editor.screenshot('web-class');
    });

    it('saves the practice sheet, and its key beside it', async () => {
        const editor = web();
        await brief(editor).getByRole('button', { name: 'Save sheet and key' }).click();
        await editor.quickInput.choose('The items of the brief');
        await fileNamed(editor, 'names-1-practice.html');
        await editor.page.keyboard.press('Enter');
        const paper = await saved(editor, 'names-1-practice.html', text => text.includes('</html>'));
        const key = await saved(editor, 'names-1-practice-key.html', text => text.includes('</html>'));
        expect([key.includes('four hundred'), paper.includes('four hundred')]).toEqual([true, false]);
    });

    it('saves both on the device, each where it is told', async () => {
        const editor = web();
        await editor.saveOnDevice();
        await brief(editor).getByRole('button', { name: 'Save sheet and key' }).click();
        await editor.quickInput.choose('The items of the brief');
        await fileNamed(editor, 'names-1-practice.html');
        await editor.page.locator('.quick-input-widget').getByRole('button', { name: 'Show Local' }).click();
        const offer = await editor.notification(/lets nothing be written beside it/);
        await editor.screenshot('web-practice-key');
        await offer.getByRole('button', { name: 'Save its key' }).click();
        const key = await until('the key', () => editor.onDevice('names-1-practice-key.html'), text => text.includes('</html>'));
        const paper = await until('the sheet', () => editor.onDevice('names-1-practice.html'), text => text.includes('</html>'));
        expect([key.includes('four hundred'), paper.includes('four hundred')]).toEqual([true, false]);
    });

    it('prints the practice sheet and the week by downloads', async () => {
        const editor = web();
        await editor.openFile('names.lesson');
        await editor.code.goToLine(2);
        const practice = await printed(editor, async () => {
            await editor.runCommand('Haversack: Print a practice sheet or its key');
            await editor.quickInput.chooseByWords('The sheet');
        });
        expect(practice.name).toBe('names-1-practice.html');
        expect(practice.html).toContain('Long names');
        const page = await printed(editor, () => editor.webview().getByRole('button', { name: 'Print' }).click());
        expect(page.name).toMatch(/^week-\d-hill\.html$/);
        expect(page.html).toMatch(/The family on the hill[^]*print\(\)/);
        await editor.screenshot('web-printed');
        await editor.runCommand('Notifications: Clear All Notifications');
    });

    it('reads what is changed for a class, prints that, and with no brief in view the week', async () => {
        const editor = web();
        await editor.webview().locator('#class').selectOption({ label: 'Saturday group in the attic' });
        await editor.webview().locator('#show-changes').click();
        await until('the page of changes', () => brief(editor).locator('#changes').allInnerTexts(), ([told = '']) => told.includes('What is changed') && told.includes('Saturday group in the attic'));
        expect(await brief(editor).locator('#changes-made').innerText()).toContain('The room is only four metres long.');
        await editor.screenshot('web-changes');
        const changes = await printed(editor, () => editor.webview().getByRole('button', { name: 'Print' }).click());
        expect(changes.name).toBe('changes-attic.html');
        await editor.runCommand('Notifications: Clear All Notifications');
        await editor.runCommand('View: Close All Editors');
        await until('no tab', () => editor.tabs(), tabs => tabs.length === 0);
        const page = await printed(editor, () => editor.runCommand('Haversack: Print the brief, the term or the changes'));
        expect(page.name).toMatch(/^week-\d+-attic\.html$/);
        await editor.runCommand('Notifications: Clear All Notifications');
    });

    it('gives a calendar another name, and the class names it so', async () => {
        const editor = web();
        await (await editor.inExplorer('calendars/town.ics')).click();
        await editor.page.locator('.tab.active', { hasText: 'town.ics' }).waitFor();
        await editor.page.keyboard.press('F2');
        const input = editor.page.locator('.explorer-folders-view .monaco-inputbox input');
        await input.fill('village.ics');
        await input.press('Enter');
        await editor.page.locator('.monaco-dialog-box').getByRole('button', { name: 'OK', exact: true }).click();
        await editor.openFile('year.course');
        await editor.page.locator('.tab.active.dirty', { hasText: 'year.course' }).waitFor();
        await editor.save();
        await saved(editor, 'year.course', text => text.includes('off from "calendars/village.ics"'));
        // The day off is kept: the calendar is found under its new name.
        await editor.code.lineText(3, text => text.includes('Mon 12 Oct'));
        await until('the calendar under its new name', () => Promise.resolve([...editor.server.files.keys()]), names => names.includes('calendars/village.ics') && !names.includes('calendars/town.ics'));
        await editor.problems.waitForCounts(0);
        await editor.screenshot('web-moved');
    });

    it('imports an inventory from the device, sees first what would change, and takes it back', async () => {
        const editor = web();
        await editor.openFile('inventory.kit');
        const before = editor.server.text('inventory.kit');
        await editor.chooseOnDevice('co-op.csv', sheet);
        await editor.runCommand('Haversack: Import an inventory from a spreadsheet');
        await editor.page.locator('.quick-input-widget .monaco-list-row').filter({ hasText: 'In the folder that is open' }).waitFor();
        await editor.screenshot('web-import-where');
        await editor.quickInput.chooseByWords('On this device');
        await editor.quickInput.chooseByWords('Saturday group in the attic');
        await until('the comparisons and the report', () => editor.tabs(), tabs => ['Import report', 'inventory.kit after the import', 'programme.course after the import'].every(title => tabs.includes(title)));
        await editor.page.locator('.quick-input-widget .monaco-list-row').filter({ hasText: 'Write these changes' }).waitFor();
        await editor.screenshot('web-import');
        expect(editor.server.text('inventory.kit')).toBe(before);
        await editor.quickInput.chooseByWords('Write these changes');
        await until('the previews to close', () => editor.tabs(), tabs => !tabs.some(title => title.includes('after the import') || title === 'Import report'));
        const shown = async (): Promise<string> => (await editor.page.locator('.editor-group-container.active .view-lines').innerText()).replaceAll('\u00a0', ' ');
        await editor.openFile('inventory.kit');
        await editor.code.goToLine(9);
        await until('the new price', shown, text => text.includes('pack of 1 costs 6.90 EUR'));
        await editor.code.press('Control+z');
        const question = editor.page.getByRole('button', { name: /Undo in 2 Files/ });
        await until('the undo, or its question', async () => (await question.isVisible()) || (await shown()).includes('pack of 1 costs 6.50 EUR'), done => done);
        if (await question.isVisible()) await question.click();
        await until('the old price', shown, text => text.includes('pack of 1 costs 6.50 EUR'));
    });

    it('imports it from the folder as well', async () => {
        const editor = web();
        editor.server.changeOutside('lists/co-op.csv', sheet);
        await editor.inExplorer('lists/co-op.csv');
        await editor.runCommand('Haversack: Import an inventory from a spreadsheet');
        await editor.quickInput.chooseByWords('In the folder that is open');
        const path = editor.page.locator('.quick-input-widget .quick-input-box input');
        const open = editor.page.locator('.quick-input-widget').getByText('Spreadsheet with the inventory');
        await open.waitFor();
        // While the dialog still lists its folder it writes over what is typed.
        await until('the dialog to take the path', async () => {
            if (await open.isVisible()) {
                await path.fill('/first-steps/lists/co-op.csv');
                await path.press('Enter');
            }
            await open.waitFor({ state: 'hidden', timeout: 3000 });
        }, () => true);
        await editor.quickInput.chooseByWords('Saturday group in the attic');
        await editor.quickInput.chooseByWords('Leave everything as it is');
        await until('the previews to close', () => editor.tabs(), tabs => !tabs.some(title => title.includes('after the import') || title === 'Import report'));
        expect(await editor.notifications()).toEqual([]);
    });
});

describe('somebody begins in a browser, with an empty folder', () => {
    const web = webSession({ noExample: true });

    it('sees the first steps, none done', async () => {
        const editor = web();
        await openStep(editor, firstStepIds[0]!);
        expect(await done(editor)).toEqual([]);
    });

    it('starts a programme from the welcome of the tree, and the trees fill', async () => {
        const editor = web();
        await openTrees(editor);
        await programme(editor).getByRole('button', { name: 'Start a new programme' }).click();
        await editor.code.ready('stones-1.lesson');
        await editor.problems.waitForCounts(0);
        await until('the lessons', () => rows(programme(editor)), all => all.some(one => /^A story in four stones \| week 1/.test(one)));
        await until('the things', () => rows(week(editor)), all => all.some(one => one.startsWith('12 · Story stones')));
        await until('the week in the status bar', () => statusItem(editor).innerText(), text => /Week 1 · \d+ min/.test(text));
        expect([...editor.server.files.keys()].sort()).toEqual(['inventory.kit', 'lessons/stones-1.lesson', 'programme.course']);
        await editor.screenshot('web-new-programme');
    });

    it('misspells a name, and looks what the first steps say', async () => {
        const editor = web();
        await editor.code.goToLine(11, 5);
        await editor.code.press('Delete');
        await editor.code.typeText('q');
        await editor.code.press('Escape');
        await until('an error', () => editor.problems.counts(), ({ errors }) => errors > 0);
        for (const id of firstStepIds) await openStep(editor, id);
        await until('the ticks', () => done(editor), ids => ids.join() === 'start,write');
        await editor.screenshot('web-first-steps');
    });

    it('reads the brief, gathers and prints meanwhile', async () => {
        const editor = web();
        await editor.openFile('lessons/stones-1.lesson');
        await editor.code.goToLine(11, 6);
        await openBrief(editor);
        await until('what the brief says of the mistake', () => editor.webview().locator('#says').innerText(), text => text.includes('There is an error in this file'));
        await openTrees(editor);
        await box(row(week(editor), 'Story stones')).click();
        await until('one gathered', () => description(week(editor)), told => told.startsWith('1 of '));
        const page = await printed(editor, () => editor.webview().getByRole('button', { name: 'Print' }).click());
        expect(page.name).toMatch(/^week-1-.*\.html$/);
        expect(page.html).toContain('Story stones');
    });

    // What is mended at once was no mistake that anybody saw: this one has stood a while.
    it('mends it, and is through', async () => {
        const editor = web();
        await editor.code.goToLine(11, 6);
        await editor.code.press('Shift+Alt+Period');
        await editor.problems.waitForCounts(0);
        await editor.save();
        await saved(editor, 'lessons/stones-1.lesson', text => /^ +clay +50 g/m.test(text));
        await showFirstSteps(editor);
        await until('all steps', () => done(editor), ids => ids.join() === firstStepIds.join());
        await editor.screenshot('web-first-steps-done');
    });
});
