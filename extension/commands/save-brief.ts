import * as vscode from 'vscode';
import type { BriefPanel } from '../preview/brief-panel.js';

/** Writes the brief as a web page or as Markdown, as the ending of the chosen file says. */
export async function saveBrief(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.request('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    const name = `week-${page.week}.html`;
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    const target = await vscode.window.showSaveDialog({
        title: vscode.l10n.t('Save the brief as a file'),
        defaultUri: folder && vscode.Uri.joinPath(folder, name),
        filters: { [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Markdown')]: ['md'] }
    });
    if (!target) return;
    const answer = target.path.endsWith('.md') ? await brief.request('md', file) : page;
    if ('refusal' in answer || answer.text === undefined) return;
    try {
        await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(answer.text));
        vscode.window.setStatusBarMessage(vscode.l10n.t('The brief for week {0} is saved.', answer.week), 5000);
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('The brief could not be written to {0}: {1}', target.fsPath, error instanceof Error ? error.message : String(error)));
    }
}
