import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, statSync } from 'node:fs';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { installedEditor } from './installed-editor.js';
import { patience } from './until.js';

/** Keeps the editor to the test: no welcome pages, no trust questions, no saving or network on its own account. */
export const quietSettings: Readonly<Record<string, unknown>> = {
    'chat.commandCenter.enabled': false,
    'editor.accessibilitySupport': 'off',
    'editor.cursorBlinking': 'solid',
    'editor.minimap.enabled': false,
    'editor.pasteAs.enabled': false,
    'editor.wordBasedSuggestions': 'off',
    'extensions.autoCheckUpdates': false,
    'extensions.autoUpdate': false,
    'extensions.ignoreRecommendations': true,
    'files.autoSave': 'off',
    'git.enabled': false,
    'telemetry.telemetryLevel': 'off',
    'update.mode': 'none',
    'window.restoreWindows': 'none',
    'workbench.editor.enablePreview': false,
    'workbench.enableExperiments': false,
    'workbench.localHistory.enabled': false,
    'workbench.reduceMotion': 'on',
    'workbench.startupEditor': 'none',
    'workbench.tips.enabled': false,
    'workbench.welcomePage.walkthroughs.openOnInstall': false,
};

const trustSettings = {
    trusted: { 'security.workspace.trust.enabled': false },
    restricted: {
        'security.workspace.trust.enabled': true,
        'security.workspace.trust.startupPrompt': 'never',
        'security.workspace.trust.banner': 'never',
        'security.workspace.trust.untrustedFiles': 'open',
    },
} as const;

export interface EditorServerOptions {
    /** A .vsix file or an unpacked extension folder. */
    readonly extension: string;
    /** User settings beside the quiet ones, which they override. */
    readonly settings?: Readonly<Record<string, unknown>>;
    /** `restricted` opens folders in restricted mode. Default `trusted`. */
    readonly trust?: keyof typeof trustSettings;
}

/** A running VS Code server with one extension installed, in folders of its own. */
export class EditorServer {
    private constructor(
        /** Such as `http://127.0.0.1:4321`. */
        readonly address: string,
        /** Everything this run writes; removed by `stop`. */
        readonly workFolder: string,
        private readonly process: ChildProcess,
    ) {}

    /** @throws Error when the extension cannot be installed or the server does not listen in time; says what they printed */
    static async start(options: EditorServerOptions): Promise<EditorServer> {
        const { serverMain } = installedEditor();
        const workFolder = await mkdtemp(join(tmpdir(), 'haversack-editor-'));
        try {
            const data = join(workFolder, 'data');
            const extensions = join(workFolder, 'extensions');
            const user = join(data, 'data/User');
            await mkdir(user, { recursive: true });
            await mkdir(extensions);
            const settings = { ...quietSettings, ...trustSettings[options.trust ?? 'trusted'], ...options.settings };
            await writeFile(join(user, 'settings.json'), JSON.stringify(settings, null, 4));
            const folders = ['--extensions-dir', extensions, '--server-data-dir', data];
            await installExtension(options.extension, serverMain, extensions, folders);
            const server = spawn(process.execPath, [
                serverMain, '--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms',
                '--telemetry-level', 'off', '--disable-getting-started-override', ...folders,
            ], { detached: true, stdio: ['ignore', 'pipe', 'pipe'], env: serverEnvironment() });
            // A test run that is broken off must not leave a server behind.
            process.once('exit', () => killGroup(server));
            try {
                return new EditorServer(`http://127.0.0.1:${await portOf(server)}`, workFolder, server);
            } catch (error) {
                await endGroup(server);
                throw error;
            }
        } catch (error) {
            await rm(workFolder, { recursive: true, force: true });
            throw error;
        }
    }

    /** What the extension host and the extension's own output channels logged so far, file by file. */
    async logs(): Promise<string> {
        const folder = join(this.workFolder, 'data/data/logs');
        if (!existsSync(folder)) return '';
        const files = await readdir(folder, { recursive: true, withFileTypes: true });
        const wanted = files.filter((file) => file.isFile() && file.parentPath.includes('exthost'));
        const texts = wanted.map(async (file) => `--- ${file.name}\n${await readFile(join(file.parentPath, file.name), 'utf8')}`);
        return (await Promise.all(texts)).join('\n');
    }

    /** Ends the server and all it started, and removes its folders. */
    async stop(): Promise<void> {
        await endGroup(this.process);
        await rm(this.workFolder, { recursive: true, force: true, maxRetries: 5 });
    }
}

/** A packed extension goes through VS Code's own installer, so a bad package fails here as it would for a user. */
async function installExtension(extension: string, serverMain: string, extensions: string, folders: string[]): Promise<void> {
    if (!existsSync(extension)) throw new Error(`The extension ${extension} does not exist.`);
    if (statSync(extension).isDirectory()) {
        const manifest = JSON.parse(await readFile(join(extension, 'package.json'), 'utf8')) as Record<string, string>;
        await cp(extension, join(extensions, `${manifest.publisher}.${manifest.name}-${manifest.version}`), { recursive: true });
        return;
    }
    const { stdout, stderr } = await promisify(execFile)(process.execPath, [serverMain, '--install-extension', extension, ...folders], {
        timeout: patience,
        env: serverEnvironment(),
    });
    if (!stdout.includes('successfully installed')) throw new Error(`VS Code did not install ${extension}:\n${stdout}${stderr}`);
}

/** Without the variables by which a terminal of another VS Code, or a test runner, would change this one. */
function serverEnvironment(): NodeJS.ProcessEnv {
    return Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(VSCODE_|VITEST|NODE_OPTIONS$|NODE_ENV$)/.test(name)));
}

function portOf(server: ChildProcess): Promise<string> {
    return new Promise((settle, fail) => {
        let printed = '';
        const timer = setTimeout(() => fail(new Error(`The editor's server did not listen within ${patience} ms:\n${printed}`)), patience);
        const read = (chunk: Buffer): void => {
            printed += chunk.toString();
            const port = /Extension host agent listening on (\d+)/.exec(printed)?.[1];
            if (port === undefined) return;
            clearTimeout(timer);
            settle(port);
        };
        // The listeners stay for the whole run: a full pipe would stop the server.
        server.stdout?.on('data', read);
        server.stderr?.on('data', read);
        server.once('error', fail);
        server.once('exit', (code) => {
            clearTimeout(timer);
            fail(new Error(`The editor's server ended with code ${code}:\n${printed}`));
        });
    });
}

/** Ends a detached process and all that it started. Its data are thrown away, so there is nothing to ask it to save. */
async function endGroup(leader: ChildProcess): Promise<void> {
    const gone = leader.exitCode !== null || leader.signalCode !== null ? undefined : once(leader, 'exit');
    killGroup(leader);
    await gone;
}

function killGroup(leader: ChildProcess): void {
    try {
        if (leader.pid !== undefined) process.kill(-leader.pid, 'SIGKILL');
    } catch {
        // Nothing of the group is left.
    }
}
