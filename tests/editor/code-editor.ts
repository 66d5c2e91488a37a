import type { Locator, Page } from 'playwright-core';
import type { QuickInput } from './quick-input.js';
import { until } from './until.js';

export interface Squiggles {
    readonly errors: number;
    readonly warnings: number;
    readonly infos: number;
}

export interface ColouredText {
    readonly text: string;
    /** As CSS computes it, such as `rgb(0, 128, 0)`. */
    readonly colour: string;
}

const SOURCE_EDITOR = '.editor-instance .monaco-editor[data-uri]';

/** The source editor in use. Only lines on screen exist in the page: go to a line before reading it. */
export class CodeEditor {
    constructor(private readonly page: Page, private readonly quickInput: QuickInput) {}

    /** Waits until a file of this name is shown in the group in use. */
    async ready(name: string): Promise<void> {
        await this.page.locator(`.editor-group-container.active .editor-instance .monaco-editor[data-uri$="/${encodeURIComponent(name)}"] .view-line`).first().waitFor();
    }

    /** Puts the cursor into the source editor: the one in use, or the first when a preview or a panel is in use. */
    async focus(): Promise<void> {
        // Found and focused in one step, again until it holds: a click in a preview can make its group the one in use a little later.
        await until('the source editor in use', () => this.page.evaluate((every) => {
            const focused = document.querySelector('.editor-group-container.active .monaco-editor.focused');
            if (focused !== null) return true;
            const editor = document.querySelector(`.editor-group-container.active ${every}`) ?? document.querySelector(every);
            editor?.querySelector<HTMLElement>('.native-edit-context, textarea.inputarea')?.focus();
            return false;
        }, SOURCE_EDITOR), (focused) => focused);
    }

    /** Puts the cursor at a place, both counted from 1. */
    async goToLine(line: number, column = 1): Promise<void> {
        await this.focus();
        await this.quickInput.enter('Control+g', `:${line}:${column}`);
        // The column is not compared: the status bar counts a tab as wide as it is shown.
        await this.page.locator('#status\\.editor\\.selection').filter({ hasText: `Ln ${line}, ` }).waitFor();
    }

    /** Types at the cursor, key by key, with all that the editor does meanwhile: closing brackets, suggestions, indentation. */
    async typeText(text: string): Promise<void> {
        await this.focus();
        await this.page.keyboard.type(text);
    }

    /** Pastes text over the selection, character for character as it is. */
    async pasteText(text: string): Promise<void> {
        await this.focus();
        await this.page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
        await this.page.keyboard.press('Control+v');
    }

    /** Puts this text in the place of the whole file's, character for character. */
    async replaceAll(text: string): Promise<void> {
        await this.press('Control+a');
        await this.pasteText(text);
    }

    /** Presses a key, or keys joined by `+`, in the source editor. */
    async press(keys: string): Promise<void> {
        await this.focus();
        await this.page.keyboard.press(keys);
    }

    /** A line as it is shown, inlay hints included, once `accept` is content with it. Counted from 1; it must be on screen. */
    async lineText(line: number, accept: (text: string) => boolean = () => true): Promise<string> {
        return await until(`line ${line}`, async () => (await this.colours(line)).map((part) => part.text).join(''), accept);
    }

    /** The pieces of a line with their colours, from left to right. Counted from 1; it must be on screen. */
    async colours(line: number): Promise<ColouredText[]> {
        return await (await this.editor()).evaluate((editor, wanted) => {
            const top = (element: HTMLElement): number => Number.parseFloat(element.style.top);
            const numbers = Array.from(editor.querySelectorAll<HTMLElement>('.margin-view-overlays > div'))
                .filter((row) => row.querySelector('.line-numbers')?.textContent?.trim())
                .sort((a, b) => top(a) - top(b));
            const at = numbers.findIndex((row) => row.querySelector('.line-numbers')?.textContent?.trim() === String(wanted));
            const start = numbers[at];
            if (start === undefined) throw new Error(`Line ${wanted} is not on screen.`);
            const next = numbers[at + 1];
            // A wrapped line is several rows: all until the next number.
            return Array.from(editor.querySelectorAll<HTMLElement>('.view-lines > .view-line'))
                .filter((row) => top(row) >= top(start) && (next === undefined || top(row) < top(next)))
                .sort((a, b) => top(a) - top(b))
                .flatMap((row) => Array.from(row.querySelectorAll<HTMLElement>(':scope > span > span')))
                .map((span) => ({ text: (span.textContent ?? '').replaceAll('\u00a0', ' '), colour: getComputedStyle(span).color }));
        }, line);
    }

    /** How many pieces of text on screen are underlined. */
    async squiggles(): Promise<Squiggles> {
        const editor = await this.editor();
        const count = (kind: string): Promise<number> => editor.locator(`.view-overlays .squiggly-${kind}`).count();
        return { errors: await count('error'), warnings: await count('warning'), infos: await count('info') };
    }

    /** The titles of the code lenses on screen, once `accept` is content with them. */
    async codeLenses(accept: (titles: string[]) => boolean = (titles) => titles.length > 0): Promise<string[]> {
        return await until('code lenses', async () => (await this.lenses()).allInnerTexts(), accept);
    }

    /** Waits for a code lens whose title has this text. @returns its locator, to be clicked */
    async codeLens(text: string | RegExp): Promise<Locator> {
        const lens = (await this.lenses()).filter({ hasText: text }).first();
        await lens.waitFor();
        return lens;
    }

    /** The editor asks for new code lenses only while the cursor is in it. */
    private async lenses(): Promise<Locator> {
        await this.focus();
        return (await this.editor()).locator('.codelens-decoration a');
    }

    private async editor(): Promise<Locator> {
        const active = this.page.locator(`.editor-group-container.active ${SOURCE_EDITOR}`);
        return (await active.count()) > 0 ? active.first() : this.page.locator(SOURCE_EDITOR).first();
    }
}
