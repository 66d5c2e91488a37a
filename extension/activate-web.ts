import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions } from './client-options.js';
import { FileFeed } from './feed-files.js';
import { ServerWorker } from './server-worker.js';
import { startExtension } from './start.js';

let client: LanguageClient | undefined;
let worker: ServerWorker | undefined;

/** The server as a worker of the browser; there is no disk, so all files are sent to it. */
export function activate(context: vscode.ExtensionContext): void {
    const readsByItself = (): boolean => false;
    const running = new ServerWorker(vscode.Uri.joinPath(context.extensionUri, 'dist/worker-server.js').toString(true));
    worker = running;
    client = new LanguageClient('haversack', 'Haversack', () => running.start(), clientOptions(readsByItself));
    context.subscriptions.push(new FileFeed(client, readsByItself));
    startExtension(context, client);
}

export async function deactivate(): Promise<void> {
    try {
        await client?.dispose();
    } finally {
        worker?.end();
    }
}
