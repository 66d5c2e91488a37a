import { briefMarkdown } from '@haversack/server/brief/markdown';
import { describe, expect, it } from 'vitest';
import { briefPage } from '../../server/brief/page.js';
import { briefSections } from '../../server/brief/sections.js';
import { week } from './fixture.js';
import { prose } from './fixture-tools.js';

const pages = { page: briefPage(week), preview: briefSections(week, { preview: true }).map(section => section.html).join('') };

describe('sections', () => {
    it('come in the order in which the week happens', () => {
        expect(briefSections(week).map(section => section.id)).toEqual(['week', 'fetch', 'shelf', 'buy', 'cautions', 'lesson-weigh-1', 'lesson-weigh-2', 'lesson-weigh-3', 'ahead']);
        for (const { id, html } of briefSections(week)) expect(html.slice(0, html.indexOf('>'))).toContain(`id="${id}"`);
    });

    it('change alone when one lesson changes', () => {
        const [first, ...others] = week.lessons;
        if (!first) throw new Error('the fixture has lessons');
        const changed = { ...week, lessons: [{ ...first, aim: [prose('Another aim.')] }, ...others] };
        const after = briefSections(changed);
        const different = briefSections(week).filter((section, index) => section.hash !== after[index]?.hash);
        expect(different.map(section => section.id)).toEqual(['lesson-weigh-1']);
    });

    it('keep their ids apart when a lesson is taught twice', () => {
        const twice = { ...week, lessons: [...week.lessons, ...week.lessons] };
        const ids = briefSections(twice).map(section => section.id);
        expect(new Set(ids).size).toBe(ids.length);
    });

    it('leave out what has nothing to say, and say what is empty', () => {
        const bare = { ...week, fetch: [], stayOnShelf: [], putAway: [], buy: [], cautions: [], lessons: [], next: undefined };
        expect(briefSections({ ...bare, week: 12 }).map(section => section.id)).toEqual(['week', 'fetch', 'buy', 'ahead']);
        expect(briefSections(bare).map(section => section.id)).toEqual(['week', 'fetch', 'buy']);
    });
});

describe.each(Object.entries(pages))('the %s', (_name, html) => {
    it('has its headings in order', () => {
        const levels = [...html.matchAll(/<h([1-6])[ >]/g)].map(heading => Number(heading[1]));
        expect(levels.filter(level => level === 1)).toHaveLength(1);
        expect(levels[0]).toBe(1);
        levels.forEach((level, index) => expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1));
    });

    it('has unique ids, and every link within it arrives', () => {
        const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(id => id[1]);
        expect(new Set(ids).size).toBe(ids.length);
        const targets = [...html.matchAll(/(?: href="#| fill="url\(#| aria-labelledby=")([^")]+)/g)].map(target => target[1]);
        expect(targets.length).toBeGreaterThan(10);
        for (const target of targets) expect(ids).toContain(target);
    });

    it('tells the deferral once', () => {
        expect(html.split('Local rules, product labels and qualified advice come first.')).toHaveLength(2);
    });
});

describe('the way back', () => {
    it('holds whole addresses and a button for each line in the preview', () => {
        expect(pages.preview).toContain('<button type="button" class="lead" data-uri="file:///home/someone/Our%20year/weighing.lesson" data-line="17">Do</button>');
        const lines = [...pages.preview.matchAll(/<(?!button)\w+[^>]* data-line="(\d+)"/g)].map(line => line[1]);
        const buttons = new Set([...pages.preview.matchAll(/<button[^>]* data-line="(\d+)"/g)].map(line => line[1]));
        expect(lines.filter(line => !buttons.has(line))).toEqual([]);
    });

    it('never tells on a page where the programme lies on a disk', () => {
        expect(pages.page).not.toContain('someone');
        expect(pages.page).toContain('data-uri="weighing.lesson" data-line="7"');
        expect(pages.page).toContain('(weighing.lesson, line 8)');
        expect(pages.page).not.toContain('<button');
        expect(briefPage(week, { root: 'file:///home/someone' })).toContain('data-uri="Our%20year/weighing.lesson"');
    });
});

describe('the page', () => {
    it('names a week that the plan does not have without a count', () => {
        expect(briefPage({ ...week, week: 13, next: undefined })).toContain('<h1>Week 13</h1>');
        expect(briefPage({ ...week, week: 13, next: undefined })).not.toContain('last week of the plan');
    });

    it('asks for nothing from outside and takes the theme asked for', () => {
        expect(pages.page).toContain("default-src 'none'");
        expect(pages.page).toContain('<html lang="en">');
        expect(briefPage(week, { theme: 'dark' })).toContain('<html lang="en" data-theme="dark">');
        expect(pages.page).toContain('<title>Week 3 of 12: Measure and Make</title>');
        expect(pages.page).not.toMatch(/@import|url\((?!#)/);
    });

    it('heads a part without a name with its kind', () => {
        const kinds = { 'warm-up': 'Warm-up', activity: 'Activity', game: 'Game', practice: 'Practice', checkpoint: 'Closing questions' };
        const [first] = week.lessons;
        if (!first) throw new Error('the fixture has lessons');
        const nameless = { ...week, lessons: [{ ...first, parts: first.parts.map(part => ({ ...part, title: '' })) }] };
        const parts = briefPage(nameless).split('<div class="part"').slice(1);
        expect(parts).toHaveLength(first.parts.length);
        first.parts.forEach((part, index) => {
            expect(parts[index]).toContain(`<bdi>${kinds[part.kind]}</bdi></h3><p class="quiet">${part.minutes} min, from minute`);
            expect(briefMarkdown(nameless)).toContain(`### ${index + 1}\\. ${kinds[part.kind]}\n`);
        });
        expect(briefPage(nameless)).not.toContain('<bdi></bdi>');
    });

    it('never takes missing minutes for none', () => {
        const [first, ...others] = week.lessons;
        if (!first) throw new Error('the fixture has lessons');
        const untimed = { ...first, minutes: 0, minutesIncomplete: true, parts: first.parts.map(part => ({ ...part, minutes: undefined, startsAt: undefined })) };
        const some = { ...week, minutes: 71, lessons: [untimed, ...others] };
        for (const text of [briefPage(some), briefMarkdown(some)]) {
            expect(text).toContain('3 lessons, 71 minutes, some parts without a time');
            expect(text).toContain('Mon 21 Sep, part 1 of 2, no time given');
            expect(text).toContain('Run of the session, no time given');
        }
        const none = { ...week, minutes: 0, lessons: [untimed] };
        for (const text of [briefPage(none), briefMarkdown(none)]) {
            expect(text).toContain('1 lesson');
            expect(text).not.toMatch(/\b0 min|1 lesson,/);
        }
    });

    it('calls nothing new in the first week', () => {
        expect(pages.page).toContain('new this week');
        expect(briefPage({ ...week, week: 1 })).not.toContain('new this week');
    });

    it('says in words what the kits lack', () => {
        expect(pages.page).toContain('Kits and cupboard hold 60; 20 more needed.');
    });
});

describe('the days and purchases of the week', () => {
    const words = pages.page.replace(/<[^>]*>/g, '');

    it('say which part of a lesson is taught, why it comes again and which day is kept free', () => {
        expect(words).toContain('Which is heavier? (part 1 of 2)');
        expect(words).toContain('How long is a stride? (again: the children were unsure on Thu 17 Sep)');
        expect(words).toContain('Kept free to catch up, after 6 lessons.');
        expect(pages.preview).toContain('data-line="61"><bdi>again: the children were unsure on Thu 17 Sep</bdi></button>');
    });

    it('lead a day to the lesson of that day when one is taught twice', () => {
        const [first] = week.lessons;
        const again = { ...first!, meeting: 'Wed 23 Sep', date: '2026-09-23' };
        const meetings = [
            { date: '2026-09-21', label: 'Mon 21 Sep', lessons: ['weigh-1'], taught: [], minutes: 40 }, { date: '2026-09-23', label: 'Wed 23 Sep', lessons: ['weigh-1'], taught: [], minutes: 40 }
        ];
        const header = briefSections({ ...week, lessons: [first!, again], meetings })[0]!.html;
        expect([...header.matchAll(/href="#([^"]*)"/g)].map(link => link[1])).toEqual(['lesson-weigh-1', 'lesson-weigh-1_2']);
    });

    it('say what to put in the basket, what it costs, what it serves and what is late', () => {
        for (const told of ['To buy: 1 pack of 500 g at 2.10 USD.', 'Costs 2.10 USD. Covers weeks 3 and 4; left over in the end: 240 g.', '2 days too late: the last day to order was Tue 15 Sep.']) expect(words).toContain(told);
        // How it is sold, and that the day lies before the week, is told only while nothing better is known.
        expect(words).not.toContain('Sold in packs of 100');
        expect(words.split('The last day to order is before this week begins.')).toHaveLength(2);
    });

    it('remark calmly, at the end, on what the term has no day for', () => {
        expect(words.trim().endsWith('The term has no day left for “A fair for families”.')).toBe(true);
        expect(briefPage({ ...week, unplaced: [] })).not.toContain('no day left');
    });
});
