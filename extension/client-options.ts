import * as vscode from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

export const languageId = 'haversack';

/**
 * What the client asks of the server and tells it when it starts, wherever the server runs.
 * @param reads whether the server reads files of a scheme by itself; any other is sent to it
 */
export function clientOptions(reads: (scheme: string) => boolean): LanguageClientOptions {
    return {
        documentSelector: programmeSchemes().map(scheme => ({ scheme, language: languageId })),
        initializationOptions: () => ({
            trusted: vscode.workspace.isTrusted, sendsFiles: true,
            // What may stand behind a lens.
            commands: ['haversack.brief.openLesson', 'haversack.term.open', 'haversack.showChanges']
        }),
        connectionOptions: { maxRestartCount: 10 },
        middleware: {
            workspace: {
                // Of files that are sent, the server hears with what they hold.
                didChangeWatchedFile: (event, next) => (reads(vscode.Uri.parse(event.uri).scheme) ? next(event) : Promise.resolve())
            }
        }
    };
}

/**
 * Where programmes lie: on the disk, not saved yet, and wherever else a folder is open or a file is that can be written. Copies that only show
 * something, such as one side of a comparison, are none of a programme.
 */
export function programmeSchemes(): string[] {
    const folders = (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
    const files = vscode.workspace.textDocuments.filter(isProgrammeFile).map(({ uri }) => uri.scheme);
    return [...new Set(['file', 'untitled', ...folders, ...files])];
}

export function isProgrammeFile(document: vscode.TextDocument): boolean {
    return document.languageId === languageId && vscode.workspace.fs.isWritableFileSystem(document.uri.scheme) === true;
}
