/** The script of the brief's page in a real browser, spoken to as the extension speaks to it. */
import { createRequire } from 'node:module';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { briefStyles } from '@haversack/server/brief/styles';
import type { ShowMessage } from '../../extension/preview/messages.js';
import { startBrowser } from '../brief/browser.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { previewHtml } = await import('./page-html.js');

const lesson = 'file:///home/someone/a.lesson';
const line = (text: string, at: number): string => `<li class="thing" data-uri="${lesson}" data-line="${at}"><button type="button" class="lead" data-uri="${lesson}" data-line="${at}">${text}</button><details><summary>6</summary><p>2 x 3</p></details></li>`;
const section = (id: string, lines: string): string => `<section id="${id}" class="lesson" data-uri="${lesson}" data-line="0"><h2>One</h2><ul>${lines}</ul></section>`;
const many = Array.from({ length: 60 }, (_, index) => line(`thing ${index}`, 10 + index));

let browser: Browser;
let page: Page;
let script: string;
beforeAll(async () => {
    const { outputFiles } = await build({ entryPoints: ['extension/preview/page/main.ts'], bundle: true, format: 'iife', write: false });
    script = outputFiles[0]!.text;
    browser = await startBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
    await page?.close();
    page = await browser.newPage({ viewport: { width: 500, height: 600 } });
    await page.setContent(previewHtml().replace(/<meta http-equiv[^>]*>|<script[^]*<\/script>/g, '').replace(/<link[^>]*>/, `<style>${briefStyles()}</style>`));
    await page.evaluate(() => {
        const sent: unknown[] = [];
        let state: unknown;
        Object.assign(window, { sent, acquireVsCodeApi: () => ({ postMessage: (message: unknown) => sent.push(message), getState: () => state, setState: (next: unknown) => { state = next; } }) });
    });
    await page.addScriptTag({ content: script });
});

const sent = (): Promise<unknown[]> => page.evaluate(() => (window as unknown as { sent: unknown[] }).sent);

async function show(html: string, more: Partial<ShowMessage> = {}, brief: Partial<NonNullable<ShowMessage['brief']>> = {}): Promise<void> {
    const id = /id="([^"]*)"/.exec(html)![1]!;
    const message: ShowMessage = {
        type: 'show', state: {}, followCursor: true, leadBack: true,
        brief: { view: 'week', week: 2, weeks: 3, class: 'a', classes: [{ name: 'a', title: 'A' }, { name: 'b', title: 'B' }], around: { from: 0, to: 200 }, sections: [{ id, hash: html, html }], ...brief }, ...more
    };
    await page.evaluate(data => { window.dispatchEvent(new MessageEvent('message', { data })); }, message);
}

it('says that it is ready, and what the controls are used for', async () => {
    await show(section('lesson-a', many.join('')));
    await page.click('#next');
    await page.click('#previous');
    await page.check('#stay');
    await page.selectOption('#class', 'b');
    await page.click('#print');
    await page.click('#save');
    expect(await sent()).toEqual([{ type: 'ready' }, { type: 'step', by: 1 }, { type: 'step', by: -1 }, { type: 'stay', on: true }, { type: 'class', name: 'b' }, { type: 'print' }, { type: 'save' }]);
    expect(await page.locator('#next').innerText()).toContain('Week 3');
});

it('keeps the open fold, the focus and the place when a line comes in above and a figure changes', async () => {
    await show(section('lesson-a', many.join('')));
    const fold = page.locator('.thing', { hasText: 'thing 30' }).locator('details');
    await fold.locator('summary').click();
    await page.locator('.thing', { hasText: 'thing 31' }).locator('button').focus();
    const top = (await fold.boundingBox())!.y;
    const fresh = [line('new', 9), ...many.map((text, index) => text.replaceAll(`data-line="${10 + index}"`, `data-line="${11 + index}"`))];
    fresh[32] = fresh[32]!.replace('<summary>6', '<summary>12');
    await show(section('lesson-a', fresh.join('')));
    expect(await page.locator('.thing').count()).toBe(61);
    expect(await fold.getAttribute('open')).toBe('');
    expect(await page.locator('details[open]').count()).toBe(1);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('thing 31');
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.line)).toBe('42');
    expect(Math.abs((await fold.boundingBox())!.y - top)).toBeLessThanOrEqual(1);
});

it('keeps what it shows when nothing new can be made, and says why', async () => {
    await show(section('lesson-a', many.join('')));
    await show(section('lesson-a', ''), { brief: undefined, says: 'There is no week 5.' });
    expect(await page.locator('.thing').count()).toBe(60);
    expect(await page.locator('#says').innerText()).toBe('There is no week 5.');
});

it('switches between the week and the term, and keeps only what each needs', async () => {
    await show(section('lesson-a', many.join('')));
    await page.click('#show-term');
    expect((await sent()).slice(1)).toEqual([{ type: 'view', view: 'term' }]);
    await page.evaluate(() => window.scrollTo(0, 500));
    await show(section('term', many.join('')), { state: { view: 'term' } }, { view: 'term', week: undefined, weeks: undefined });
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await page.locator('main > *').evaluateAll(all => all.map(one => one.id))).toEqual(['term']);
    for (const control of ['#previous', '#next', '#stay-label']) expect(await page.locator(control).isVisible()).toBe(false);
    expect(await page.locator('#class').isVisible()).toBe(true);
    expect(await page.locator('[aria-pressed=true]').innerText()).toBe('Term');
    await page.click('#show-week');
    await show(section('lesson-a', many.join('')));
    expect(await page.locator('#next').innerText()).toContain('Week 3');
    expect(await page.locator('[aria-pressed=true]').innerText()).toBe('Week');
});

it('switches on to the changes with the class in place, and back to the week', async () => {
    await show(section('term', many.join('')), { state: { view: 'term' } }, { view: 'term', week: undefined, weeks: undefined, class: 'b' });
    await page.evaluate(() => window.scrollTo(0, 500));
    await page.click('#show-changes');
    expect((await sent()).slice(1)).toEqual([{ type: 'view', view: 'changes' }]);
    await show(section('changes', many.join('')), { state: { view: 'changes', class: 'b' } }, { view: 'changes', week: undefined, weeks: undefined, class: 'b' });
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await page.locator('[aria-pressed=true]').innerText()).toBe('Changes');
    expect(await page.locator('#class').inputValue()).toBe('b');
    expect(await page.locator('#next').isVisible()).toBe(false);
    await page.click('#show-week');
    expect((await sent()).slice(2)).toEqual([{ type: 'view', view: 'week' }]);
});

it('leads back from a mark in a drawing, and marks it for the cursor', async () => {
    const drawing = `<section id="term-calendar"><svg class="drawing" viewBox="0 0 100 50" width="100" height="50"><g data-uri="${lesson}" data-line="7"><rect class="cell" width="60" height="40" /><text x="5" y="20">One</text></g></svg></section>`;
    await show(drawing);
    await page.locator('svg text').click();
    expect((await sent()).slice(1)).toEqual([{ type: 'open', uri: lesson, line: 7 }]);
    await show(drawing, { state: { cursor: { uri: lesson, line: 7 } } });
    expect(await page.locator('g[aria-current]').count()).toBe(1);
    await show(drawing.replace('>One<', '>Two<').replace('width="60"', 'width="70"'));
    expect(await page.locator('svg text').textContent()).toBe('Two');
    expect(await page.locator('rect').getAttribute('width')).toBe('70');
    expect(await page.locator('svg').evaluate(svg => (svg as unknown as SVGSVGElement).viewBox.baseVal.width)).toBe(100);
});

it('puts sections in their order and takes away what is gone', async () => {
    const three = ['a', 'b', 'c'].map(id => ({ id, hash: id, html: `<section id="${id}">${id}</section>` }));
    await show(section('a', ''), {}, { sections: [three[0]!, three[2]!] });
    await show(section('a', ''), {}, { sections: [{ id: 'c', hash: 'c' }, three[1]!, { id: 'a', hash: 'a' }] });
    expect(await page.locator('main > *').allInnerTexts()).toEqual(['c', 'b', 'a']);
    await show(section('a', ''), {}, { sections: [{ id: 'b', hash: 'b' }] });
    expect(await page.locator('main > *').allInnerTexts()).toEqual(['b']);
});

it('marks the item at or before the cursor and scrolls to it only when it is out of view', async () => {
    const html = section('lesson-a', many.join(''));
    await show(html);
    await show(html, { state: { cursor: { uri: lesson, line: 11 } }, reveal: 'item' });
    expect(await page.locator('[aria-current]').locator('button').innerText()).toBe('thing 1');
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await show(html, { state: { cursor: { uri: lesson, line: 60 } } });
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await show(html, { state: { cursor: { uri: lesson, line: 60 } }, reveal: 'item' });
    expect(await page.locator('[aria-current]').locator('button').innerText()).toBe('thing 50');
    expect(await page.evaluate(() => window.scrollY)).toBeGreaterThan(0);
    await show(html, { state: { cursor: { uri: 'file:///other.kit', line: 60 } } });
    expect(await page.locator('[aria-current]').count()).toBe(0);
    await show(html, { followCursor: false, state: { cursor: { uri: lesson, line: 11 } } });
    expect(await page.locator('[aria-current]').count()).toBe(0);
});

it('marks nothing of another declaration', async () => {
    await show(section('lesson-a', many.join('')), { state: { cursor: { uri: lesson, line: 95 } } }, { around: { from: 90, to: 99 } });
    expect(await page.locator('[aria-current]').count()).toBe(0);
});

it('leads back by click and by Enter, and not while text is selected or when it is switched off', async () => {
    const html = section('lesson-a', many.join(''));
    await show(html);
    await page.locator('.thing', { hasText: 'thing 2' }).first().locator('button').click();
    await page.locator('.thing', { hasText: 'thing 3' }).first().locator('button').press('Enter');
    await page.locator('.thing').first().locator('summary').click();
    expect((await sent()).slice(1)).toEqual([{ type: 'open', uri: lesson, line: 12 }, { type: 'open', uri: lesson, line: 13 }]);
    await show(html, { leadBack: false });
    await page.locator('.thing', { hasText: 'thing 2' }).first().locator('button').click();
    expect((await sent()).length).toBe(3);
});

it('has a practice saved whether or not a click leads back, and never leads back from there', async () => {
    const html = section('lesson-a', `<li data-uri="${lesson}" data-line="40"><button type="button" class="save-practice" data-practice="weigh-1">Save sheet and key</button></li>`);
    for (const leadBack of [true, false]) {
        await show(html, { leadBack });
        await page.locator('.save-practice').click();
    }
    expect((await sent()).slice(1)).toEqual([{ type: 'practice', lesson: 'weigh-1' }, { type: 'practice', lesson: 'weigh-1' }]);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.save-practice').isVisible()).toBe(false);
});

it('stays where it is when the cursor comes to the line that was clicked', async () => {
    const html = section('lesson-a', many.join(''));
    await show(html);
    await page.evaluate(() => window.scrollTo(0, 900));
    const thing = page.locator('.thing', { hasText: 'thing 20' });
    await thing.locator('button').click();
    const before = await page.evaluate(() => window.scrollY);
    await show(html, { state: { cursor: { uri: lesson, line: 30 } }, reveal: 'item' });
    expect(await page.evaluate(() => window.scrollY)).toBe(before);
    expect(await thing.getAttribute('aria-current')).toBe('location');
});

it('hides what has no use: weeks where there is one, classes where there is one', async () => {
    await show(section('lesson-a', ''), {}, { week: 1, weeks: 1, classes: [{ name: 'a', title: 'A' }] });
    for (const id of ['#previous', '#next', '#stay-label', '#class-label']) expect(await page.locator(id).isVisible()).toBe(false);
});

it('tells readers of the screen, once typing rests, that the brief is new', async () => {
    await show(section('lesson-a', ''));
    expect(await page.locator('#updated').innerText()).toBe('');
    await page.locator('#updated', { hasText: 'Brief updated' }).waitFor({ state: 'attached' });
});

// axe-core 4.14: WCAG 2.2 A and AA rules.
it('has no barrier that axe finds', async () => {
    const button = '<li><button type="button" class="save-practice" data-practice="weigh-1">Save sheet and key</button></li>';
    await show(section('lesson-a', [...many.slice(0, 5), button].join('')), { says: 'There is an error in this file.', state: { cursor: { uri: lesson, line: 12 } } });
    await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
    const violations = await page.evaluate(async () => {
        const axe = (window as unknown as { axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe;
        const { violations: found } = await axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
        return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    });
    expect(violations).toEqual([]);
});

it('has controls that are named, reached by Tab in the order that is seen, and marked where the keyboard is', async () => {
    await show(section('lesson-a', many.slice(0, 2).join('')));
    const controls = page.locator('#controls');
    const names = await controls.getByRole('button').evaluateAll(all => all.map(one => one.getAttribute('aria-label') ?? one.textContent));
    expect(names).toEqual(['Week', 'Term', 'Changes', 'Previous week: Week 1', 'Next week: Week 3', 'Print', 'Save as a file']);
    await page.getByRole('navigation', { name: 'Which brief is shown' }).waitFor();
    await page.getByRole('group', { name: 'Week, term or changes' }).waitFor();
    await page.getByRole('checkbox', { name: 'Stay on this week' }).waitFor();
    await page.getByRole('combobox', { name: 'Class' }).waitFor();
    const met: { name: string; outline: string }[] = [];
    for (let key = 0; key < 10; key++) {
        await page.keyboard.press('Tab');
        met.push(await page.evaluate(() => ({ name: document.activeElement!.id || document.activeElement!.textContent, outline: getComputedStyle(document.activeElement!).outlineStyle })));
    }
    expect(met.map(({ name }) => name)).toEqual(['show-week', 'show-term', 'show-changes', 'previous', 'next', 'stay', 'class', 'print', 'save', 'thing 0']);
    expect(met.filter(({ outline }) => outline === 'none')).toEqual([]);
});

it('speaks politely: what is old or new is a status, which takes no focus', async () => {
    await show(section('lesson-a', many.slice(0, 2).join('')), { says: 'There is an error in this file.' });
    const regions = await page.locator('[role=status]').evaluateAll(all => all.map(one => [one.id, one.getAttribute('aria-live') ?? 'polite', one.matches(':focus-within')]));
    expect(regions).toEqual([['says', 'polite', false], ['updated', 'polite', false]]);
});
