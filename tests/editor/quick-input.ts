import { basename } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { until } from './until.js';

/** A step in the box fails soon and is made again: a window that is still loading takes the keyboard to itself, and the box closes. */
const soon = { timeout: 2000 };

/** The box at the top of the window: quick open, the command palette, choices and questions. */
export class QuickInput {
    private readonly widget: Locator;
    private readonly input: Locator;
    private readonly rows: Locator;

    constructor(private readonly page: Page) {
        this.widget = page.locator('.quick-input-widget');
        this.input = this.widget.locator('.quick-input-box input');
        this.rows = this.widget.locator('.quick-input-list .monaco-list-row');
    }

    /** Opens a file of the folder by its name or the end of its path. */
    async openFile(path: string): Promise<void> {
        await this.search('Control+p', '', path, (label) => label === basename(path), `a file ${path}`);
        await this.widget.waitFor({ state: 'hidden' });
    }

    /**
     * Runs a command by its title, with or without its category. Returns when the palette is gone or the command asks
     * something of its own.
     */
    async runCommand(title: string): Promise<void> {
        const accept = (label: string): boolean => label === title || label.endsWith(`: ${title}`);
        await this.search('F1', '>', title, accept, `a command "${title}"`);
        await until(`the command palette to close after "${title}"`, () => this.value(), (value) => !value?.startsWith('>'));
    }

    /** Opens the box with a key, writes into it and takes it by Enter, as "go to line" does. It may happen twice. */
    async enter(key: string, text: string): Promise<void> {
        await until(`"${text}" to be taken`, async () => {
            await this.open(key);
            await this.input.fill(text, soon);
            await this.input.press('Enter', soon);
            await this.widget.waitFor({ state: 'hidden', ...soon });
        }, () => true);
    }

    /** Chooses an entry by its label from a list that the extension shows. */
    async choose(label: string): Promise<void> {
        await until(`a choice "${label}"`, () => this.labels(), (labels) => labels.includes(label));
        await this.rowOf(label).click();
    }

    /** Chooses an entry by words of its label, which may begin with an icon. */
    async chooseByWords(words: string): Promise<void> {
        await this.rows.filter({ hasText: words }).first().waitFor();
        // A list that has only just come moves its rows under the pointer: narrowed down to what is sought, the first is taken by its key.
        await this.input.fill(words);
        await until(`a list that begins with ${words}`, () => this.rows.first().innerText(), text => text.includes(words));
        await this.page.keyboard.press('Enter');
    }

    /** Waits for a question that the extension asks in the box, answers it, and waits until it is closed or asks the next. */
    async answer(question: string | RegExp, text: string): Promise<void> {
        await this.widget.locator('.quick-input-message').filter({ hasText: question }).waitFor();
        await this.input.fill(text);
        await this.input.press('Enter');
        await until(`the answer "${text}" to be taken`, () => this.value(), (value) => value !== text);
    }

    /** What the box says under its input: the question, or why an answer is refused. */
    message(): Promise<string> {
        return this.widget.locator('.quick-input-message').innerText();
    }

    /** The labels on show, for as far as they fit the list. */
    async labels(): Promise<string[]> {
        // A closed box keeps its last rows in the page.
        if (!(await this.input.isVisible())) return [];
        return await this.rows.locator('.label-name').allTextContents();
    }

    /** A key pressed while the workbench is still loading is lost, so it is pressed until the box is there. */
    private async open(key: string): Promise<void> {
        await until(`the box that ${key} opens`, async () => {
            await this.page.keyboard.press(key);
            await this.input.waitFor({ timeout: 1000 });
        }, () => true);
    }

    /** The box searches once for what is written, and what is sought may come later: so it is written again until found. */
    private async search(key: string, prefix: string, text: string, accept: (label: string) => boolean, what: string): Promise<void> {
        await this.open(key);
        await until(what, async () => {
            if (!(await this.input.isVisible())) await this.open(key);
            await this.input.fill(prefix, soon);
            await this.input.fill(prefix + text, soon);
            const labels = await until(what, () => this.labels(), (found) => found.some(accept), soon.timeout);
            await this.rowOf(labels.find(accept) ?? '').click(soon);
        }, () => true);
    }

    private rowOf(label: string): Locator {
        const exact = this.page.locator('.label-name').getByText(label, { exact: true });
        return this.rows.filter({ has: exact }).first();
    }

    private async value(): Promise<string | undefined> {
        return (await this.input.isVisible()) ? await this.input.inputValue() : undefined;
    }
}
