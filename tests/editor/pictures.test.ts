import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { brief, openBrief, repository, session } from './session.js';
import { until } from './until.js';

describe('a writer who shows a picture', () => {
    const year = session({ folder: join(repository, 'examples/year') });

    it('sees it in the hover of its line', async () => {
        const editor = year();
        await editor.openFile('count-3.lesson');
        await editor.code.goToLine(30, 14);
        expect(await editor.code.lineText(30)).toContain('show ten-frame 8');
        const image = editor.page.locator('.monaco-resizable-hover .monaco-hover img').first();
        const width = await until('the picture in the hover', async () => {
            if (!(await image.isVisible())) {
                await editor.code.press('Control+k');
                await editor.page.keyboard.press('Control+i');
                await image.waitFor({ timeout: 5000 });
            }
            return image.evaluate(element => (element as HTMLImageElement).naturalWidth);
        }, found => found > 100);
        expect(width).toBeGreaterThan(100);
        expect(await editor.page.locator('.monaco-resizable-hover .monaco-hover').first().innerText()).toContain('Ten-frame: 8, as 5 and 3; 2 cells are empty.');
        await editor.screenshot('picture-hover');
        await editor.page.keyboard.press('Escape');
    });

    it('sees it in the brief, among the steps', async () => {
        const editor = year();
        await openBrief(editor);
        const figure = brief(editor).locator('figure.shown', { hasText: 'Ten-frame: 8, as 5 and 3' }).first();
        await figure.locator('svg').waitFor();
        expect(await figure.locator('svg .counter').count()).toBe(8);
        await figure.scrollIntoViewIfNeeded();
        await editor.screenshot('picture-brief');
    });

    it('is offered every kind', async () => {
        const editor = year();
        await editor.code.goToLine(30, 1);
        await editor.code.press('End');
        await editor.page.keyboard.type('\nshow ');
        const labels = await editor.help.completions(found => found.includes('ten-frame') && found.includes('bead-string'));
        expect(labels).toEqual(expect.arrayContaining(['ten-frame', 'number-line', 'bead-string', 'place-cards', 'base-ten']));
    });
});
