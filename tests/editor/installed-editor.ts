import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const repository = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

export interface InstalledEditor {
    /** VS Code's server, started with Node. */
    readonly serverMain: string;
    /** The Chromium executable. */
    readonly browser: string;
}

/**
 * Finds what `install-editor.sh` installed.
 * @throws Error when the editor or the browser is missing: a test that needs them must fail, not pass over it.
 */
export function installedEditor(): InstalledEditor {
    const serverMain = resolve(process.env.HAVERSACK_EDITOR_DIR ?? resolve(repository, '.cache/editor'), 'vscode/out/server-main.js');
    const browser = '/usr/bin/chromium';
    for (const path of [serverMain, browser]) {
        if (!existsSync(path)) throw new Error(`${path} is missing. Run tests/editor/install-editor.sh first.`);
    }
    return { serverMain, browser };
}

/** The folder that screenshots are written to. */
export function screenshotFolder(): string {
    return resolve(process.env.HAVERSACK_SHOTS ?? resolve(repository, '.cache/editor-shots'));
}
