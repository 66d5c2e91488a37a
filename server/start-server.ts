import { startLanguageServer } from 'langium/lsp';
import type { FileSystemProvider } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { trustedNotification } from './protocol/pages.js';
import { addBriefRequests } from './workspace/brief-requests.js';
import { addEditingRequests } from './workspace/editing-requests.js';
import type { FedFiles } from './workspace/fed-files.js';
import { followFedFiles } from './workspace/follow-fed-files.js';
import type { FormerEditionReader } from './workspace/former-editions.js';
import { addImportRequests } from './workspace/import-requests.js';
import { IdleChecks } from './workspace/idle-checks.js';
import { followFolders } from './workspace/follow-folders.js';
import { refuseOutOfOrder } from './workspace/message-order.js';
import { followNamedFiles } from './workspace/named-files.js';
import { addPracticeRequests } from './workspace/practice-requests.js';
import { addProgrammeRequests } from './workspace/programme-requests.js';
import { PulledDiagnostics } from './workspace/pull-diagnostics.js';
import { createServerServices } from './workspace/services.js';
import { followSeveritySettings } from './workspace/severity-settings.js';
import { addChangesRequests } from './workspace/changes-requests.js';
import { addTermRequests } from './workspace/term-requests.js';

/** Wires the language's services to a connection. The entries differ only in their connection and file system. */
export function startServer(outer: Connection, fileSystemProvider: () => FileSystemProvider, reader?: AttachmentReader, history?: FormerEditionReader, sent?: FedFiles): ReturnType<typeof createServerServices> {
    const problems = new PulledDiagnostics(outer);
    const { connection } = problems;
    const services = createServerServices({ connection, fileSystemProvider }, reader, history);
    const { shared, haversack } = services;
    // Every file is checked once at the start, or the first keystroke would pay for all of them.
    shared.workspace.WorkspaceManager.initialBuildOptions = { validation: true };
    refuseOutOfOrder(connection);
    haversack.client.listen();
    problems.listen(shared);
    addBriefRequests(connection, shared, haversack);
    addTermRequests(connection, shared, haversack);
    addChangesRequests(connection, shared, haversack);
    addPracticeRequests(connection, shared, haversack);
    addImportRequests(connection, shared, haversack);
    addEditingRequests(connection, shared, haversack);
    addProgrammeRequests(connection, shared, haversack);
    followNamedFiles(shared, haversack);
    followFolders(connection, shared, haversack);
    if (sent) followFedFiles(connection, shared, haversack, sent);
    const idle = new IdleChecks(shared, haversack);
    followSeveritySettings(shared, haversack, idle);
    haversack.formerEditions.whenFound(() => idle.soonAnew());
    connection.onNotification(trustedNotification, () => {
        haversack.client.trusts = true;
        haversack.formerEditions.lookFromNow();
    });
    startLanguageServer(shared);
    return services;
}
