/**
 * Writes pictures of the fixture's page to .cache/brief-pictures, to be looked at by a person: node tests/brief/pictures.mjs
 * Needs Debian's chromium and poppler-utils (pdftoppm).
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const folder = fileURLToPath(new URL('../../.cache/brief-pictures/', import.meta.url));
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const bundle = join(folder, 'bundle.mjs');
await build({
    stdin: {
        contents: `export { week } from './fixture.js'; export { programmeRoot } from './fixture-tools.js';
            export { briefPage } from '../../server/brief/page.js'; export { previewPage } from './pages.js'; export { startBrowser } from './browser.js';`,
        resolveDir: here, loader: 'ts'
    },
    bundle: true, format: 'esm', platform: 'node', jsx: 'automatic', jsxImportSource: 'preact', external: ['playwright-core'], outfile: bundle
});
const { week, programmeRoot, briefPage, previewPage, startBrowser } = await import(pathToFileURL(bundle).href);

const page = briefPage(week, { root: programmeRoot });
writeFileSync(join(folder, 'week.html'), page);

const views = [
    { name: 'desktop', width: 1100 },
    { name: 'narrow', width: 360 },
    { name: 'narrowest', width: 320 },
    { name: 'dark', width: 800, media: { colorScheme: 'dark' } },
    { name: 'forced', width: 800, media: { forcedColors: 'active' } },
    { name: 'forced-dark', width: 800, media: { forcedColors: 'active', colorScheme: 'dark' } },
    { name: 'opened', width: 800, open: true },
    { name: 'opened-narrow', width: 360, open: true },
    { name: 'preview', width: 640, html: previewPage(week) }
];
/** A long page is cut into sheets that can be looked at one by one. */
const sheetHeight = 1400;

const browser = await startBrowser();
try {
    for (const view of views) {
        const tab = await browser.newPage({ viewport: { width: view.width, height: 900 }, ...view.media });
        await tab.setContent(view.html ?? page);
        if (view.open) await tab.evaluate(() => document.querySelectorAll('details').forEach(details => { details.open = true; }));
        const whole = await tab.evaluate(() => document.documentElement.scrollHeight);
        for (let top = 0, sheet = 1; top < whole; top += sheetHeight, sheet++) {
            const clip = { x: 0, y: top, width: view.width, height: Math.min(sheetHeight, whole - top) };
            await tab.screenshot({ path: join(folder, `${view.name}-${sheet}.png`), fullPage: true, clip });
        }
        await tab.close();
    }
    const tab = await browser.newPage({ colorScheme: 'dark' });
    await tab.setContent(page);
    await tab.evaluate(() => document.querySelectorAll('details').forEach(details => { details.open = true; }));
    for (const format of ['A4', 'Letter']) {
        const pdf = join(folder, `${format}.pdf`);
        await tab.pdf({ path: pdf, format, preferCSSPageSize: true });
        execFileSync('pdftoppm', ['-png', '-r', '60', pdf, join(folder, format)]);
    }
} finally {
    await browser.close();
}
console.log(`Pictures are in ${folder}`);
