// Measures how long the extension keeps a real VS Code busy when it is activated, as the editor itself counts it ("Developer: Startup Performance"), and when the
// server's first answers stand in the text. Needs the package (`npm run package`) and the editor (tests/editor/install-editor.sh).
// `npm run bench:activation -- 10` starts the editor ten times. Nothing fails by a time: a busy machine is slower.
import { existsSync } from 'node:fs';
import { loadavg } from 'node:os';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { median } from './wire.mjs';

const rounds = Number(process.argv[2] ?? 5);
const extension = resolve('.build/haversack.vsix');
if (!existsSync(extension)) throw new Error(`${extension} is missing. Run "npm run package" first.`);

/** The harness of the editor's tests, bundled for this run: it looks for the editor two folders above itself. */
async function harness() {
    const outfile = resolve('.cache/editor-harness/harness.mjs');
    await build({ entryPoints: ['tests/editor/harness.ts'], bundle: true, platform: 'node', format: 'esm', packages: 'external', outfile, logLevel: 'warning' });
    return import(pathToFileURL(outfile).href);
}

const { Editor } = await harness();
const columns = ['Load code', 'Call activate', 'Finish activate', 'First lenses in the text'];
const measured = [];
for (let round = 0; round < rounds; round++) measured.push(await measure());

console.log(`\nActivation in VS Code, ${rounds} starts, milliseconds (load of the machine ${loadavg()[0].toFixed(1)})`);
for (const [index, name] of columns.entries()) {
    const times = measured.map(times => times[index]).sort((a, b) => a - b);
    console.log(`${name.padEnd(26)} median ${String(median(times)).padStart(5)}   lowest ${String(times[0]).padStart(5)}   highest ${String(times[times.length - 1]).padStart(5)}`);
}

/** @returns {Promise<number[]>} in the order of `columns`; the last counts from when the editor began to activate the extension */
async function measure() {
    const editor = await Editor.open({ extension, folder: 'examples/first-steps' });
    try {
        await editor.openFile('listen-1.lesson');
        await editor.code.codeLenses();
        const shown = Date.now();
        const [, begun] = /^(\S+ \S+) \[info\] ExtensionService#_doActivateExtension haversack-workshop\.haversack,/m.exec(await editor.logs()) ?? [];
        await editor.runCommand('Developer: Startup Performance');
        await editor.page.locator('.tab.active').filter({ hasText: 'Startup Performance' }).waitFor();
        const row = await rowOf(editor);
        console.log(`${row.join(' ')} ${shown - Date.parse(`${begun}`)}`);
        return [...row, shown - Date.parse(begun)];
    } finally {
        await editor.stop();
    }
}

/** Times of the extension in the editor's own report: | Extension | Eager | Load Code | Call Activate | Finish Activate | Event | By | */
async function rowOf(editor) {
    const end = performance.now() + 30_000;
    for (let text = ''; performance.now() < end;) {
        await editor.page.keyboard.press('Control+a');
        await editor.page.keyboard.press('Control+c');
        text = await editor.page.evaluate(() => navigator.clipboard.readText());
        const row = text.split('\n').find(line => /^\|\s*haversack-workshop\.haversack\s*\|/.test(line))?.split('|').map(cell => cell.trim());
        if (row) return row.slice(3, 6).map(Number);
    }
    throw new Error('The editor\'s report says nothing of the extension.');
}
