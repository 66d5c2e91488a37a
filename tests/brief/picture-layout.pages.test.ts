/** Pictures in Chromium: nothing reaches outside its drawing, no words lie on each other, axe-core finds nothing; on their own as files too. */
import type { Browser } from 'playwright-core';
import { renderToString } from 'preact-render-to-string';
import { h } from 'preact';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Picture } from '@haversack/language/pictures/picture';
import { pictureInWords } from '@haversack/language/pictures/read-picture';
import { pageStyles } from '@haversack/server/brief/styles';
import { PictureSvg, pictureSvg } from '../../server/brief/picture/picture-svg.js';
import { legal } from '../language/picture-lines.js';
import { startBrowser } from './browser.js';
import { axeFindings, screens, withPage } from './open-page.js';
import { pictureSamples } from './picture-samples.js';
import { pictureSheet } from './picture-sheet.js';

let browser: Browser;
beforeAll(async () => { browser = await startBrowser(); }, 60_000);
afterAll(() => browser?.close());

const upTo = (from: number, to: number, by = 1): number[] => Array.from({ length: Math.floor((to - from) / by) + 1 }, (_, index) => from + index * by);
const samples = Object.entries(pictureSamples).flatMap(([kind, lines]) => lines.map(line => legal(`${kind} ${line}`)));

const one = (picture: Picture): Picture => picture;

/** Every value of the kinds that have few, and many of the others. */
const many: Picture[] = [
    ...samples,
    ...upTo(0, 20).map(count => one({ kind: 'ten-frame', count })),
    ...[10, 20, 100].flatMap(of => upTo(0, of).map(count => one({ kind: 'bead-string', count, of }))),
    ...[...upTo(1, 111), ...upTo(200, 9999, 97)].map(value => one({ kind: 'place-cards', value })),
    ...[...upTo(1, 111), ...upTo(200, 1999, 53)].map(value => one({ kind: 'base-ten', value })),
    ...upTo(0, 50).map(count => one({ kind: 'tally', count })),
    ...upTo(1, 20).map(parts => one({ kind: 'balance', left: upTo(1, parts).map(() => 5), right: [parts] })),
    ...upTo(1, 100, 9).flatMap(left => upTo(1, 100, 11).map(right => one({ kind: 'balance', left: [left], right: [right] }))),
    ...upTo(1, 24).flatMap(of => upTo(0, of, 3).map(part => one({ kind: 'fraction-bar', fractions: [{ part, of }, { part: of, of }] }))),
    ...upTo(0, 1439, 7).map(minutes => one({ kind: 'clock', hour: Math.floor(minutes / 60), minute: minutes % 60 })),
    ...upTo(1, 12).flatMap(rows => upTo(1, 20).map(columns => one({ kind: 'array', rows, columns }))),
    ...upTo(1, 40).flatMap(steps => [`0 to ${steps}`, `${10_000 - steps} to 10000 by 1`, `0 to ${steps / 4} by 0.25`, `7 to ${7 + steps} by 1`, `0 to ${steps * 250} by 250`, `0.01 to ${(steps + 1) / 100} by 0.01`].map(line => legal(`number-line ${line}`))),
    ...upTo(0, 19).map(first => legal(`number-line 0 to 20 mark ${first}, ${first + 1}`)),
    ...upTo(0, 9990, 333).map(first => legal(`number-line 0 to 10000 mark ${first}, ${first + 1}, ${first + 7}, ${first + 9}`))
];

/** What reaches outside its drawing by more than half a unit of the drawing, and words of one drawing that lie on each other. */
function measure(): { drawings: number; outside: string[]; over: string[] } {
    const outside: string[] = [];
    const over: string[] = [];
    const drawings = [...document.querySelectorAll('svg.picture')];
    for (const svg of drawings) {
        const box = svg.getBoundingClientRect();
        const name = `${svg.getAttribute('class')}: ${svg.getAttribute('aria-label')}`;
        const beyond = (rect: DOMRect, by: number): boolean => rect.left < box.left - by || rect.right > box.right + by || rect.top < box.top - by || rect.bottom > box.bottom + by;
        for (const shape of svg.querySelectorAll('path, rect, circle, line')) {
            // The box of a shape goes along the middle of its outline.
            const half = parseFloat(getComputedStyle(shape).strokeWidth) / 2 * (getComputedStyle(shape).stroke === 'none' ? 0 : 1);
            if (beyond(shape.getBoundingClientRect(), 0.51 - Math.min(half, 0.5))) outside.push(`${name}: ${shape.outerHTML}`);
        }
        const texts = [...svg.querySelectorAll('text')].map(text => ({ text, rect: text.getBoundingClientRect() }));
        for (const [index, { text, rect }] of texts.entries()) {
            // The ascent and descent of a line are more than its digits need.
            if (rect.left < box.left - 0.5 || rect.right > box.right + 0.5 || rect.bottom > box.bottom + 3 || rect.top < box.top - 3) outside.push(`${name}: ${text.textContent}`);
            for (const other of texts.slice(index + 1)) {
                const wide = Math.min(rect.right, other.rect.right) - Math.max(rect.left, other.rect.left);
                const high = Math.min(rect.bottom, other.rect.bottom) - Math.max(rect.top, other.rect.top);
                if (wide > 0.2 && high > 4) over.push(`${name}: ${text.textContent} / ${other.text.textContent}`);
            }
        }
    }
    return { drawings: drawings.length, outside, over };
}

test('nothing reaches outside, and no words lie on each other', async () => {
    const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Pictures</title><style>${pageStyles()}</style></head><body><main class="brief">${many.map(picture => renderToString(h(PictureSvg, { picture }))).join('')}</main></body></html>`;
    const found = await withPage(browser, html, { viewport: { width: 1100, height: 900 } }, page => page.evaluate(measure));
    expect(found).toEqual({ drawings: many.length, outside: [], over: [] });
}, 120_000);

describe('the samples, each with its words below it', () => {
    test.each(screens)('have nothing that axe finds, %s', async (_size, options) => {
        const found = await withPage(browser, pictureSheet(), options, axeFindings);
        expect(found.violations).toEqual([]);
        expect(found.passes).toBeGreaterThan(15);
    }, 60_000);

    test.each([320, 1100])('fit a screen of %i pixels with words that can be read', async width => {
        const found = await withPage(browser, pictureSheet(), { viewport: { width, height: 900 } }, page => page.evaluate(() => ({
            wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
            // The least height of letters on the screen, in pixels.
            letters: Math.min(...[...document.querySelectorAll<SVGTextElement>('svg.picture text')].map(text => parseFloat(text.getAttribute('font-size')!) * text.getScreenCTM()!.a)),
            ids: document.querySelectorAll('svg.picture [id], svg.picture[id]').length,
            unnamed: [...document.querySelectorAll('svg.picture')].filter(svg => svg.getAttribute('role') !== 'img' || !svg.getAttribute('aria-label')).length,
            told: [...document.querySelectorAll('figure.shown')].filter(figure => figure.querySelector('figcaption')!.getClientRects().length > 0).length
        })));
        expect(found).toMatchObject({ wide: 0, ids: 0, unnamed: 0, told: samples.length });
        expect(found.letters).toBeGreaterThanOrEqual(9.5);
    }, 30_000);

    test('are printed black on white, whatever the screen shows', async () => {
        await withPage(browser, pictureSheet(), { colorScheme: 'dark' }, async page => {
            await page.emulateMedia({ media: 'print' });
            const seen = await page.evaluate(() => ({
                line: getComputedStyle(document.querySelector('.picture .drawn')!).stroke, text: getComputedStyle(document.querySelector('.picture text')!).fill,
                empty: getComputedStyle(document.querySelector('.picture .cell')!).fill, first: getComputedStyle(document.querySelector('.picture .first')!).fill, second: getComputedStyle(document.querySelector('.picture .second')!).fill
            }));
            expect(seen).toEqual({ line: 'rgb(0, 0, 0)', text: 'rgb(0, 0, 0)', empty: 'rgb(255, 255, 255)', first: 'rgb(102, 102, 102)', second: 'rgb(255, 255, 255)' });
        });
    }, 30_000);
});

describe('as a file of its own', () => {
    const page = (policy: string, inside: string): string => `<!doctype html><html lang="en"><head><meta charset="utf-8">${policy}<title>Files</title></head><body>${inside}</body></html>`;

    test('each sample is an image, under a policy that allows images alone', async () => {
        const images = samples.map(picture => `<img alt="" src="data:image/svg+xml,${encodeURIComponent(pictureSvg(picture))}">`).join('');
        const found = await withPage(browser, page('<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; img-src data:">', images), {}, async tab => {
            await tab.waitForFunction(() => [...document.images].every(image => image.complete));
            return tab.evaluate(() => [...document.images].map(image => {
                const canvas = Object.assign(document.createElement('canvas'), { width: image.naturalWidth, height: image.naturalHeight });
                const context = canvas.getContext('2d')!;
                context.drawImage(image, 0, 0);
                const pixels = context.getImageData(0, 0, canvas.width, canvas.height).data;
                const found = { paper: 0, ink: 0, all: pixels.length / 4 };
                for (let at = 0; at < pixels.length; at += 4) {
                    const colour = pixels.slice(at, at + 3).join(' ');
                    if (colour === '252 251 248') found.paper++;
                    // Ink and everything darker: without its styles a shape would be filled with black.
                    if (pixels[at]! < 0x40) found.ink++;
                }
                return found;
            }));
        });
        for (const [index, { paper, ink, all }] of found.entries()) {
            expect([samples[index], paper > all / 4, ink < all / 4]).toEqual([samples[index], true, true]);
        }
    }, 60_000);

    test('it is well-formed, holds its words, and is short enough for a hover', async () => {
        const files = samples.map(picture => ({ svg: pictureSvg(picture), words: pictureInWords(picture) }));
        const titles = await withPage(browser, page('', ''), {}, tab => tab.evaluate(texts => texts.map(text => new DOMParser().parseFromString(text, 'image/svg+xml')).map(file => (file.querySelector('parsererror') ? 'no SVG' : file.querySelector('title')?.textContent)), files.map(({ svg }) => svg)));
        expect(titles).toEqual(files.map(({ words }) => words));
        // The editor cuts off Markdown that is longer than 100,000 characters.
        for (const { svg } of files) expect(encodeURIComponent(svg).length).toBeLessThan(90_000);
    }, 60_000);
});
