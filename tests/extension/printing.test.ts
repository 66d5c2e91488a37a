/** Printing through the person's browser, with a stand-in for the editor. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { URI } from 'vscode-uri';
import type { ExtensionContext } from 'vscode';
import { paperOf } from '../../extension/paper-of.js';
import { files, given, resetStandIn, told, workspace } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { PrintedPages } = await import('../../extension/commands/printed-pages.js');
const { printPage } = await import('../../extension/commands/print-page.js');
const { printPractice } = await import('../../extension/commands/print-practice.js');
const { chosenPractice, lessonToPractise } = await import('../../extension/commands/save-practice.js');

const storage = 'file:///home/someone/storage';
const downloads: [name: string, html: string][] = [];
const pagesIn = (address: string): InstanceType<typeof PrintedPages> => new PrintedPages({ globalStorageUri: URI.parse(address) } as unknown as ExtensionContext, (...page) => downloads.push(page));
const save = ['haversack.brief.save'] as const;
beforeEach(() => {
    resetStandIn();
    downloads.length = 0;
});

describe('a page for the browser', () => {
    it('is written under a name that tells the week, and opened', async () => {
        await pagesIn(storage).open('week-3-millpond', '<!doctype html>', save);
        expect([...files]).toMatchObject([[`${storage}/print/week-3-millpond.html`, { text: '<!doctype html>' }]]);
        expect(told.map(([how, what]) => (how === 'status' ? how : [how, what]))).toEqual([['opened', `${storage}/print/week-3-millpond.html`], ['command', 'setContext haversack.firstSteps.printed true'], 'status']);
    });

    it('leads nowhere else, whatever its name', async () => {
        await pagesIn(storage).open('../../a/b:c?d#e%2f', 'x', save);
        expect([...files.keys()]).toEqual([`${storage}/print/-a-b-c-d-e-2f.html`]);
    });

    it('takes the place of pages that are a day old, and of no younger one', async () => {
        const hour = 60 * 60 * 1000;
        files.set(`${storage}/print/week-1.html`, { text: '', mtime: Date.now() - 25 * hour });
        files.set(`${storage}/print/week-2.html`, { text: '', mtime: Date.now() - 2 * hour });
        await pagesIn(storage).open('week-3', 'x', save);
        expect([...files.keys()]).toEqual([`${storage}/print/week-2.html`, `${storage}/print/week-3.html`]);
    });

    it('is written though an old one cannot be deleted, or nothing was ever printed', async () => {
        files.set(`${storage}/print/week-1.html`, { text: '', mtime: 0 });
        const refused = vi.spyOn(workspace.fs, 'delete').mockRejectedValue(new Error('in use'));
        const missing = vi.spyOn(workspace.fs, 'readDirectory');
        await pagesIn(storage).open('week-3', 'x', save);
        missing.mockRejectedValue(new Error('no such folder'));
        await pagesIn(storage).open('week-4', 'x', save);
        for (const spy of [refused, missing]) spy.mockRestore();
        expect([...files.keys()]).toEqual(['week-1', 'week-3', 'week-4'].map(name => `${storage}/print/${name}.html`));
    });

    it('says what to do where no browser opens', async () => {
        given.opens = false;
        await pagesIn(storage).open('week-3', 'x', save);
        expect(told.at(-1)).toEqual(['error', 'No browser opened the page. Save it as a file, open that in a browser, and print it there.']);
    });

    it('cannot be handed on from another machine, or a storage that is no disk; a browser downloads it from everywhere', () => {
        expect(pagesIn(storage).possible).toBe(true);
        expect(pagesIn('vscode-userdata:/storage').possible).toBe(false);
        given.remoteName = 'ssh-remote';
        expect(pagesIn(storage).possible).toBe(false);
        given.uiKind = 2;
        expect([pagesIn(storage).possible, pagesIn('vscode-userdata:/storage').possible]).toEqual([true, true]);
    });

    it('is downloaded by the browser that the editor runs in, and may be saved instead', async () => {
        Object.assign(given, { uiKind: 2, button: 'Save as a file' });
        await pagesIn('vscode-userdata:/storage').open('week 3/oaks', '<!doctype html>', save);
        expect(downloads).toEqual([['week-3-oaks.html', '<!doctype html>']]);
        expect(told.map(([how, what]) => (how === 'information' ? how : [how, what]))).toEqual([['command', 'setContext haversack.firstSteps.printed true'], 'information', ['command', 'haversack.brief.save']]);
        expect(files.size).toBe(0);
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
        Object.assign(given, { remoteName: 'ssh-remote', button: 'Save as a file' });
        await printPage(briefOn('term'), pagesIn(storage));
        expect(told.map(([how]) => how)).toEqual(['information', 'command']);
        expect(told[1]).toEqual(['command', 'haversack.term.save']);
        expect([asked, files.size]).toEqual([[], 0]);
    });
});

describe('practice', () => {
    type Client = Parameters<typeof printPractice>[0];
    const asked: unknown[] = [];
    const client = (refused = false): Client => ({
        code2ProtocolConverter: { asUri: (uri: URI) => uri.toString() },
        sendRequest: (_: string, params: { lesson?: string }) => {
            asked.push(params);
            return Promise.resolve(refused && params.lesson === undefined ? { refusal: 'Which lesson?', lessons: [{ name: 'drill-2', title: 'Drill' }] } : { lesson: params.lesson ?? 'drill-1', title: 'Drill', practices: [], text: '<!doctype html>' });
        }
    }) as unknown as Client;
    const file = URI.parse('file:///last/a.lesson') as unknown as Parameters<typeof printPractice>[2];
    beforeEach(() => { asked.length = 0; });

    it.each([[false, 'drill-1'], [true, 'drill-2']])('is that of the programme of the file, though another has a lesson of that name (to be chosen: %s)', async (refused, lesson) => {
        await printPractice(client(refused), pagesIn(storage), file);
        expect(asked).toMatchObject([{ uri: 'file:///last/a.lesson' }, { uri: 'file:///last/a.lesson', lesson, format: 'html' }]);
        expect([...files.keys()]).toEqual([`${storage}/print/${lesson}-practice.html`]);
    });

    it('is that of the class and programme of the preview', async () => {
        const of = { uri: 'file:///last/a.lesson', class: 'oaks', lesson: 'drill-1' };
        expect(await lessonToPractise(client(), undefined, chosenPractice(of))).toEqual(of);
        expect(chosenPractice({ ...of, uri: 7, class: {} })).toEqual({ lesson: 'drill-1' });
        for (const other of [undefined, null, 'drill-1', { lesson: 1 }]) expect(chosenPractice(other)).toBeUndefined();
    });
});

// Regions from memory of CLDR's supplemental data, common practice besides: Letter in the United States, Canada and Mexico, A4 in Germany, Japan and Brazil.
it.each([
    ['a4', 'en-US', 'a4'], ['letter', 'de-DE', 'letter'], ['printer', 'en-US', undefined], ['region', 'en-US', 'letter'], ['region', 'fr-CA', 'letter'], ['region', 'es-MX', 'letter'],
    ['region', 'de-DE', 'a4'], ['region', 'ja-JP', 'a4'], ['region', 'pt-BR', 'a4'], ['region', 'en', undefined], ['region', 'zh-Hant-TW', 'a4'], ['a3', 'en-US', undefined], [undefined, 'en-US', undefined], [7, 'de-DE', undefined]
])('the setting %j in the locale %s is the paper %s', (setting, locale, paper) => expect(paperOf(setting, locale)).toBe(paper));
