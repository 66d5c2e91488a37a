import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { moveLessonsRequest, type BriefRefusal, type LessonNode, type MoveLessonsAnswer, type MoveLessonsParams, type MoveTarget } from '@haversack/server/protocol/programme';
import { holdsLines } from './holds-lines.js';
import { reveal } from './source-place.js';

/** Asked again where somebody types meanwhile, or the file is another than the server knew. */
const mostTries = 3;

/** Moves lessons in their course: one edit of its text, which is left unsaved and undone as any other. False where nothing was moved; why is told. */
export async function moveLessons(client: BaseLanguageClient, lessons: readonly LessonNode[], to: MoveTarget): Promise<boolean> {
    for (let tried = 0; tried < mostTries; tried++) {
        const asked = { lessons: lessons.map(({ name, line }) => ({ name, line })), to } satisfies MoveLessonsParams;
        const answer = await client.sendRequest<MoveLessonsAnswer | BriefRefusal>(moveLessonsRequest, asked);
        if ('refusal' in answer) {
            void vscode.window.showInformationMessage(answer.refusal);
            return false;
        }
        const wasOpen = vscode.workspace.textDocuments.some(({ uri }) => uri.toString() === vscode.Uri.parse(answer.uri).toString());
        const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(answer.uri));
        // A file that nobody had open may have changed on the disk unnoticed; the server has read it anew by now, for it is open.
        if (wasOpen ? document.version !== answer.version : !holdsLines(document, answer.held)) continue;
        return apply(document, answer, lessons.length);
    }
    void vscode.window.showInformationMessage(vscode.l10n.t('The course was changed meanwhile, so nothing was moved. Try again.'));
    return false;
}

async function apply(document: vscode.TextDocument, { edits, lines: [first] }: MoveLessonsAnswer, moved: number): Promise<boolean> {
    if (edits.length === 0) {
        vscode.window.setStatusBarMessage(moved === 1 ? vscode.l10n.t('The lesson stands there already.') : vscode.l10n.t('The lessons stand there already.'), 4000);
        return false;
    }
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, edits.map(({ range: { start, end }, newText }) => new vscode.TextEdit(new vscode.Range(start.line, start.character, end.line, end.character), newText)));
    if (!await vscode.workspace.applyEdit(edit)) {
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be changed. Is it read-only?', vscode.workspace.asRelativePath(document.uri)));
        return false;
    }
    if (first !== undefined) await reveal(document, first);
    return true;
}
