import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import type { HaversackServerServices } from './services.js';
import type { HaversackUpdates } from './updates.js';

/** Opens and closes programmes as the client opens and closes their folders. */
export function followFolders(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    const { LanguageServer, DocumentUpdateHandler } = shared.lsp;
    let tellsOfFolders = false;
    LanguageServer.onInitialize(({ capabilities }) => { tellsOfFolders = capabilities.workspace?.workspaceFolders === true; });
    LanguageServer.onInitialized(() => {
        if (!tellsOfFolders) return;
        connection.workspace.onDidChangeWorkspaceFolders(event => (DocumentUpdateHandler as HaversackUpdates).didChangeFolders(event));
    });
    shared.workspace.DocumentBuilder.onUpdate(() => services.validation.DocumentValidator.forgetClosed());
}
