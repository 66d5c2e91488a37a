import { briefJson } from '@haversack/server/exports/brief-json';
import { briefMarkdown } from '@haversack/server/brief/markdown';
import { describe, expect, it } from 'vitest';
import { briefPage } from '../../server/brief/page.js';
import { briefSections } from '../../server/brief/sections.js';
import { termMarkdown } from '@haversack/server/brief/term/markdown';
import { termPage } from '../../server/brief/term/page.js';
import { termSections } from '../../server/brief/term/sections.js';
import { expectGolden, readable } from './expect-golden.js';
import { week } from './fixture.js';
import { programmeRoot } from './fixture-tools.js';
import { term } from './term-fixture.js';

describe('golden briefs', () => {
    it('page', () => expectGolden('week.html', readable(briefPage(week, { root: programmeRoot }))));
    it('preview', () => expectGolden('preview.html', readable(briefSections(week, { preview: true }).map(section => section.html).join('\n'))));
    it('Markdown', () => expectGolden('week.md', briefMarkdown(week)));
    it('JSON holds the whole brief', () => {
        const read: unknown = JSON.parse(briefJson(week));
        expect(read).toEqual({ format: 'haversack-brief', version: 1, brief: week });
        expect(briefJson({ ...week })).toBe(briefJson(Object.fromEntries(Object.entries(week).reverse()) as typeof week));
    });
});

describe('golden terms', () => {
    it('page', () => expectGolden('term.html', readable(termPage(term, { root: programmeRoot }))));
    it('preview', () => expectGolden('term-preview.html', readable(termSections(term, { preview: true }).map(section => section.html).join('\n'))));
    it('Markdown', () => expectGolden('term.md', termMarkdown(term)));
});
