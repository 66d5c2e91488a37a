/** Read back with another program's CommonMark parser (markdown-it in its commonmark preset, HTML on). */
import { briefMarkdown } from '@haversack/server/brief/markdown';
import { proseLines } from '@haversack/server/brief/markdown/prose-lines';
import { plainText } from '@haversack/server/markdown/plain-text';
import { readProse, type ProseBlock, type ProseInline } from '@haversack/server/brief/prose';
import { dayInWords } from '@haversack/server/brief/days';
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { week } from './fixture.js';
import { prose } from './fixture-tools.js';
import { everyTextAs, hostileTexts } from './hostile.js';

const commonmark = new MarkdownIt('commonmark');

function textOf(markdown: string): string {
    return commonmark.parseInline(markdown, {}).flatMap(token => token.children ?? []).map(token => (token.type === 'softbreak' ? '\n' : token.content)).join('');
}

function headings(markdown: string): string[] {
    const tokens = commonmark.parse(markdown, {});
    return tokens.flatMap((token, index) => (token.type === 'heading_open' ? [textOf(tokens[index + 1]?.content ?? '')] : []));
}

function wordsOf(piece: ProseBlock | ProseInline): string {
    if (piece.kind === 'list') return piece.items.flat().map(wordsOf).join('');
    if ('inside' in piece) return piece.inside.map(wordsOf).join('');
    return piece.kind === 'text' || piece.kind === 'code' ? piece.text : '';
}

/** HTML, pictures and links: nothing that a hostile text may bring in. */
function markupIn(markdown: string): string[] {
    const tokens = commonmark.parse(markdown, {});
    return [...tokens, ...tokens.flatMap(token => token.children ?? [])].filter(token => /^(?:html|image|link_open)/.test(token.type)).map(token => `${token.type} ${token.content}`);
}

describe('Markdown', () => {
    it('gives the same titles when read back', () => {
        const read = headings(briefMarkdown(week));
        for (const lesson of week.lessons) {
            expect(read).toContain(lesson.title);
            lesson.parts.forEach((part, index) => expect(read).toContain(`${index + 1}. ${part.title}`));
        }
        for (const group of week.fetch) expect(read).toContain(group.title);
    });

    it.each(hostileTexts)('lets no text become markup: %s', hostile => {
        const markdown = briefMarkdown(everyTextAs(week, hostile));
        expect(markupIn(markdown)).toEqual([]);
        expect(headings(markdown)).toContain(hostile);
        expect(headings(markdown)).toHaveLength(headings(briefMarkdown(everyTextAs(week, 'calm'))).length);
    });

    it('escapes any title so that it reads back as it was', () => {
        fc.assert(fc.property(fc.string({ unit: fc.constantFrom(...'ab1 \\`*_{}[]()<>#+-.!|~&;=:"\'\t') }), title => {
            const withSpaces = (text: string): string => text.replace(/ *\t[ \t]*/g, ' ');
            expect(headings(`## ${plainText(title)}`)).toEqual([withSpaces(title).trim()]);
            const [, , inline] = commonmark.parse(`- x\n- ${plainText(`a${title}`)}`, {}).filter(token => token.type === 'inline' || token.type === 'list_item_open').slice(1);
            expect(textOf(inline?.content ?? '')).toBe(withSpaces(`a${title}`).trimEnd());
        }), { numRuns: 500 });
    });

    it('lets no control character of a title through, for Markdown is read in terminals too', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), title => { expect(plainText(title)).not.toMatch(/\p{Cc}/u); }));
    });

    it('keeps the words of any prose', () => {
        fc.assert(fc.property(fc.string({ unit: fc.constantFrom(...'ab1 \\`*_[]()<>#+-.!&;\n') }), text => {
            const markdown = proseLines(prose(text), name => name).join('\n');
            expect(markupIn(markdown)).toEqual([]);
            const read = commonmark.parse(markdown, {}).flatMap(token => token.children ?? []).map(token => token.content).join('');
            expect(read.replace(/[^ab1]/g, '')).toBe(readProse(prose(text)).map(wordsOf).join('').replace(/[^ab1]/g, ''));
        }), { numRuns: 2000 });
    });

    it('writes emphasis, code, links and names', () => {
        expect(proseLines(prose('**{a_b}** `x``y` [l](https://example.org/?a&b) \\* 1 < 2'), name => name))
            .toEqual(['**a\\_b** ```x``y``` [l](<https://example.org/?a&amp;b>) \\* 1 \\< 2']);
    });
});

describe('days', () => {
    // ISO 8601 calendar dates; weekdays from the calendar: 21 September 2026 is a Monday.
    it('are told in words, and impossible ones as they were written', () => {
        expect(dayInWords('2026-09-21')).toBe('Mon 21 Sep 2026');
        expect(dayInWords('2028-02-29', false)).toBe('Tue 29 Feb');
        for (const written of ['2026-02-30', '2026-13-01', 'soon', '2026-9-1']) expect(dayInWords(written)).toBe(written);
    });
});
