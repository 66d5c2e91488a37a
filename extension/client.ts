import * as vscode from 'vscode';
import { LanguageClient, State, TransportKind } from 'vscode-languageclient/node';

export const languageId = 'haversack';

/** The server as a process of its own; it is started again when it ends unasked. */
export function createClient(context: vscode.ExtensionContext): LanguageClient {
    const module = context.asAbsolutePath('dist/node-server.cjs');
    return new LanguageClient('haversack', 'Haversack', {
        run: { module, transport: TransportKind.ipc },
        debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009', '--enable-source-maps'] } }
    }, {
        documentSelector: [{ scheme: 'file', language: languageId }, { scheme: 'untitled', language: languageId }],
        // What may stand behind a lens.
        initializationOptions: { trusted: vscode.workspace.isTrusted, commands: ['haversack.brief.openLesson', 'haversack.term.open', 'haversack.showChanges'] },
        connectionOptions: { maxRestartCount: 10 }
    });
}

/** Says how the server is in the editor's language status, where nobody is interrupted by it. */
export function showStatus(client: LanguageClient): vscode.Disposable {
    const item = vscode.languages.createLanguageStatusItem('haversack.status', { language: languageId });
    item.name = 'Haversack';
    const show = (state: State): void => {
        item.busy = state === State.Starting;
        item.severity = state === State.Stopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        item.text = state === State.Running ? vscode.l10n.t('All files are read')
            : state === State.Starting ? vscode.l10n.t('Reading the files')
                : vscode.l10n.t('Checks and brief have stopped');
        item.command = state === State.Stopped ? { command: 'haversack.restart', title: vscode.l10n.t('Start again') } : undefined;
        void vscode.commands.executeCommand('setContext', 'haversack.running', state === State.Running);
    };
    show(client.state);
    return vscode.Disposable.from(item, client.onDidChangeState(({ newState }) => show(newState)));
}
