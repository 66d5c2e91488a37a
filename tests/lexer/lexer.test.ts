import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { firstSteps, languagePage, lex, problemsIn, programmeFiles, read, said } from './reading.js';
import { anyText, examples, indent } from './texts.js';

vi.setConfig({ testTimeout: 30_000 });

const empty = new Set(['EOL', 'INDENT', 'DEDENT']);

const runs = { numRuns: 250 };

describe('tokens and the text', () => {
    test('every token is what stands in the text at its place, and places grow', () => {
        fc.assert(fc.property(anyText, text => {
            const { tokens, comments } = lex(text);
            for (const list of [tokens, comments]) {
                let last = 0;
                for (const { image, startOffset, endOffset, tokenType } of list) {
                    expect(startOffset).toBeGreaterThanOrEqual(last);
                    expect(endOffset).toBe(startOffset + image.length - 1);
                    expect(image).toBe(empty.has(tokenType.name) ? '' : text.slice(startOffset, endOffset! + 1));
                    last = endOffset! + 1;
                }
            }
        }), runs);
    });

    // The reference counts lines and columns on its own: a line ends at LF, CRLF or CR; columns count UTF-16 code units from 1.
    test('lines and columns of tokens and problems are those of a plain count', () => {
        fc.assert(fc.property(anyText, text => {
            const { tokens, comments, problems } = lex(text);
            const plain = (offset: number): [number, number] => {
                const before = text.slice(0, offset).split(/\r\n|\r(?!\n)|\n/);
                return [before.length, before.at(-1)!.length + 1];
            };
            for (const { startOffset, startLine, startColumn, tokenType } of [...tokens, ...comments]) {
                if (!empty.has(tokenType.name)) expect([startLine, startColumn]).toEqual(plain(startOffset));
            }
            for (const { offset, line: at, column } of problems) expect([at, column]).toEqual(plain(offset));
        }), runs);
    });

    test('no letter is lost: each is in a token, in a comment, or on a line that is reported or counted as unreadable', () => {
        fc.assert(fc.property(anyText, text => {
            const { tokens, comments, problems, unreadable } = lex(text);
            const covered = new Uint8Array(text.length);
            for (const { startOffset, image } of [...tokens, ...comments]) covered.fill(1, startOffset, startOffset + image.length);
            const reported = new Set(problems.map(({ line: at }) => at));
            const lost = new Set(unreadable);
            let start = 0;
            text.split(/(\r\n|\r|\n)/).forEach((piece, index) => {
                if (index % 2 === 0) {
                    const uncovered = [...piece].some((letter, at) => /[\p{L}\p{N}]/u.test(letter) && covered[start + [...piece].slice(0, at).join('').length] === 0);
                    const words = [...piece.matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)].map(([word]) => word);
                    if (uncovered && !reported.has(index / 2 + 1)) expect(words.filter(word => !lost.has(word))).toEqual([]);
                }
                start += piece.length;
            });
        }), runs);
    });

    test('blocks open and close in pairs, and every statement ends', () => {
        fc.assert(fc.property(anyText, text => {
            let depth = 0;
            for (const { tokenType } of lex(text).tokens) {
                if (tokenType.name === 'INDENT') depth++;
                if (tokenType.name === 'DEDENT') depth--;
                expect(depth).toBeGreaterThanOrEqual(0);
            }
            expect(depth).toBe(0);
        }), runs);
    });
});

describe('the parser has nothing to say of its own', () => {
    test('on texts made of bits of the language, on noise, on edited examples', () => {
        fc.assert(fc.property(anyText, text => { expect(problemsIn(text).parserErrors).toEqual([]); }), { numRuns: 600 });
    });

    test.each([...programmeFiles(languagePage), ...programmeFiles(firstSteps)])('nor the lexer on %s', (_, text) => {
        const { problems, parserErrors, unreadable } = read(text);
        expect({ problems, parserErrors, unreadable }).toEqual({ problems: [], parserErrors: [], unreadable: [] });
    });
});

describe('what changes nothing', () => {
    const whole = fc.constantFrom(...examples);
    const same = (text: string, changed: string): void => {
        const { sheet, problems } = read(changed);
        expect(problems).toEqual([]);
        expect(said(sheet)).toEqual(said(read(text).sheet));
    };

    test.each(examples.map((text, index) => [index, text] as const))('the kind of line end, example %i', (_, text) => {
        for (const end of ['\r\n', '\r']) same(text, text.replace(/\n/g, end));
        same(text, text.split('\n').map((part, index) => part + ['\n', '\r\n', '\r'][index % 3]!).join(''));
    });

    test.each(examples.map((text, index) => [index, text] as const))('the depth of a step in, example %i', (_, text) => {
        for (const step of [' ', '   ', '    ', '        ', '\t', '\t\t', '\u3000']) same(text, text.replace(/^(?: {2})+/gm, blanks => step.repeat(blanks.length / 2)));
    });

    test('a byte order mark, blanks at the ends of lines, no line end at the end', () => {
        for (const text of examples) {
            same(text, `\uFEFF${text}`);
            same(text, text.replace(/$/gm, ' \t'));
            same(text, text.trimEnd());
        }
    });

    test('blank and comment lines, at any depth, anywhere', () => {
        const put = fc.oneof(fc.constantFrom('', '   ', '\t', '#', '# lesson x', '    # do: this', '\t\t\t# {open', '            #'), indent.map(blanks => `${blanks}# a comment`));
        fc.assert(fc.property(whole, fc.array(fc.tuple(fc.nat(), put), { minLength: 1, maxLength: 12 }), (text, lines) => {
            const all = text.split('\n');
            for (const [place, added] of lines) all.splice(place % (all.length + 1), 0, added);
            same(text, all.join('\n'));
        }), { numRuns: 100 });
    });

    test('a step that differs from block to block', () => {
        const steps = fc.array(fc.constantFrom(1, 2, 3, 4, 8), { minLength: 5, maxLength: 5 });
        fc.assert(fc.property(whole, steps, (text, widths) => {
            // Each level of the file has a width of its own.
            const at = (level: number): number => widths.slice(0, level).reduce((sum, width) => sum + width, 0);
            same(text, text.replace(/^(?: {2})+/gm, blanks => ' '.repeat(at(blanks.length / 2))));
        }), { numRuns: 60 });
    });
});

describe('lines that begin with letters beyond ASCII', () => {
    // A hint on first characters that knows only codes 0 to 255 drops what stands before such a line.
    test.each(['épée', 'ärmel', 'ўеліка', 'מאזניים', 'موازين', '天秤', 'はかり', 'ไทย', 'ǆungla', 'ﬁne'])('%s', name => {
        const { sheet, problems, parserErrors } = read([
            `material ${name}`, '  reusable', 'kit one', '  holds', `    ${name} 3`, 'lesson two', '  materials', `    ${name} 1 per pair`, '    other 1', '  words ab, cd', `  follows ${name}`
        ].join('\n'));
        expect({ problems, parserErrors }).toEqual({ problems: [], parserErrors: [] });
        expect(sheet.kits[0]!.holds.map(({ thing }) => thing.name)).toEqual([name]);
        expect(sheet.lessons[0]!.needs.map(({ options }) => options[0]!.thing.name)).toEqual([name, 'other']);
        expect(sheet.lessons[0]!.follows.map(mention => mention.name)).toEqual([name]);
    });

    test('a line of such letters that is no statement costs only itself', () => {
        const { sheet, problems } = read('lesson one\n  materials\n    cup 1\n  Ωμέγα ψ\n  words ab\nlesson two\n');
        expect(problems.map(({ line: at }) => at)).toEqual([4]);
        expect(sheet.lessons.map(({ name, needs, words }) => [name, needs.length, words.length])).toEqual([['one', 1, 1], ['two', 0, 0]]);
    });
});

describe('a broken line costs that line', () => {
    const text = ['lesson one', '  about: First.', '  materials', '    cup 1 per pair', '    bowl 2 per pair', '  activity mix 5 min', '    do: Mix.', 'lesson two', '  words stir'];
    test.each([
        ['a need that cannot be read', 4, '    ??? !!!'],
        ['a statement that means nothing', 2, '  zzzzz qqqqq'],
        ['a line of marks', 7, '    ((( :::'],
        ['a quotation mark that is not closed', 4, '    "cup 1 per pair'],
        ['a line of the wrong place', 2, '  pack of 100']
    ])('%s', (_, number, broken) => {
        const { sheet, problems, parserErrors } = read(text.map((was, index) => (index === number - 1 ? broken : was)).join('\n'));
        expect(parserErrors).toEqual([]);
        expect(problems.map(({ line: at }) => at)).toEqual([number]);
        const whole = said(read(text.join('\n')).sheet) as { lessons: object[] };
        const part = said(sheet) as { lessons: object[] };
        expect(part.lessons[1]).toEqual(whole.lessons[1]);
        const [one] = sheet.lessons;
        expect({ about: one!.steps.length, needs: one!.needs.length, steps: one!.parts[0]!.steps.length }).toEqual({
            about: number === 2 ? 0 : 1, needs: number === 4 ? 1 : 2, steps: number === 7 ? 0 : 1
        });
    });
});
