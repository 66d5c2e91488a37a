/** axe-core's rules for WCAG 2.2 A and AA, and the layout, on the page of changes and on the brief and term of an adapted class in Chromium. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changesPage } from '../../server/brief/changes/page.js';
import { startBrowser } from './browser.js';
import { adaptedTerm, adaptedWeek } from './adapted-fixture.js';
import { changes, unchangedClass } from './changes-fixture.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { changesPreviewPage, previewPage, termPreviewPage } from './pages.js';

let browser: Browser;
beforeAll(async () => {
    browser = await startBrowser();
}, 60_000);
afterAll(() => browser?.close());

const pages = [
    ['page', changesPage(changes)], ['preview', changesPreviewPage(changes)], ['page without an adaptation', changesPage(unchangedClass)],
    ['brief of an adapted class', previewPage(adaptedWeek)], ['term of an adapted class', termPreviewPage(adaptedTerm)]
] as const;

describe.each(pages)('%s', (_name, html) => {
    it.each(screens)('has nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, html, options, axeFindings);
        expect(found.violations).toEqual([]);
        expect(found.passes).toBeGreaterThan(10);
    }, 60_000);

    it('is no wider than a narrow or a wide window, and no text is cut off', async () => {
        const look = (page: Page) => page.evaluate(() => ({
            width: innerWidth, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
            cut: [...document.querySelectorAll('.before-after :is(td, th), .told, .change, .change > div, .made > li, .to-write, p')].filter(one => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline' && !one.closest('.unseen') && !one.classList.contains('unseen'))
                .map(one => one.outerHTML.slice(0, 120))
        }));
        const widths = [320, 360, 560, 1100];
        const found = await withPage(browser, html, {}, async page => {
            const seen: Awaited<ReturnType<typeof look>>[] = [];
            for (const width of widths) {
                await page.setViewportSize({ width, height: 900 });
                seen.push(await look(page));
            }
            return seen;
        });
        expect(found).toEqual(widths.map(width => ({ width, wide: 0, cut: [] })));
    }, 30_000);
});

const outline = (page: Page): Promise<{ headings: number[]; tables: { caption: string; unscoped: number }[] }> => page.evaluate(() => ({
    headings: [...document.querySelectorAll('h1, h2, h3, h4')].map(heading => Number(heading.tagName.slice(1))),
    tables: [...document.querySelectorAll('table')].map(table => ({ caption: table.caption?.textContent ?? '', unscoped: table.querySelectorAll('th:not([scope])').length }))
}));

it('has headings in order, and captions and scopes on its tables', async () => {
    const { headings, tables } = await withPage(browser, changesPage(changes), {}, outline);
    expect(headings[0]).toBe(1);
    headings.slice(1).forEach((level, index) => expect(level - (headings[index] ?? 0)).toBeLessThanOrEqual(1));
    expect(tables).toHaveLength(3);
    for (const { caption, unscoped } of tables) expect([caption.length > 5, unscoped]).toEqual([true, 0]);
});

it('prints black on white with nothing told by colour: left out, changed and added differ in shape', async () => {
    await withPage(browser, changesPage(changes, { theme: 'dark' }), { colorScheme: 'dark' }, async page => {
        await page.emulateMedia({ media: 'print' });
        const seen = await page.evaluate(() => ({
            ink: getComputedStyle(document.querySelector('.brief') as Element).color, paper: getComputedStyle(document.querySelector('.brief') as Element).backgroundColor,
            shapes: new Set([...document.querySelectorAll('#changes-lessons .mark')].map(mark => mark.innerHTML)).size,
            colours: [...new Set([...document.querySelectorAll('.brief *')].filter(one => one.getClientRects().length > 0 && one.matches('p, td, th, span, bdi, h1, h2, h3')).map(one => getComputedStyle(one).color))].sort()
        }));
        expect(seen).toEqual({ ink: 'rgb(0, 0, 0)', paper: 'rgb(255, 255, 255)', shapes: 3, colours: ['rgb(0, 0, 0)', 'rgb(51, 51, 51)'] });
    });
}, 30_000);
