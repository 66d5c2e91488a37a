import { termMarkdown } from '@haversack/server/brief/term/markdown';
import { orderGroups } from '@haversack/server/brief/term/sentences';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { describe, expect, it } from 'vitest';
import { termPage } from '../../server/brief/term/page.js';
import { termSections } from '../../server/brief/term/sections.js';
import { programmeRoot } from './fixture-tools.js';
import { term } from './term-fixture.js';

const html = (of: TermFigures, preview = false): string => termSections(of, { preview }).map(section => section.html).join('');
const pages = { page: termPage(term, { root: programmeRoot }), preview: html(term, true) };
const ids = (of: TermFigures): string[] => termSections(of).map(section => section.id);

describe('the sections of the term', () => {
    it('come in their order, each under its id', () => {
        expect(ids(term)).toEqual(['term', 'term-calendar', 'term-left-out', 'term-short', 'term-buy', 'term-stock', 'term-coverage', 'term-frameworks']);
        for (const section of termSections(term)) expect(section.html.slice(0, section.html.indexOf('>'))).toContain(`id="${section.id}"`);
    });

    it('change alone: another price leaves calendar, stock and coverage as they are', () => {
        const [first, ...others] = term.supplies.orders;
        const after = termSections({ ...term, supplies: { ...term.supplies, orders: [{ ...first!, when: 'needed some day' }, ...others] } });
        const before = new Map(termSections(term).map(({ id, hash }) => [id, hash]));
        expect(after.filter(({ id, hash }) => before.get(id) !== hash).map(({ id }) => id)).toEqual(['term-buy']);
    });

    it('leave out what has nothing to say, and say what is empty', () => {
        const bare: TermFigures = {
            schedule: { ...term.schedule, weeks: [], unplaced: [], problems: [], proposals: [] },
            supplies: { ...term.supplies, things: [], orders: [], shortages: [], clashes: [], costs: { byWeek: [], term: [], perLearner: [], unpriced: [] } },
            coverage: { ...term.coverage, objectives: [], gaps: [], frameworks: [] }
        };
        expect(ids(bare)).toEqual(['term', 'term-calendar', 'term-buy']);
        expect(html(bare)).toContain('Nothing has to be bought or ordered this term.');
        expect(html(bare)).toContain('nothing to put on days');
        expect(termMarkdown(bare)).toContain('Nothing has to be bought');
    });

    it('tell what repeats, what is split, what is fixed, what is free and what is off in words', () => {
        for (const told of [html(term).replace(/<[^>]*>/g, ''), termMarkdown(term)]) {
            for (const words of [
                'again: the children were unsure on Wed 16 Sep', 'part 1 of 2', 'part 2 of 2', 'fixed for this day: Visit of the carpenter', 'once more', 'Kept free to catch up, after 4 lessons.',
                'Nothing can be taught yet', 'Boat day: no meeting', 'Apple week: no meetings Mon 19 Oct to Fri 23 Oct', '5 days too late', 'Covers weeks 4 and 5', 'weeks 6 and 7: 2.10 USD less', 'of it 2.50 EUR for delivery',
                'ends 2026-11-18', 'It takes 8 more days.', '12 at hand (not enough of it)', 'Hill families'
            ]) expect(told.includes(words), words).toBe(true);
        }
    });

    it('list purchases by when they have to be ordered, what is late first', () => {
        expect(orderGroups(term.supplies).map(({ title, orders }) => [title, orders.map(({ id }) => id)])).toEqual([
            ['Late', ['modelling-clay-3']], ['September 2026', ['gram-cube-1', 'paper-bag-2']], ['October 2026', ['modelling-clay-5', 'dried-bean-4', 'dried-bean-6']]
        ]);
        const undated = term.supplies.orders.map(order => ({ ...order, orderBy: undefined, neededBy: undefined, late: undefined }));
        expect(orderGroups({ ...term.supplies, orders: undated }).map(({ title }) => title)).toEqual(expect.arrayContaining(['Before the first week', 'Week 1', 'Week 6']));
    });

    it('never adds up two currencies', () => {
        expect(pages.page).toContain('18.70 USD and 14.60 EUR');
        expect(pages.page).not.toContain('33.30');
    });
});

describe.each(Object.entries(pages))('the %s of the term', (_name, text) => {
    it('has its headings in order', () => {
        const levels = [...text.matchAll(/<h([1-6])[ >]/g)].map(heading => Number(heading[1]));
        expect(levels.filter(level => level === 1)).toHaveLength(1);
        levels.forEach((level, index) => expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1));
    });

    it('has unique ids, and every link and fill within it arrives', () => {
        const own = [...text.matchAll(/ id="([^"]*)"/g)].map(id => id[1]);
        expect(new Set(own).size).toBe(own.length);
        const targets = [...text.matchAll(/(?: href="#| fill="url\(#| aria-labelledby=")([^")]+)/g)].map(target => target[1]);
        expect(targets.length).toBeGreaterThan(20);
        for (const target of targets) expect(own).toContain(target);
    });

    it('gives every table a caption and every head a scope', () => {
        const tables = text.split('<table').slice(1);
        expect(tables.length).toBeGreaterThan(5);
        for (const table of tables) expect(table.slice(0, 60)).toContain('<caption');
        for (const head of text.match(/<th[ >][^>]*/g) ?? []) expect(head).toMatch(/scope="(?:col|row)"/);
    });

    it('holds no style, handler or script of its own', () => {
        const body = text.slice(text.indexOf('<main') < 0 ? 0 : text.indexOf('<main'));
        expect(body).not.toMatch(/<script|<style| style=| on[a-z]+=/);
    });
});

describe('the way back from the term', () => {
    it('has a button for every line that a mark leads to', () => {
        const address = (attributes: string): string => `${/data-uri="([^"]*)"/.exec(attributes)?.[1]} ${/data-line="([^"]*)"/.exec(attributes)?.[1]}`;
        const marks = [...pages.preview.matchAll(/<(?!button)\w+([^>]* data-line="[^"]*"[^>]*)>/g)].map(mark => address(mark[1]!));
        const buttons = new Set([...pages.preview.matchAll(/<button([^>]*)>/g)].map(button => address(button[1]!)));
        expect(marks.length).toBeGreaterThan(100);
        expect([...new Set(marks)].filter(mark => !buttons.has(mark))).toEqual([]);
    });

    it('leads from every lesson taught, every visit of an objective and every thing that runs out', () => {
        const leads = (place: { uri: string; range: { start: { line: number } } } | undefined): void => {
            if (place) expect(pages.preview).toMatch(new RegExp(`<g data-uri="${place.uri}" data-line="${place.range.start.line}"|<g class="day" data-uri="${place.uri}" data-line="${place.range.start.line}"`));
        };
        for (const { meetings } of term.schedule.weeks) for (const { taught, free } of meetings) [...taught.map(one => one.place), free?.place].forEach(leads);
        for (const objective of term.coverage.objectives) objective.cells.forEach(cell => leads(cell.place));
        for (const thing of term.supplies.things) if (thing.use === 'consumable') leads(thing.runsOut?.place);
        for (const day of term.schedule.daysOff) if (day.costs) leads(day.place);
    });

    it('never tells on a page where the programme lies on a disk', () => {
        expect(pages.page).not.toContain('someone');
        expect(pages.page).not.toContain('<button');
        expect(pages.page).toContain('data-uri="lesson-4.lesson" data-line="0"');
    });
});
