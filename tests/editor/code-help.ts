import type { Locator, Page } from 'playwright-core';
import type { CodeEditor } from './code-editor.js';
import { until } from './until.js';

/** What the editor offers at the cursor. Each is asked for again until it is there: a language server may still be starting. */
export class CodeHelp {
    private readonly fixes: Locator;
    private readonly hover: Locator;
    private readonly suggestions: Locator;

    constructor(private readonly page: Page, private readonly code: CodeEditor) {
        this.fixes = page.locator('.action-widget .monaco-list-row.action');
        this.hover = page.locator('.monaco-resizable-hover .monaco-hover:not(.hidden)');
        this.suggestions = page.locator('.suggest-widget.visible .monaco-list-row');
    }

    /** The titles of the quick fixes at the cursor, in order. The list is closed again. */
    async quickFixes(): Promise<string[]> {
        const titles = await this.showFixes();
        await this.page.keyboard.press('Escape');
        await this.page.locator('.action-widget').waitFor({ state: 'hidden' });
        return titles;
    }

    /** Takes a quick fix at the cursor: the first, or the one with this title. @returns its title */
    async quickFix(title?: string): Promise<string> {
        const titles = await this.showFixes(title);
        const taken = title ?? titles[0] ?? '';
        // By keyboard: the list refuses the mouse until it has moved.
        for (let step = titles.indexOf(taken); step > 0; step--) await this.page.keyboard.press('ArrowDown');
        await this.fixes.and(this.page.locator('.focused')).getByText(taken, { exact: true }).waitFor();
        await this.page.keyboard.press('Enter');
        await this.page.locator('.action-widget').waitFor({ state: 'hidden' });
        return taken;
    }

    /**
     * The text of the hover at a place (counted from 1), once `accept` is content with it: several sources may add to
     * one hover, one after the other.
     */
    async hoverText(line: number, column: number, accept: (text: string) => boolean = () => true): Promise<string> {
        await this.code.goToLine(line, column);
        const text = await until(`the hover at ${line}:${column}`, async () => {
            if (!(await this.hover.isVisible())) {
                await this.code.press('Control+k');
                await this.page.keyboard.press('Control+i');
                await this.hover.waitFor({ timeout: 2000 });
            }
            return (await this.hover.locator('.hover-row:not(.status-bar)').allInnerTexts()).join('\n').trim();
        }, (shown) => shown !== '' && !shown.includes('Loading...') && accept(shown));
        await this.page.keyboard.press('Escape');
        await this.hover.waitFor({ state: 'hidden' });
        return text;
    }

    /** The labels that completion offers at the cursor, for as far as they fit the list, once `accept` is content with them. */
    async completions(accept: (labels: string[]) => boolean = (labels) => labels.length > 0): Promise<string[]> {
        const labels = await until('completions at the cursor', () => this.showSuggestions(), accept);
        await this.page.keyboard.press('Escape');
        await this.page.locator('.suggest-widget.visible').waitFor({ state: 'hidden' });
        return labels;
    }

    /** Takes the completion with this label. */
    async complete(label: string): Promise<void> {
        await until(`a completion "${label}"`, () => this.showSuggestions(), (labels) => labels.includes(label));
        await this.suggestions.filter({ has: this.page.locator('.label-name').getByText(label, { exact: true }) }).first().click();
        await this.page.locator('.suggest-widget.visible').waitFor({ state: 'hidden' });
    }

    private async showFixes(title?: string): Promise<string[]> {
        return await until(title === undefined ? 'a quick fix at the cursor' : `a quick fix "${title}"`, async () => {
            if (!(await this.fixes.first().isVisible())) {
                await this.code.press('Control+.');
                await this.fixes.first().waitFor({ timeout: 2000 });
            }
            const titles = await this.fixes.locator('.title').allTextContents();
            if (title === undefined || titles.includes(title)) return titles;
            await this.page.keyboard.press('Escape');
            throw new Error(`Only these are offered: ${titles.join('; ')}`);
        }, () => true);
    }

    private async showSuggestions(): Promise<string[]> {
        const widget = this.page.locator('.suggest-widget.visible');
        // "No suggestions" stays on screen until it is closed, and would never be asked again.
        if (!(await this.suggestions.first().isVisible()) && (await widget.isVisible())) await this.page.keyboard.press('Escape');
        if (!(await widget.isVisible())) {
            await this.code.press('Control+Space');
            await this.suggestions.first().waitFor({ timeout: 2000 });
        }
        return await this.suggestions.locator('.label-name').allTextContents();
    }
}
