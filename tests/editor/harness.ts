import { cp, mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { EditorServer, type EditorServerOptions } from './editor-server.js';
import { installedEditor } from './installed-editor.js';
import { patience } from './until.js';
import { Workbench } from './workbench.js';

export interface EditorOptions extends EditorServerOptions {
    /** The folder to open. The editor works on a copy, so a test may change and save its files. */
    readonly folder: string;
}

/** A real VS Code with the extension, showing a copy of a folder in a headless browser. */
export class Editor extends Workbench {
    private constructor(
        page: Page,
        folder: string,
        private readonly context: BrowserContext,
        private readonly server: EditorServer,
    ) {
        super(page, folder);
    }

    /**
     * Starts the server and the browser, opens the folder and waits until the workbench can be used.
     * @throws Error when the editor or the browser is not installed, or any of this does not come up in time
     */
    static async open(options: EditorOptions): Promise<Editor> {
        const { browser } = installedEditor();
        const server = await EditorServer.start(options);
        let context: BrowserContext | undefined;
        try {
            const folder = join(server.workFolder, 'folder', basename(options.folder));
            const profile = join(server.workFolder, 'browser');
            await mkdir(profile);
            await cp(options.folder, folder, { recursive: true });
            context = await chromium.launchPersistentContext(profile, {
                executablePath: browser,
                headless: true,
                viewport: { width: 1400, height: 1000 },
                permissions: ['clipboard-read', 'clipboard-write'],
                args: [
                    '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
                    '--disable-component-update', '--disable-sync', '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
                ],
            });
            context.setDefaultTimeout(patience);
            const editor = new Editor(context.pages()[0] ?? await context.newPage(), folder, context, server);
            await editor.page.goto(`${server.address}/?folder=${encodeURIComponent(folder)}`);
            await editor.ready();
            return editor;
        } catch (error) {
            await context?.close();
            await server.stop();
            throw error;
        }
    }

    /** What the extension host and the extension's own output channels logged so far. */
    logs(): Promise<string> {
        return this.server.logs();
    }

    /** Ends the browser and the server and removes all they wrote, the copied folder with it. */
    async stop(): Promise<void> {
        try {
            await this.context.close();
        } finally {
            await this.server.stop();
        }
    }
}
