import { readProse, type ProseBlock } from '@haversack/server/brief/prose';
import { proseLines } from '@haversack/server/brief/markdown/prose-lines';
import { makeView } from '@haversack/server/brief/view';
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, it, vi } from 'vitest';
import { ProseText } from '../../server/brief/pieces/prose.js';
import { week } from './fixture.js';
import { prose } from './fixture-tools.js';

function paragraph(text: string): unknown {
    const [block, ...rest] = readProse(prose(text));
    expect(rest).toEqual([]);
    return block?.kind === 'paragraph' ? block.inside : block;
}

/** How many characters all searches with regular expressions were given: a measure of work that no machine's speed changes. */
function charactersSearched(act: () => unknown): number {
    let characters = 0;
    const exec = RegExp.prototype.exec;
    const spy = vi.spyOn(RegExp.prototype, 'exec').mockImplementation(function (this: RegExp, text: string) {
        const from = this.global || this.sticky ? this.lastIndex : 0;
        const found = exec.call(this, text);
        characters += (found ? found.index + found[0].length : text.length) - from;
        return found;
    });
    try {
        act();
    } finally {
        spy.mockRestore();
    }
    return characters;
}

describe('prose', () => {
    it('lets emphasis stand around and beside a name', () => {
        expect(paragraph('**{pan-balance}**')).toEqual([{ kind: 'strong', inside: [{ kind: 'name', name: 'pan-balance', begins: true, marked: true }] }]);
        expect(paragraph('a *{x} y*.')).toEqual([
            { kind: 'text', text: 'a ' }, { kind: 'em', inside: [{ kind: 'name', name: 'x', marked: true }, { kind: 'text', text: ' y' }] }, { kind: 'text', text: '.' }
        ]);
    });

    it('links only to web and mail addresses', () => {
        expect(paragraph('[a](https://example.org/x)')).toEqual([{ kind: 'link', href: 'https://example.org/x', inside: [{ kind: 'text', text: 'a' }] }]);
        expect(paragraph('<mailto:a@example.org>')).toMatchObject([{ kind: 'link', href: 'mailto:a@example.org' }]);
        for (const address of ['javascript:alert(1)', 'JaVaScRiPt:alert(1)', 'data:text/html,x', 'file:///etc/passwd', 'vbscript:x', '/elsewhere', 'page.html', '//example.org', 'java&#115;cript:alert(1)', 'https:nowhere']) {
            expect(paragraph(`see [a](${address})`), address).toEqual([{ kind: 'text', text: expect.stringContaining('[a](') as string }]);
        }
    });

    it('leaves brackets without an address as they are', () => {
        expect(JSON.stringify(paragraph('[a *b*]()'))).not.toContain('href');
        expect(paragraph('[a]()')).toEqual([{ kind: 'text', text: '[' }, { kind: 'text', text: 'a' }, { kind: 'text', text: ']()' }]);
    });

    it('never lets a name become part of an address', () => {
        expect(JSON.stringify(readProse(prose('[a](https://example.org/{x})')))).not.toContain('href');
        expect(paragraph('[a](https://example.org/ "{x}")')).toEqual([{ kind: 'link', href: 'https://example.org/', inside: [{ kind: 'text', text: 'a' }] }]);
        expect(paragraph('`{x}`')).toEqual([{ kind: 'code', text: '{x}' }]);
    });

    it('shows headings, pictures, tables, quotes and HTML as the text they are', () => {
        for (const text of ['# Big', '> said', '<b>x</b>', '<!-- x -->', '---', '    four spaces', '| a | b |', '~~~', '[x]: https://example.org']) {
            expect(paragraph(text), text).toEqual([{ kind: 'text', text: text.trim() }]);
        }
        expect(JSON.stringify(paragraph('![a](https://example.org/x.png)'))).not.toContain('img');
    });

    it('keeps an answer such as "12." a text, but knows lists and paragraphs', () => {
        expect(paragraph('12.')).toEqual([{ kind: 'text', text: '12.' }]);
        expect(paragraph('- 3 is less than 2')).toEqual([{ kind: 'text', text: '- 3 is less than 2' }]);
        const blocks: ProseBlock[] = readProse(prose('First:\n\n3. a\n4. {b}\n\nLast.'));
        expect(blocks).toMatchObject([{ kind: 'paragraph' }, { kind: 'list', ordered: true, start: 3, items: [[{ kind: 'paragraph' }], [{ inside: [{ kind: 'name', name: 'b' }] }]] }, { kind: 'paragraph' }]);
    });

    it('loses no private-use character of a text', () => {
        expect(paragraph('\ue000 0\ue000{x}\ue001')).toEqual([{ kind: 'text', text: '\ue000 0\ue000' }, { kind: 'name', name: 'x' }, { kind: 'text', text: '\ue001' }]);
    });

    it('keeps the ending of a word with its name', () => {
        expect(paragraph('ten {x}s. {y}')).toEqual([
            { kind: 'text', text: 'ten ' }, { kind: 'name', name: 'x', ending: 's' }, { kind: 'text', text: '. ' }, { kind: 'name', name: 'y', begins: true }
        ]);
        expect(paragraph('{x}{y}es')).toEqual([{ kind: 'name', name: 'x', begins: true }, { kind: 'name', name: 'y', ending: 'es' }]);
    });

    it.each(['{x} ', '{x}', '"{x}", ', '- {x}\n', '**{x}** '])('reads twice as many of %j with about twice the work', repeated => {
        const work = (count: number): number => {
            const given = prose(repeated.repeat(count));
            return charactersSearched(() => readProse(given));
        };
        expect(work(2000) / work(1000)).toBeLessThan(2.5);
    });

    it('takes any number of names, and emphasis however deep, and loses no character', () => {
        const [many] = readProse(prose('{x}'.repeat(150_000)));
        expect(many?.kind === 'paragraph' && many.inside.length).toBe(150_000);
        const deep = prose(`${'*a '.repeat(3000)}z${'*'.repeat(3000)}`);
        expect(() => renderToString(h(ProseText, { prose: deep, view: makeView(week, {}) }))).not.toThrow();
        expect(proseLines(deep, name => name).join('').replaceAll('\\', '')).toBe(deep.parts.map(part => ('text' in part ? part.text : '')).join(''));
    });

    it('knows which names begin a sentence', () => {
        const begins = (text: string): boolean[] => JSON.stringify(readProse(prose(text))).match(/"name":"x"(,"begins":true)?/g)?.map(found => found.includes('begins')) ?? [];
        for (const text of ['{x} is here.', 'Look. {x} is here.', 'Really? **{x}**', 'He said, "{x} is here."', '“{x}”', 'a\n\n{x}', 'a\n- {x}\n- b', 'Go! ({x})', 'He said "no." {x}']) {
            expect(begins(text), text).toEqual([true]);
        }
        for (const text of ['Take {x}.', 'Take\n{x}.', 'e.g. {x}', 'at 3 p.m. {x}', 'Fetch: {x}', 'a ({x})', 'the "{x}"', '3.5 {x}', `${'a '.repeat(90)}{x}`, `a${' '.repeat(90)}{x}`]) {
            expect(begins(text), text).toEqual([false]);
        }
    });
});
