import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { EmptyFileSystem } from 'langium';
import { describe, expect, test, vi } from 'vitest';
import { createHaversackServices } from '@haversack/language/module';
import { withEdits, type BlankEdit } from '@haversack/server/formatting/blank-edits';
import { formatEdits, usualFormat, type FormatOptions, type LineRange } from '@haversack/server/formatting/format-text';
import { readLayout } from '@haversack/server/formatting/read-layout';
import { brokenVersions } from '../lexer/breaks.js';
import { programmeFiles, read, said, languagePage, firstSteps, year } from '../lexer/reading.js';
import { anyText } from '../lexer/texts.js';
import { cases, everything } from '../rough/chance.js';

vi.setConfig({ testTimeout: 240_000 });

const { haversack } = createHaversackServices(EmptyFileSystem);
const { automaton } = haversack.parser.Lexer;
const edits = (text: string, options: FormatOptions = usualFormat, ranges?: LineRange[]): BlankEdit[] => formatEdits(text, automaton, options, ranges);
const format = (text: string, options?: FormatOptions, ranges?: LineRange[]): string => withEdits(text, edits(text, options, ranges));

/** What a reader of the language takes for white space, and nothing else. */
const words = (text: string): string => text.replace(/\s+/g, '');
const anyOptions: fc.Arbitrary<FormatOptions> = fc.record({ size: fc.integer({ min: 1, max: 8 }), tabs: fc.boolean(), trimLineEnds: fc.boolean(), endLastLine: fc.boolean(), trimFileEnd: fc.boolean() });

const ours = [...programmeFiles(languagePage).values(), ...programmeFiles(firstSteps).values(), ...programmeFiles(year).values()];
/** Texts of the language that stand in the tests between backquotes, whatever they are there for. */
const written = readdirSync(join(import.meta.dirname, '..'), { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.ts'))
    .flatMap(name => [...readFileSync(join(import.meta.dirname, '..', name), 'utf8').matchAll(/[`']((?:lesson|material|course|class|kit|game|book|print|objective|adaptation) [^`]*?)[`']/g)].map(([, text]) => text!.replaceAll('\\n', '\n')))
    .filter(text => text.includes('\n'));

/** A text indented and spaced in another way, with other line ends: it says the same. */
const mangled = fc.tuple(fc.constantFrom(...ours), fc.integer({ min: 1, max: 9 }), fc.constantFrom('\n', '\r\n', '\r'), fc.infiniteStream(fc.constantFrom('', '', '', ' ', '  ', '\t', '\n')), fc.boolean(), fc.boolean())
    .map(([text, size, lineEnd, blanks, tabs, mark]) => {
        const some = (): string => blanks.next().value as string;
        const lines = text.split('\n').map(line => {
            const [, before = '', rest = ''] = /^( *)(.*)$/.exec(line)!;
            const stands = (tabs ? '\t' : ' '.repeat(size)).repeat(before.length / 2) + (before.length % 2 === 1 ? ' ' : '');
            const put = some();
            const apart = rest.includes(':') || rest.startsWith('#') || rest.includes('"') ? rest : rest.replace(/ (?=\S)/g, () => ` ${put.trim() === '' && put !== '\n' ? put : ''}`);
            const end = some();
            return (end === '\n' ? `${stands}${apart}\n` : stands + apart + end);
        });
        return (mark ? '\uFEFF' : '') + lines.join('\n').replaceAll('\n', lineEnd);
    });

/** Everything that must hold of one text, whatever it is. */
function holds(text: string, options: FormatOptions): 'changed' | 'as it was' {
    const once = format(text, options);
    if (words(once) !== words(text)) expect(words(once)).toBe(words(text));
    const again = format(once, options);
    if (again !== once) expect({ text, again }).toEqual({ text, again: once });
    if (once === text) return 'as it was';
    const before = read(text);
    const after = read(once);
    expect(after.problems.map(({ code }) => code)).toEqual(before.problems.map(({ code }) => code));
    expect(said(after.sheet)).toEqual(said(before.sheet));
    expect(after.comments.map(({ image }) => image.trimEnd())).toEqual(before.comments.map(({ image }) => image.trimEnd()));
    expect(text.startsWith('\uFEFF')).toBe(once.startsWith('\uFEFF'));
    return 'changed';
}

describe('a text that is formatted', () => {
    const run = <T>(name: string, arbitrary: fc.Arbitrary<T>, check: (value: T) => string, runs: number): void => {
        const number = cases(runs, runs / 5);
        const counts = new Map<string, number>();
        fc.assert(fc.property(arbitrary, value => {
            const kind = check(value);
            counts.set(kind, (counts.get(kind) ?? 0) + 1);
        }), { numRuns: number });
        console.log(`${name}: ${number} texts, ${[...counts].map(([kind, count]) => `${count} ${kind}`).join(', ')}.`);
    };

    test(`says the same, keeps every mark and is stable: ${ours.length} files of examples, ${written.length} texts of the tests`, () => {
        expect(ours.length).toBeGreaterThan(100);
        expect(written.length).toBeGreaterThan(50);
        const every = [usualFormat, { ...usualFormat, size: 4 }, { ...usualFormat, tabs: true }];
        // In the sample each text has one of them in turn.
        [...ours, ...written].forEach((text, index) => { for (const options of everything ? every : [every[index % every.length]!]) holds(text, options); });
    });

    test('also when it is indented, spaced and ended in any other way', () => run('mangled examples', fc.tuple(mangled, anyOptions), ([text, options]) => holds(text, options), 250));

    test('also when it is any text at all', () => run('any texts', fc.tuple(anyText, anyOptions), ([text, options]) => holds(text, options), 2000));

    test('and looks one way, however it was indented and spaced', () => {
        for (const text of ours) {
            const once = format(text);
            for (const size of [1, 3, 4, 8]) {
                const deeper = once.replace(/^ +/gm, blanks => ' '.repeat(blanks.length / 2 * size)).replaceAll('\n', '   \n').replaceAll('\n\n', '\n\n\n\n');
                // Lines over which a text goes on keep how far they stand in from its word: that is their writer's.
                const { lines } = readLayout(once, automaton);
                const plain = (page: string): string[] => page.split('\n').map((line, index) => (lines[index]?.kind === 'prose' ? line.trim() : line));
                expect(plain(format(deeper))).toEqual(plain(once));
            }
        }
    });

    test('also when lines of it are broken', () => {
        const step = everything ? 6 : 30;
        let broken = 0;
        let changed = 0;
        for (const [file, text] of [...programmeFiles(languagePage), ...programmeFiles(firstSteps)]) {
            for (const { text: version } of brokenVersions(file, text)) {
                if (broken++ % step !== 0) continue;
                if (holds(version, { ...usualFormat, size: 4 }) === 'changed') changed++;
            }
        }
        console.log(`${Math.ceil(broken / step)} broken versions, ${changed} changed.`);
        expect(changed).toBeGreaterThan(100);
    });

    test('lines alone: nothing outside of them changes, and it says the same', () => {
        run('some lines', fc.tuple(fc.oneof(mangled, anyText), anyOptions, fc.nat(), fc.nat(60)), ([text, options, start, length]) => {
            const lines = text.split(/\r\n|\r|\n/);
            const from = start % lines.length;
            const to = Math.min(from + length, lines.length - 1);
            const made = edits(text, options, [{ from, to }]);
            for (const { firstLine, lastLine } of made) if (firstLine < from || lastLine > to) expect([firstLine, lastLine]).toEqual([from, to]);
            const once = withEdits(text, made);
            expect(once.split(/\r\n|\r|\n/).slice(0, from)).toEqual(lines.slice(0, from));
            const below = lines.length - to - 1;
            if (below > 0) expect(once.split(/\r\n|\r|\n/).slice(-below)).toEqual(lines.slice(-below));
            expect(words(once)).toBe(words(text));
            expect(said(read(once).sheet)).toEqual(said(read(text).sheet));
            return made.length > 0 ? 'changed' : 'as they were';
        }, 600);
    });
});
