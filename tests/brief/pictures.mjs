/**
 * Writes pictures of the fixtures' pages and of the year example's term to .cache/brief-pictures, to be looked at by a person: node tests/brief/pictures.mjs [week] [adapted] [adapted-term] [changes] [unchanged] [term] [year]
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
        contents: `export { week } from './fixture.js'; export { term } from './term-fixture.js'; export { adaptedTerm, adaptedWeek } from './adapted-fixture.js';
            export { changes, unchangedClass } from './changes-fixture.js'; export { programmeRoot } from './fixture-tools.js';
            export { briefPage } from '../../server/brief/page.js'; export { termPage } from '../../server/brief/term/page.js'; export { changesPage } from '../../server/brief/changes/page.js';
            export { changesPreviewPage, previewPage, termPreviewPage } from './pages.js'; export { exampleTerm } from './example-terms.js'; export { startBrowser } from './browser.js';`,
        resolveDir: here, loader: 'ts'
    },
    bundle: true, format: 'esm', platform: 'node', jsx: 'automatic', jsxImportSource: 'preact', external: ['playwright-core'], outfile: bundle
});
const { week, adaptedWeek, adaptedTerm, term, changes, unchangedClass, programmeRoot, briefPage, termPage, changesPage, previewPage, termPreviewPage, changesPreviewPage, exampleTerm, startBrowser } = await import(pathToFileURL(bundle).href);

const year = await exampleTerm('year', 'millpond', '2026-10-01');
const pages = [
    { name: 'week', html: briefPage(week, { root: programmeRoot }), preview: previewPage(week) },
    { name: 'adapted', html: briefPage(adaptedWeek, { root: programmeRoot }), preview: previewPage(adaptedWeek) },
    { name: 'adapted-term', html: termPage(adaptedTerm, { root: programmeRoot }), preview: termPreviewPage(adaptedTerm) },
    { name: 'changes', html: changesPage(changes, { root: programmeRoot }), preview: changesPreviewPage(changes) },
    { name: 'unchanged', html: changesPage(unchangedClass, { root: programmeRoot }), preview: changesPreviewPage(unchangedClass) },
    { name: 'term', html: termPage(term, { root: programmeRoot }), preview: termPreviewPage(term) },
    { name: 'year', html: termPage(year), preview: termPreviewPage(year) }
];

const wanted = process.argv.slice(2);
const views = [
    { name: 'desktop', width: 1100 },
    { name: 'middling', width: 700 },
    { name: 'narrow', width: 360 },
    { name: 'narrowest', width: 320 },
    { name: 'dark', width: 800, media: { colorScheme: 'dark' } },
    { name: 'forced', width: 800, media: { forcedColors: 'active' } },
    { name: 'forced-dark', width: 800, media: { forcedColors: 'active', colorScheme: 'dark' } },
    { name: 'opened', width: 800, open: true },
    { name: 'opened-narrow', width: 360, open: true },
    { name: 'preview', width: 640, preview: true }
];
/** A long page is cut into sheets that can be looked at one by one. */
const sheetHeight = 1400;

const openAll = () => document.querySelectorAll('details').forEach(details => { details.open = true; });

const browser = await startBrowser();
try {
    for (const page of pages.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
        writeFileSync(join(folder, `${page.name}.html`), page.html);
        for (const view of views) await screen(page, view);
        await paper(page);
    }
} finally {
    await browser.close();
}
console.log(`Pictures are in ${folder}`);

async function screen(page, view) {
    const tab = await browser.newPage({ viewport: { width: view.width, height: 900 }, ...view.media });
    await tab.setContent(view.preview ? page.preview : page.html);
    if (view.open) await tab.evaluate(openAll);
    const whole = await tab.evaluate(() => document.documentElement.scrollHeight);
    for (let top = 0, sheet = 1; top < whole; top += sheetHeight, sheet++) {
        const clip = { x: 0, y: top, width: view.width, height: Math.min(sheetHeight, whole - top) };
        await tab.screenshot({ path: join(folder, `${page.name}-${view.name}-${sheet}.png`), fullPage: true, clip });
    }
    await tab.close();
}

async function paper(page) {
    const tab = await browser.newPage({ colorScheme: 'dark' });
    await tab.setContent(page.html);
    await tab.evaluate(openAll);
    for (const format of ['A4', 'Letter']) {
        const pdf = join(folder, `${page.name}-${format}.pdf`);
        await tab.pdf({ path: pdf, format, preferCSSPageSize: true });
        execFileSync('pdftoppm', ['-png', '-r', '60', pdf, join(folder, `${page.name}-${format}`)]);
    }
    await tab.close();
}
