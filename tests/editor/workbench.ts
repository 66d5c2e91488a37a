import { mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { FrameLocator, Locator, Page } from 'playwright-core';
import { CodeEditor } from './code-editor.js';
import { CodeHelp } from './code-help.js';
import { screenshotFolder } from './installed-editor.js';
import { ProblemsPanel } from './problems-panel.js';
import { QuickInput } from './quick-input.js';
import { until } from './until.js';

/** The window of VS Code, as the person before it uses it. Every step waits for its own effect. */
export class Workbench {
    /** The source editor that is in use. */
    readonly code: CodeEditor;
    /** Quick fixes, hovers and completions in it. */
    readonly help: CodeHelp;
    readonly problems: ProblemsPanel;
    /** The box at the top: files, commands, choices and questions. */
    readonly quickInput: QuickInput;
    /** Uncaught errors of the window and its webviews, and what a content security policy refused them. */
    readonly pageErrors: string[] = [];

    constructor(
        readonly page: Page,
        /** The opened folder. */
        readonly folder: string,
    ) {
        this.quickInput = new QuickInput(page);
        this.code = new CodeEditor(page, this.quickInput);
        this.help = new CodeHelp(page, this.code);
        this.problems = new ProblemsPanel(page, this.quickInput);
        page.on('console', (message) => {
            if (message.text().includes('Content Security Policy')) this.pageErrors.push(message.text());
        });
        page.on('pageerror', (error) => this.pageErrors.push(String(error)));
    }

    /** Waits until the folder is shown. */
    async ready(): Promise<void> {
        await this.page.locator('.monaco-workbench').waitFor();
        // An empty folder has a list without rows, which counts as hidden.
        await this.page.locator('.explorer-folders-view .monaco-list').first().waitFor({ state: 'attached' });
    }

    /** Opens a file of the folder by its name (or the end of its path) and waits until its text is shown. */
    async openFile(path: string): Promise<void> {
        const name = basename(path);
        // A file opens in the group in use, which must not be a preview's.
        if ((await this.tabs()).length > 0) await this.page.keyboard.press('Control+1');
        await this.quickInput.openFile(path);
        await this.page.locator('.editor-group-container.active .tab.active').filter({ hasText: name }).waitFor();
        await this.code.ready(name);
    }

    /** Runs a command by its title in the command palette, with or without its category: `Show Page`, `Lessons: Show Page`. */
    runCommand(title: string): Promise<void> {
        return this.quickInput.runCommand(title);
    }

    /** Saves the file in use and waits until the editor says that it is saved. */
    async save(): Promise<void> {
        await this.code.focus();
        await this.page.keyboard.press('Control+s');
        await this.page.locator('.editor-group-container.active .tab.active:not(.dirty)').waitFor();
    }

    /** The titles of all open tabs, in order. */
    tabs(): Promise<string[]> {
        return this.page.locator('.tab .label-name').allTextContents();
    }

    /** The texts of the status bar's entries, those that are only an icon left out. */
    async statusBar(): Promise<string[]> {
        const texts = await this.page.locator('.statusbar-item').allInnerTexts();
        return texts.map((text) => text.replace(/\s+/g, ' ').trim()).filter((text) => text !== '');
    }

    /** The texts of the notifications on screen. */
    notifications(): Promise<string[]> {
        return this.page.locator('.notification-list-item-message').allInnerTexts();
    }

    /** Waits for a notification with this text; its buttons are found by role in what is returned. */
    async notification(text: string | RegExp): Promise<Locator> {
        const toast = this.page.locator('.notification-list-item').filter({ hasText: text });
        await toast.waitFor();
        return toast;
    }

    /**
     * The inside of a webview that is on screen; locators of it wait for the page to be there.
     * @param place which one, counted from 0, when several are shown
     */
    webview(place = 0): FrameLocator {
        const outer = this.page.locator('iframe.webview.ready').filter({ visible: true }).nth(place);
        return outer.contentFrame().frameLocator('#active-frame');
    }

    /** Opens a tree view by its title. @returns a locator of its rows; only those on screen exist */
    async tree(title: string): Promise<Locator> {
        await this.quickInput.runCommand(`Focus on ${title} View`);
        const header = this.page.locator('.pane-header h3.title').getByText(title, { exact: true });
        return this.page.locator('.pane').filter({ has: header }).locator('.pane-body .monaco-list-row');
    }

    /** Label and description of a tree view's rows on screen, once `accept` is content with them. */
    async treeRows(title: string, accept: (rows: string[]) => boolean = (rows) => rows.length > 0): Promise<string[]> {
        const rows = await this.tree(title);
        const read = (): Promise<string[]> => rows.evaluateAll((elements) => elements.map((row) =>
            Array.from(row.querySelectorAll('.label-name, .label-description')).map((part) => part.textContent).join(' ')));
        return await until(`the rows of ${title}`, read, accept);
    }

    /** Writes a picture of the window to the screenshot folder. @returns the file's path */
    async screenshot(name: string): Promise<string> {
        const path = join(screenshotFolder(), `${name}.png`);
        await mkdir(screenshotFolder(), { recursive: true });
        await this.page.screenshot({ path });
        return path;
    }
}
