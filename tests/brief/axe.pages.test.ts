/** axe-core's rules for WCAG 2.2 A and AA, and the layout, on the page and the preview in Chromium. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { briefPage } from '../../server/brief/page.js';
import { startBrowser } from './browser.js';
import { week } from './fixture.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { previewPage } from './pages.js';

let browser: Browser;
beforeAll(async () => {
    browser = await startBrowser();
}, 60_000);
afterAll(() => browser?.close());

describe.each([['page', briefPage(week)], ['preview', previewPage(week)]])('%s', (_name, html) => {
    it.each(screens)('has nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, html, options, axeFindings);
        expect(found.violations).toEqual([]);
        expect(found.passes).toBeGreaterThan(20);
    }, 60_000);

    it('has room for the numbers of a hundred rows between the line at the side and the words', async () => {
        const gaps = await withPage(browser, html, { viewport: { width: 800, height: 900 } }, page => page.evaluate(() => [...document.querySelectorAll('.trail > ol, .key > ol')].map(list => {
            const number = document.createElement('span');
            number.textContent = '100. ';
            number.style.cssText = 'position: absolute; white-space: pre';
            list.querySelector('li')?.append(number);
            const gap = parseFloat(getComputedStyle(list).paddingInlineStart) - number.getBoundingClientRect().width;
            number.remove();
            return gap;
        })));
        expect(gaps.length).toBeGreaterThan(10);
        expect(Math.min(...gaps)).toBeGreaterThan(2);
    });

    it.each([320, 360, 560, 1100])('neither clips nor overlaps at %i pixels', async width => {
        const found = await withPage(browser, html, { viewport: { width, height: 900 } }, page => page.evaluate(() => {
            const touching = (a: DOMRect, b: DOMRect) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
            const rects = (node: Node) => {
                const range = document.createRange();
                range.selectNodeContents(node);
                return [...range.getClientRects()];
            };
            /** Text of a line that lies on the amount in its column. */
            const covered = [...document.querySelectorAll('.thing')].flatMap(thing => {
                const amount = thing.querySelector('.figure summary, .figure > .amount') as Element;
                const texts = document.createTreeWalker(thing, NodeFilter.SHOW_TEXT);
                const found: string[] = [];
                while (texts.nextNode()) {
                    const node = texts.currentNode;
                    if (!amount.contains(node) && rects(node).some(rect => touching(rect, amount.getBoundingClientRect()))) found.push(`${amount.textContent} / ${node.textContent}`);
                }
                const below = thing.nextElementSibling?.getBoundingClientRect();
                if (below && touching(below, amount.getBoundingClientRect())) found.push(`${amount.textContent} / next line`);
                return found;
            });
            const bars = [...document.querySelectorAll('svg.bar')];
            const numbers = bars.flatMap(bar => {
                const discs = [...bar.querySelectorAll('.disc')].map(disc => disc.getBoundingClientRect()).filter(disc => disc.width > 0);
                return discs.filter((disc, index) => discs.slice(index + 1).some(other => touching(disc, other)));
            });
            // Paper cuts off what reaches over the edge of the text.
            const cut = bars.filter(bar => {
                const room = bar.parentElement!.getBoundingClientRect();
                const pieces = [...bar.querySelectorAll('.piece')].map(piece => ({ box: piece.getBoundingClientRect(), half: parseFloat(getComputedStyle(piece).strokeWidth) / 2 }));
                return pieces.some(({ box, half }) => box.left - half < room.left || box.right + half > room.right);
            });
            return { bars: bars.length, cut: cut.length, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth, numbers: numbers.length, covered };
        }));
        expect(found).toEqual({ bars: 3, cut: 0, wide: 0, numbers: 0, covered: [] });
    }, 30_000);
});

describe('print', () => {
    it('keeps trails and answers folded, and paper white', async () => {
        await withPage(browser, briefPage(week, { theme: 'dark' }), { colorScheme: 'dark' }, async page => {
            await page.emulateMedia({ media: 'print' });
            const seen = await page.evaluate(() => ({
                trails: [...document.querySelectorAll('.trail ol')].filter(trail => trail.getClientRects().length > 0).length,
                keys: [...document.querySelectorAll('.key')].filter(key => key.getClientRects().length > 0).length,
                amounts: [...document.querySelectorAll('.trail .amount')].filter(amount => amount.getClientRects().length === 0).length,
                paper: getComputedStyle(document.querySelector('.brief') as Element).backgroundColor,
                ink: getComputedStyle(document.querySelector('.brief') as Element).color
            }));
            expect(seen).toEqual({ trails: 0, keys: 0, amounts: 0, paper: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)' });
        });
    }, 30_000);
});
