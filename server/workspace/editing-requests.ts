import { DocumentState, URI, isOperationCancelled, type Cancellation, type LangiumDocument } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { LSPErrorCodes, ResponseError, type Connection } from 'vscode-languageserver';
import type { ServerCapabilities } from 'vscode-languageserver-protocol';
import { resolveCompletion } from '../editing/completion-resolve.js';
import { linkedEditingRanges } from '../editing/linked-editing.js';
import { selectionRanges } from '../editing/selection-ranges.js';
import type { HaversackServerServices } from './services.js';

/** What the server can beside what Langium wires. */
export const addedCapabilities: ServerCapabilities = { selectionRangeProvider: true, linkedEditingRangeProvider: true, documentRangeFormattingProvider: { rangesSupport: true } };

/** Answers the requests of editors that Langium does not wire. One about a file that was closed meanwhile gets an empty answer. */
export function addEditingRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    const read = shared.workspace.LangiumDocuments;
    const about = async <T>(uri: string, state: DocumentState, token: Cancellation.CancellationToken, answer: (document: LangiumDocument) => T): Promise<T | ResponseError | undefined> => {
        try {
            await shared.workspace.WorkspaceManager.ready;
            await shared.workspace.DocumentBuilder.waitUntil(state, token);
        } catch (error) {
            if (isOperationCancelled(error)) return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request has been cancelled.');
            throw error;
        }
        const document = read.getDocument(URI.parse(uri));
        return document && answer(document);
    };
    connection.onSelectionRanges(async (params, token) =>
        await about(params.textDocument.uri, DocumentState.Parsed, token, document => selectionRanges(document, params, services.parser.Lexer.automaton)) ?? []);
    connection.languages.onLinkedEditingRange(async (params, token) =>
        await about(params.textDocument.uri, DocumentState.IndexedReferences, token, document => linkedEditingRanges(document, params.position, services)) ?? null);
    connection.onDocumentRangesFormatting(async (params, token) =>
        await about(params.textDocument.uri, DocumentState.Parsed, token, document => services.lsp.Formatter.formatDocumentRanges(document, params)) ?? []);
    connection.onCompletionResolve(async (item, token) => {
        const uri = (item.data as { uri?: unknown } | undefined)?.uri;
        if (typeof uri !== 'string') return item;
        return await about(uri, DocumentState.Linked, token, document => resolveCompletion(item, document, services)) ?? item;
    });
}
