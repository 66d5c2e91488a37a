import { DocumentState, type LangiumDocument, type LangiumSharedCoreServices } from 'langium';
import type { AttachmentStore } from './attachments/attachment-store.js';
import type { Attachment } from './attachments/attachment.js';
import type { ProgrammeFile } from './generated/ast.js';
import { LessonReadings } from './checks/lesson-facts.js';
import { ProgrammeView } from './checks/programme-view.js';
import type { ReadingReport } from './lexer/line-lexer.js';
import { makeSheet } from './sheets/make-sheet.js';
import { declaresOnlyLessons, gatherProgramme } from './sheets/programme.js';
import type { FileSheet } from './sheets/sheet.js';

/** Keeps the sheet of every file for as long as its syntax tree lives, and the programme made of them. */
export class SheetStore {
    private readonly sheets = new WeakMap<object, FileSheet>();
    private readonly readings = new LessonReadings();
    private last?: { sheets: FileSheet[]; attachments: ReadonlyMap<string, Attachment>; view: ProgrammeView };
    private mayHaveChanged = true;

    constructor(private readonly shared: LangiumSharedCoreServices, private readonly attachments: AttachmentStore) {
        const builder = shared.workspace.DocumentBuilder;
        const changed = (): void => { this.mayHaveChanged = true; };
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

    /** The programme of all parsed files; the same object as long as no sheet and no file that one of them names has changed. */
    get view(): ProgrammeView {
        const { last } = this;
        if (last && !this.mayHaveChanged) return last.view;
        const sheets: FileSheet[] = [];
        for (const document of this.shared.workspace.LangiumDocuments.all) {
            if (document.state >= DocumentState.Parsed) sheets.push(this.sheetOf(document));
        }
        this.mayHaveChanged = false;
        const attachments = this.attachments.of(sheets);
        if (last && last.attachments === attachments && last.sheets.length === sheets.length && sheets.every((sheet, index) => sheet === last.sheets[index])) return last.view;
        const kept = last && onlyLessonsDiffer(sheets, last.sheets) ? last.view : undefined;
        this.last = { sheets, attachments, view: new ProgrammeView(gatherProgramme(sheets, attachments), this.readings, kept) };
        return this.last.view;
    }
}

/** True when every file that is not the same declares lessons and nothing else, before and now. */
function onlyLessonsDiffer(sheets: readonly FileSheet[], before: readonly FileSheet[]): boolean {
    return sheets.length === before.length && sheets.every((sheet, index) => {
        const former = before[index]!;
        return sheet === former || (sheet.uri === former.uri && declaresOnlyLessons(sheet) && declaresOnlyLessons(former));
    });
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
