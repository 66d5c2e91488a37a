import type { Connection } from 'vscode-languageserver';
import { gitHistory } from './history/former-edition.js';
import { NodeAttachments } from './node-attachments.js';
import { NodeFiles } from './node-files.js';
import { startServer } from './start-server.js';
import { FedFiles } from './workspace/fed-files.js';
import { attachmentsByScheme, FilesByScheme } from './workspace/files-by-scheme.js';

/** The server where there is a disk: files of other places, which a client may send, stand beside those on it. */
export function startOnDisk(connection: Connection): ReturnType<typeof startServer> {
    const sent = new FedFiles();
    return startServer(connection, () => new FilesByScheme(new NodeFiles(), sent), attachmentsByScheme(new NodeAttachments(), sent), gitHistory, sent);
}
