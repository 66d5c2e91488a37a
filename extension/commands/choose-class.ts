import * as vscode from 'vscode';
import type { BriefPanel } from '../preview/brief-panel.js';

/** Lets somebody choose the class that the brief is for. */
export async function chooseClass(brief: BriefPanel): Promise<void> {
    const answer = await brief.request('sections');
    if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
    if (answer.classes.length === 0) {
        return void vscode.window.showInformationMessage(vscode.l10n.t('No class is described yet. Write one in a file that ends in .course, beginning with "class".'));
    }
    const chosen = await vscode.window.showQuickPick(
        answer.classes.map(({ name, title }) => ({ label: title, description: name, name })),
        { title: vscode.l10n.t('Class for the brief'), placeHolder: vscode.l10n.t('Amounts, dates and purchases are counted for this class') }
    );
    if (chosen) brief.showClass(chosen.name);
}
