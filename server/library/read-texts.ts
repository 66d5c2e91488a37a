import { EmptyFileSystem, URI } from 'langium';
import { programmeFile } from '@haversack/language/facts/programme-file';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { memoryReader } from '@haversack/language/attachments/memory-reader';
import { textEditsFor } from '@haversack/language/checks/apply-edits';
import type { Edit, Problem } from '@haversack/language/checks/check';
import { createHaversackServices } from '@haversack/language/module';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { Range } from '@haversack/language/sheets/sheet';
import { planProblems } from '../plan-checks/plan-problems.js';
import { termOf } from '../plan-checks/plan-term.js';
import { toldOnce } from '../plan-checks/told-once.js';
import { dayOf } from './day.js';

/**
 * The texts of a programme by their paths in its folder ("lessons/weigh-1.lesson"). Those that end in .lesson, .kit or .course are read; others
 * (.ics, .json) are what a class or a framework may name.
 */
export type Texts = Readonly<Record<string, string>>;

/** Something to put in place of a range of a text. */
export interface TextChange {
    path: string;
    range: Range;
    text: string;
}

/** What mends a problem. Its changes do not overlap; ranges are those of the texts before any of them. */
export interface Mend {
    title: string;
    /** True for the one that is most likely meant. */
    preferred: boolean;
    changes: TextChange[];
}

/** Something that is wrong in a text. Lines and UTF-16 characters count from 0; `code` is explained in the reference. */
export interface TextProblem {
    path: string;
    range: Range;
    severity: 'error' | 'warning' | 'information' | 'hint';
    code: string;
    message: string;
    mends: Mend[];
}

export interface ReadProgramme {
    /** What the texts say, as plain data, with every name looked up. */
    programme: Programme;
    /** By path, and by place in each text. */
    problems: TextProblem[];
}

/** The address of the folder in which the texts seem to lie. */
export const root = 'file:///programme';

/**
 * Reads texts as one programme and checks them, the plan of every class with them.
 * @param options `today` is an ISO 8601 date: what lies before it is no longer told
 * @throws RangeError for a `today` that is no date; never for a text, whatever it says
 */
export async function readProgramme(texts: Texts, { today }: { today: string }): Promise<ReadProgramme> {
    const day = dayOf(today);
    const byAddress = new Map(Object.entries(texts).map(([path, text]) => [addressOf(path), { path, text }]));
    const reader = memoryReader(new Map([...byAddress].map(([address, { text }]) => [address, text])));
    const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore(reader, () => [root]));
    const ours = [...byAddress].filter(([, { path }]) => programmeFile.test(path)).sort(([a], [b]) => (a < b ? -1 : 1));
    const documents = ours.map(([address, { text }]) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(address)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    const [first] = documents;
    if (!first) return { programme: gatherProgramme([]), problems: [] };
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    const view = haversack.sheets.viewOf(first.uri);
    const planned = planProblems(view, termOf(view, day));
    const problems = documents.flatMap(document => {
        const own = haversack.validation.DocumentValidator.lastProblems(document);
        return toldOnce(own, planned.get(document.uri.toString()) ?? []).sort((a, b) => a.at.start.line - b.at.start.line || a.at.start.character - b.at.start.character);
    });
    return { programme: view.programme, problems: problems.map(problem => toTextProblem(problem, byAddress)) };
}

type ByAddress = ReadonlyMap<string, { path: string; text: string }>;

function toTextProblem({ uri, at, severity, code, message, fixes = [] }: Problem, texts: ByAddress): TextProblem {
    return {
        path: pathOf(uri, texts), range: at, severity, code, message,
        mends: fixes.map(({ title, preferred = false, edits }) => ({ title, preferred, changes: changesOf(edits, texts) }))
    };
}

function changesOf(edits: readonly Edit[], texts: ByAddress): TextChange[] {
    const addresses = [...new Set(edits.map(({ uri }) => uri))];
    return addresses.flatMap(uri => textEditsFor(texts.get(uri)?.text ?? '', edits.filter(edit => edit.uri === uri))
        .map(({ range, newText }) => ({ path: pathOf(uri, texts), range, text: newText })));
}

function pathOf(uri: string, texts: ByAddress): string {
    return texts.get(uri)?.path ?? uri;
}

function addressOf(path: string): string {
    return URI.parse(root).with({ path: `/programme/${path}` }).toString();
}
