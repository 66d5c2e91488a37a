import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { practiceRequest, type PracticeAnswer, type PracticeParams, type PracticeRefusal } from '@haversack/server/protocol/practice';
import { chosenPaper } from '../paper.js';
import type { PrintedPages } from './printed-pages.js';
import { furtherItems, lessonToPractise } from './save-practice.js';

/** Prints the practice of a lesson, or its key, through the person's browser. */
export async function printPractice(client: BaseLanguageClient, pages: PrintedPages, file?: vscode.Uri): Promise<void> {
    const save = ['haversack.practice.save', file] as const;
    if (!pages.possible) return pages.saveInstead(save);
    const which = await lessonToPractise(client, file);
    if (!which) return;
    const chosen = await vscode.window.showQuickPick([
        { label: vscode.l10n.t('The sheet'), description: vscode.l10n.t('The items of the brief'), key: false, more: undefined },
        { label: vscode.l10n.t('Its key'), description: vscode.l10n.t('The items of the brief'), key: true, more: undefined },
        { label: vscode.l10n.t('The sheet'), description: vscode.l10n.t('{0} further items', furtherItems), key: false, more: furtherItems },
        { label: vscode.l10n.t('Its key'), description: vscode.l10n.t('{0} further items', furtherItems), key: true, more: furtherItems }
    ], { title: vscode.l10n.t('Print the practice of {0}', which.lesson) });
    if (!chosen) return;
    const { key, more } = chosen;
    const params: PracticeParams = { ...which, key, more, format: 'html', paper: chosenPaper(), printing: true };
    const answer = await client.sendRequest<PracticeAnswer | PracticeRefusal>(practiceRequest, params);
    if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
    await pages.open(`${answer.lesson}-practice${key ? '-key' : ''}`, answer.text, save);
}
