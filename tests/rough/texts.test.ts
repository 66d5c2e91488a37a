/** Damaged files through lexer, parser, linking, checks, sheets, engine and every writer: nothing throws, nothing hangs, no place lies outside the text. */
import { EmptyFileSystem } from 'langium';
import { describe, expect, test, vi } from 'vitest';
import { readAttachment } from './attachments.js';
import { createHaversackServices } from '@haversack/language/module';
import type { Range } from '@haversack/language/sheets/sheet';
import { cases, Chance, everything, seed, Tally, worked } from './chance.js';
import { corpus, large, otherFiles, page, small, type CorpusFile } from './corpus.js';
import { mangled } from './mangle.js';
import { MemoryProgramme, parserErrorsOf, reportOf } from './memory-programme.js';
import { outputsOf } from './outputs.js';

vi.setConfig({ testTimeout: 3_600_000 });

/** On ordinary files nothing takes longer than a second (the issue's own bound); only the long run, alone on its machine, judges by it. */
const longest = 1000;

const slow: string[] = [];
function timed<T>(what: string, characters: number, work: () => T): T {
    const before = worked();
    const answer = work();
    const took = worked() - before;
    if (took > longest && characters < 100_000) slow.push(`${what}: ${Math.round(took)} ms for ${characters} characters`);
    return answer;
}

/** The chance of one case, so that it can be made again without those before it. */
const chanceOf = (number: number): Chance => new Chance(Math.imul(seed, 31) + number);
/** HAVERSACK_CASE=17 makes that case alone. */
function* numbers(count: number): Iterable<number> {
    const only = process.env['HAVERSACK_CASE'];
    if (only !== undefined) yield Number(only);
    else for (let number = 0; number < count; number++) yield number;
}

const noPlace = (text: string): ((range: Range) => boolean) => {
    const lines = text.split(/\r\n|\r|\n/);
    const outside = ({ line, character }: { line: number; character: number }): boolean => line < 0 || character < 0 || line >= lines.length || character > lines[line]!.length;
    return ({ start, end }) => outside(start) || outside(end) || start.line > end.line || (start.line === end.line && start.character > end.character);
};

/** A case by which it can be made again. */
const told = (file: string, kinds: readonly string[], number: number, text: string): string => `case ${number} (${file}; ${kinds.join(', ')}), seed ${seed}:\n${JSON.stringify(text).slice(0, 3000)}`;

test('the lexer and the parser', () => {
    const tally = new Tally();
    const { haversack } = createHaversackServices(EmptyFileSystem);
    for (const number of numbers(cases(100_000, 200))) {
        const chance = chanceOf(number);
        const { file, text: good } = chance.one(corpus);
        const { text, kinds } = mangled(good, chance.one(corpus).text, chance);
        kinds.forEach(kind => tally.add(kind));
        try {
            const { lexerReport, parserErrors } = timed(`reading ${file} (${kinds.join(', ')}), case ${number}`, text.length, () => haversack.parser.LangiumParser.parse(text));
            const problems = (lexerReport as unknown as { problems: { offset: number; length: number }[] }).problems;
            expect(parserErrors).toEqual([]);
            expect(problems.filter(({ offset, length }) => offset < 0 || offset + length > text.length)).toEqual([]);
        } catch (error) {
            throw new Error(told(file, kinds, number, text), { cause: error });
        }
    }
    console.log(`Lexer and parser, seed ${seed}: ${tally.total} damages, ${tally}.`);
    expect(tally.total).toBeGreaterThan(200);
});

const programmes: [name: string, files: readonly CorpusFile[], all: number, sample: number][] = [
    ['first steps', small, 2500, 5], ['page of the language', page, 2500, 4],
    ['part of the year', large.filter(({ file }) => !/lessons/.test(file) || /count|sort|visits/.test(file)), 600, 2]
];

describe.each(programmes)('linking, checks, sheets, engine and writers: %s', (name, files, all, sample) => {
    test('a damaged file', async () => {
        const tally = new Tally();
        const written = new Tally();
        const programme = await MemoryProgramme.of(files);
        const undamaged = programme.programme();
        for (const number of numbers(cases(all, sample))) {
            const chance = chanceOf(number);
            const { file, text: good } = chance.one(files);
            const { text, kinds } = mangled(good, chance.one(files).text, chance);
            kinds.forEach(kind => tally.add(kind));
            try {
                await programme.set(file, text);
                const changed = programme.document(file);
                expect(changed.textDocument.getText()).toBe(text);
                expect(parserErrorsOf(changed)).toEqual([]);
                expect(reportOf(changed).problems.every(({ offset, length }) => offset >= 0 && offset + length <= text.length)).toBe(true);
                for (const document of programme.all) {
                    const problems = timed(`checks of ${name}, case ${number}`, text.length, () => programme.problemsIn(document));
                    const isOutside = noPlace(document.textDocument.getText());
                    expect(problems.filter(({ code, at }) => code === 'unread-text' || isOutside(at))).toEqual([]);
                    expect(() => JSON.stringify(problems)).not.toThrow();
                }
                const sheets = programme.programme();
                const [week, other, whose] = [1 + chance.below(12), chance.happens(20) ? undamaged : undefined, chance.happens(50) ? undefined : [...sheets.classes.keys()].at(-1)];
                for (const { what, kind, text: output } of timed(`writing ${name}, case ${number}`, text.length, () => outputsOf(sheets, other, { week, class: whose }))) {
                    written.add(`${what} ${kind}`);
                    if (kind === 'json') JSON.parse(output);
                    if (/undefined|\[object |NaN\b/.test(output) && !/undefined|\[object |NaN\b/.test([...programme.all].map(({ textDocument }) => textDocument.getText()).join())) {
                        expect(`${what} ${kind}: ${/.{0,60}(?:undefined|\[object |NaN\b).{0,60}/s.exec(output)?.[0]}`).toBe('free of words of programs');
                    }
                }
            } catch (error) {
                throw new Error(told(file, kinds, number, text), { cause: error });
            }
            await programme.restore(file);
        }
        console.log(`${name}, seed ${seed}: ${tally.total} damages, ${tally}; ${written.total} outputs written: ${written}.`);
        expect(written.total).toBeGreaterThan(tally.total);
    });
});

test('calendars, frameworks and spreadsheets that a programme names', async () => {
    const tally = new Tally();
    for (const number of numbers(cases(20_000, 80))) {
        const chance = chanceOf(number);
        const { file, text: good } = chance.one(otherFiles);
        const { text, kinds } = mangled(good, chance.one(otherFiles).text, chance);
        tally.add(file.replace(/^.*\./, '.'));
        try {
            const answers = await timed(`reading ${file}, case ${number}`, text.length, () => readAttachment(file, text));
            expect(() => JSON.stringify(answers)).not.toThrow();
        } catch (error) {
            throw new Error(told(file, kinds, number, text), { cause: error });
        }
    }
    console.log(`Files beside a programme, seed ${seed}: ${tally.total} damaged, ${tally}.`);
    expect(tally.total).toBeGreaterThan(50);
});

test('nothing took longer than a second', () => {
    console.log(`${slow.length} of the cases above took longer than ${longest} ms.`);
    if (everything) expect(slow).toEqual([]);
});
