import { startLanguageServer } from 'langium/lsp';
import type { FileSystemProvider } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { addBriefRequests } from './workspace/brief-requests.js';
import { addImportRequests } from './workspace/import-requests.js';
import { IdleChecks } from './workspace/idle-checks.js';
import { followNamedFiles } from './workspace/named-files.js';
import { createServerServices } from './workspace/services.js';
import { followSeveritySettings } from './workspace/severity-settings.js';
import { addTermRequests } from './workspace/term-requests.js';

/** Wires the language's services to a connection. The entries differ only in their connection and file system. */
export function startServer(connection: Connection, fileSystemProvider: () => FileSystemProvider, reader?: AttachmentReader): ReturnType<typeof createServerServices> {
    const services = createServerServices({ connection, fileSystemProvider }, reader);
    const { shared, haversack } = services;
    // Every file is checked once at the start, or the first keystroke would pay for all of them.
    shared.workspace.WorkspaceManager.initialBuildOptions = { validation: true };
    haversack.client.listen();
    addBriefRequests(connection, shared, haversack);
    addTermRequests(connection, shared, haversack);
    addImportRequests(connection, shared, haversack);
    followNamedFiles(shared, haversack);
    followSeveritySettings(shared, haversack, new IdleChecks(shared, haversack));
    startLanguageServer(shared);
    return services;
}
