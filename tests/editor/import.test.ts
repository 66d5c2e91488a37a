import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Editor } from './harness.js';
import { repository, session } from './session.js';
import { until } from './until.js';

const desk = mkdtempSync(join(tmpdir(), 'haversack-desk-'));
const sheet = join(desk, 'co-op.csv');
writeFileSync(sheet, readFileSync(join(repository, 'tests/importing/co-op-inventory.csv')));
afterAll(() => rmSync(desk, { recursive: true, force: true }));

const onDisk = (editor: Editor, file: string): string => readFileSync(join(editor.folder, file), 'utf8');

/** Starts the command and gives it the spreadsheet. */
async function begin(editor: Editor): Promise<void> {
    await editor.runCommand('Import an inventory from a spreadsheet');
    const box = editor.page.locator('.quick-input-widget .quick-input-box input');
    const open = editor.page.locator('.quick-input-widget').getByText('Show what it would change');
    await open.waitFor();
    // While the dialog still lists its folder it writes over what is typed.
    await until('the dialog to take the path', async () => {
        if (await open.isVisible()) {
            await box.fill(sheet);
            await box.press('Enter');
        }
        await open.waitFor({ state: 'hidden', timeout: 3000 });
    }, () => true);
}

describe('a co-op lead imports the inventory', () => {
    const session1 = session();

    it('is asked whose cupboard it is, and sees what would change before anything does', async () => {
        const editor = session1();
        await editor.openFile('inventory.kit');
        const before = onDisk(editor, 'inventory.kit');
        await begin(editor);
        await editor.quickInput.chooseByWords('Saturday group in the attic');
        await until('the comparisons and the report', () => editor.tabs(), tabs => ['Import report', 'inventory.kit after the import', 'programme.course after the import'].every(title => tabs.includes(title)));
        await editor.page.locator('.quick-input-widget .monaco-list-row').filter({ hasText: 'Write these changes' }).waitFor();
        await editor.screenshot('import');
        expect(onDisk(editor, 'inventory.kit')).toBe(before);
    });

    it('tells what a column means', async () => {
        const editor = session1();
        await editor.quickInput.chooseByWords('Change what a column means');
        await editor.quickInput.chooseByWords('Shelf');
        await editor.quickInput.chooseByWords('note');
        await editor.page.locator('.quick-input-widget .monaco-list-row').filter({ hasText: 'Write these changes' }).waitFor();
        const report = editor.page.locator('.editor-group-container').last().locator('.view-lines');
        await until('the new report', () => report.innerText(), text => text.replaceAll('\u00a0', ' ').includes('Shelf: note (as you said)'));
        await editor.screenshot('import-column');
    });

    it('writes it, and takes it back in one step', async () => {
        const editor = session1();
        await editor.quickInput.chooseByWords('Write these changes');
        await until('the previews to close', () => editor.tabs(), tabs => !tabs.some(title => title.includes('after the import') || title === 'Import report'));
        await editor.openFile('inventory.kit');
        const text = (): Promise<string> => editor.page.locator('.editor-group-container.active .view-lines').innerText();
        await editor.code.goToLine(9, 1);
        await until('the new price', text, shown => shown.replaceAll('\u00a0', ' ').includes('pack of 1 costs 6.90 EUR'));
        await editor.screenshot('import-written');
        await editor.code.focus();
        await editor.page.keyboard.press('Control+z');
        const question = editor.page.getByRole('button', { name: /Undo in 2 Files/ });
        await until('the undo, or its question', async () => (await question.isVisible()) || (await text()).replaceAll('\u00a0', ' ').includes('pack of 1 costs 6.50 EUR'), done => done);
        await editor.screenshot('import-undo');
        if (await question.isVisible()) await question.click();
        await until('the old price', text, shown => shown.replaceAll('\u00a0', ' ').includes('pack of 1 costs 6.50 EUR'));
        await until('no file to be changed', () => editor.page.locator('.tab.dirty').count(), count => count === 0);
    });
});
