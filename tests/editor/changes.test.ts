import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { planProgramme } from '../server/plan-programme.js';
import type { Editor } from './harness.js';
import { brief, openBrief, session } from './session.js';
import { until } from './until.js';

const folder = join(mkdtempSync(join(tmpdir(), 'haversack-changes-')), 'programme');
writeProgramme();
afterAll(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

function writeProgramme(): void {
    const files = {
        ...planProgramme,
        'harbour.course': 'adaptation harbour-days "Harbour days" of weighing for harbour\n  retime activity weigh-1.two-bags to 10 min because: The hall closes early.\n'
    };
    mkdirSync(folder);
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
}

const page: (editor: Editor) => Locator = brief;
const cursorLine = (editor: Editor): Promise<string> => editor.page.locator('#status\\.editor\\.selection').innerText();
const text = (editor: Editor, section: string): Promise<string> => page(editor).locator(`#${section}`).innerText();

describe('a lead who adapts the course for one class', () => {
    const adapting = session({ folder });

    it('sees in the brief what is changed, with its reason', async () => {
        const editor = adapting();
        await editor.openFile('harbour.course');
        await editor.code.goToLine(2);
        await openBrief(editor);
        await until('the changed part', () => text(editor, 'lesson-weigh-1'), told => told.includes('Changed for Harbour co-op: 10 min instead of 15. The hall closes early.'));
        expect(await text(editor, 'week')).toContain('With the changes of “Harbour days”.');
        await editor.screenshot('changes-brief');
    });

    it('writes that a lesson is skipped, and the brief follows', async () => {
        const editor = adapting();
        await editor.code.goToLine(2, 200);
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('skip lesson weigh-2 because: Covered at the market visit.');
        await editor.code.press('Escape');
        await until('the line where it stood', () => page(editor).locator('#left-out-weigh-2').allInnerTexts(), told => told.some(one => one.includes('“Three bags” is left out for Harbour co-op. Covered at the market visit.')));
        expect(await text(editor, 'week')).toContain('left out here: “Three bags”');
        await editor.screenshot('changes-left-out');
    });

    it('is led from the line in the brief to the line of the adaptation', async () => {
        const editor = adapting();
        await editor.openFile('weigh.lesson');
        await editor.webview().locator('#class').selectOption({ label: 'Harbour co-op' });
        await page(editor).locator('#left-out-weigh-2 button.lead').click();
        await editor.page.locator('.editor-group-container.active .tab.active', { hasText: 'harbour.course' }).waitFor();
        await until('the cursor at its line', () => cursorLine(editor), at => at.startsWith('Ln 3,'));
    });

    it('switches to the page of changes and keeps the class; what is lost stands under the change', async () => {
        const editor = adapting();
        await editor.webview().locator('#show-changes').click();
        await until('the page of changes', () => page(editor).locator('#changes h1').allInnerTexts(), ([heading]) => heading === 'What is changed');
        expect(await editor.tabs()).toContain('Brief: changes');
        expect(await text(editor, 'changes')).toContain('10 minutes of lessons instead of 35.');
        expect(await text(editor, 'changes-made')).toMatch(/“Three bags” is left out\.[^]*Because\s+Covered at the market visit\.[^]*Lost/);
        expect(await editor.webview().locator('#next').isVisible()).toBe(false);
        await editor.screenshot('changes-page');
    });

    it('writes another line, and the page of changes follows', async () => {
        const editor = adapting();
        await editor.code.goToLine(3, 200);
        await editor.code.press('End');
        await editor.code.press('Enter');
        await editor.code.typeText('retime weigh-1 to 8 min');
        await editor.code.press('Escape');
        await until('the third change', () => text(editor, 'changes-made'), told => /“Two bags” takes 8 min/.test(told));
        await until('the minutes', () => text(editor, 'changes'), told => told.includes('8 minutes of lessons instead of 35.'));
    });

    it('is led from a change to its line', async () => {
        const editor = adapting();
        await editor.openFile('weigh.lesson');
        await page(editor).locator('#changes-made button.lead', { hasText: '“Three bags” is left out.' }).click();
        await editor.page.locator('.editor-group-container.active .tab.active', { hasText: 'harbour.course' }).waitFor();
        await until('the cursor at its line', () => cursorLine(editor), at => at.startsWith('Ln 3,'));
        await until('the mark at what was clicked', () => page(editor).locator('[aria-current]').innerText(), told => told.includes('“Three bags” is left out.'));
    });

    it('chooses a class without an adaptation and is calmly told so and how to write one; switching keeps class and week', async () => {
        const editor = adapting();
        await editor.webview().locator('#class').selectOption({ label: 'Millpond co-op' });
        await until('the empty page', () => page(editor).locator('#changes h1').innerText(), heading => heading === 'Nothing is changed');
        expect(await text(editor, 'changes')).toContain('No adaptation applies to “Millpond co-op”');
        expect(await page(editor).locator('.to-write').innerText()).toBe('adaptation millpond-changes of weighing for millpond\n  skip lesson weigh-1 because: Why this class leaves it out.');
        await editor.screenshot('changes-none');
        await editor.webview().locator('#show-week').click();
        await until('the week of that class', () => page(editor).locator('#week .course').allInnerTexts(), ([course = '']) => course.includes('Millpond co-op'));
        await editor.webview().locator('#next').click();
        await until('the second week', () => page(editor).locator('h1').innerText(), heading => heading === 'Week 2 of 2');
        await editor.webview().locator('#show-changes').click();
        await until('the empty page', () => page(editor).locator('#changes h1').count(), count => count === 1);
        await editor.webview().locator('#show-week').click();
        await until('the same week', () => page(editor).locator('h1').innerText(), heading => heading === 'Week 2 of 2');
        expect(await page(editor).locator('#week .course').innerText()).toContain('Millpond co-op');
    });

    it('opens the changes of the adaptation at the cursor by the command', async () => {
        const editor = adapting();
        await editor.openFile('harbour.course');
        await editor.code.goToLine(3);
        await editor.runCommand('Haversack: Show what is changed for the class');
        await until('the changes of that class', () => page(editor).locator('#changes').allInnerTexts(), ([told = '']) => told.includes('Harbour co-op') && told.includes('What is changed'));
        expect(await editor.webview().locator('#class').inputValue()).toBe('harbour');
        expect(await editor.notifications()).toEqual([]);
    });

    it('saves the page of changes as a file', async () => {
        const editor = adapting();
        await editor.runCommand('Haversack: Save the changes as a file');
        await until('the name of the file', async () => editor.page.locator('.quick-input-widget input').first().inputValue(), value => value.endsWith('changes-harbour.html'));
        await editor.page.keyboard.press('Enter');
        const saved = await until('the file', () => readFile(join(editor.folder, 'changes-harbour.html'), 'utf8'), content => content.includes('</html>'));
        expect(saved).toContain('“Three bags” is left out.');
        expect(saved).not.toContain('<script');
    });

    it('finds the changes again after the window was loaded anew', async () => {
        const editor = adapting();
        await editor.code.focus();
        await editor.save();
        await editor.page.evaluate(() => { document.body.dataset.old = 'yes'; });
        await editor.runCommand('Developer: Reload Window');
        await until('the new window', () => editor.page.evaluate(() => document.body.dataset.old ?? 'no'), old => old === 'no');
        await editor.ready();
        await until('the same page', () => page(editor).locator('#changes').allInnerTexts(), ([told = '']) => told.includes('Harbour co-op') && told.includes('What is changed'));
        expect(await editor.webview().locator('#show-changes').getAttribute('aria-pressed')).toBe('true');
    });
});

describe.each([
    ['dark', { 'workbench.colorTheme': 'Default Dark Modern' }], ['high contrast', { 'workbench.colorTheme': 'Default High Contrast' }]
])('in the %s theme', (name, settings) => {
    const themed = session({ folder, settings });

    it('shows the page of changes, wide and narrow', async () => {
        const editor = themed();
        await editor.openFile('harbour.course');
        await editor.code.goToLine(2);
        await editor.runCommand('Haversack: Show what is changed for the class');
        await until('the page of changes', () => page(editor).locator('#changes h1').allInnerTexts(), ([heading]) => heading === 'What is changed');
        await editor.screenshot(`changes-${name.replace(' ', '-')}`);
        await editor.page.setViewportSize({ width: 800, height: 900 });
        await editor.runCommand('View: Toggle Primary Side Bar Visibility');
        await until('a narrow page without a bar below', () => page(editor).evaluate(main => main.ownerDocument.documentElement.scrollWidth - main.ownerDocument.documentElement.clientWidth), wide => wide === 0);
        await editor.screenshot(`changes-${name.replace(' ', '-')}-narrow`);
    });
});
