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

export type WebEditorOptions = Pick<WebServerOptions, 'settings' | 'noFolder'> & {
    /** Files beside those of the example, or in their place, by path. */
    readonly files?: Readonly<Record<string, string>>;
};

/** VS Code for the web with the extension, showing a copy of the example that lies in memory. No server of ours runs but one that hands files out. */
export class WebEditor extends Workbench {
    private constructor(page: Page, private readonly context: BrowserContext, private readonly profile: string, readonly server: WebServer) {
        super(page, 'memory:/first-steps');
    }

    static async open({ files = {}, ...options }: WebEditorOptions = {}): Promise<WebEditor> {
        const { web, browser } = installedWebEditor();
        if (!existsSync(join(extension, 'package.json'))) throw new Error(`${extension} is missing. Run "npm run package" first.`);
        const all = new Map([...await filesOf(firstSteps), ...Object.entries(files).map(([path, text]): [string, Uint8Array] => [path, Buffer.from(text)])]);
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
        const names = path.split('/');
        const row = (name: string): Locator => this.page.locator('.explorer-folders-view .monaco-list-row').filter({ has: this.page.locator('.label-name').getByText(name, { exact: true }) });
        for (const folder of names.slice(0, -1)) {
            if (await row(folder).getAttribute('aria-expanded') === 'false') await row(folder).click();
        }
        const name = names.at(-1)!;
        await row(name).click();
        await this.page.locator('.editor-group-container.active .tab.active').filter({ hasText: name }).waitFor();
        await this.code.ready(name);
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
