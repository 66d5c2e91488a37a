import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { languageId } from './client-options.js';

/** Says how the server is in the editor's language status, where nobody is interrupted by it. */
export function showStatus(client: BaseLanguageClient): vscode.Disposable {
    const item = vscode.languages.createLanguageStatusItem('haversack.status', { language: languageId });
    item.name = 'Haversack';
    const show = (state: State): void => {
        item.busy = state === State.Starting;
        const hasStopped = state !== State.Running && state !== State.Starting;
        item.severity = hasStopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        item.text = state === State.Running ? vscode.l10n.t('All files are read')
            : state === State.Starting ? vscode.l10n.t('Reading the files')
                : vscode.l10n.t('Checks and brief have stopped');
        item.command = hasStopped ? { command: 'haversack.restart', title: vscode.l10n.t('Start again') } : undefined;
        void vscode.commands.executeCommand('setContext', 'haversack.running', state === State.Running);
    };
    show(client.state);
    return vscode.Disposable.from(item, client.onDidChangeState(({ newState }) => show(newState)));
}
