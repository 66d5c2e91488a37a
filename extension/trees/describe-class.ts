import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { weekRequest, type WeekAnswer, type WeekRefusal } from '@haversack/server/protocol/programme';

/** Writes the beginning of a class below its course, with places to fill in: without one the plan counts one learner and has no dates. */
export async function describeClass(client: BaseLanguageClient): Promise<void> {
    const answer = await client.sendRequest<WeekAnswer | WeekRefusal>(weekRequest, { brief: true });
    if ('refusal' in answer || !answer.courseFile) {
        return void vscode.window.showInformationMessage(vscode.l10n.t('There is no course yet that a class could be taught. Write one in a file that ends in .course, beginning with "course".'));
    }
    const { uri, name } = answer.courseFile;
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
    const editor = await vscode.window.showTextDocument(document);
    const end = document.lineAt(document.lineCount - 1).range.end;
    const begins = document.getText().trim() === '' ? '' : end.character === 0 ? '\n' : '\n\n';
    const snippet = new vscode.SnippetString()
        .appendText(`${begins}class `).appendPlaceholder('our-class').appendText(' "').appendPlaceholder(vscode.l10n.t('Our class'))
        .appendText(`"\n  teaches ${name}\n  learners `).appendPlaceholder('4').appendText('\n  starts ').appendPlaceholder(nextMonday(new Date()))
        .appendText('\n  meets ').appendPlaceholder('mon').appendText('\n');
    await editor.insertSnippet(snippet, end, { undoStopBefore: true, undoStopAfter: true });
}

function nextMonday(now: Date): string {
    const day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + (((8 - now.getDay()) % 7) || 7));
    return [day.getFullYear(), day.getMonth() + 1, day.getDate()].map(part => String(part).padStart(2, '0')).join('-');
}
