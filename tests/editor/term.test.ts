import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { brief, openBrief, repository, session } from './session.js';
import { until } from './until.js';

describe('a lead who looks at the whole term', () => {
    const year = session({ folder: join(repository, 'examples/year') });

    it('switches from the week to the term and back to the same week', async () => {
        const editor = year();
        await editor.openFile('north-2.lesson');
        await openBrief(editor);
        const week = await brief(editor).locator('#week h1').innerText();
        await editor.webview().locator('#show-term').click();
        await until('the term', () => brief(editor).locator('#term h1').count(), count => count === 1);
        expect(await editor.webview().locator('#next').isVisible()).toBe(false);
        expect(await editor.tabs()).toContain('Brief: term');
        await editor.screenshot('term');
        await editor.webview().locator('#show-week').click();
        await until('the week', () => brief(editor).locator('#week h1').innerText(), heading => heading === week);
    });

    it('opens the term by its command and goes from a day to the lesson', async () => {
        const editor = year();
        await editor.runCommand('Haversack: Open the whole term');
        const day = brief(editor).locator('.day:visible', { hasText: 'Button families' }).first();
        await until('the calendar', () => day.count(), count => count > 0);
        await day.locator('text', { hasText: 'Button' }).first().click();
        await until('the lesson', () => editor.tabs(), tabs => tabs.includes('sort-1.lesson'));
        await editor.screenshot('term-leads');
        expect(await editor.notifications()).toEqual([]);
    });

    it('reaches the same line by the keyboard from the words beside the drawing', async () => {
        const editor = year();
        const words = brief(editor).locator('#term-calendar details.in-words').first();
        await words.locator('summary').focus();
        await words.locator('summary').press('Enter');
        await words.locator('button.lead', { hasText: 'Two hoops' }).press('Enter');
        await until('the lesson', () => editor.tabs(), tabs => tabs.includes('sort-2.lesson'));
    });
});
