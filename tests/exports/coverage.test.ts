import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import type { Attachment } from '@haversack/language/attachments/attachment';
import { coverageMarkdown } from '@haversack/server/exports/coverage-markdown';
import { coverageText } from '@haversack/server/exports/coverage-text';
import { figuresJson } from '@haversack/server/exports/json';
import { planCoverage } from '@haversack/server/planning/coverage';
import { goldensBeside } from '../expect-golden.js';
import { aligned, covered, framework, frameworkFile, objective, scheduled, working } from '../planning/coverage-sheets.js';
import { course } from '../planning/sheets.js';

const expectGolden = goldensBeside(import.meta.url);

const titles = ['Which is heavier?', 'The *balance* of [two] bags', 'Level pans', 'Grams', 'A walk', 'Long and short', 'Feet and hands', 'Paces to the pond', 'Strings', 'A ruler of our own'];
const does = ['+mass', '~mass ?mass', '~mass +grams', '~grams ?grams +length', '', '+estimate ~length', '~length', '~estimate', '~length', '?length ~time'];
const lessons = Array.from({ length: 18 }, (_, i) => working(`l${i + 1}`, does[i] ?? '', { title: titles[i] ?? `Lesson number ${i + 1}` }));
const valley: Attachment = frameworkFile(['M', ['M.1', 'M.1.a', 'M.1.b'], 'M.2', 'M.3'], ['T', 'T.1']);
if (valley.state === 'framework') valley.framework.remarks.push('No statement (fullStatement) is given for T.1; the code stands in its place.');
const figures = planCoverage(covered([
    ...lessons,
    objective('mass', { title: 'Compare the masses of two objects by feel, and then with a balance', strand: 'measuring', ...aligned('valley', 'M.1') }),
    objective('grams', { title: 'Weigh in grams', strand: 'measuring', ...aligned('valley', 'M.1.b') }),
    objective('length', { title: 'Compare lengths <b>', strand: 'measuring', ...aligned('valley', 'M.2', 'M.9') }),
    objective('estimate', { title: 'Estimate \u001b[31mfirst', strand: 'number sense' }),
    objective('time', { title: 'Read the hour', ...aligned('valley', 'T.1') }),
    objective('money', { title: 'Know the coins', ...aligned('valley', 'M.3') }),
    framework('valley'), framework('missing'), course('measure-and-make', lessons.map(l => l.name))
], { 'valley.json': valley }), {}, {
    schedule: { ...scheduled('measure-and-make', ...lessons.slice(0, 17).map((l, i) => (i === 3 ? `${l.name} l1!` : l.name))), class: 'harbour', assumptions: ['No class is declared: one learner, one kit and four lessons a week.'] }, revisitWithin: 6
});
const none = planCoverage(covered([]));

describe('coverage', () => {
    it('for a terminal', () => {
        const text = coverageText(figures);
        expectGolden('coverage.txt', text);
        for (const line of text.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
        // eslint-disable-next-line no-control-regex
        expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    });
    it('as Markdown, in which no title becomes markup', () => {
        const text = coverageMarkdown(figures);
        expectGolden('coverage.md', text);
        // eslint-disable-next-line no-control-regex
        expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
        const html = new MarkdownIt({ html: true }).render(text);
        expect(html).not.toMatch(/<(?:b|em|strong|a|code)\b/);
        expect(html).toContain('The *balance* of [two] bags');
        expect(html).toContain('Compare lengths &lt;b&gt;');
    });
    it('as JSON: all figures, the same for the same plan', () => {
        const text = figuresJson('haversack-coverage', { coverage: figures });
        expect(JSON.parse(text)).toEqual({ format: 'haversack-coverage', version: 1, coverage: figures });
        expect(figuresJson('haversack-coverage', { coverage: Object.fromEntries(Object.entries(figures).reverse()) })).toBe(text);
    });
    it('of nothing', () => {
        expect(coverageText(none)).toMatch(/^Coverage: 0 lessons, 0 objectives\n/);
        expect(coverageMarkdown(none)).toMatch(/^# Coverage: 0 lessons, 0 objectives\n/);
    });
    it('of 1,200 lessons: numbers of four figures stay apart', () => {
        const many = Array.from({ length: 1200 }, (_, i) => working(`l${i}`, '~a'));
        const text = coverageText(planCoverage(covered([...many, objective('a'), course('c', many.map(l => l.name))])));
        expect(text).toMatch(/ 1189 1190 1191 1192 /);
    });
    it('a word longer than the line has a line of its own', () => {
        const long = 'x'.repeat(150);
        expect(coverageText(planCoverage(covered([objective('a', { title: `Read ${long} aloud` })])))).toContain(`  ${long}\n  aloud\n`);
    });
});
