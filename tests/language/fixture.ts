import { EmptyFileSystem, URI } from 'langium';
import { expect } from 'vitest';
import { applyEdits } from '@haversack/language/checks/apply-edits';
import type { Fix, Problem } from '@haversack/language/checks/check';
import type { HaversackDocumentValidator } from '@haversack/language/checks/document-validator';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { memoryReader } from '@haversack/language/attachments/memory-reader';
import { loose } from '@haversack/language/linking/programmes';
import { createHaversackServices } from '@haversack/language/module';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';

/** Texts of a programme by file name. */
export type Files = Record<string, string>;

/** What is expected of a line: `#   ^^^^ code: part of the message` under it, the carets under what is marked. */
interface Expected {
    file: string;
    line: number;
    from: number;
    to: number;
    code: string;
    says: string;
}

const root = 'file:///programme/';
const ours = /\.(?:lesson|kit|course)$/;
const marker = /^([#\s]*)(\^+)\s+([a-z-]+)(?::\s*(.*))?$/;

/** Splits `--- name.kit` separated files; a text without separators is one file. Lines with carets are taken out. */
export function readFixture(text: string): { files: Files; expected: Expected[] } {
    const files: Files = {};
    const expected: Expected[] = [];
    let name = 'programme.course';
    let lines: string[] = [];
    const close = (): void => { if (lines.length > 0) files[name] = `${lines.join('\n').trimEnd()}\n`; };
    for (const line of text.replace(/^\n/, '').split('\n')) {
        const separator = /^--- (\S+)$/.exec(line);
        const mark = marker.exec(line);
        if (separator) {
            close();
            name = separator[1]!;
            lines = [];
        } else if (mark) {
            const from = mark[1]!.length;
            expected.push({ file: name, line: lines.length - 1, from, to: from + mark[2]!.length, code: mark[3]!, says: mark[4]?.trim() ?? '' });
        } else {
            lines.push(line);
        }
    }
    close();
    return { files, expected };
}

// Making the services reads the whole grammar, so that all tests of a file share them.
const texts = new Map<string, string>();
// Calendars and frameworks of the programme, by address.
const beside = new Map<string, string>();
const { shared, haversack } = createHaversackServices({
    fileSystemProvider: () => Object.assign(EmptyFileSystem.fileSystemProvider(), { readFile: (uri: URI) => Promise.resolve(texts.get(uri.toString()) ?? '') })
}, new AttachmentStore(memoryReader(beside), () => [root]));
const uriOf = (name: string): URI => URI.parse(root + name);

function lastProblems(): Problem[] {
    const validator = haversack.validation.DocumentValidator as HaversackDocumentValidator;
    return shared.workspace.LangiumDocuments.all.flatMap(document => validator.problemsIn(document)).toArray();
}

export async function problemsIn(files: Files): Promise<Problem[]> {
    await shared.workspace.DocumentBuilder.update([], shared.workspace.LangiumDocuments.all.map(({ uri }) => uri).toArray());
    beside.clear();
    for (const [name, text] of Object.entries(files)) if (!ours.test(name)) beside.set(root + name, text);
    haversack.attachments.refresh([root.slice(0, -1)]);
    const documents = Object.entries(files).filter(([name]) => ours.test(name)).map(([name, text]) => shared.workspace.LangiumDocumentFactory.fromString(text, uriOf(name)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    return lastProblems();
}

/** The problems of the programme read last, with one of its files changed. */
export async function problemsAfter(name: string, text: string): Promise<Problem[]> {
    texts.set(root + name, text);
    await shared.workspace.DocumentBuilder.update([uriOf(name)], []);
    return lastProblems();
}

export const nameOf = (uri: string): string => uri.slice(root.length);

/** The programme that was read last. */
export const lastView = (): ProgrammeView => haversack.sheets.viewAt(loose);

/** All problems of a programme are those that are marked, each where its carets stand and in the words that follow. */
export async function check(text: string, find: (files: Files) => Promise<Problem[]> = problemsIn): Promise<Problem[]> {
    const { files, expected } = readFixture(text);
    const problems = await find(files);
    const wanted = expected.map(({ file, line, from, to, code, says }) => `${file}:${line + 1} [${from}-${to}] ${code}: ${says}`).sort();
    const found = problems.map(problem => {
        const says = expected.find(e => e.code === problem.code && e.file === nameOf(problem.uri) && e.line === problem.at.start.line && problem.message.includes(e.says))?.says;
        const { start, end } = problem.at;
        const to = end.line === start.line ? end.character : Number.POSITIVE_INFINITY;
        return `${nameOf(problem.uri)}:${start.line + 1} [${start.character}-${to}] ${problem.code}: ${says ?? problem.message}`;
    }).sort();
    expect(found).toEqual(wanted);
    return problems;
}

/** The texts after a fix. */
export function mend(files: Files, fix: Fix): Files {
    const mended = { ...files };
    for (const uri of new Set(fix.edits.map(edit => edit.uri))) {
        const name = nameOf(uri);
        mended[name] = applyEdits(files[name] ?? '', fix.edits.filter(edit => edit.uri === uri));
    }
    return mended;
}
