import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { brief, openBrief, session } from './session.js';
import { until } from './until.js';

const folder = join(mkdtempSync(join(tmpdir(), 'haversack-practice-')), 'programme');
mkdirSync(folder);
writeFileSync(join(folder, 'names.lesson'), 'lesson names-1 "Long names"\n  practice say "Say it" 4 items\n    name numbers 411 to 499 in words\n    fives and tens 6 to 20\n');
writeFileSync(join(folder, 'year.course'), 'course year\n  unit one\n    names-1\n\nclass hill "Hill"\n  teaches year\n  learners 4\n');
afterAll(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

describe('a teacher who wants the practice on paper', () => {
    const practising = session({ folder });

    it('sees in the brief the items, the folded key, and one quiet button', async () => {
        const editor = practising();
        await editor.openFile('names.lesson');
        await openBrief(editor);
        const button = brief(editor).getByRole('button', { name: 'Save sheet and key' });
        await until('the button', () => button.count(), count => count === 1);
        expect(await brief(editor).locator('details.key').evaluate(key => (key as HTMLDetailsElement).open)).toBe(false);
        await button.scrollIntoViewIfNeeded();
        await editor.screenshot('practice-brief');
    });

    it('saves the sheet, and its key beside it; no answer stands on the sheet', async () => {
        const editor = practising();
        await brief(editor).getByRole('button', { name: 'Save sheet and key' }).click();
        await editor.quickInput.choose('The items of the brief');
        await until('the name of the file', () => editor.page.locator('.quick-input-widget input').first().inputValue(), value => value.endsWith('names-1-practice.html'));
        await editor.screenshot('practice-save');
        await editor.page.keyboard.press('Enter');
        const read = (name: string): Promise<string> => until(name, () => (existsSync(join(editor.folder, name)) ? readFile(join(editor.folder, name), 'utf8') : Promise.resolve('')), text => text.includes('</html>'));
        const [sheet, key] = [await read('names-1-practice.html'), await read('names-1-practice-key.html')];
        const answers = await brief(editor).locator('details.key li').allTextContents();
        const asks = await brief(editor).locator('ol.items:not(details ol) > li').allTextContents();
        expect([asks.length, answers.length]).toEqual([4, 4]);
        for (const ask of asks) expect(sheet).toContain(ask);
        const long = answers.filter(answer => answer.startsWith('four hundred'));
        expect(long).toHaveLength(2);
        for (const answer of long) {
            expect(key).toContain(answer);
            expect(sheet).not.toContain(answer);
        }
        expect(key).toContain('Answer key');
        expect(sheet).not.toContain('Answer key');
        for (const page of [sheet, key]) expect(page).not.toContain('Save sheet and key');
        expect(await editor.notifications()).toEqual([]);
    });
});
