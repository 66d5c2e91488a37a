import * as vscode from 'vscode';
import type { BriefAnswer, BriefRefusal, TermAnswer } from '@haversack/server/protocol/pages';
import type { BriefPanel } from '../preview/brief-panel.js';
import { saveCommands } from '../preview/save-commands.js';
import type { PrintedPages } from './printed-pages.js';

/** Prints, through the person's browser, what the preview shows: the week, the term or the changes; of a file that is named, or without a preview, the week. */
export async function printPage(brief: BriefPanel, pages: PrintedPages, file?: vscode.Uri): Promise<void> {
    const view = file === undefined ? brief.view : 'week';
    const save = [saveCommands[view], file] as const;
    if (!pages.possible) return pages.saveInstead(save);
    const page: BriefAnswer | TermAnswer | BriefRefusal = view === 'week' ? await brief.request('html', file, true)
        : view === 'term' ? await brief.requestTerm('html', file, { printing: true })
            : await brief.requestChanges('html', file, true);
    if ('refusal' in page) return void vscode.window.showInformationMessage(page.refusal);
    const what = 'week' in page ? `week-${page.week}` : view;
    await pages.open(page.class === undefined ? what : `${what}-${page.class}`, page.text ?? '', save);
}
