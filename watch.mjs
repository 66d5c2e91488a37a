// Builds at every change of a source file, and shows the extension in a real VS Code: `npm run watch`, or `npm run watch -- FOLDER` for another programme than
// examples/first-steps, or `npm run watch -- --no-editor`. Ctrl+C ends it with all that it started.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, watch } from 'node:fs';
import { mkdir, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { context } from 'esbuild';
import { addBesideBundles, bundles, emptyExtensionFolder } from './bundles.mjs';

const repository = dirname(fileURLToPath(import.meta.url));
process.chdir(repository);
const given = process.argv.slice(2);
const programme = resolve(given.find(word => !word.startsWith('-')) ?? 'examples/first-steps');
const development = join(repository, '.build/extension');
const work = join(repository, '.cache/watch');
const serverMain = join(resolve(process.env.HAVERSACK_EDITOR_DIR ?? '.cache/editor'), 'vscode/out/server-main.js');

const say = text => console.log(`${new Date().toTimeString().slice(0, 8)} ${text}`);

function generateGrammar() {
    const { status } = spawnSync(process.execPath, ['language/generate.mjs'], { stdio: 'inherit' });
    if (status !== 0) say('The grammar has errors: nothing was made of it.');
    return status === 0;
}

/** Of several bundles that a change touches, the last to be ready says so for all. */
const underWay = new Set();
const failed = new Set();
let started = 0;
let announced = Promise.resolve();
let whenFirstBuilt = () => undefined;
const reporter = number => ({
    name: 'reporter',
    setup({ onStart, onEnd }) {
        onStart(() => {
            if (underWay.size === 0) started = performance.now();
            underWay.add(number);
        });
        onEnd(({ errors }) => {
            underWay.delete(number);
            if (errors.length > 0) failed.add(number);
            else failed.delete(number);
            if (underWay.size === 0) announced = announced.then(announce);
        });
    }
});

async function announce() {
    if (failed.size > 0) return say('Not built: see the errors above.');
    await addBesideBundles();
    say(`Built in ${Math.round(performance.now() - started)} ms. In the editor: "Developer: Reload Window".`);
    whenFirstBuilt();
}

/** .build/extension holds the bundles; with links to all the rest of the extension it can be loaded as it stands. */
async function linkDevelopmentFolder() {
    for (const name of await readdir('extension')) {
        if (/\.m?ts$|\.mjs$|^tsconfig|^dist$|^node_modules$/.test(name)) continue;
        await rm(join(development, name), { recursive: true, force: true });
        await symlink(join(repository, 'extension', name), join(development, name));
    }
}

const settings = {
    'extensions.autoCheckUpdates': false, 'extensions.autoUpdate': false, 'security.workspace.trust.enabled': false, 'telemetry.telemetryLevel': 'off', 'update.mode': 'none',
    'window.restoreWindows': 'none', 'workbench.startupEditor': 'none'
};

/** The editor's server in folders of its own. Its settings stay from one time to the next. */
async function startEditor() {
    const extensions = join(work, 'extensions');
    const user = join(work, 'data/data/User');
    const { publisher, name, version } = JSON.parse(await readFile('extension/package.json', 'utf8'));
    await rm(extensions, { recursive: true, force: true });
    await mkdir(extensions, { recursive: true });
    await mkdir(user, { recursive: true });
    await symlink(development, join(extensions, `${publisher}.${name}-${version}`));
    if (!existsSync(join(user, 'settings.json'))) await writeFile(join(user, 'settings.json'), `${JSON.stringify(settings, undefined, 4)}\n`);
    const editor = spawn(process.execPath, [
        serverMain, '--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms', '--telemetry-level', 'off',
        '--extensions-dir', extensions, '--server-data-dir', join(work, 'data')
    ], { detached: true, stdio: ['ignore', 'pipe', 'pipe'], env: Object.fromEntries(Object.entries(process.env).filter(([key]) => !key.startsWith('VSCODE_'))) });
    let printed = '';
    const read = chunk => {
        printed += chunk;
        const [, port] = /Extension host agent listening on (\d+)/.exec(printed) ?? [];
        if (port === undefined) return;
        printed = '';
        say(`Open http://127.0.0.1:${port}/?folder=${encodeURIComponent(programme)}`);
    };
    editor.stdout.on('data', read);
    editor.stderr.on('data', read);
    editor.once('exit', code => {
        if (!ending) say(`The editor ended with code ${code}. ${printed}`);
    });
    return editor;
}

let ending = false;
let editor;
let contexts = [];

async function end() {
    if (ending) return;
    ending = true;
    const kill = signal => {
        try {
            process.kill(-editor.pid, signal);
        } catch {
            // Nothing of it is left.
        }
    };
    if (editor) {
        kill('SIGTERM');
        if (editor.exitCode === null && editor.signalCode === null) await Promise.race([new Promise(gone => editor.once('exit', gone)), new Promise(late => setTimeout(late, 3000))]);
        kill('SIGKILL');
    }
    await Promise.all(contexts.map(one => one.dispose()));
    process.exit(0);
}
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, end);

if (!generateGrammar()) process.exit(1);
await emptyExtensionFolder();
const firstBuilt = new Promise(done => { whenFirstBuilt = done; });
contexts = await Promise.all(bundles(false).map(({ options }, number) => context({ ...options, plugins: [...options.plugins ?? [], reporter(number)] })));
await Promise.all(contexts.map(one => one.watch()));

let waiting;
watch('language/grammar', (_, name) => {
    if (!name?.endsWith('.langium')) return;
    clearTimeout(waiting);
    // An editor writes a file in several steps.
    waiting = setTimeout(() => {
        say(`${name} changed.`);
        generateGrammar();
    }, 100);
});

await firstBuilt;
await linkDevelopmentFolder();
if (given.includes('--no-editor')) say(`The extension can be loaded from ${development}`);
else if (existsSync(serverMain)) editor = await startEditor();
else say(`There is no editor to show it in. Install one with "bash tests/editor/install-editor.sh", or start your own: code --extensionDevelopmentPath=${development} ${programme}`);
