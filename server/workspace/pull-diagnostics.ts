import { DocumentState, isOperationCancelled, UriUtils, type Cancellation } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { DiagnosticRefreshRequest, LSPErrorCodes, ResponseError, type Connection } from 'vscode-languageserver';
import type {
    Diagnostic, DocumentDiagnosticReport, InitializeParams, PublishDiagnosticsParams, ServerCapabilities, WorkspaceDiagnosticReport, WorkspaceDocumentDiagnosticReport
} from 'vscode-languageserver-protocol';

/** After the last problems that came in; those of one round come at once. */
const quietMilliseconds = 40;

/** What was last found in a file. */
interface Found {
    diagnostics: readonly Diagnostic[];
    text: string;
    resultId: string;
}

/**
 * True for a client that fetches problems and shows none that are sent. A client that does both, as most, is sent them: a check of one file may
 * change what is told of others, and the plan is looked at when typing rests, so what is found is known here first, and a client that fetches
 * would be told to fetch all again each time. To one client both ways at once would show every problem twice. A client that can do both and would
 * rather fetch says `diagnostics: "pull"` in its initialization options.
 */
function fetchesProblems({ capabilities: { textDocument }, initializationOptions }: InitializeParams): boolean {
    const wish = (initializationOptions as { diagnostics?: unknown } | null | undefined)?.diagnostics;
    return textDocument?.diagnostic !== undefined && (textDocument.publishDiagnostics === undefined || wish === 'pull');
}

/** What the server says of problems to this client. */
export function diagnosticCapabilities(params: InitializeParams): Pick<ServerCapabilities, 'diagnosticProvider'> {
    return fetchesProblems(params) ? { diagnosticProvider: { identifier: 'haversack', interFileDependencies: true, workspaceDiagnostics: true } } : {};
}

/**
 * The connection through which all problems go out: to a client that fetches them they are kept until it asks, in the same words and just as
 * complete. It is told to ask again when something has come that it has not seen.
 */
export class PulledDiagnostics {
    /** The connection for everybody who sends problems. */
    readonly connection: Connection;
    private fetches = false;
    private canAskAgain = false;
    private readonly found = new Map<string, Found>();
    private readonly unseen = new Set<string>();
    private rounds = 0;
    private timer: ReturnType<typeof setTimeout> | undefined;

    constructor(private readonly outer: Connection) {
        this.connection = Object.assign(Object.create(outer) as Connection, {
            sendDiagnostics: (params: PublishDiagnosticsParams) => (this.fetches ? this.keep(params) : outer.sendDiagnostics(params))
        });
    }

    /** Answers whoever fetches problems. */
    listen(shared: LangiumSharedServices): void {
        shared.lsp.LanguageServer.onInitialize(params => {
            this.fetches = fetchesProblems(params);
            this.canAskAgain = params.capabilities.workspace?.diagnostics?.refreshSupport === true;
        });
        const whenLookedAt = async <T>(token: Cancellation.CancellationToken, answer: () => T): Promise<T | ResponseError> => {
            try {
                await shared.workspace.WorkspaceManager.ready;
                await shared.workspace.DocumentBuilder.waitUntil(DocumentState.Validated, token);
            } catch (error) {
                if (isOperationCancelled(error)) return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request has been cancelled.');
                throw error;
            }
            return answer();
        };
        const { diagnostics } = this.outer.languages;
        diagnostics.on(({ textDocument, previousResultId }, token) => whenLookedAt(token, () => this.report(UriUtils.normalize(textDocument.uri), previousResultId)) as Promise<DocumentDiagnosticReport>);
        diagnostics.onWorkspace(({ previousResultIds }, token) => whenLookedAt(token, () => this.reportAll(previousResultIds)) as Promise<WorkspaceDiagnosticReport>);
    }

    private report(uri: string, before: string | undefined): DocumentDiagnosticReport {
        this.unseen.delete(uri);
        const found = this.found.get(uri);
        if (!found) return { kind: 'full', items: [] };
        const { resultId, diagnostics } = found;
        return before === resultId ? { kind: 'unchanged', resultId } : { kind: 'full', resultId, items: [...diagnostics] };
    }

    /** Files that are gone have no problems any more. */
    private reportAll(before: readonly { uri: string; value: string }[]): WorkspaceDiagnosticReport {
        const known = new Map(before.map(({ uri, value }) => [UriUtils.normalize(uri), value]));
        const files = new Set([...this.found.keys(), ...known.keys()]);
        return { items: [...files].map((uri): WorkspaceDocumentDiagnosticReport => ({ uri, version: null, ...this.report(uri, known.get(uri)) })) };
    }

    private keep({ uri, diagnostics }: PublishDiagnosticsParams): Promise<void> {
        const file = UriUtils.normalize(uri);
        const text = JSON.stringify(diagnostics);
        const before = this.found.get(file);
        if (before ? before.text !== text : diagnostics.length > 0) this.unseen.add(file);
        if (diagnostics.length === 0) this.found.delete(file);
        else if (before?.text !== text) this.found.set(file, { diagnostics, text, resultId: String(++this.rounds) });
        if (this.unseen.size > 0) this.askAgainSoon();
        return Promise.resolve();
    }

    /** What the client has fetched meanwhile it need not fetch again. */
    private askAgainSoon(): void {
        if (!this.canAskAgain) return;
        clearTimeout(this.timer);
        this.timer = setTimeout(() => {
            if (this.unseen.size === 0) return;
            this.unseen.clear();
            // A client that has gone meanwhile answers nothing.
            this.outer.sendRequest(DiagnosticRefreshRequest.method).catch(() => undefined);
        }, quietMilliseconds);
    }
}
