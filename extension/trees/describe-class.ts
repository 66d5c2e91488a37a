import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { weekRequest, type WeekAnswer, type WeekParams, type WeekRefusal } from '@haversack/server/protocol/programme';
import { nextMonday } from '../local-day.js';
import type { Shown } from './shown.js';

/** Writes the beginning of a class below the course of the programme that is shown, with places to fill in: without one the plan counts one learner and has no dates. */
export async function describeClass(client: BaseLanguageClient, shown: Shown): Promise<void> {
    const answer = await client.sendRequest<WeekAnswer | WeekRefusal>(weekRequest, { ...shown.place(client), brief: true } satisfies WeekParams);
    if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
    if (!answer.courseFile) {
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
