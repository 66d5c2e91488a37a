import { briefMarkdown } from '@haversack/server/brief/markdown';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { briefPage } from '../../server/brief/page.js';
import { startBrowser } from './browser.js';
import { cautionedWeek } from './cautioned-week.js';
import { everyTextAs, hostileTexts } from './hostile.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { previewPage } from './pages.js';

let browser: Browser;
beforeAll(async () => {
    browser = await startBrowser();
}, 60_000);
afterAll(() => browser?.close());

const page = briefPage(cautionedWeek);

/** Each caution of the summary and of the first lesson as it is read, folded reasons left out. */
const cautionsIn = (section: string): Promise<string[]> => withPage(browser, page, {}, tab => tab.evaluate(id =>
    {
        for (const list of document.querySelectorAll('.caution details > ol')) list.remove();
        return [...document.querySelectorAll(`${id} .caution`)].map(line => (line as HTMLElement).innerText.replace(/\s+/g, ' '));
    }, section));

describe('cautions on the page', () => {
    it('of a week begin with what is serious in this room, each kind once with its things', async () => {
        const [first, second, third] = await cautionsIn('#cautions');
        expect(first).toMatch(/^Serious caution Dried beans, gram cubes\. Children under three are in the room: keep all of it out of their reach\. Choking hazard: .* Beans stay in their tray\. Worked out, not declared$/);
        expect(second).toMatch(/^Serious caution Pan balance\. Children under three .* Small enough to swallow\. Count them\. Worked out, not declared$/);
        expect(third).toMatch(/^Caution .*Breaks into sharp pieces\.$/);
    });

    it('stand beside the first step that names the thing, in full there and shortly further on', async () => {
        const told = await cautionsIn('#lesson-weigh-1');
        expect(told.filter(text => text.includes('Choking hazard: count'))).toHaveLength(1);
        const beside = await withPage(browser, page, {}, tab => tab.evaluate(() => [...document.querySelectorAll('#lesson-weigh-1 .step')].find(step => step.querySelector(':scope > .told > .steps > .caution'))?.textContent));
        expect(beside).toContain('dried beans');
    });

    it('open to the size and the ages they were worked out from, which lead back to the size', async () => {
        const reasons = await withPage(browser, previewPage(cautionedWeek), {}, tab => tab.evaluate(() => [...document.querySelectorAll('#cautions .caution details li')].map(line => [line.textContent, line.getAttribute('data-line')])));
        expect(reasons).toEqual([['Gram cubes: 10 x 10 x 10 mm; children under three are in the room', '8'], ['Pan balance: 5 mm square, 20 mm long', '1']]);
    });

    it('put local rules, labels and qualified advice first', async () => {
        expect(await withPage(browser, page, {}, tab => tab.evaluate(() => document.querySelector('#cautions')?.textContent))).toContain('Local rules, product labels and qualified advice come first.');
    });

    it.each(screens)('have nothing that axe finds, %s', async (_size, options) => {
        expect((await withPage(browser, page, options, axeFindings)).violations).toEqual([]);
    }, 60_000);
});

describe('cautions as Markdown', () => {
    it('say the same', () => {
        const summary = briefMarkdown(cautionedWeek).split('## Cautions this week')[1]?.split('\n## ')[0] ?? '';
        const lines = summary.split('\n').map(line => line.trim()).filter(Boolean);
        expect(lines[0]).toMatch(/^- Serious caution: Dried beans, gram cubes\. Children under three are in the room/);
        expect(lines).toContain('- Worked out, not declared: Gram cubes: 10 x 10 x 10 mm; children under three are in the room');
        expect(lines[lines.length - 1]).toContain('Local rules, product labels and qualified advice come first.');
    });

    it.each(hostileTexts)('let no text become markup: %s', hostile => {
        expect(briefMarkdown(everyTextAs(cautionedWeek, hostile)).split('\n').filter(line => /(?<!\\)<(?!https?:)/.test(line))).toEqual([]);
    });
});
