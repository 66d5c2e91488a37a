import { startLanguageServer } from 'langium/lsp';
import type { FileSystemProvider } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { addBriefRequests } from './workspace/brief-requests.js';
import { IdleChecks } from './workspace/idle-checks.js';
import { createServerServices } from './workspace/services.js';
import { followSeveritySettings } from './workspace/severity-settings.js';

/** Wires the language's services to a connection. The entries differ only in their connection and file system. */
export function startServer(connection: Connection, fileSystemProvider: () => FileSystemProvider): ReturnType<typeof createServerServices> {
    const services = createServerServices({ connection, fileSystemProvider });
    const { shared, haversack } = services;
    // Every file is checked once at the start, or the first keystroke would pay for all of them.
    shared.workspace.WorkspaceManager.initialBuildOptions = { validation: true };
    addBriefRequests(connection, shared, haversack);
    followSeveritySettings(shared, haversack, new IdleChecks(shared, haversack));
    startLanguageServer(shared);
    return services;
}
