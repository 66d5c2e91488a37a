import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Locator, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { installedWebEditor } from '../installed-editor.js';
import { firstSteps, repository } from '../session.js';
import { patience } from '../until.js';
import { Workbench } from '../workbench.js';
import { WebServer, type WebServerOptions } from './web-server.js';

/** What the package holds, as `npm run package` leaves it. */
const extension = join(repository, '.build/vsix');

export type WebEditorOptions = Pick<WebServerOptions, 'settings'> & {
    /** Files beside those of the example, or in their place, by path. */
    readonly files?: Readonly<Record<string, string | Uint8Array>>;
    /** Without the example only those files. */
    readonly noExample?: boolean;
};

/** VS Code for the web with the extension, showing a copy of the example that lies in memory. No server of ours runs but one that hands files out. */
export class WebEditor extends Workbench {
    private constructor(page: Page, private readonly context: BrowserContext, private readonly profile: string, readonly server: WebServer) {
        super(page, 'memory:/first-steps');
    }

    static async open({ files = {}, noExample = false, ...options }: WebEditorOptions = {}): Promise<WebEditor> {
        const { web, browser } = installedWebEditor();
        if (!existsSync(join(extension, 'package.json'))) throw new Error(`${extension} is missing. Run "npm run package" first.`);
        const given = Object.entries(files).map(([path, content]): [string, Uint8Array] => [path, Buffer.from(content)]);
        const all = new Map([...noExample ? [] : await filesOf(firstSteps), ...given]);
        const server = await WebServer.start({ editor: web, extension, files: all, ...options });
        const profile = await mkdtemp(join(tmpdir(), 'haversack-web-'));
        const context = await chromium.launchPersistentContext(profile, {
            executablePath: browser, headless: true, viewport: { width: 1400, height: 1000 }, permissions: ['clipboard-read', 'clipboard-write'],
            args: [
                '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
                '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1'
            ]
        });
        context.setDefaultTimeout(patience);
        const editor = new WebEditor(context.pages()[0] ?? await context.newPage(), context, profile, server);
        try {
            await editor.page.goto(server.address);
            await editor.ready();
            return editor;
        } catch (error) {
            await editor.screenshot('failed-web-start');
            await editor.stop();
            throw error;
        }
    }

    /** Opens a file of the folder from the explorer, by its path: the box that finds files by name has nothing to search in memory. */
    override async openFile(path: string): Promise<void> {
        // A file opens in the group in use, which must not be a preview's.
        if ((await this.tabs()).length > 0) await this.page.keyboard.press('Control+1');
        const name = path.slice(path.lastIndexOf('/') + 1);
        await (await this.inExplorer(path)).click();
        await this.page.locator('.editor-group-container.active .tab.active').filter({ hasText: name }).waitFor();
        await this.code.ready(name);
    }

    /** The row of a file in the explorer, which is opened for it, as are its folders. */
    async inExplorer(path: string): Promise<Locator> {
        const explorer = this.page.locator('.explorer-folders-view');
        if (!await explorer.isVisible()) await this.runCommand('View: Show Explorer');
        const names = path.split('/');
        const row = (name: string): Locator => explorer.locator('.monaco-list-row').filter({ has: this.page.locator('.label-name').getByText(name, { exact: true }) });
        for (const folder of names.slice(0, -1)) {
            if (await row(folder).getAttribute('aria-expanded') === 'false') await row(folder).click();
        }
        return row(names.at(-1)!);
    }

    /** Gives the browser's own dialog the answer of somebody who chooses a file of the device: the dialog itself is none of the page's. */
    async chooseOnDevice(name: string, content: Uint8Array): Promise<void> {
        await this.page.evaluate(async ([file, bytes]) => {
            const handle = await (await navigator.storage.getDirectory()).getFileHandle(file, { create: true });
            const writing = await handle.createWritable();
            await writing.write(Uint8Array.from(bytes));
            await writing.close();
            Object.assign(window, { showOpenFilePicker: () => Promise.resolve([handle]) });
        }, [name, [...content]] as const);
    }

    /** Likewise of somebody who chooses where files are saved on the device, each under the name that is proposed. */
    async saveOnDevice(): Promise<void> {
        await this.page.evaluate(() => {
            const showSaveFilePicker = async ({ suggestedName }: { suggestedName: string }): Promise<FileSystemFileHandle> => (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
            Object.assign(window, { showSaveFilePicker });
        });
    }

    /** What a file of the device holds; nothing where it is not there yet. */
    onDevice(name: string): Promise<string> {
        return this.page.evaluate(async file => {
            try {
                return await (await (await (await navigator.storage.getDirectory()).getFileHandle(file)).getFile()).text();
            } catch {
                return '';
            }
        }, name);
    }

    async stop(): Promise<void> {
        await this.context.close();
        await this.server.stop();
        await rm(this.profile, { recursive: true, force: true, maxRetries: 5 });
    }
}

async function filesOf(folder: string): Promise<[string, Uint8Array][]> {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    return Promise.all(entries.filter(entry => entry.isFile()).map(async (entry): Promise<[string, Uint8Array]> => {
        const path = join(entry.parentPath, entry.name);
        return [path.slice(folder.length + 1), await readFile(path)];
    }));
}

/** Tests in a describe block are one writer's session: each goes on where the one before it stopped. */
export function webSession(options: WebEditorOptions = {}): () => WebEditor {
    let editor: WebEditor | undefined;
    beforeAll(async () => { editor = await WebEditor.open(options); });
    afterEach(async context => {
        if (context.task.result?.state === 'fail') await editor?.screenshot(`failed web ${context.task.name}`.replaceAll(/[^a-z0-9]+/gi, '-'));
    });
    afterAll(async () => {
        const errors = editor?.pageErrors ?? [];
        await editor?.stop();
        expect(errors).toEqual([]);
    });
    return () => editor!;
}
