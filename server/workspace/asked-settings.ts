import type { Connection } from 'vscode-languageserver';
import { DidChangeConfigurationNotification, type InitializedParams } from 'vscode-languageserver-protocol';
import type { LangiumSharedServices } from 'langium/lsp';

/** Nobody waits for the answer to a wish: a client that refuses it goes without. */
export function wish(asked: Promise<unknown> | undefined): void {
    asked?.catch(() => undefined);
}

/**
 * Asks the client for the person's settings. One that refuses to tell them, or tells something else than a list, has none: else whatever
 * waits for settings would wait for ever, and a refusal that nobody hears ends the process.
 */
export function askForSettings(connection: Connection, services: LangiumSharedServices, params: InitializedParams): void {
    wish(services.workspace.ConfigurationProvider.initialized({
        ...params,
        register: options => wish(connection.client.register(DidChangeConfigurationNotification.type, options)),
        fetchConfiguration: items => connection.workspace.getConfiguration(items).then(settings => (Array.isArray(settings) ? settings : []), () => [])
    }));
}
