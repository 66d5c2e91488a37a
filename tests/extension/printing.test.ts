/** Printing through the person's browser, with a stand-in for the editor. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { URI } from 'vscode-uri';
import type { ExtensionContext } from 'vscode';
import { paperOf } from '../../extension/paper-of.js';
import { files, given, resetStandIn, told } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { PrintedPages } = await import('../../extension/commands/printed-pages.js');
const { printPage } = await import('../../extension/commands/print-page.js');

const storage = 'file:///home/someone/storage';
const pagesIn = (address: string): InstanceType<typeof PrintedPages> => new PrintedPages({ globalStorageUri: URI.parse(address) } as unknown as ExtensionContext);
beforeEach(resetStandIn);

describe('a page for the browser', () => {
    it('is written under a name that tells the week, and opened', async () => {
        await pagesIn(storage).open('week-3-millpond', '<!doctype html>');
        expect([...files]).toMatchObject([[`${storage}/print/week-3-millpond.html`, { text: '<!doctype html>' }]]);
        expect(told.map(([how, what]) => (how === 'status' ? how : [how, what]))).toEqual([['opened', `${storage}/print/week-3-millpond.html`], ['command', 'setContext haversack.firstSteps.printed true'], 'status']);
    });

    it('leads nowhere else, whatever its name', async () => {
        await pagesIn(storage).open('../../a/b:c?d#e%2f', 'x');
        expect([...files.keys()]).toEqual([`${storage}/print/-a-b-c-d-e-2f.html`]);
    });

    it('takes the place of pages that are a day old, and of no younger one', async () => {
        const hour = 60 * 60 * 1000;
        files.set(`${storage}/print/week-1.html`, { text: '', mtime: Date.now() - 25 * hour });
        files.set(`${storage}/print/week-2.html`, { text: '', mtime: Date.now() - 2 * hour });
        await pagesIn(storage).open('week-3', 'x');
        expect([...files.keys()]).toEqual([`${storage}/print/week-2.html`, `${storage}/print/week-3.html`]);
    });

    it('says what to do where no browser opens', async () => {
        given.opens = false;
        await pagesIn(storage).open('week-3', 'x');
        expect(told.at(-1)).toEqual(['error', 'No browser opened the page. Save it as a file, open that in a browser, and print it there.']);
    });

    it('cannot be handed on from a browser, another machine, or a storage that is no disk', () => {
        expect(pagesIn(storage).possible).toBe(true);
        expect(pagesIn('vscode-userdata:/storage').possible).toBe(false);
        given.remoteName = 'ssh-remote';
        expect(pagesIn(storage).possible).toBe(false);
        Object.assign(given, { remoteName: undefined, uiKind: 2 });
        expect(pagesIn(storage).possible).toBe(false);
    });
});

describe('the command', () => {
    type Brief = Parameters<typeof printPage>[0];
    const asked: unknown[][] = [];
    const answer = (view: string, page: object) => (...args: unknown[]) => { asked.push([view, ...args]); return Promise.resolve(page); };
    const briefOn = (view: string): Brief => ({
        view, request: answer('week', { week: 3, class: 'millpond', text: 'week' }), requestTerm: answer('term', { text: 'term' }), requestChanges: answer('changes', { class: 'attic', text: 'changes' })
    }) as unknown as Brief;
    beforeEach(() => { asked.length = 0; });

    it.each([['week', 'week-3-millpond', ['week', 'html', undefined, true]], ['term', 'term', ['term', 'html', undefined, { printing: true }]], ['changes', 'changes-attic', ['changes', 'html', undefined, true]]])('prints the %s that is shown', async (view, name, asking) => {
        await printPage(briefOn(view), pagesIn(storage));
        expect(asked).toEqual([asking]);
        expect([...files]).toMatchObject([[`${storage}/print/${name}.html`, { text: view }]]);
    });

    it('prints the week of a file, whatever is shown', async () => {
        const file = URI.parse('file:///a/b.lesson') as unknown as Parameters<typeof printPage>[2];
        await printPage(briefOn('term'), pagesIn(storage), file);
        expect(asked).toEqual([['week', 'html', file, true]]);
    });

    it('tells why there is nothing to print', async () => {
        await printPage({ ...briefOn('week'), request: answer('week', { refusal: 'There is no lesson in this folder yet.' }) } as unknown as Brief, pagesIn(storage));
        expect(told).toEqual([['information', 'There is no lesson in this folder yet.']]);
        expect(files.size).toBe(0);
    });

    it('offers to save where a browser cannot be reached', async () => {
        Object.assign(given, { uiKind: 2, button: 'Save as a file' });
        await printPage(briefOn('term'), pagesIn(storage));
        expect(told.map(([how]) => how)).toEqual(['information', 'command']);
        expect(told[1]).toEqual(['command', 'haversack.term.save']);
        expect([asked, files.size]).toEqual([[], 0]);
    });
});

// Regions from memory of CLDR's supplemental data, common practice besides: Letter in the United States, Canada and Mexico, A4 in Germany, Japan and Brazil.
it.each([
    ['a4', 'en-US', 'a4'], ['letter', 'de-DE', 'letter'], ['printer', 'en-US', undefined], ['region', 'en-US', 'letter'], ['region', 'fr-CA', 'letter'], ['region', 'es-MX', 'letter'],
    ['region', 'de-DE', 'a4'], ['region', 'ja-JP', 'a4'], ['region', 'pt-BR', 'a4'], ['region', 'en', undefined], ['region', 'zh-Hant-TW', 'a4'], ['a3', 'en-US', undefined], [undefined, 'en-US', undefined], [7, 'de-DE', undefined]
])('the setting %j in the locale %s is the paper %s', (setting, locale, paper) => expect(paperOf(setting, locale)).toBe(paper));
