import axe from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';

/** What a page is looked at in: each theme once, each width once. */
export const screens: [string, BrowserContextOptions][] = [
    ['light and wide', { viewport: { width: 1100, height: 900 } }],
    ['dark and narrow', { viewport: { width: 320, height: 700 }, colorScheme: 'dark' }]
];

/** Opens a page with everything unfolded in a window of its own; the browser must not complain of anything. */
export async function withPage<T>(browser: Browser, html: string, options: BrowserContextOptions, look: (page: Page) => Promise<T>): Promise<T> {
    const context = await browser.newContext(options);
    try {
        const page = await context.newPage();
        const complaints: string[] = [];
        page.on('console', message => { if (message.type() === 'error') complaints.push(message.text()); });
        await page.setContent(html);
        await page.evaluate(() => document.querySelectorAll('details').forEach(details => { details.open = true; }));
        const answer = await look(page);
        expect(complaints).toEqual([]);
        return answer;
    } finally {
        await context.close();
    }
}

/** axe-core's rules for WCAG 2.2 A and AA, and its best practices. */
export async function axeFindings(page: Page): Promise<{ passes: number; violations: string[] }> {
    await page.evaluate(axe.source);
    return page.evaluate(async () => {
        const engine = (globalThis as unknown as { axe: typeof axe }).axe;
        const result = await engine.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
        return {
            passes: result.passes.length,
            violations: result.violations.map(rule => `${rule.id}: ${rule.nodes.map(node => node.html).slice(0, 3).join(' | ')}`)
        };
    });
}
