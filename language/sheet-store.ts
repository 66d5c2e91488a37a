import { DocumentState, type LangiumDocument, type LangiumSharedCoreServices, type URI } from 'langium';
import type { AttachmentStore } from './attachments/attachment-store.js';
import type { Attachment } from './attachments/attachment.js';
import type { ProgrammeFile } from './generated/ast.js';
import { LessonReadings } from './checks/lesson-facts.js';
import { namesSaid } from './checks/names-said.js';
import { ProgrammeView, type FormerView } from './checks/programme-view.js';
import type { ReadingReport } from './lexer/line-lexer.js';
import type { ProgrammeKey, Programmes } from './linking/programmes.js';
import { makeSheet } from './sheets/make-sheet.js';
import { declaresOnlyLessons, gatherProgramme } from './sheets/programme.js';
import type { FileSheet } from './sheets/sheet.js';

/** A programme as it was last looked at. */
interface Kept {
    sheets: readonly FileSheet[];
    attachments: ReadonlyMap<string, Attachment>;
    view: ProgrammeView;
}

/** Keeps the sheet of every file for as long as its syntax tree lives, and the programmes made of them. */
export class SheetStore {
    private readonly sheets = new WeakMap<object, FileSheet>();
    private readonly readings = new LessonReadings();
    private readonly kept = new Map<ProgrammeKey, Kept>();
    /** The sheets of each programme as they are now, until a file changes. */
    private now: ReadonlyMap<ProgrammeKey, readonly FileSheet[]> | undefined;

    constructor(private readonly shared: LangiumSharedCoreServices, private readonly programmes: Programmes, private readonly attachments: AttachmentStore) {
        const builder = shared.workspace.DocumentBuilder;
        const changed = (): void => { this.now = undefined; };
        builder.onUpdate(changed);
        builder.onBuildPhase(DocumentState.Parsed, changed);
    }

    sheetOf(document: LangiumDocument): FileSheet {
        const tree = document.parseResult.value as ProgrammeFile;
        let sheet = this.sheets.get(tree);
        if (!sheet) {
            const { unreadable, brokenLines } = notUnderstood(document);
            sheet = makeSheet(tree, document.uri.toString(), unreadable, brokenLines);
            this.sheets.set(tree, sheet);
        }
        return sheet;
    }

    /** The programme that a file belongs to, seen as a whole. */
    viewOf(file: URI | string): ProgrammeView {
        return this.viewAt(this.programmes.of(file));
    }

    /** A programme of all its parsed files; the same object as long as no sheet of it and no file that one of them names has changed. */
    viewAt(programme: ProgrammeKey): ProgrammeView {
        this.now ??= this.sheetsByProgramme();
        const sheets = this.now.get(programme) ?? [];
        const last = this.kept.get(programme);
        if (last?.sheets === sheets) return last.view;
        const attachments = this.attachments.of(sheets, programme);
        const isSame = last && last.attachments === attachments && last.sheets.length === sheets.length && sheets.every((sheet, index) => sheet === last.sheets[index]);
        const former = last && this.formerView(sheets, last);
        const view = isSame ? last.view : new ProgrammeView(gatherProgramme(sheets, attachments), this.readings, former);
        this.kept.set(programme, { sheets, attachments, view });
        return view;
    }

    /** The last view of a programme, where every file that is not the same declares lessons and nothing else, before and now. */
    private formerView(sheets: readonly FileSheet[], { sheets: before, view }: Kept): FormerView | undefined {
        const different = sheets.flatMap((sheet, index) => (sheet === before[index] ? [] : [{ now: sheet, former: before[index] }]));
        const changed = different.flatMap(({ now, former }) => (former?.uri === now.uri && declaresOnlyLessons(now) && declaresOnlyLessons(former) ? [{ now, former }] : []));
        if (sheets.length !== before.length || changed.length < different.length) return undefined;
        // More than a few are as quickly looked through once for the whole programme.
        const saysTheSameNames = changed.length < 10 && changed.every(({ now, former }) => namesSaid(now, this.readings) === namesSaid(former, this.readings));
        return { view, saysTheSameNames };
    }

    private sheetsByProgramme(): Map<ProgrammeKey, FileSheet[]> {
        const found = new Map<ProgrammeKey, FileSheet[]>(this.programmes.open.map(key => [key, []]));
        for (const document of this.shared.workspace.LangiumDocuments.all) {
            if (document.state < DocumentState.Parsed) continue;
            const key = this.programmes.of(document.uri);
            const sheets = found.get(key);
            if (sheets) sheets.push(this.sheetOf(document));
            else found.set(key, [this.sheetOf(document)]);
        }
        for (const key of this.kept.keys()) {
            if (found.has(key)) continue;
            this.kept.delete(key);
            this.attachments.forget(key);
        }
        return found;
    }
}

/** What the lexer could not make sense of: words that may name anything, and lines that may say more than was read. */
function notUnderstood(document: LangiumDocument): { unreadable: string[]; brokenLines: number[] } {
    const report = document.parseResult.lexerReport as ReadingReport | undefined;
    const wrong = (report?.problems ?? []).filter(({ severity }) => severity === 'error');
    if (!report || wrong.length === 0) return { unreadable: report?.unreadable ?? [], brokenLines: [] };
    const lines = document.textDocument.getText().split(/\r\n|\r|\n/);
    const unreadable = new Set(report.unreadable);
    for (const { code, line } of wrong) {
        if (code !== 'unfinished-line') continue;
        for (const [word] of (lines[line - 1] ?? '').matchAll(/[\p{L}\p{N}]+(?:-[\p{L}\p{N}]+)*/gu)) unreadable.add(word);
    }
    return { unreadable: [...unreadable], brokenLines: [...new Set(wrong.map(({ line }) => line - 1))] };
}
