import { DefaultLanguageServer } from 'langium/lsp';
import { CodeActionKind, type InitializedParams, type InitializeParams, type InitializeResult } from 'vscode-languageserver-protocol';
import { askForSettings } from './asked-settings.js';
import { addedCapabilities } from './editing-requests.js';
import { diagnosticCapabilities } from './pull-diagnostics.js';

/** Announces the kinds of its code actions: without them an editor does not offer to mend with one key. */
export class HaversackLanguageServer extends DefaultLanguageServer {
    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const result = super.buildInitializeResult(params);
        result.capabilities.codeActionProvider = { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] };
        Object.assign(result.capabilities, addedCapabilities, diagnosticCapabilities(params));
        result.capabilities.completionProvider = { ...result.capabilities.completionProvider, resolveProvider: true };
        result.capabilities.workspace = { ...result.capabilities.workspace, workspaceFolders: { supported: true, changeNotifications: true } };
        return result;
    }

    protected override fireInitializedOnDefaultServices(params: InitializedParams): void {
        const { lsp: { Connection }, workspace: { WorkspaceManager } } = this.services;
        if (!Connection) return super.fireInitializedOnDefaultServices(params);
        askForSettings(Connection, this.services, params);
        WorkspaceManager.initialized(params).catch((error: unknown) => Connection.console.error(`The files could not be read: ${String(error)}`));
    }
}
