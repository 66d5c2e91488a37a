import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Editor, EditorOptions } from './harness.js';
import { amountOf, brief, openBrief, repository, session } from './session.js';
import { until } from './until.js';

/** Ids of the language server's processes of this editor. */
async function serversOf(editor: Editor): Promise<number[]> {
    const program = join(editor.folder, '../../extensions');
    const ids = (await readdir('/proc')).filter(name => /^\d+$/.test(name));
    const lines = await Promise.all(ids.map(id => readFile(`/proc/${id}/cmdline`, 'utf8').catch(() => '')));
    return ids.filter((_, index) => lines[index]!.includes(program) && lines[index]!.includes('node-server.cjs')).map(Number);
}

describe('a writer with two classes', () => {
    const year = session({ folder: join(repository, 'examples/year') });

    it('opens the brief at the lesson', async () => {
        const editor = year();
        await editor.openFile('north-2.lesson');
        await editor.code.goToLine(8);
        await editor.runCommand('Haversack: Open the brief for this lesson');
        const heading = brief(editor).locator('#lesson-north-2 h2');
        await until('the lesson in view', async () => (await heading.boundingBox())?.y ?? 9999, top => top > 0 && top < 400);
        await editor.screenshot('year-lesson');
    });

    it('chooses the class that amounts are counted for', async () => {
        const editor = year();
        const before = await brief(editor).locator('#week .course').innerText();
        await editor.runCommand('Haversack: Choose the class for the brief');
        await editor.quickInput.choose('The family at Rook Lane');
        await until('the other class', () => brief(editor).locator('#week .course').innerText(), text => text.includes('The family at Rook Lane'));
        expect(before).not.toContain('The family at Rook Lane');
        await editor.webview().locator('#class').selectOption({ label: before.split(', ').slice(1).join(', ') });
        await until('the first class', () => brief(editor).locator('#week .course').innerText(), text => text === before);
        await editor.screenshot('year-class');
    });
});

describe('a writer whose server ends', () => {
    const interrupted = session();

    it('goes on with a new one', async () => {
        const editor = interrupted();
        await editor.openFile('shake-1.lesson');
        await editor.code.goToLine(13, 19);
        await openBrief(editor);
        const before = await serversOf(editor);
        expect(before.length).toBe(1);
        process.kill(before[0]!, 'SIGKILL');
        await until('a new server', () => serversOf(editor), ids => ids.length === 1 && ids[0] !== before[0]);
        await until('the amount', () => amountOf(editor, 'Wooden spoons'), amount => amount === '6');
        await editor.code.press('Delete');
        await editor.code.typeText('4');
        await until('the new figure', () => amountOf(editor, 'Wooden spoons'), amount => amount === '12');
        expect(await editor.notifications()).toEqual([]);
    });
});

describe('a writer in restricted mode', () => {
    const restricted = session({ trust: 'restricted' });

    it('has checks and the brief', async () => {
        const editor = restricted();
        await editor.openFile('pitch-1.lesson');
        await editor.code.goToLine(10, 1);
        await openBrief(editor);
        expect(await amountOf(editor, 'Rubber bands', 'pitch-1')).toBe('12');
        await editor.code.press('Home');
        await editor.code.typeText('x');
        await until('an error', () => editor.problems.counts(), ({ errors }) => errors > 0);
        await editor.screenshot('restricted');
    });
});

describe('a writer adds to a lesson', () => {
    const adding = session();

    it('is led by the indentation', async () => {
        const editor = adding();
        await editor.openFile('shake-1.lesson');
        // The editor reads how lines of the language go on when it first meets a file of it: the key after comes too soon before that.
        await editor.code.codeLenses();
        await editor.code.press('Control+End');
        const lineOfCursor = async (): Promise<number> => Number(/Ln (\d+)/.exec(await editor.page.locator('#status\\.editor\\.selection').innerText())![1]);
        // Pasted, so that no list of suggestions takes the key after it; and before a line has its colours the editor takes only its
        // indentation over to the next one: nobody types as fast as that.
        const addLine = async (text: string): Promise<void> => {
            await editor.code.pasteText(text);
            await until('the line', async () => editor.code.lineText(await lineOfCursor()), shown => shown.endsWith(text.trim()));
            await until('the colours of the line', async () => editor.code.colours(await lineOfCursor()), parts => new Set(parts.map(({ colour }) => colour)).size > 1);
        };
        await editor.code.typeText('\n');
        await addLine('  activity last-one "Last one" 5 min');
        await editor.code.typeText('\n');
        await addLine('do: Sing.');
        await editor.code.typeText('\n');
        await addLine('ask: Why?');
        await editor.code.typeText('\n');
        await addLine('expect: Because.');
        await editor.code.press('Escape');
        const last = await lineOfCursor();
        expect(await editor.code.lineText(last - 2)).toBe('    do: Sing.');
        expect(await editor.code.lineText(last - 1)).toBe('    ask: Why?');
        expect(await editor.code.lineText(last)).toBe('      expect: Because.');
        await editor.problems.waitForCounts(0);
    });
});

describe('somebody begins with an empty folder', () => {
    let empty = '';
    beforeAll(async () => {
        empty = join(await mkdtemp(join(tmpdir(), 'haversack-empty-')), 'my-programme');
        await mkdir(empty);
    });
    afterAll(() => rm(resolve(empty, '..'), { recursive: true, force: true }));
    const fresh = session({ get folder() { return empty; } } as Partial<EditorOptions>);

    it('starts a programme that has no problems', async () => {
        const editor = fresh();
        await editor.runCommand('Haversack: Start a new programme');
        await editor.code.ready('stones-1.lesson');
        await editor.problems.waitForCounts(0);
        expect(await readFile(join(editor.folder, 'programme.course'), 'utf8')).toMatch(/starts 20\d\d-\d\d-\d\d\n/);
    });

    it('reads its brief', async () => {
        const editor = fresh();
        await openBrief(editor);
        // 6 learners are 3 pairs with 4 stones each.
        expect(await amountOf(editor, 'Story stones', 'stones-1')).toBe('12');
        await editor.screenshot('new-programme');
    });

    it('saves the brief as a file', async () => {
        const editor = fresh();
        await editor.runCommand('Haversack: Save the brief as a file');
        await until('the name of the file', async () => editor.page.locator('.quick-input-widget input').first().inputValue(), value => value.endsWith('week-1.html'));
        await editor.page.keyboard.press('Enter');
        const page = await until('the file', () => readFile(join(editor.folder, 'week-1.html'), 'utf8'), text => text.includes('</html>'));
        expect(page).toContain('Story stones');
        expect(page).not.toContain('<script');
    });

    it('finds the brief again after the window was loaded anew', async () => {
        const editor = fresh();
        await editor.page.evaluate(() => { document.body.dataset.old = 'yes'; });
        // Unlike a reload by the browser this one waits until the open tabs are written down.
        await editor.runCommand('Developer: Reload Window');
        await until('the new window', () => editor.page.evaluate(() => document.body.dataset.old ?? 'no'), old => old === 'no');
        await editor.ready();
        await until('the brief', () => amountOf(editor, 'Story stones', 'stones-1'), amount => amount === '12');
    });

    it('overwrites nothing when it is started again', async () => {
        const editor = fresh();
        const before = await readFile(join(editor.folder, 'inventory.kit'), 'utf8');
        await editor.code.goToLine(1);
        await editor.runCommand('Haversack: Start a new programme');
        // With a programme in the folder another folder is asked for; the same one is refused.
        await editor.page.locator('.quick-input-widget input').first().waitFor();
        await editor.page.keyboard.press('Enter');
        await editor.notification(/is there already, so nothing was written/);
        expect(await readFile(join(editor.folder, 'inventory.kit'), 'utf8')).toBe(before);
    });
});

describe.each([
    ['dark', { 'workbench.colorTheme': 'Default Dark Modern' }],
    ['high-contrast', { 'workbench.colorTheme': 'Default High Contrast' }],
    ['high-contrast-light', { 'workbench.colorTheme': 'Default High Contrast Light' }]
])('in the %s theme', (name, settings) => {
    const themed = session({ settings });

    it('the brief takes the colours of the editor', async () => {
        const editor = themed();
        await editor.openFile('shake-1.lesson');
        await editor.code.goToLine(13, 19);
        await openBrief(editor);
        const background = (locator: Locator): Promise<string> => locator.evaluate(element => getComputedStyle(element).backgroundColor);
        const page = editor.page.locator('.monaco-editor-background').first();
        await until('the colour of the page in the brief', async () => [await background(brief(editor)), await background(page)], ([drawn, behind]) => drawn === behind);
        await editor.screenshot(`brief-${name}`);
        await editor.page.setViewportSize({ width: 900, height: 800 });
        await editor.runCommand('View: Toggle Primary Side Bar Visibility');
        await editor.screenshot(`brief-${name}-narrow`);
    });
});
