import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Editor } from './harness.js';
import { brief, openBrief, session } from './session.js';
import { box, description, goToWeek, isTicked, openTrees, position, programme, row, rows, statusItem, week } from './tree-views.js';
import { until } from './until.js';

async function reload(editor: Editor): Promise<void> {
    await editor.page.evaluate(() => { document.body.dataset.old = 'yes'; });
    await editor.runCommand('Developer: Reload Window');
    await until('the new window', () => editor.page.evaluate(() => document.body.dataset.old ?? 'no'), old => old === 'no');
    await editor.page.locator('.monaco-workbench').waitFor();
}

describe('someone who gathers the things of a week', () => {
    const gathering = session();

    it('finds the programme as a tree, with week and day beside every lesson', async () => {
        const editor = gathering();
        await openTrees(editor);
        const found = await until('the lessons', () => rows(programme(editor)), all => all.some(one => /^Dancing rice \| .*week 3/.test(one)));
        expect(found[0]).toBe('The Cupboard Orchestra | Saturday group in the attic · 8 lessons');
        expect(found).toContain('Making sounds | 3 lessons');
        expect(found.find(one => one.startsWith('Dancing rice'))).toBe('Dancing rice | week 3 · Sat 17 Oct · changed');
        await editor.screenshot('trees-first');
    });

    it('is led to the source by a click, and keeps the keyboard in the tree', async () => {
        const editor = gathering();
        await row(programme(editor), 'Dancing rice').click();
        await editor.page.locator('.tab.active', { hasText: 'shake-1.lesson' }).waitFor();
        expect(await row(programme(editor), 'Dancing rice').getAttribute('aria-selected')).toBe('true');
        await until('the label for a screen reader', () => row(programme(editor), 'Dancing rice').getAttribute('aria-label'), label => label === 'Lesson, Dancing rice, week 3, Sat 17 Oct, changed');
    });

    it('reads the week and its minutes in the status bar', async () => {
        const editor = gathering();
        await until('the week of the lesson', () => statusItem(editor).innerText(), text => /Week 3 · \d+ min/.test(text));
        expect(await statusItem(editor).locator('[aria-label]').first().getAttribute('aria-label')).toMatch(/^Week 3, \d+ minutes of lessons, Saturday group in the attic\. Open the brief\./);
    });

    it('ticks things off by mouse and by the space bar, and reads how many are gathered', async () => {
        const editor = gathering();
        await goToWeek(editor, 3);
        const things = await until('the things', () => rows(week(editor)), all => all.some(one => one.includes('Mixing bowls')));
        expect(things).toContain('3 · Mixing bowls | Sat 17 Oct');
        expect(await description(week(editor))).toMatch(/^0 of \d+ gathered$/);
        await box(row(week(editor), 'Mixing bowls')).click();
        await until('one gathered', () => description(week(editor)), told => told.startsWith('1 of '));
        expect(await isTicked(row(week(editor), 'Mixing bowls'))).toBe(true);
        await row(week(editor), 'Wooden spoons').click();
        await editor.page.locator('.tab.active', { hasText: 'inventory.kit' }).waitFor();
        await week(editor).locator('.monaco-list:focus .monaco-list-row.focused', { hasText: 'Wooden spoons' }).waitFor();
        await editor.page.keyboard.press('Space');
        await until('two gathered', () => description(week(editor)), told => told.startsWith('2 of '));
        await editor.page.keyboard.press('Space');
        await until('one again', () => description(week(editor)), told => told.startsWith('1 of '));
        await editor.page.keyboard.press('Space');
        await until('two again', () => description(week(editor)), told => told.startsWith('2 of '));
        await editor.screenshot('trees-ticked');
    });

    it('has a list of its own for every week', async () => {
        const editor = gathering();
        await goToWeek(editor, 4);
        await until('nothing gathered', () => description(week(editor)), told => told.startsWith('0 of '));
        await goToWeek(editor, 3);
        await until('two gathered', () => description(week(editor)), told => told.startsWith('2 of '));
    });

    it('finds the ticks again after the window was loaded anew', async () => {
        const editor = gathering();
        await reload(editor);
        await openTrees(editor);
        await goToWeek(editor, 3);
        await until('two gathered', () => description(week(editor)), told => told.startsWith('2 of '));
        expect(await isTicked(row(week(editor), 'Mixing bowls'))).toBe(true);
    });

    it('looks again at what was ticked for another amount', async () => {
        const editor = gathering();
        await editor.openFile('shake-1.lesson');
        const text = await readFile(join(editor.folder, 'lessons/shake-1.lesson'), 'utf8');
        await editor.code.replaceAll(text.replace('mixing-bowl   1 per pair', 'mixing-bowl   2 per pair'));
        await until('the other amount', () => rows(week(editor)), all => all.some(one => /^6 · Mixing bowls \| was 3, now 6/.test(one)));
        expect(await isTicked(row(week(editor), 'Mixing bowls'))).toBe(false);
        expect(await description(week(editor))).toMatch(/^1 of /);
        await editor.screenshot('trees-look-again');
        await editor.code.press('Control+z');
        await until('as it was', () => description(week(editor)), told => told.startsWith('2 of '));
    });

    it('unticks everything, for the next time', async () => {
        const editor = gathering();
        await editor.runCommand('Untick everything in the week');
        await until('nothing gathered', () => description(week(editor)), told => told.startsWith('0 of '));
        expect(await editor.notifications()).toEqual([]);
    });
});

describe('someone who puts the lessons into another order', () => {
    const ordering = session();
    const course = (editor: Editor): Promise<string> => readFile(join(editor.folder, 'programme.course'), 'utf8');
    const names = (text: string): string[] => [...text.matchAll(/^ {4}((?:listen|shake|pitch|travel|concert)-\d)\r?$/gm)].map(([, name]) => name!);
    const asWritten = ['listen-1', 'listen-2', 'shake-1', 'shake-2', 'pitch-1', 'travel-1', 'travel-2', 'concert-1'];

    /** What the editor holds, saved for the look. */
    async function order(editor: Editor): Promise<string[]> {
        await editor.openFile('programme.course');
        await editor.save();
        return names(await course(editor));
    }

    it('drags a lesson onto another one, and takes it back with Ctrl+Z', async () => {
        const editor = ordering();
        await openTrees(editor);
        await until('the lessons', () => rows(programme(editor)), all => all.some(one => one.startsWith('Dancing rice | week 3')));
        const before = await rows(programme(editor));
        await row(programme(editor), 'Dancing rice').dragTo(row(programme(editor), titleAt(before, 'Listening')));
        await editor.page.locator('.tab.active.dirty', { hasText: 'programme.course' }).waitFor();
        await until('the other order in the tree', () => rows(programme(editor)), all => position(all, 'Dancing rice') < position(all, 'Making sounds'));
        await editor.screenshot('trees-dragged');
        expect(await order(editor)).toEqual(['listen-1', 'shake-1', 'listen-2', ...asWritten.slice(3)].filter(unique));
        await editor.code.press('Control+z');
        await until('the order as it was', () => rows(programme(editor)), all => position(all, 'Dancing rice') > position(all, 'Making sounds'));
        expect(await order(editor)).toEqual(asWritten);
    });

    it('moves a lesson by the keyboard alone, step by step', async () => {
        const editor = ordering();
        await editor.runCommand('Focus on Programme View');
        await row(programme(editor), 'Dancing rice').click();
        await editor.page.keyboard.press('ArrowDown');
        const focused = await programme(editor).locator('.monaco-list-row.focused .label-name').innerText();
        await editor.page.keyboard.press('Alt+ArrowUp');
        await until('one further up', () => rows(programme(editor)), all => position(all, focused) < position(all, 'Dancing rice'));
        await until('the keyboard still in the tree', () => programme(editor).locator('.monaco-list-row.focused .label-name').innerText(), label => label === focused);
        await editor.page.keyboard.press('Alt+ArrowUp');
        await until('over the edge of the unit', () => rows(programme(editor)), all => position(all, focused) < position(all, 'Making sounds'));
        await editor.screenshot('trees-moved');
        await editor.page.keyboard.press('Alt+ArrowDown');
        await editor.page.keyboard.press('Alt+ArrowDown');
        await until('back again', () => rows(programme(editor)), all => position(all, focused) > position(all, 'Dancing rice'));
        expect(await order(editor)).toEqual(asWritten);
        expect(await editor.notifications()).toEqual([]);
    });

    it('reads in the tree where a problem is while it is written, and nothing closes', async () => {
        const editor = ordering();
        await row(programme(editor), 'Listening').locator('.monaco-tl-twistie').click();
        await until('the unit closed', () => rows(programme(editor)), all => position(all, 'Making sounds') === position(all, 'Listening') + 1);
        await editor.openFile('shake-1.lesson');
        const text = await readFile(join(editor.folder, 'lessons/shake-1.lesson'), 'utf8');
        await editor.code.replaceAll(text.replace('mixing-bowl', 'mixing-bole'));
        await until('the problem', () => rows(programme(editor)), all => all.some(one => /^Dancing rice \| 1 error · week 3/.test(one)));
        const now = await rows(programme(editor));
        expect(position(now, 'Making sounds')).toBe(position(now, 'Listening') + 1);
        expect(now[0]).toMatch(/1 error/);
        await editor.screenshot('trees-problem');
        await editor.code.press('Control+z');
        await until('no problem', () => rows(programme(editor)), all => !all.some(one => one.includes('error')));
    });

    it('opens the brief of a lesson from its row, and the week’s list follows the brief', async () => {
        const editor = ordering();
        const lesson = row(programme(editor), 'Dancing rice');
        await lesson.hover();
        await lesson.getByRole('button', { name: 'Open the brief for this lesson' }).click();
        await until('the brief of week 3', () => brief(editor).locator('h1').allInnerTexts(), ([heading = '']) => heading.startsWith('Week 3'));
        await until('the list of week 3', () => week(editor).locator('h3.title').innerText(), title => /^week 3 of/i.test(title));
        await editor.webview().locator('#next').click();
        await until('the list of week 4', () => week(editor).locator('h3.title').innerText(), title => /^week 4 of/i.test(title));
        // A click in the tree never covers the brief, though it has the keyboard.
        await row(programme(editor), 'Making sounds').click();
        await editor.page.locator('.editor-group-container.active .tab.active', { hasText: 'programme.course' }).waitFor();
        expect(await brief(editor).locator('h1').isVisible()).toBe(true);
        await until('the week of the brief in the status bar', () => statusItem(editor).innerText(), text => text.includes('Week 4'));
        await editor.screenshot('trees-brief');
    });

    it('opens the brief from the status bar', async () => {
        const editor = ordering();
        await editor.code.focus();
        await editor.save();
        await editor.runCommand('View: Close All Editors');
        await until('no tab', () => editor.tabs(), tabs => tabs.length === 0);
        await statusItem(editor).click();
        await until('the brief', () => brief(editor).locator('h1').allInnerTexts(), ([heading = '']) => heading.startsWith('Week '));
    });

    it('is told calmly where a lesson cannot stand', async () => {
        const editor = ordering();
        await row(programme(editor), 'Classes').scrollIntoViewIfNeeded();
        await row(programme(editor), 'Dancing rice').dragTo(row(programme(editor), 'Classes'));
        await editor.notification(/Lessons can be put on a lesson, whose place they take/);
        expect(await order(editor)).toEqual(asWritten);
    });
});

/** The second row below a unit: its second lesson. */
const titleAt = (all: readonly string[], unit: string): string => all[position(all, unit) + 2]!.split(' | ')[0]!;
const unique = (name: string, at: number, all: readonly string[]): boolean => all.indexOf(name) === at;

describe.each([
    ['dark', { 'workbench.colorTheme': 'Default Dark Modern' }], ['high contrast', { 'workbench.colorTheme': 'Default High Contrast' }]
])('in the %s theme', (name, settings) => {
    const themed = session({ settings });

    it('the trees are read as well', async () => {
        const editor = themed();
        await openTrees(editor);
        await goToWeek(editor, 3);
        await until('the things', () => rows(week(editor)), all => all.some(one => one.includes('Mixing bowls')));
        await box(row(week(editor), 'Mixing bowls')).click();
        await until('one gathered', () => description(week(editor)), told => told.startsWith('1 of '));
        await editor.openFile('shake-1.lesson');
        await openBrief(editor);
        await editor.screenshot(`trees-${name.replace(' ', '-')}`);
    });
});

describe('in an empty folder', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'haversack-empty-')), 'empty');
    mkdirSync(folder);
    afterAll(() => rmSync(join(folder, '..'), { recursive: true, force: true }));
    const empty = session({ folder });

    it('a welcome offers a new programme, and the trees fill when it is there', async () => {
        const editor = empty();
        await openTrees(editor);
        const button = programme(editor).getByRole('button', { name: 'Start a new programme' });
        await button.waitFor();
        expect(await programme(editor).locator('.welcome-view-content').innerText()).toContain('This folder has no lesson and no class yet.');
        expect(await programme(editor).locator('.welcome-view-content .monaco-button').count()).toBe(1);
        expect(await week(editor).locator('.welcome-view-content').innerText()).toContain('Once there is a lesson');
        expect((await editor.statusBar()).filter(text => /^Week/.test(text))).toEqual([]);
        await editor.screenshot('trees-welcome');
        await button.click();
        await until('the lessons', () => rows(programme(editor)), all => all.some(one => /week 1/.test(one)));
        await until('the things', () => rows(week(editor)), all => all.length > 1);
        await until('the week in the status bar', () => editor.statusBar(), all => all.some(text => /Week \d+ · \d+ min/.test(text)));
        await editor.screenshot('trees-new-programme');
    });

    it('where no class is described the week says so and begins one', async () => {
        const editor = empty();
        await editor.openFile('programme.course');
        const file = join(editor.folder, 'programme.course');
        const text = await readFile(file, 'utf8');
        await editor.code.replaceAll(text.slice(0, text.indexOf('class ')));
        await editor.save();
        const button = week(editor).getByRole('button', { name: 'Describe a class' });
        await button.waitFor();
        await editor.screenshot('trees-no-class');
        await button.click();
        await until('the things', () => rows(week(editor)), all => all.length > 1);
        await editor.page.keyboard.press('Escape');
        await editor.save();
        expect(await readFile(file, 'utf8')).toMatch(/class our-class "Our class"\n {2}teaches [\w-]+\n {2}learners 4\n {2}starts \d{4}-\d\d-\d\d\n {2}meets mon\n/);
        await writeFile(file, text);
        await until('the class as it was', () => rows(programme(editor)), all => all.some(one => one.startsWith('Classes')));
        expect(await editor.notifications()).toEqual([]);
    });
});

