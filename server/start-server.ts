import { startLanguageServer } from 'langium/lsp';
import type { FileSystemProvider } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { trustedNotification } from './protocol/pages.js';
import { addBriefRequests } from './workspace/brief-requests.js';
import type { FormerEditionReader } from './workspace/former-editions.js';
import { addImportRequests } from './workspace/import-requests.js';
import { IdleChecks } from './workspace/idle-checks.js';
import { followNamedFiles } from './workspace/named-files.js';
import { addPracticeRequests } from './workspace/practice-requests.js';
import { createServerServices } from './workspace/services.js';
import { followSeveritySettings } from './workspace/severity-settings.js';
import { addChangesRequests } from './workspace/changes-requests.js';
import { addTermRequests } from './workspace/term-requests.js';

/** Wires the language's services to a connection. The entries differ only in their connection and file system. */
export function startServer(connection: Connection, fileSystemProvider: () => FileSystemProvider, reader?: AttachmentReader, history?: FormerEditionReader): ReturnType<typeof createServerServices> {
    const services = createServerServices({ connection, fileSystemProvider }, reader, history);
    const { shared, haversack } = services;
    // Every file is checked once at the start, or the first keystroke would pay for all of them.
    shared.workspace.WorkspaceManager.initialBuildOptions = { validation: true };
    haversack.client.listen();
    addBriefRequests(connection, shared, haversack);
    addTermRequests(connection, shared, haversack);
    addChangesRequests(connection, shared, haversack);
    addPracticeRequests(connection, shared, haversack);
    addImportRequests(connection, shared, haversack);
    followNamedFiles(shared, haversack);
    const idle = new IdleChecks(shared, haversack);
    followSeveritySettings(shared, haversack, idle);
    haversack.formerEditions.whenFound(() => idle.soon());
    connection.onNotification(trustedNotification, () => {
        haversack.client.trusts = true;
        haversack.formerEditions.lookFromNow();
    });
    startLanguageServer(shared);
    return services;
}
