import fc from 'fast-check';
import { DocumentState, EmptyFileSystem, URI, type LangiumDocument } from 'langium';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { HaversackDocumentValidator } from '@haversack/language/checks/document-validator';
import type { ReadingProblem } from '@haversack/language/lexer/problems';
import { createHaversackServices } from '@haversack/language/module';
import { brokenVersions, endOfBlock, linesAbove, type Broken } from './breaks.js';
import { firstSteps, languagePage, lex, problemsIn, programmeFiles, year } from './reading.js';
import { anyText } from './texts.js';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 60_000 });

const programmes: [string, Map<string, string>][] = [['the programme of the language page', programmeFiles(languagePage)], ['the first steps', programmeFiles(firstSteps)]];
/** Set to try every way of breaking every line against every check, which takes a minute. */
const everything = process.env['HAVERSACK_EVERY_BREAK'] !== undefined;

/** Words of parsers, and of programs; none of them is a teacher's. */
const notATeachers = /\b(tokens?|expecting|expected|EOL|EOF|INDENT|DEDENT|NAME|TEXT|NUMBER|undefined|null|NaN|syntax|parser?|parse|lexer|AST|node|identifier|keyword|terminal|rule|exception|stack)\b|\[object/;

const wordsOf = (text: string): string[] => [...text.matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)].map(([word]) => word.toLowerCase());

/** The year is large: `npm test` breaks every line of each forty-eighth of its files. */
const ofTheYear = new Map([...programmeFiles(year)].filter((_, index) => everything || index % 48 === 0));

describe.each([...programmes, ['the year', ofTheYear] as const])('each line of %s, broken in sixteen ways: what the reader says', (name, files) => {
    const cases: { broken: Broken; problems: ReadingProblem[]; parserErrors: string[] }[] = [];
    beforeAll(() => {
        for (const [file, text] of files) for (const broken of brokenVersions(file, text)) cases.push({ broken, ...problemsIn(broken.text) });
    });

    test('the parser never complains, and nothing outside the line and what stands under it is called wrong', () => {
        const messages = new Map<number, number>();
        for (const { broken, problems, parserErrors } of cases) {
            messages.set(problems.length, (messages.get(problems.length) ?? 0) + 1);
            const outside = problems.filter(({ line }) => line - 1 < broken.line || line - 1 >= broken.end);
            if (parserErrors.length > 0 || outside.length > 0) expect({ broken, parserErrors, outside }).toEqual({ broken, parserErrors: [], outside: [] });
        }
        console.log(`${name}: ${cases.length} broken lines; no parser error; no message outside. Messages a line: ${[...messages].sort(([a], [b]) => a - b).map(([count, times]) => `${count} in ${times}`).join(', ')} (none where the break left a line that may stand).`);
        expect(cases.length).toBeGreaterThan(1000);
        // One cause, one message: a few in a hundred may need two.
        const many = [...messages].filter(([count]) => count > 1).reduce((sum, [, times]) => sum + times, 0);
        expect(many / cases.length).toBeLessThan(0.02);
    });

    test('each message says where, in a teacher’s words', () => {
        for (const { broken, problems } of cases) {
            const lines = broken.text.split('\n');
            for (const { line, column, length, offset, message, code, mend } of problems) {
                // What the writer typed, and the example of how such a line reads, are not the message's own words.
                const own = message.replace(/'[^']*'|\{[^}]*\}|It reads like this: .*$/g, '');
                const bad = notATeachers.exec(own)?.[0];
                const wellPut = /^['A-Z].{15,}[.?!]$|It reads like this: /s.test(message) && /^[a-z]+(-[a-z]+)*$/.test(code) && (!mend || /^[A-Z]/.test(mend.title));
                const place = { line: lines.slice(0, line).join('\n').length >= offset, offset: lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0) + column - 1, length: length > 0 };
                if (bad !== undefined || !wellPut || place.offset !== offset || !place.line || !place.length) expect({ message, code, mend, bad, wellPut, place }).toEqual({ message, code, mend, bad: undefined, wellPut: true, place: { line: true, offset, length: true } });
            }
        }
        expect(new Set(cases.flatMap(({ problems }) => problems.map(({ code }) => code))).size).toBeGreaterThan(7);
    });

    test('a mend that is offered mends', () => {
        let offered = 0;
        let reported = 0;
        for (const { broken, problems } of cases) {
            const [problem] = problems;
            if (problem) reported++;
            if (!problem?.mend) continue;
            offered++;
            const { offset, length, text: put } = problem.mend;
            const after = lex(broken.text.slice(0, offset) + put + broken.text.slice(offset + length)).problems;
            const mended = after.length < problems.length || after.every(({ line, code }) => line !== problem.line || code !== problem.code);
            if (!mended) expect({ broken: broken.is, how: broken.how, problem, after }).toBe('mended');
        }
        console.log(`${name}: a mend is offered for ${offered} of ${reported} first messages.`);
        expect(offered).toBeGreaterThan(reported / 2);
    });
});

interface Told {
    file: string;
    line: number;
    code: string;
    message: string;
    /** Names in the message and at its place. */
    names: string[];
}

/** A programme in memory, of which one file at a time has another text; all problems of all its files. */
class Programme {
    private readonly services = createHaversackServices({
        fileSystemProvider: () => Object.assign(EmptyFileSystem.fileSystemProvider(), { readFile: (uri: URI) => Promise.resolve(this.texts.get(uri.path.slice(1))!) })
    });
    private readonly texts: Map<string, string>;
    private documents: LangiumDocument[] = [];

    constructor(readonly files: ReadonlyMap<string, string>) {
        this.texts = new Map(files);
    }

    async start(): Promise<Told[]> {
        const { workspace } = this.services.shared;
        this.documents = [...this.texts].map(([file, text]) => workspace.LangiumDocumentFactory.fromString(text, URI.parse(`file:///${file}`)));
        for (const document of this.documents) workspace.LangiumDocuments.addDocument(document);
        workspace.DocumentBuilder.updateBuildOptions = { validation: false };
        await workspace.DocumentBuilder.build(this.documents, { validation: false });
        return this.told();
    }

    async with(file: string, text: string): Promise<Told[]> {
        this.texts.set(file, text);
        await this.services.shared.workspace.DocumentBuilder.update([URI.parse(`file:///${file}`)], []);
        const told = this.told();
        this.texts.set(file, this.files.get(file)!);
        return told;
    }

    private told(): Told[] {
        const validator = this.services.haversack.validation.DocumentValidator as HaversackDocumentValidator;
        return this.documents.flatMap(document => {
            expect(document.state).toBeGreaterThanOrEqual(DocumentState.IndexedReferences);
            const file = document.uri.path.slice(1);
            return validator.problemsIn(document).map(({ at, code, message }) => ({
                file, line: at.start.line, code, message,
                names: [...[...message.matchAll(/'([^']+)'/g)].flatMap(([, quoted]) => wordsOf(quoted!)), ...wordsOf(document.textDocument.getText(at))]
            }));
        });
    }
}

/** The words of the top-level declaration around a line. */
function declarationAround(lines: readonly string[], line: number): string[] {
    const head = [line, ...linesAbove(lines, line)].at(-1)!;
    return wordsOf(lines.slice(head, endOfBlock(lines, head)).join('\n'));
}

/** The name of the declaration above a line at the left edge: if that line goes, what stood under it is read as part of that one. */
function declaredBefore(lines: readonly string[], line: number): string[] {
    for (let at = line - 1; at >= 0; at--) if (/^\S/.test(lines[at]!) && !lines[at]!.startsWith('#')) return wordsOf(lines[at]!);
    return [];
}

/**
 * Why a new message is a true consequence of a broken line; nothing when it is none.
 *
 * - in the block: it stands in the broken line or in what stands under it;
 * - same place: the same was told there before, with other words;
 * - names it: it is about a name that stood in the broken line, or in what stood under it;
 * - around it: it is about the declaration that the line belonged to, which now says less; or, where the first line of a
 *   declaration broke, about the one before it, which now reads on;
 * - taken along: it is about a name in a declaration that the line named (a lesson that leaves a course takes its objectives along).
 */
function consequence(told: Told, { file, line, end, was, is }: Broken, lines: readonly string[], before: readonly Told[], programme: ReadonlyMap<string, string>): string | undefined {
    if (told.file === file && told.line >= line && told.line < end) return 'in the block';
    if (before.some(one => one.file === told.file && one.line === told.line && one.code === told.code)) return 'same place';
    const about = (words: Iterable<string>): boolean => {
        const known = new Set(words);
        return told.names.some(name => known.has(name));
    };
    const own = wordsOf(`${was}\n${is}\n${lines.slice(line, end).join('\n')}`);
    if (about(own)) return 'names it';
    const heads = linesAbove(lines, line);
    if (about(heads.flatMap(head => wordsOf(lines[head]!))) || (/^\S/.test(was) && about(declaredBefore(lines, line)))) return 'around it';
    const named = new Set(own);
    for (const text of programme.values()) {
        const all = text.split('\n');
        for (const [index, head] of all.entries()) {
            const declared = /^[a-z]+ ([\p{L}\p{N}-]+)/u.exec(head)?.[1];
            if (declared !== undefined && named.has(declared) && about(declarationAround(all, index))) return 'taken along';
        }
    }
    return undefined;
}

describe.each(programmes)('each line of %s, broken: what the whole programme says', (name, files) => {
    test('every message in every file is a true consequence', async () => {
        const programme = new Programme(files);
        const before = await programme.start();
        const reasons = new Map<string, number>();
        let cases = 0;
        // Each line is broken in some of the ways, each way on some of the lines; the first programme is the smaller one.
        const stride = everything ? 1 : files.size < 5 ? 11 : 31;
        for (const [file, text] of files) {
            const lines = text.split('\n');
            let turn = 0;
            for (const broken of brokenVersions(file, text)) {
                if ((turn++ + broken.line) % stride !== 0) continue;
                cases++;
                const told = await programme.with(file, broken.text);
                for (const one of told) {
                    if (before.some(({ file: at, line, code, message }) => at === one.file && line === one.line && code === one.code && message === one.message)) continue;
                    expect(one.code).not.toBe('unread-text');
                    const reason = consequence(one, broken, lines, before, files);
                    expect({ broken: broken.is, how: broken.how, at: `${file}:${broken.line + 1}`, one, reason: reason ?? 'none' }).not.toMatchObject({ reason: 'none' });
                    reasons.set(reason!, (reasons.get(reason!) ?? 0) + 1);
                }
            }
            expect(await programme.with(file, text)).toEqual(before);
        }
        console.log(`${name}: ${cases} broken lines against every check in every file; new messages ${[...reasons].map(([reason, times]) => `${reason}: ${times}`).join(', ')}; none without a reason.`);
        expect(cases).toBeGreaterThan(150);
    });
});

test('no check fails on any text, and the rest of the programme is looked at all the same', async () => {
    const programme = new Programme(programmeFiles(firstSteps));
    await programme.start();
    await fc.assert(fc.asyncProperty(fc.constantFrom('inventory.kit', 'programme.course', 'lessons/listen-2.lesson'), anyText, async (file, text) => {
        const told = await programme.with(file, text);
        expect(told.filter(({ code, message }) => code === 'unread-text' || /undefined|null|NaN|\[object/.test(message))).toEqual([]);
    }), { numRuns: 250 });
});
