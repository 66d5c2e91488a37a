import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions } from './client-options.js';
import { FileFeed } from './feed-files.js';
import { startExtension } from './start.js';

let client: LanguageClient | undefined;

/** The server as a process of its own; it is started again when it ends unasked. */
export function activate(context: vscode.ExtensionContext): void {
    const readsByItself = (scheme: string): boolean => scheme === 'file';
    const module = context.asAbsolutePath('dist/node-server.cjs');
    client = new LanguageClient('haversack', 'Haversack', {
        run: { module, transport: TransportKind.ipc },
        debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009', '--enable-source-maps'] } }
    }, clientOptions(readsByItself));
    context.subscriptions.push(new FileFeed(client, readsByItself));
    startExtension(context, client);
}

export async function deactivate(): Promise<void> {
    await client?.dispose();
}
