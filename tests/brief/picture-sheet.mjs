/**
 * Writes contact sheets of the pictures of `show` lines to .cache/picture-sheets, to be looked at by a person: node tests/brief/picture-sheet.mjs [kind] [kind]
 * Needs Debian's chromium.
 */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const folder = fileURLToPath(new URL('../../.cache/picture-sheets/', import.meta.url));
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const bundle = join(folder, 'bundle.mjs');
await build({
    stdin: { contents: "export { pictureSheet } from './picture-sheet.js'; export { pictureSamples } from './picture-samples.js'; export { startBrowser } from './browser.js';", resolveDir: here, loader: 'ts' },
    bundle: true, format: 'esm', platform: 'node', jsx: 'automatic', jsxImportSource: 'preact', external: ['playwright-core'], outfile: bundle
});
const { pictureSheet, pictureSamples, startBrowser } = await import(pathToFileURL(bundle).href);

const wanted = process.argv.slice(2);
const kinds = Object.keys(pictureSamples).filter(kind => wanted.length === 0 || wanted.includes(kind));
/** Columns, so that one kind can be seen at a glance; the brief itself has one. */
const columns = { content: 'main.brief { max-width: none } .samples { display: grid; grid-template-columns: repeat(3, 1fr); column-gap: 1.5rem }' };
const views = [
    { name: 'light', width: 1080, columns: true },
    { name: 'dark', width: 1080, columns: true, media: { colorScheme: 'dark' } },
    { name: 'high-contrast', width: 1080, columns: true, media: { forcedColors: 'active', colorScheme: 'dark' } },
    { name: 'print', width: 702, media: { media: 'print' }, grey: true },
    { name: 'narrow', width: 320 }
];

const browser = await startBrowser();
try {
    for (const kind of kinds) {
        for (const view of views) {
            const tab = await browser.newPage({ viewport: { width: view.width, height: 900 } });
            await tab.setContent(pictureSheet([kind]));
            if (view.media) await tab.emulateMedia(view.media);
            if (view.columns) await tab.addStyleTag(columns);
            if (view.grey) await tab.addStyleTag({ content: 'html { filter: grayscale(1) }' });
            await tab.screenshot({ path: join(folder, `${kind}-${view.name}.png`), fullPage: true });
            await tab.close();
        }
    }
} finally {
    await browser.close();
}
console.log(`Contact sheets are in ${folder}`);
