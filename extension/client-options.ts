import * as vscode from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

export const languageId = 'haversack';

/** What the client asks of the server and tells it when it starts, wherever the server runs. */
export function clientOptions(): LanguageClientOptions {
    return {
        documentSelector: [{ scheme: 'file', language: languageId }, { scheme: 'untitled', language: languageId }],
        // What may stand behind a lens.
        initializationOptions: { trusted: vscode.workspace.isTrusted, commands: ['haversack.brief.openLesson', 'haversack.term.open', 'haversack.showChanges'] },
        connectionOptions: { maxRestartCount: 10 }
    };
}
