import * as vscode from 'vscode';
import type { BriefRefusal } from '@haversack/server/protocol';
import type { BriefPanel } from '../preview/brief-panel.js';

/** Writes the brief as a web page or as Markdown, as the ending of the chosen file says. */
export async function saveBrief(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.request('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    await save({
        title: vscode.l10n.t('Save the brief as a file'), name: `week-${page.week}.html`, html: page.text, md: () => brief.request('md', file),
        saved: vscode.l10n.t('The brief for week {0} is saved.', page.week)
    });
}

/** Writes the whole term likewise. */
export async function saveTerm(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.requestTerm('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    await save({
        title: vscode.l10n.t('Save the term as a file'), name: page.class === undefined ? 'term.html' : `term-${page.class}.html`, html: page.text, md: () => brief.requestTerm('md', file),
        saved: vscode.l10n.t('The term is saved.')
    });
}

interface Saving {
    title: string;
    name: string;
    html: string | undefined;
    md: () => Promise<{ text?: string } | BriefRefusal>;
    saved: string;
}

async function save({ title, name, html, md, saved }: Saving): Promise<void> {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    const target = await vscode.window.showSaveDialog({
        title,
        defaultUri: folder && vscode.Uri.joinPath(folder, name),
        filters: { [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Markdown')]: ['md'] }
    });
    if (!target) return;
    const answer = target.path.endsWith('.md') ? await md() : { text: html };
    if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
    try {
        await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(answer.text ?? ''));
        vscode.window.setStatusBarMessage(saved, 5000);
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('The brief could not be written to {0}: {1}', target.fsPath, error instanceof Error ? error.message : String(error)));
    }
}
