/** A drawing and the words beside it say the same, and both say what the figures say. Read with Chromium's parser. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { changingWeeks, stockLine, size } from '@haversack/server/brief/term/stock/line';
import type { ThingRecord } from '@haversack/server/planning/supply-figures';
import { termSections } from '../../server/brief/term/sections.js';
import { startBrowser } from './browser.js';
import { exampleTerm } from './example-terms.js';
import { term } from './term-fixture.js';

let browser: Browser;
let tab: Page;
let year: TermFigures;
beforeAll(async () => {
    browser = await startBrowser();
    tab = await browser.newPage();
    year = await exampleTerm('year', 'millpond', '2026-10-01');
}, 90_000);
afterAll(() => browser?.close());

const load = (of: TermFigures): Promise<void> => tab.setContent(`<main>${termSections(of).map(section => section.html).join('')}</main>`);
const terms = (): [string, TermFigures][] => [['fixture', term], ['year', year]];
const same = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe('drawings', () => {
    it('each have a name that points to the words that say the same', async () => {
        for (const [, of] of terms()) {
            await load(of);
            const drawings = await tab.evaluate(() => [...document.querySelectorAll('svg:not([aria-hidden])')].map(svg => ({
                role: svg.getAttribute('role'), name: svg.getAttribute('aria-label') ?? '', words: svg.parentElement?.querySelectorAll('details.in-words').length ?? 0
            })));
            expect(drawings.length).toBeGreaterThan(10);
            expect(drawings.filter(({ role, name, words }) => role !== 'img' || name === '' || words < 1)).toEqual([]);
        }
    });

    it('show every lesson of every meeting in the calendar, in both sizes, and in its table', async () => {
        for (const [, of] of terms()) {
            await load(of);
            const { wide, narrow, table } = await tab.evaluate(() => ({
                wide: [...document.querySelectorAll('.month.wide .day')].map(day => [...day.querySelectorAll('title')].map(title => title.textContent ?? '').join('|')),
                narrow: [...document.querySelectorAll('.month.narrow .day')].map(day => [...day.querySelectorAll('title')].map(title => title.textContent ?? '').join('|')),
                table: [...document.querySelectorAll('#term-calendar tbody tr')].filter(row => row.querySelector('th')).map(row => [...row.children].map(cell => cell.textContent ?? ''))
            }));
            const meetings = of.schedule.weeks.flatMap(week => week.meetings.map(meeting => ({ week: String(week.number), meeting })));
            expect(wide).toEqual(narrow);
            const told = table.filter(([, , what]) => !/: no meeting$/.test(what ?? ''));
            expect(told.map(([day, week]) => [day!.replace(' (today)', ''), week])).toEqual(meetings.map(({ week, meeting }) => [meeting.label, week]));
            meetings.forEach(({ meeting }, index) => {
                for (const { title } of meeting.taught) expect(same(told[index]![2]!)).toContain(same(title));
                if (meeting.free) expect(told[index]![2]).toContain(meeting.free.words);
            });
            expect(wide.filter(titles => !titles.endsWith(': no meeting'))).toHaveLength(meetings.length);
        }
    });

    it('tell every week of the stock that changes anything, in the words of the record', async () => {
        for (const [, of] of terms()) {
            await load(of);
            const shown = await tab.evaluate(() => Object.fromEntries([...document.querySelectorAll('.multiple')].map(multiple => [
                multiple.querySelector('h4')?.textContent ?? '', [...multiple.querySelectorAll('tbody tr')].map(row => [...row.children].map(cell => cell.textContent ?? '').filter(Boolean))
            ])));
            const drawn = of.supplies.things.filter(thing => thing.use === 'consumable' && thing.title in shown);
            expect(drawn.length).toBeGreaterThan(2);
            for (const thing of drawn) {
                const rows = shown[thing.title]!;
                expect(rows.map(row => Number.parseInt(row[0]!, 10))).toEqual(changingWeeks(thing).map(({ week }) => week));
                changingWeeks(thing).forEach((week, index) => {
                    const amounts = [week.gross, week.scheduled, week.receipts].filter(({ exact }) => exact !== '0').map(({ text }) => text);
                    expect(rows[index]!.slice(1)).toEqual([...amounts, week.onHand.text]);
                });
            }
        }
    });

    it('mark in a grid what the figures count, and tell it beside', async () => {
        for (const [, of] of terms()) {
            await load(of);
            const cells = of.coverage.objectives.flatMap(objective => objective.cells);
            const count = (does: string): number => cells.filter(cell => (cell.does as string[]).includes(does)).length;
            const shapes = await tab.evaluate(() => ['wide', 'narrow'].map(shape => {
                const marks = [...document.querySelectorAll(`.grid.${shape} .mark`)];
                return ['path.solid', 'circle.outline', 'rect.outline'].map(inside => marks.filter(mark => mark.querySelector(inside)).length);
            }));
            const counts = [count('introduces'), count('practises'), count('checks')];
            expect(shapes).toEqual([counts, counts]);
            const told = await tab.evaluate(() => [...document.querySelectorAll('#term-coverage .in-words li')].map(line => line.textContent ?? ''));
            expect(told).toHaveLength(of.coverage.objectives.length);
            for (const objective of of.coverage.objectives) {
                const line = told.find(text => text.startsWith(objective.title));
                for (const cell of objective.cells) expect(line).toContain(of.coverage.lessons[cell.lesson]!.title);
            }
        }
    });

    it('fill a bar of a framework as far as its items are met', async () => {
        await load(year);
        const bars = await tab.evaluate(() => [...document.querySelectorAll('svg.share')].map(bar => ({ name: bar.getAttribute('aria-label') ?? '', width: bar.querySelector('rect[fill]')?.getAttribute('width') ?? '0%' })));
        expect(bars.length).toBeGreaterThan(3);
        for (const { name, width } of bars) {
            const [, met, all] = /: (\d+) of (\d+) items? (?:is|are) met$/.exec(name)!;
            expect(Number.parseFloat(width)).toBeCloseTo((Number(met) / Number(all)) * 100, 0);
        }
    });
});

describe('a line of stock', () => {
    const record = (name: string): ThingRecord => term.supplies.things.find(thing => thing.name === name)!;

    it('stands at the end of each week where the record says', () => {
        for (const name of ['dried-bean', 'modelling-clay', 'craft-stick']) {
            const thing = record(name);
            const drawn = stockLine(thing);
            const points = [...drawn.path.matchAll(/([ML])(-?[\d.]+),(-?[\d.]+)/g)].map(([, , x, y]) => [Number(x), Number(y)] as const);
            thing.weeks.forEach((week, index) => {
                const end = ((index + 1) / thing.weeks.length) * size.width;
                // What stands just before the end of the week; half a pixel lies between two steps at least.
                const last = points.filter(([x]) => x < end - 0.5).at(-1)!;
                const level = ((size.bottom - last[1]) / (size.bottom - size.top)) * drawn.upper;
                expect(Math.abs(level - Number(week.onHand.exact))).toBeLessThan(drawn.upper / 100);
            });
        }
    });

    it('never writes two weeks over each other, however many there are', () => {
        const weeks = record('craft-stick').weeks;
        for (const count of [1, 2, 8, 12, 39, 60]) {
            const { labelled } = stockLine({ ...record('craft-stick'), weeks: Array.from({ length: count }, (_, index) => ({ ...weeks[0]!, week: index + 1 })) });
            expect(labelled[0]).toMatchObject({ week: 1 });
            // The first says "week 1" from the left edge on, the others stand in the middle of their week.
            labelled.slice(1).forEach((one, index) => expect(one.middle - (labelled[index + 1 - 1]!.week === 1 ? 34 : labelled[index]!.middle)).toBeGreaterThanOrEqual(index === 0 ? 10 : 28));
        }
    });

    it('reads amounts that are no whole numbers, and survives what is no amount', () => {
        const odd = { ...record('craft-stick'), opening: { exact: '1 1/2', text: '1 1/2 cups', trail: [] }, weeks: record('craft-stick').weeks.map(week => ({ ...week, onHand: { exact: 'many', text: 'many' } })) };
        expect(stockLine(odd).upper).toBeGreaterThanOrEqual(1.5);
        expect(stockLine(odd).path).not.toContain('NaN');
        expect(stockLine({ ...odd, opening: undefined, weeks: [] }).path).not.toContain('NaN');
    });
});
