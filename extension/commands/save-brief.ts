import * as vscode from 'vscode';
import type { BriefRefusal, ChangesParams, TermParams } from '@haversack/server/protocol/pages';
import { done } from '../first-steps.js';
import type { BriefPanel } from '../preview/brief-panel.js';

/** Writes the brief as a web page or as Markdown, as the ending of the chosen file says. */
export async function saveBrief(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.request('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    await save({
        title: vscode.l10n.t('Save the brief as a file'), name: `week-${page.week}.html`,
        filters: { [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Markdown')]: ['md'] },
        write: async target => (target.path.endsWith('.md') ? brief.request('md', file) : page),
        saved: vscode.l10n.t('The brief for week {0} is saved.', page.week)
    });
}

/** Writes an outline for walking families through the week aloud, as Markdown. */
export async function saveNotes(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const notes = await brief.request('notes', file);
    if ('refusal' in notes) return void vscode.window.showInformationMessage(notes.refusal);
    await save({
        title: vscode.l10n.t('Save speaking notes for the week as a file'), name: `speaking-notes-week-${notes.week}.md`,
        filters: { [vscode.l10n.t('Markdown')]: ['md'] },
        write: () => Promise.resolve(notes),
        saved: vscode.l10n.t('The speaking notes for week {0} are saved.', notes.week)
    });
}

/** Writes the whole term likewise, its lessons as a calendar, what to buy as a list for a spreadsheet, or all figures for programs. */
export async function saveTerm(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.requestTerm('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    await save({
        title: vscode.l10n.t('Save the term as a file'), name: page.class === undefined ? 'term.html' : `term-${page.class}.html`,
        filters: {
            [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Calendar of the lessons')]: ['ics'], [vscode.l10n.t('Shopping list for a spreadsheet')]: ['csv'],
            [vscode.l10n.t('Markdown')]: ['md'], [vscode.l10n.t('Figures for programs')]: ['json']
        },
        write: async target => {
            const format = formatOf(target);
            return format === 'html' ? page : brief.requestTerm(format, file, { before: format === 'ics' ? await textOf(target) : undefined });
        },
        saved: vscode.l10n.t('The term is saved.')
    });
}

/** Writes what adaptations change for the class, as a page, as Markdown, or all figures for programs. */
export async function saveChanges(brief: BriefPanel, file?: vscode.Uri): Promise<void> {
    const page = await brief.requestChanges('html', file);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    await save({
        title: vscode.l10n.t('Save the changes as a file'), name: page.class === undefined ? 'changes.html' : `changes-${page.class}.html`,
        filters: { [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Markdown')]: ['md'], [vscode.l10n.t('Figures for programs')]: ['json'] },
        write: async target => {
            const format: ChangesParams['format'] = (['md', 'json'] as const).find(ending => target.path.toLowerCase().endsWith(`.${ending}`)) ?? 'html';
            return format === 'html' ? page : brief.requestChanges(format, file);
        },
        saved: vscode.l10n.t('The changes are saved.')
    });
}

function formatOf({ path }: vscode.Uri): NonNullable<TermParams['format']> {
    return (['ics', 'csv', 'md', 'json'] as const).find(ending => path.toLowerCase().endsWith(`.${ending}`)) ?? 'html';
}

/** What the file holds that will be written over; nothing where there is none. */
async function textOf(file: vscode.Uri): Promise<string | undefined> {
    try {
        return new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    } catch {
        return undefined;
    }
}

interface Saving {
    title: string;
    name: string;
    filters: Record<string, string[]>;
    write(target: vscode.Uri): Promise<{ text?: string } | BriefRefusal>;
    saved: string;
}

async function save({ title, name, filters, write, saved }: Saving): Promise<void> {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    const target = await vscode.window.showSaveDialog({ title, defaultUri: folder && vscode.Uri.joinPath(folder, name), filters });
    if (!target) return;
    const answer = await write(target);
    if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
    try {
        await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(answer.text ?? ''));
        done('printed');
        vscode.window.setStatusBarMessage(saved, 5000);
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written: {1}', target.fsPath, error instanceof Error ? error.message : String(error)));
    }
}
