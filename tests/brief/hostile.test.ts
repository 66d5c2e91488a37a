/** Judged by a real parser: Chromium's. A text may change what is read on the page, never what the page is made of. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { briefPage } from '../../server/brief/page.js';
import { startBrowser } from './browser.js';
import { termMarkdown } from '@haversack/server/brief/term/markdown';
import { termPage } from '../../server/brief/term/page.js';
import { changesPage } from '../../server/brief/changes/page.js';
import { adaptedWeek } from './adapted-fixture.js';
import { changes, unchangedClass } from './changes-fixture.js';
import { week } from './fixture.js';
import { everyTextAs, hostileTexts } from './hostile.js';
import { changesPreviewPage, previewPage, termPreviewPage } from './pages.js';
import { term } from './term-fixture.js';

let browser: Browser;
let tab: Page;
beforeAll(async () => {
    browser = await startBrowser();
    tab = await browser.newPage();
}, 60_000);
afterAll(() => browser?.close());

/** Every element with the names of its attributes, in order, and every address. */
function skeleton(html: string): Promise<{ elements: string[]; addresses: string[]; text: string }> {
    return tab.evaluate(source => {
        const parsed = new DOMParser().parseFromString(source, 'text/html');
        const all = [...parsed.querySelectorAll('*')];
        return {
            elements: all.map(element => [element.tagName, ...[...element.attributes].map(attribute => attribute.name)].join(' ')),
            addresses: all.flatMap(element => ['href', 'src', 'action'].map(name => element.getAttribute(name) ?? '').filter(Boolean)),
            text: parsed.body.textContent ?? ''
        };
    }, html);
}

const pages = { page: briefPage, preview: previewPage };

describe.each(Object.entries(pages))('hostile text on the %s', (_name, write) => {
    it.each(hostileTexts)('%s', async hostile => {
        const calm = await skeleton(write(everyTextAs(week, 'calm')));
        const rough = await skeleton(write(everyTextAs(week, hostile)));
        expect(rough.elements).toEqual(calm.elements);
        expect(rough.addresses.filter(address => !/^#[\w-]+$/.test(address))).toEqual([]);
        if (!hostile.includes('&')) expect(rough.text).toContain(hostile);
    });

    it('has no style attribute, no handler and no script', async () => {
        const { elements, addresses } = await skeleton(write(week));
        expect(elements.length).toBeGreaterThan(500);
        for (const element of elements) expect(element).not.toMatch(/^(?:SCRIPT|IFRAME|OBJECT|IMG|LINK)\b| (?:style|on\w+)\b/);
        expect(addresses.filter(address => !address.startsWith('#'))).toEqual(['https://example.org/library?a=1&b=2']);
    });
});

const changed = {
    'page of changes': (text: string) => changesPage(everyTextAs(changes, text)), 'preview of changes': (text: string) => changesPreviewPage(everyTextAs(changes, text)),
    'empty page of changes': (text: string) => changesPage(everyTextAs(unchangedClass, text)), 'preview of an adapted week': (text: string) => previewPage(everyTextAs(adaptedWeek, text))
};

describe.each(Object.entries(changed))('hostile text on the %s', (_name, write) => {
    it.each(hostileTexts)('%s', async hostile => {
        const calm = await skeleton(write('calm'));
        const rough = await skeleton(write(hostile));
        expect(rough.elements).toEqual(calm.elements);
        expect(rough.addresses.filter(address => !/^#[\w-]+$/.test(address))).toEqual([]);
        if (!hostile.includes('&')) expect(rough.text).toContain(hostile);
    });
});

it('the page of changes has no style attribute, no handler and no script', async () => {
    const { elements, addresses } = await skeleton(changesPage(changes));
    expect(elements.length).toBeGreaterThan(200);
    for (const element of elements) expect(element).not.toMatch(/^(?:SCRIPT|IFRAME|OBJECT|IMG|LINK)\b| (?:style|on\w+)\b/);
    expect(addresses.filter(address => !address.startsWith('#'))).toEqual([]);
});

const terms = { page: termPage, preview: termPreviewPage };

describe.each(Object.entries(terms))('hostile text on the %s of the term', (_name, write) => {
    it.each(hostileTexts)('%s', async hostile => {
        // Drawings break a text into lines, so that their number may differ, but not what they are made of.
        const calm = new Set((await skeleton(write(everyTextAs(term, 'calm and long enough to be broken into several lines of a drawing')))).elements);
        const rough = await skeleton(write(everyTextAs(term, hostile)));
        expect([...new Set(rough.elements)].filter(element => !calm.has(element))).toEqual([]);
        expect(rough.addresses.filter(address => !/^#[\w-]+$/.test(address))).toEqual([]);
        if (!/[&`]/.test(hostile)) expect(rough.text).toContain(hostile);
    });

    it('has no style attribute, no handler and no script', async () => {
        const { elements, addresses } = await skeleton(write(term));
        expect(elements.length).toBeGreaterThan(1000);
        for (const element of elements) expect(element).not.toMatch(/^(?:SCRIPT|IFRAME|OBJECT|IMG|LINK|FOREIGNOBJECT|IMAGE|USE|ANIMATE)\b| (?:style|on\w+)\b/i);
        expect(addresses.filter(address => !address.startsWith('#'))).toEqual([]);
    });
});

it.each(hostileTexts)('Markdown of the term lets nothing become markup: %s', hostile => {
    const text = termMarkdown(everyTextAs(term, hostile));
    expect(text).not.toMatch(/(?<!\\)<[a-z!/?]/i);
    expect(text).not.toMatch(/(?<!\\)\]\(/);
});
