import { DocumentState, EmptyFileSystem, URI, type LangiumDocument } from 'langium';
import { describe, expect, test } from 'vitest';
import type { HaversackDocumentValidator } from '@haversack/language/checks/document-validator';
import { createHaversackServices } from '@haversack/language/module';
import { brokenVersions, endOfBlock, linesAbove, type Broken } from './breaks.js';
import { firstSteps, languagePage, programmeFiles, read } from './reading.js';

const programmes: [string, Map<string, string>][] = [['the programme of the language page', programmeFiles(languagePage)], ['the first steps', programmeFiles(firstSteps)]];
/** Set to try every way of breaking every line against every check, which takes a minute. */
const everything = process.env['HAVERSACK_EVERY_BREAK'] !== undefined;

/** Words of parsers, and of programs; none of them is a teacher's. */
const notATeachers = /\b(tokens?|expecting|expected|EOL|EOF|INDENT|DEDENT|NAME|TEXT|NUMBER|undefined|null|NaN|syntax|parser?|parse|lexer|AST|node|identifier|keyword|terminal|rule|exception|stack)\b|\[object/;

const wordsOf = (text: string): string[] => [...text.matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)].map(([word]) => word.toLowerCase());

describe.each(programmes)('each line of %s, broken in sixteen ways: what the reader says', (name, files) => {
    test('the parser never complains, and nothing outside the line and what stands under it is called wrong', () => {
        let cases = 0;
        let silent = 0;
        const messages = new Map<number, number>();
        for (const [file, text] of files) {
            for (const broken of brokenVersions(file, text)) {
                const { problems, parserErrors } = read(broken.text);
                cases++;
                if (problems.length === 0) silent++;
                messages.set(problems.length, (messages.get(problems.length) ?? 0) + 1);
                const outside = problems.filter(({ line }) => line - 1 < broken.line || line - 1 >= broken.end);
                expect({ broken, parserErrors, outside }).toEqual({ broken, parserErrors: [], outside: [] });
            }
        }
        console.log(`${name}: ${cases} broken lines; no parser error; no message outside. Messages a line: ${[...messages].sort(([a], [b]) => a - b).map(([count, times]) => `${count} in ${times}`).join(', ')} (none where the break left a line that may stand, ${silent}).`);
        expect(cases).toBeGreaterThan(1000);
    }, 60_000);

    test('each message says where, in a teacher’s words', () => {
        for (const [file, text] of files) {
            for (const broken of brokenVersions(file, text)) {
                const lines = broken.text.split('\n');
                for (const { line, column, length, offset, message, code, mend } of read(broken.text).problems) {
                    expect({ message, bad: notATeachers.exec(message.replace(/'[^']*'|\{[^}]*\}|: [a-z].*$/g, ''))?.[0] }).toEqual({ message, bad: undefined });
                    expect(message).toMatch(/^['A-Z].{15,}[.?!]$|It reads like this: /s);
                    expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
                    expect(lines[line - 1]!.length).toBeGreaterThanOrEqual(column - 1);
                    expect(offset).toBe(lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0) + column - 1);
                    expect(length).toBeGreaterThan(0);
                    if (mend) expect(mend.title).toMatch(/^[A-Z]/);
                }
            }
        }
    }, 60_000);

    test('a mend that is offered mends: the line has one problem fewer, or none', () => {
        let offered = 0;
        let reported = 0;
        for (const [file, text] of files) {
            for (const { text: wrong } of brokenVersions(file, text)) {
                const { problems } = read(wrong);
                const [problem] = problems;
                if (problem) reported++;
                if (!problem?.mend) continue;
                offered++;
                const { offset, length, text: put } = problem.mend;
                const after = read(wrong.slice(0, offset) + put + wrong.slice(offset + length)).problems;
                expect({ wrong: wrong.split('\n')[problem.line - 1], problem, after: after.length < problems.length || after.every(({ line, code }) => line !== problem.line || code !== problem.code) }).toMatchObject({ after: true });
            }
        }
        console.log(`${name}: a mend is offered for ${offered} of ${reported} first messages.`);
        expect(offered).toBeGreaterThan(reported / 3);
    }, 60_000);
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
    private readonly services = createHaversackServices({ fileSystemProvider: () => ({ ...EmptyFileSystem.fileSystemProvider(), readFile: uri => Promise.resolve(this.texts.get(uri.path.slice(1))!) }) });
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
        const stride = everything ? 1 : files.size < 5 ? 3 : 8;
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
        expect(cases).toBeGreaterThan(300);
    }, 240_000);
});
