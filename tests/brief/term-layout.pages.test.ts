/** The term in Chromium: axe-core's rules for WCAG 2.2 A and AA, and measured: no word leaves its box or lies on another. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { termPage } from '../../server/brief/term/page.js';
import { startBrowser } from './browser.js';
import { exampleTerm } from './example-terms.js';
import { everyTextAs } from './hostile.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { termPreviewPage } from './pages.js';
import { term } from './term-fixture.js';

let browser: Browser;
const terms: Record<string, TermFigures> = {};
beforeAll(async () => {
    browser = await startBrowser();
    Object.assign(terms, {
        fixture: term,
        'year, co-op': await exampleTerm('year', 'millpond', '2026-10-01'),
        'year, family': await exampleTerm('year', 'rook-lane', '2026-12-28'),
        'year, one day a week': await exampleTerm('year', 'friday-table', '2026-10-01'),
        'first steps': await exampleTerm('first-steps', undefined),
        'long texts': everyTextAs(term, `Ein sehr langer Titel ${'mit einem Donaudampfschifffahrtsgesellschaftskapitän '.repeat(6)}`.slice(0, 300)),
        'no spaces': everyTextAs(term, 'x'.repeat(300)),
        'right to left': everyTextAs(term, 'כמה קוביות שוקלות יחד קילוגרם אחד שלם ועוד חצי'),
        'wide letters': everyTextAs(term, 'WWWW MMMM 重さをはかってくらべよう')
    });
}, 120_000);
afterAll(() => browser?.close());

describe.each([['page', termPage], ['preview', termPreviewPage]] as const)('the %s', (_name, write) => {
    it.each(screens)('has nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, write(term), options, axeFindings);
        expect(found.violations).toEqual([]);
        expect(found.passes).toBeGreaterThan(20);
    }, 60_000);
});

/** Texts that leave their drawing or their cell, texts of one drawing that lie on each other, and what makes the page scroll sideways. */
function measure(): { drawn: number; wide: number; outside: string[]; over: string[] } {
    const seen = (element: Element): boolean => element.getClientRects().length > 0;
    const inside = (inner: DOMRect, outer: DOMRect, slack: number): boolean =>
        inner.left >= outer.left - slack && inner.right <= outer.right + slack && inner.top >= outer.top - slack && inner.bottom <= outer.bottom + slack;
    const outside: string[] = [];
    const over: string[] = [];
    let drawn = 0;
    for (const svg of document.querySelectorAll('svg.drawing')) {
        if (!seen(svg)) continue;
        const frame = svg.getBoundingClientRect();
        const texts = [...svg.querySelectorAll('text')].map(text => ({ words: text.textContent ?? '', box: text.getBoundingClientRect(), cell: text.closest('.day')?.querySelector('.cell')?.getBoundingClientRect() }));
        drawn += texts.length;
        for (const { words, box, cell } of texts) {
            if (!inside(box, frame, 1)) outside.push(`${words.slice(0, 60)} leaves its drawing`);
            // The box of a line is higher than its letters.
            if (cell && !inside(box, cell, 1)) outside.push(`${words.slice(0, 60)} leaves its cell`);
        }
        texts.forEach((one, index) => {
            for (const other of texts.slice(index + 1)) {
                const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
                const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
                if (across > 1 && down > 3) over.push(`${one.words.slice(0, 60)} / ${other.words.slice(0, 60)}`);
            }
        });
    }
    return { drawn, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth, outside: outside.slice(0, 5), over: over.slice(0, 5) };
}

const names = ['fixture', 'year, co-op', 'year, one day a week', 'first steps', 'long texts', 'no spaces', 'right to left', 'wide letters'];

// A4 less its margins is 680 pixels wide, Letter 702 (210 mm and 8.5 in at 96 to the inch, less 30 mm).
it.each(names)('%s: nothing clips or overlaps on screens of 320 to 1100 pixels and on paper', async name => {
    await withPage(browser, termPage(terms[name]!), { viewport: { width: 1100, height: 900 } }, async page => {
        for (const width of [320, 360, 560, 690, 1100]) {
            await page.setViewportSize({ width, height: 900 });
            const found = await page.evaluate(measure);
            expect({ width, ...found }).toEqual({ width, drawn: expect.any(Number) as number, wide: 0, outside: [], over: [] });
            expect(found.drawn).toBeGreaterThan(15);
        }
        await page.emulateMedia({ media: 'print' });
        for (const width of [680, 702]) {
            await page.setViewportSize({ width, height: 900 });
            expect({ width, ...await page.evaluate(measure) }).toMatchObject({ width, wide: 0, outside: [], over: [] });
        }
    });
}, 60_000);

describe('print', () => {
    it('shows the drawings in full, and none of what is folded', async () => {
        await withPage(browser, termPage(term, { theme: 'dark' }), { colorScheme: 'dark' }, async page => {
            await page.emulateMedia({ media: 'print' });
            const seen = await page.evaluate(() => ({
                tables: [...document.querySelectorAll('.in-words')].filter(words => words.getClientRects().length > 0).length,
                wide: [...document.querySelectorAll('svg.wide')].filter(svg => svg.getClientRects().length === 0).length,
                narrow: [...document.querySelectorAll('svg.narrow')].filter(svg => svg.getClientRects().length > 0).length,
                paper: getComputedStyle(document.querySelector('.brief') as Element).backgroundColor,
                ink: getComputedStyle(document.querySelector('.month text') as Element).fill
            }));
            expect(seen).toMatchObject({ tables: 0, wide: 0, narrow: 0, paper: 'rgb(255, 255, 255)' });
            expect(['rgb(0, 0, 0)', 'rgb(51, 51, 51)']).toContain(seen.ink);
        });
    }, 30_000);
});
