import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { briefJson } from '@haversack/server/exports/brief-json';
import { figuresJson } from '@haversack/server/exports/json';
import { changesMarkdown } from '@haversack/server/brief/changes/markdown';
import { changesText } from '@haversack/server/brief/changes/text';
import { briefMarkdown } from '@haversack/server/brief/markdown';
import { termMarkdown } from '@haversack/server/brief/term/markdown';
import type { WeekBrief } from '@haversack/server/planning/figures';
import type { ChangesFigures } from '@haversack/server/planning/ledger-figures';
import { changesPage } from '../../server/brief/changes/page.js';
import { changesSections } from '../../server/brief/changes/sections.js';
import { briefSections } from '../../server/brief/sections.js';
import { termSections } from '../../server/brief/term/sections.js';
import { adaptedTerm, adaptedWeek, added, swapped } from './adapted-fixture.js';
import { changes, ledger, unchangedClass } from './changes-fixture.js';
import { expectGolden, readable } from './expect-golden.js';
import { week } from './fixture.js';
import { programmeRoot } from './fixture-tools.js';
import { everyTextAs, hostileTexts } from './hostile.js';

const section = (id: string, sections = briefSections(adaptedWeek, { preview: true })): string => sections.find(one => one.id === id)?.html ?? '';
const plain = (html: string): string => html.replace(/<(?:div|p|li|h\d)\b/g, ' <').replace(/<[^>]*>/g, '').replace(/\s+/g, ' ');
const count = (text: string, words: string): number => text.split(words).length - 1;

describe('golden pages of changes', () => {
    it('page', () => expectGolden('changes.html', readable(changesPage(changes, { root: programmeRoot }))));
    it('Markdown', () => expectGolden('changes.md', changesMarkdown(changes)));
    it('text', () => expectGolden('changes.txt', changesText(changes)));
    it('without an adaptation', () => expectGolden('unchanged.html', readable(changesSections(unchangedClass, { preview: true }).map(one => one.html).join('\n'))));
    it('lines that the brief of an adapted class has and that of the course has not', () => {
        const lines = (brief: WeekBrief): string[] => readable(briefSections(brief, { preview: true }).map(one => one.html).join('\n')).split('\n');
        const before = new Set(lines(week));
        expectGolden('adapted-lines.html', lines(adaptedWeek).filter(line => !before.has(line)).join('\n'));
    });
});

describe('the brief of an adapted class', () => {
    const lesson = section('lesson-weigh-1');
    const text = plain(lesson);

    it('says beside a part what is changed and why, and leads to the line of the adaptation', () => {
        expect(plain(/<\/span> <button[^>]*><bdi>Two mystery bags<\/bdi>[^]*?<ul/.exec(lesson)?.[0] ?? '')).toContain('Changed for Harbour co-op: 10 min instead of 15. Covered at the market visit.');
        expect(lesson).toMatch(/<button type="button" class="lead" data-uri="[^"]*harbour\.course" data-line="3"><bdi>Changed for Harbour co-op: 10 min/);
    });

    it('tells a swap once in a lesson, with its reason as prose', () => {
        expect(count(text, 'lentils instead of dried beans')).toBe(1);
        expect(lesson).toContain('<p>Ask again in spring.</p>');
        expect(lesson).toMatch(/The shop has no <button type="button" class="lead name"[^>]*><bdi>dried beans<\/bdi>/);
    });

    it('marks an added part and not again what it consists of, and an added step and need each', () => {
        expect(count(text, 'Added for Harbour co-op.')).toBe(3);
        expect(count(text, 'are all there is')).toBe(1);
        expect(plain(lesson.slice(lesson.indexOf('Sing</bdi></button></h3>'), lesson.indexOf('Sing the weighing song')))).toContain('Added for Harbour co-op. Low tables are all there is.');
        expect(plain(lesson.slice(lesson.indexOf('Sing the weighing song')))).not.toContain('Added');
    });

    it('marks a caution that is added, and one whose words a swap changed; the summary of the week has no mark', () => {
        const { place } = week.cautions[0]!;
        const sharp = { kind: 'sharp', title: 'Sharp', text: 'It cuts.', place, changes: [added] };
        const heat = { kind: 'heat', title: 'Heat', text: 'It is hot.', place: { ...place, range: { start: { line: 90, character: 0 }, end: { line: 90, character: 4 } } }, changes: [swapped] };
        const one: WeekBrief = { ...week, cautions: [sharp, heat], lessons: [{ ...week.lessons[0]!, cautions: [sharp, heat] }] };
        const sections = briefSections(one, { preview: true });
        const html = section('lesson-weigh-1', sections);
        const line = (words: string): string => plain(/<li class="caution"[^]*?<\/li>/g[Symbol.match](html)?.find(item => item.includes(words)) ?? '');
        expect(line('It cuts.')).toContain('It cuts. Added for Harbour co-op. Low tables are all there is.');
        expect(line('It is hot.')).toContain('It is hot. Changed for Harbour co-op: lentils instead of dried beans.');
        expect(section('cautions', sections)).not.toContain('Added for');
        const markdown = briefMarkdown(one);
        expect(markdown).toContain('- Caution: It cuts.\n  - Added for Harbour co-op. **Low tables** are all there is.');
        expect(markdown).toContain('- Caution: It is hot.\n  - Changed for Harbour co-op: lentils instead of dried beans.');
    });

    it('says of two changes once for whom they are', () => {
        const told = plain(section('lesson-weigh-2'));
        expect(told).toContain('Changed for Harbour co-op: joined with “Parcels”.');
        expect(told).toContain('Moved: after “Which is heavier?”');
        expect(count(told, 'Changed for')).toBe(1);
    });

    it('has a line where a lesson stood, and behind the last one', () => {
        const ids = briefSections(adaptedWeek).map(one => one.id);
        expect(ids.slice(ids.indexOf('lesson-weigh-1'))).toEqual(['lesson-weigh-1', 'left-out-market-sums', 'lesson-weigh-2', 'lesson-weigh-3', 'left-out-last', 'ahead']);
        expect(plain(section('left-out-market-sums'))).toContain('“Market sums” is left out for Harbour co-op. Covered at the “Heavier than ten cubes” visit, says &lt;b>nobody&lt;/b>.');
        expect(section('week')).toMatch(/With the changes of[^]*Shorter autumn[^]*<a href="#left-out-market-sums">/);
    });

    it('tells of a lesson that another one replaces what is taught instead, unless that one says so in this week', () => {
        const gone = adaptedWeek.adapted!.leftOut[0]!;
        const change = { ...gone.change, says: '“Market visit” is taught instead of “Market sums”' };
        const swapped = { ...adaptedWeek, adapted: { ...adaptedWeek.adapted!, leftOut: [{ ...gone, change }] } };
        expect(plain(section('left-out-market-sums', briefSections(swapped)))).toContain('Changed for Harbour co-op: “Market visit” is taught instead of “Market sums”.');
        const replaced = { ...swapped, lessons: swapped.lessons.map((lesson, index) => (index === 1 ? { ...lesson, changes: [{ ...change, says: 'instead of “Market sums”' }] } : lesson)) };
        expect(briefSections(replaced).map(({ id }) => id)).not.toContain('left-out-market-sums');
        expect(plain(section('lesson-weigh-2', briefSections(replaced)))).toContain('Changed for Harbour co-op: instead of “Market sums”.');
        expect(plain(section('week', briefSections(replaced)))).not.toContain('left out here');
    });

    it('changes nothing but the sections that tell of a change', () => {
        const before = new Map(briefSections(week, { preview: true }).map(one => [one.id, one.hash]));
        expect(briefSections(adaptedWeek, { preview: true }).filter(one => before.get(one.id) !== one.hash).map(one => one.id)).toEqual(['week', 'lesson-weigh-1', 'left-out-market-sums', 'lesson-weigh-2', 'left-out-last']);
        expect(section('lesson-weigh-1', briefSections({ ...adaptedWeek, lessons: week.lessons }))).toBe(section('lesson-weigh-1', briefSections(week)));
    });

    it('carries the same in Markdown and JSON', () => {
        const markdown = briefMarkdown(adaptedWeek);
        expect(markdown).toContain('With the changes of “Shorter autumn” and “Harbour days”; left out here: “Market sums” and “What we can measure now”.');
        expect(markdown).toContain('\nChanged for Harbour co-op: 10 min instead of 15. Covered at the market visit.\n');
        expect(markdown).toContain('  - Changed for Harbour co-op: lentils instead of dried beans.\n');
        expect(markdown.indexOf('“Market sums” is left out')).toBeLessThan(markdown.indexOf('## Heavier than ten cubes'));
        expect(count(markdown, 'lentils instead of dried beans')).toBe(1);
        expect((JSON.parse(briefJson(adaptedWeek)) as { brief: unknown }).brief).toEqual(adaptedWeek);
    });

    it('says changed and added alone where no class is named', () => {
        expect(plain(section('lesson-weigh-1', briefSections({ ...adaptedWeek, class: undefined })))).toContain('Changed: 10 min instead of 15.');
    });
});

describe('the term of an adapted class', () => {
    const sections = termSections(adaptedTerm, { preview: true });

    it('names the adaptations, the lessons left out and what is moved', () => {
        expect(plain(section('term', sections))).toMatch(/With the changes of “Shorter autumn” and “Harbour days” ?\..*1 lesson is left out for this class\./);
        expect(plain(section('term-otherwise', sections))).toContain('“Market sums” is left out for Harbour co-op. Covered at the “Two bags” visit');
        expect(section('term-otherwise', sections)).toContain('The market is <em>early</em> this year.');
        expect(plain(section('term-otherwise', sections))).toContain('A walk round the harbour Brought in. 20 min instead of 30.');
    });

    it('says in the calendar’s words that a lesson is moved, and leads to the line', () => {
        expect(section('term-calendar', sections)).toMatch(/A market of parcels<\/bdi><\/button>[^]*?<button type="button" class="lead" data-uri="[^"]*harbour\.course" data-line="8"><bdi>moved to after “Jars that look alike”/);
        expect(termMarkdown(adaptedTerm)).toContain('A market of parcels, part 1 of 2, moved to after “Jars that look alike”');
        expect(termMarkdown(adaptedTerm)).toContain('“Market sums” is left out for Harbour co-op.');
    });
});

describe('the page of changes', () => {
    const sections = changesSections(changes, { preview: true });

    it('sums up in words, each currency by itself', () => {
        const summary = plain(section('changes', sections));
        for (const told of [
            '1 lesson left out, 1 changed, 1 moved, 1 new; 6 as the course has them.', '421 minutes of lessons instead of 446.', '10 meetings with a lesson as before; the last on Tue 10 Nov 2026 instead of Thu 12 Nov 2026.',
            '1 objective is no longer introduced; 1 lesson that others follow is left out; 1 word is no longer taught; 1 objective is no longer taught; 1 objective is practised too early; 1 objective is no longer checked.',
            '1 thing in another amount, 1 no longer needed, 1 new.', 'To buy: 24.10 EUR instead of 26.20 EUR (2.10 EUR less).', 'To buy: 4.00 USD, as before.', 'To buy: 300 JPY instead of nothing (300 JPY more).', '1 change has no effect.'
        ]) expect(summary).toContain(told);
    });

    it('puts what a change breaks under it and not under another', () => {
        const [, first = '', second = '', third = '', fourth = ''] = section('changes-made', sections).split('<li data-uri');
        expect(plain(first)).toMatch(/“Market sums” is left out\..*Because.*Lost.*no longer introduced.*Lost.*Lost/);
        expect(plain(second)).not.toContain('Lost');
        expect(plain(third)).not.toMatch(/Lost|Out of order/);
        expect(plain(fourth)).toMatch(/Out of order/);
    });

    it('leads from everything to its line', () => {
        const all = sections.map(one => one.html).join('');
        for (const { place: { uri, range } } of [...ledger.changes, ...ledger.adaptations, ...ledger.supplies, ...ledger.lessons, ...ledger.changes.flatMap(one => one.consequences).flatMap(({ about: { place } }) => (place ? [{ place }] : []))]) {
            expect(all).toContain(`<button type="button" class="lead" data-uri="${uri}" data-line="${range.start.line}">`);
        }
        expect(all).toContain('150 g for each of 4 pairs = 600 g, in place of dried beans');
    });

    it('puts three and more unchanged lessons in a row together', () => {
        expect(plain(section('changes-lessons', sections))).toMatch(/4 lessons as the course has them: “Market day” to “A ruler of our own”/);
        const two: ChangesFigures = { ...changes, ledger: { ...ledger, lessons: ledger.lessons.slice(-2) } };
        expect(section('changes-lessons', changesSections(two))).not.toContain('<details');
    });

    it('says in one sentence that no adaptation applies, and how to write one', () => {
        const [only, ...others] = changesSections(unchangedClass, { preview: true });
        expect(others).toEqual([]);
        expect(plain(only!.html)).toContain('No adaptation applies to “Millpond co-op”: it is taught “Measure and Make” as the course is written.');
        expect(only!.html).toContain('adaptation millpond-changes of measure-and-make for millpond\n  skip lesson weigh-1 because:');
        expect(changesMarkdown(unchangedClass)).toContain('```\nadaptation millpond-changes of measure-and-make for millpond\n  skip lesson weigh-1 because:');
        expect(changesText(unchangedClass)).toContain('\n  adaptation millpond-changes of');
        expect(plain(changesSections({ names: {} })[0]!.html)).toContain('No course is declared, so there is nothing to adapt.');
    });

    it('sends only the sections that differ', () => {
        const before = new Map(sections.map(({ id, hash }) => [id, hash]));
        const more = changesSections({ ...changes, ledger: { ...ledger, supplies: [] } }, { preview: true });
        expect(more.filter(({ id, hash }) => before.get(id) !== hash).map(({ id }) => id)).toEqual(['changes', 'changes-supplies']);
    });

    it('is JSON with all its figures', () => {
        expect(JSON.parse(figuresJson('haversack-changes', { changes }))).toEqual({ format: 'haversack-changes', version: 1, changes });
    });
});

// CommonMark as markdown-it reads it: hostile text makes no element that calm text does not make.
describe.each(hostileTexts)('Markdown of changes lets nothing become markup: %s', hostile => {
    const reader = new MarkdownIt({ html: true });
    const elements = (markdown: string): string[] => (reader.render(markdown).match(/<[a-z][^>]*>/g) ?? []);

    it.each([
        ['changes', (text: string) => changesMarkdown(everyTextAs(changes, text))], ['empty', (text: string) => changesMarkdown(everyTextAs(unchangedClass, text))],
        ['brief', (text: string) => briefMarkdown(everyTextAs(adaptedWeek, text))]
    ])('%s', (_name, write) => {
        expect(elements(write(hostile))).toEqual(elements(write('calm')));
    });
});

it('the text for a terminal keeps control characters out', () => {
    // eslint-disable-next-line no-control-regex -- that is what is looked for
    expect(changesText(everyTextAs(changes, 'a\u001b[31mb\u0007'))).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
});
