/** The practice sheet and its key: what stands on which, and the pages in Chromium. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { practiceSheetMarkdown } from '../../server/brief/practice-sheet/markdown.js';
import { practiceSheetPage } from '../../server/brief/practice-sheet/page.js';
import { practiceSheetText } from '../../server/brief/practice-sheet/text.js';
import type { PracticeSheetFigures } from '../../server/planning/figures.js';
import { planPracticeSheet } from '../../server/planning/practice.js';
import { practicePart } from '../language/practice-parts.js';
import { lesson, part, range } from '../planning/sheets.js';
import { startBrowser } from './browser.js';
import { hostileTexts } from './hostile.js';
import { axeFindings, screens, withPage } from './open-page.js';

const at = range();
const line = (settings: string[]): { text: string; at: typeof at }[] => settings.map(text => ({ text, at }));
const practices: [name: string, lines: string[], items: number][] = [
    ['facts', ['sums 2 to 20', 'missing parts 5 to 20', 'bonds of 10', 'return to 7 and 8'], 24],
    ['frames', ['fives and tens 6 to 20'], 8],
    ['names', ['name numbers 11 to 999999', 'digits and words 20 to 999999'], 10],
    ['mixed', ['compare numbers 0 to 999999', 'arrange digits of 4813', 'fives and tens 21 to 100', 'write numbers 100 to 999999'], 12]
];

function sheetOf(title = 'Which is heavier?', more?: number): PracticeSheetFigures {
    const parts = practices.map(([name, lines, items]) => part('practice', name, { ...practicePart(lines, items, name), title: title === 'Which is heavier?' ? name : title }));
    parts[0]!.steps.push({ word: 'show', prose: { parts: [], at }, show: { picture: { name: 'number-line', at }, settings: line(['0', 'to', '20']), title: 'Hop along' }, under: [], at });
    return planPracticeSheet({ ...lesson('weigh-1'), title, parts }, { more });
}

const sheet = sheetOf();

it('is plain text of which nothing steers a terminal', () => {
    const hostile = sheetOf('\u001b[2J gone\u0007');
    for (const text of [practiceSheetText(hostile), practiceSheetText(hostile, true), practiceSheetMarkdown(hostile), practiceSheetMarkdown(hostile, true)]) expect(text.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
});
const words = (text: string): string => text.replace(/<style>[^]*<\/style>/, '').replace(/<svg[^]*?<\/svg>/g, '').replace(/<[^>]+>/g, '').replace(/\s+/g, ' ');

let browser: Browser;
beforeAll(async () => { browser = await startBrowser(); }, 60_000);
afterAll(() => browser?.close());

describe.each([['page', practiceSheetPage(sheet), practiceSheetPage(sheet, { key: true })], ['text', practiceSheetText(sheet), practiceSheetText(sheet, true)], ['Markdown', practiceSheetMarkdown(sheet), practiceSheetMarkdown(sheet, true)]])('%s', (format, asked, key) => {
    it('has every answer on the key alone', () => {
        for (const { items } of sheet.practices) {
            for (const { ask, answer } of items) {
                expect(words(key)).toContain(answer);
                // A short number may well stand in another item, and the larger of two numbers stands in its own.
                if (answer.length > 5 && !ask.includes(answer)) expect(words(asked)).not.toContain(answer);
            }
        }
        expect(sheet.practices.flatMap(({ items }) => items).filter(({ ask, answer }) => answer.length > 5 && !ask.includes(answer)).length).toBeGreaterThan(15);
        expect(words(asked)).not.toContain('Answer key');
        expect(words(key).match(/Answer key: /g)).toHaveLength(practices.length + (format === 'page' ? 1 : 0));
        expect(words(asked)).toContain('Name');
        expect(words(key)).not.toContain('Date');
    });
});

describe('pictures of items', () => {
    it('are named on the sheet without the numbers that are asked for, and told in full on the key', () => {
        const { items } = sheet.practices.find(({ name }) => name === 'frames')!;
        const labels = (html: string): string[] => [...html.matchAll(/aria-label="([^"]*)"/g)].map(([, label]) => label!);
        const asked = labels(practiceSheetPage(sheet)).filter(label => !label.startsWith('Number line'));
        expect(new Set(asked)).toEqual(new Set(['A ten-frame with counters', 'A string with beads pushed aside']));
        expect(asked.length).toBe(sheet.practices.flatMap(practice => practice.items).filter(({ picture }) => picture).length);
        for (const { picture } of items) {
            expect(practiceSheetPage(sheet)).not.toContain(picture!.text);
            expect(practiceSheetPage(sheet, { key: true })).toContain(picture!.text);
        }
    });
});

describe('a number that is also said with “and”', () => {
    const keys = (lines: string[]): string[] => {
        const only = planPracticeSheet({ ...lesson('weigh-1'), parts: [part('practice', 'names', practicePart(lines, 6, 'names'))] });
        return [practiceSheetText(only, true), practiceSheetMarkdown(only, true), words(practiceSheetPage(only, { key: true })), practiceSheetText(only), practiceSheetMarkdown(only), words(practiceSheetPage(only))].map(text => text.replaceAll('\\', ''));
    };

    it('is told once under the key, and not on the sheet', () => {
        const [text, md, html, ...sheets] = keys(['name numbers 418 to 418']);
        for (const key of [text, md, html]) expect(key!.match(/“Four hundred and eighteen” is right too, and other numbers with “and” likewise\./g)).toHaveLength(1);
        for (const asked of sheets) expect(asked).not.toContain('right too');
    });

    it('is told with its words where words are counted', () => {
        expect(keys(['digits and words 418 to 418', 'name numbers 500 to 999'])[0]).toContain('“Four hundred and eighteen” is right too, and is 4 words; other numbers with “and” likewise.');
    });

    it.each([[['name numbers 11 to 99']], [['name numbers 418 to 418 in places']], [['name numbers 200 to 200']], [['sums 100 to 999']]])('is not told where none is: %j', lines => {
        for (const text of keys(lines)) expect(text).not.toContain('right too');
    });
});

it('counts further items on', () => {
    const further = sheetOf('Which is heavier?', 5);
    expect(further.practices.map(({ first, items }) => [first, items.length])).toEqual([[25, 5], [9, 5], [11, 5], [13, 5]]);
    expect(practiceSheetPage(further)).toContain('<ol class="asked short" start="25">');
    expect(practiceSheetText(further)).toContain('further items');
});

describe.each(hostileTexts)('a title that is %j', text => {
    it('stays text on the page', async () => {
        const html = practiceSheetPage(sheetOf(text));
        const found = await withPage(browser, html, {}, page => page.evaluate(() => ({ titles: [...document.querySelectorAll('h1')].map(one => one.textContent), scripts: document.querySelectorAll('script, img, a').length })));
        expect(found).toEqual({ titles: practices.map(() => text), scripts: 0 });
    }, 60_000);
});

describe.each([['sheet', practiceSheetPage(sheet)], ['key', practiceSheetPage(sheet, { key: true })]])('the %s in Chromium', (kind, html) => {
    it.each(screens)('has nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, html, options, axeFindings);
        expect(found.violations).toEqual([]);
        expect(found.passes).toBeGreaterThan(12);
    }, 60_000);

    it.each([320, 360, 560, 1100])('nothing reaches out of the page at %i pixels', async width => {
        const out = await withPage(browser, html, { viewport: { width, height: 900 } }, page => page.evaluate(() =>
            [...document.querySelectorAll('main *')].filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !one.closest('.unseen')).map(one => one.outerHTML.slice(0, 80))));
        expect(out).toEqual([]);
    }, 60_000);

    it.each(['A4', 'Letter'])('begins a page with each practice on %s', async format => {
        const pages = await withPage(browser, html, {}, async page => (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0);
        expect(pages).toBeGreaterThanOrEqual(practices.length);
        if (kind === 'key') expect(pages).toBe(practices.length);
    }, 60_000);

    it('breaks no item over two pages, and is black on white', async () => {
        const found = await withPage(browser, html, { colorScheme: 'dark' }, async page => {
            await page.emulateMedia({ media: 'print' });
            return page.evaluate(() => ({
                breaks: new Set([...document.querySelectorAll('.asked li')].map(one => getComputedStyle(one).breakInside)).size,
                inside: getComputedStyle(document.querySelector('.asked li')!).breakInside,
                colour: getComputedStyle(document.querySelector('.asked li')!).color
            }));
        });
        expect(found).toEqual({ breaks: 1, inside: 'avoid', colour: 'rgb(0, 0, 0)' });
    }, 60_000);
});
