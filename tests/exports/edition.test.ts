/** Two editions as text, Markdown, HTML and JSON. */
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { editionMarkdown } from '@haversack/server/exports/edition-markdown';
import { editionText } from '@haversack/server/exports/edition-text';
import { figuresJson } from '@haversack/server/exports/json';
import { editionPage } from '../../server/brief/editions/page.js';
import type { EditionFigures } from '@haversack/server/planning/edition-figures';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { startBrowser } from '../brief/browser.js';
import { axeFindings, screens, withPage } from '../brief/open-page.js';
import { goldensBeside } from '../expect-golden.js';
import { base, edited, read, renamed } from '../planning/edition-texts.js';

const names = { old: { name: 'spring', root: 'file:///programme' }, new: { name: 'autumn', root: 'file:///programme' } };
const changes = 'adaptation shorter "Shorter autumn" of measure edition 1 for harbour\n  retime activity weigh-1.two-bags to 10 min because: The room is small.\n  skip activity weigh-3.stall\n  skip lesson weigh-4\n';
const old = read(base + changes);
const now = read(edited(renamed(base + changes, 'weigh-3', 'market-1'), ['"Measure and Make" edition 1', '"Measure and Make" edition 2'],
    ['"Two mystery bags" 15 min', '"Two mystery bags" 20 min'], ['gram-cube 10 per pair', 'gram-cube 12 per pair'], ['Which bag is heavier?', 'Which of these *two* bags is heavier?'], ['number 12', 'number 14'],
    ['caution allergen: Ask families first.', 'caution allergen: Ask families a week before.'], ['    weigh-2\n', ''], ['    weigh-4\n', '    weigh-4\n    weigh-2\n'], ['skip activity market-1.stall', 'skip activity weigh-3.stall']));
const figures = compareEditions(old, now);

const expectGolden = goldensBeside(import.meta.url);

test('text and Markdown', () => {
    expectGolden('edition.txt', editionText(figures, names));
    expectGolden('edition.md', editionMarkdown(figures, names));
});

test('nothing changed is said in so many words, in every form', () => {
    const same = compareEditions(old, old);
    for (const text of [editionText(same, names), editionMarkdown(same, names), editionPage(same, names)]) expect(text).toContain('Nothing changed for a teacher.');
    expect(JSON.parse(figuresJson('haversack-comparison', { comparison: same }))).toMatchObject({ format: 'haversack-comparison', version: 1, comparison: { sections: [] } });
});

test('that the class’s adaptations are counted in is said in every form', () => {
    for (const text of [editionText(figures, names).replaceAll('\n', ' '), editionMarkdown(figures, names), editionPage(figures, names).replaceAll(/<[^>]*>/g, '')]) expect(text).toMatch(/Harbour co-op”?, its adaptation “Shorter autumn” counted in/);
});

test('lines for the terminal keep to a hundred columns', () => {
    expect(editionText(figures, names).split('\n').filter(line => line.length > 100)).toEqual([]);
});

describe('whatever somebody has written', () => {
    const nasty = (words: string): EditionFigures => ({
        ...figures, title: words, class: { name: words, title: words, adapted: words }, assumptions: [words],
        sections: [{ id: 'things', title: 'Things', groups: [{ title: words, differences: [{ kind: 'reworded', says: words, why: words, before: words, after: words }] }] }],
        adaptations: figures.adaptations.map(one => ({ ...one, title: words, changes: one.changes.map(change => ({ ...change, line: words, wants: words, newEdition: words, rewritten: words })) }))
    });

    test('no character of it moves a terminal’s cursor', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), words => {
            expect((editionText(nasty(words), names) + editionMarkdown(nasty(words), names)).replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
        }));
    });

    test.each(['<script>alert(1)</script>', '<img src=x onerror=alert(1)>', '[x](javascript:alert(1))', '# no heading', '**bold** `code`', '1. one', '&lt;b&gt;'])('%s stays text', words => {
        const shown = new MarkdownIt({ html: true }).render(editionMarkdown(nasty(words), names));
        expect(shown).not.toMatch(/<script|<img|<a /);
        const text = shown.replace(/<[^>]+>/g, '').replaceAll('&quot;', '"').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
        expect(text).toContain(words);
        const page = editionPage(nasty(words), names);
        expect(page.slice(page.indexOf('<body>'))).not.toMatch(/<script|<img|href="javascript/);
    });
});

describe('the page', () => {
    let browser: Browser;
    beforeAll(async () => { browser = await startBrowser(); }, 60_000);
    afterAll(() => browser?.close());
    const html = editionPage(figures, names);

    test.each(screens)('has nothing that axe finds and no sideways scrolling, %s', async (_, options) => {
        const found = await withPage(browser, html, options, async page => ({ axe: await axeFindings(page), wide: await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth) }));
        expect(found.axe.violations).toEqual([]);
        expect(found.axe.passes).toBeGreaterThan(15);
        expect(found.wide).toBeLessThanOrEqual(0);
    }, 60_000);

    test('says what the text says', async () => {
        const words = await withPage(browser, html, {}, page => page.evaluate(() => document.body.textContent ?? ''));
        for (const { says } of figures.sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences)) expect(words).toContain(says);
        for (const { line } of figures.adaptations[0]!.changes) expect(words).toContain(line);
    });

    test('needs nothing else: no script, no address outside', () => {
        expect(html).toContain("default-src 'none'");
        expect(html).not.toMatch(/<script|<link|src=|https?:/);
    });
});
