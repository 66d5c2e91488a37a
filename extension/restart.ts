import * as vscode from 'vscode';
import type { BaseLanguageClient, TextDocumentFilter } from 'vscode-languageclient';
import { isProgrammeFile, languageId, programmeSchemes } from './client-options.js';

/** Ends the server, if it still listens, and starts it again. */
export async function restart(client: BaseLanguageClient): Promise<void> {
    try {
        if (client.needsStop()) await client.stop();
    } catch {
        // A server that has died does not answer; the client has let go of it all the same.
    }
    await client.start();
}

/** The client reads which files are its own when it starts, so it starts again when one lies in a new kind of place. */
export function followSchemes(client: BaseLanguageClient): vscode.Disposable {
    const selector = client.clientOptions.documentSelector as TextDocumentFilter[];
    const look = (): void => {
        const added = programmeSchemes().filter(scheme => !selector.some(filter => filter.scheme === scheme));
        if (added.length === 0) return;
        selector.push(...added.map(scheme => ({ scheme, language: languageId })));
        if (client.isRunning()) void restart(client);
    };
    return vscode.Disposable.from(
        vscode.workspace.onDidChangeWorkspaceFolders(look),
        vscode.workspace.onDidOpenTextDocument(document => { if (isProgrammeFile(document)) look(); })
    );
}
