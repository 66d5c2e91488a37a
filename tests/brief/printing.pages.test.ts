/** Pages for a paper, and pages that open the print window by themselves, in Chromium. */
import { createHash } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changesPage } from '../../server/brief/changes/page.js';
import { htmlPage } from '../../server/brief/html-page.js';
import type { Paper } from '../../server/brief/look/paper.css.js';
import { briefPage } from '../../server/brief/page.js';
import { practiceSheetPage } from '../../server/brief/practice-sheet/page.js';
import { printPolicy, printScript } from '../../server/brief/print-at-once.js';
import { termPage } from '../../server/brief/term/page.js';
import { planPracticeSheet } from '../../server/planning/practice.js';
import { practicePart } from '../language/practice-parts.js';
import { lesson, part } from '../planning/sheets.js';
import { startBrowser } from './browser.js';
import { changes } from './changes-fixture.js';
import { week } from './fixture.js';
import { hostileTexts } from './hostile.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { term } from './term-fixture.js';

let browser: Browser;
beforeAll(async () => { browser = await startBrowser(); }, 60_000);
afterAll(() => browser?.close());

const sheet = planPracticeSheet({ ...lesson('weigh-1'), parts: [part('practice', 'sums', practicePart(['sums 2 to 20'], 8, 'sums'))] });
const pages: [string, (options: { paper?: Paper; printing?: boolean }) => string][] = [
    ['week', options => briefPage(week, options)], ['term', options => termPage(term, options)],
    ['changes', options => changesPage(changes, options)], ['practice sheet', options => practiceSheetPage(sheet, options)]
];

/** Width and height of each page in points, a seventy-second of an inch. */
async function sizes(page: Page): Promise<string[]> {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    return [...new Set([...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map(([, width, height]) => `${Math.round(Number(width))} x ${Math.round(Number(height))}`))];
}

// ISO 216: A4 is 210 by 297 mm, which is 595 by 842 points; Letter is 8.5 by 11 in, 612 by 792 points.
describe.each(pages)('the %s', (_name, pageOf) => {
    it.each([['a4', '595 x 842'], ['letter', '612 x 792']] as const)('is printed on %s, and nothing reaches over its edge', async (paper, points) => {
        const seen = await withPage(browser, pageOf({ paper }), { viewport: { width: 720, height: 900 } }, async page => {
            await page.emulateMedia({ media: 'print' });
            const out = await page.evaluate(() => [...document.querySelectorAll('main *')]
                .filter(one => one.checkVisibility() && one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !one.closest('.unseen')).map(one => one.outerHTML.slice(0, 80)));
            return { sizes: await sizes(page), out };
        });
        expect(seen).toEqual({ sizes: [points], out: [] });
    }, 60_000);

    it('leaves the paper to the printer where none is set', () => {
        expect(pageOf({})).not.toContain('size: A4');
        expect(pageOf({})).not.toContain('<script');
        expect(pageOf({ printing: false })).toBe(pageOf({}));
    });
});

/** A page that is given a `print` of our own, which counts. */
async function printed<T>(html: string, look: (page: Page) => Promise<T>): Promise<T & { prints: number }> {
    const context = await browser.newContext();
    try {
        await context.addInitScript(() => Object.assign(window, { prints: 0, ran: 0, print: () => { (window as unknown as { prints: number }).prints++; } }));
        const page = await context.newPage();
        await page.route('**/*', route => route.fulfill({ contentType: 'text/html; charset=utf-8', body: html }));
        await page.goto('http://page.invalid/', { waitUntil: 'load' });
        const seen = await look(page);
        return { ...seen, prints: await page.evaluate(() => (window as unknown as { prints: number }).prints) };
    } finally {
        await context.close();
    }
}

describe('a page that prints by itself', () => {
    it('allows the one script by its digest', () => {
        expect(printPolicy).toBe(`script-src 'sha256-${createHash('sha256').update(printScript).digest('base64')}'`);
    });

    it.each(pages)('opens the print window once (%s), and tells on screen alone how to print', async (_name, pageOf) => {
        const seen = await printed(pageOf({ printing: true }), async page => {
            const onScreen = await page.locator('.print-hint').isVisible();
            await page.emulateMedia({ media: 'print' });
            return { onScreen, onPaper: await page.locator('.print-hint').isVisible() };
        });
        expect(seen).toEqual({ prints: 1, onScreen: true, onPaper: false });
    }, 60_000);

    it.each(screens)('has nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, briefPage(week, { printing: true }).replace(printScript, ''), options, axeFindings);
        expect(found.violations).toEqual([]);
    }, 60_000);

    const marks = ['<script>ran = 1</script>', '<img src=x onerror="ran = 1">', `<script>${printScript} ran = 1</script>`, '<a href="javascript:ran = 1" id="link">x</a>', '<svg onload="ran = 1"></svg>'];
    it.each([...hostileTexts, ...marks])('runs nothing of %j in a title', async text => {
        const seen = await printed(briefPage({ ...week, course: { ...week.course, title: text } }, { printing: true }), async page => ({ scripts: await page.locator('script').count(), ran: await page.evaluate(() => (window as unknown as { ran: number }).ran) }));
        expect(seen).toEqual({ prints: 1, scripts: 1, ran: 0 });
    }, 60_000);

    it.each(marks)('would run nothing of %j even if it were not kept as text', async mark => {
        const seen = await printed(htmlPage('Week 1', [{ id: 'a', html: `<section id="a">${mark}</section>`, hash: '' }], { printing: true }), async page => {
            const link = page.locator('#link');
            if (await link.count() > 0) await link.click();
            return { ran: await page.evaluate(() => (window as unknown as { ran: number }).ran) };
        });
        expect(seen).toEqual({ prints: 1, ran: 0 });
    }, 60_000);
});
