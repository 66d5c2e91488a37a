import * as vscode from 'vscode';
import type { BaseLanguageClient, TextDocumentFilter } from 'vscode-languageclient';
import { isProgrammeFile, languageId, programmeSchemes } from './client-options.js';

/** Ends the server, if it still listens, and starts it again; once after another, for a client that is just stopping cannot start. */
export class Restart {
    private last: Promise<void> = Promise.resolve();

    constructor(private readonly client: BaseLanguageClient) {}

    /** Never rejects: of a server that does not start the client and the status tell. */
    now(): Promise<void> {
        this.last = this.last.then(() => this.stopAndStart()).catch(() => undefined);
        return this.last;
    }

    private async stopAndStart(): Promise<void> {
        const { client } = this;
        try {
            // One that is just starting cannot be stopped yet.
            if (client.needsStop() && !client.isRunning()) await client.start();
            if (client.needsStop()) await client.stop();
        } catch {
            // A server that has died does not answer; the client has let go of it all the same.
        }
        await client.start();
    }
}

/** The client reads which files are its own when it starts, so it starts again when one lies in a new kind of place. */
export function followSchemes(client: BaseLanguageClient, restart: Restart): vscode.Disposable {
    const selector = client.clientOptions.documentSelector as TextDocumentFilter[];
    const look = (): void => {
        const added = programmeSchemes().filter(scheme => !selector.some(filter => filter.scheme === scheme));
        if (added.length === 0) return;
        selector.push(...added.map(scheme => ({ scheme, language: languageId })));
        if (client.needsStop()) void restart.now();
    };
    return vscode.Disposable.from(
        vscode.workspace.onDidChangeWorkspaceFolders(look),
        vscode.workspace.onDidOpenTextDocument(document => { if (isProgrammeFile(document)) look(); })
    );
}
