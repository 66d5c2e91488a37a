// A browser may lack Object.groupBy, which Langium and Chevrotain call, and has no setImmediate.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import 'core-js/actual/set-immediate.js';
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { startServer } from './start-server.js';
import { FedFiles } from './workspace/fed-files.js';
import { inOrder } from './workspace/message-order.js';

/** As much of a worker's own scope as is used here, so that the server's types stay free of a page's. */
interface WorkerScope {
    readonly name: string;
    readonly navigator: { readonly locks?: { request(name: string, hold: () => Promise<unknown>): Promise<unknown> } };
}

const scope = globalThis as unknown as WorkerScope & ConstructorParameters<typeof BrowserMessageReader>[0];

// Nothing else tells whoever started this worker that it has died: the browser then gives the lock away.
if (scope.name) scope.navigator.locks?.request(scope.name, () => new Promise(() => undefined)).catch(() => undefined);

const files = new FedFiles();
startServer(createConnection(ProposedFeatures.all, new BrowserMessageReader(scope), new BrowserMessageWriter(scope), { messageStrategy: inOrder() }), () => files, files, undefined, files);
