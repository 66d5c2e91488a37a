import type { LangiumSharedServices } from 'langium/lsp';
import { CodeLensRefreshRequest, InlayHintRefreshRequest, SemanticTokensRefreshRequest, type InitializeParams } from 'vscode-languageserver-protocol';
import type { Today } from './today.js';

/** What the client has said that it can do, or wants, beyond what Langium asks. */
export class ClientWishes {
    /** The person trusts what lies in the workspace: only then other programs, such as git, look at it. */
    trusts = false;
    refreshesLenses = false;
    refreshesHints = false;
    refreshesTokens = false;
    takesSnippets = false;
    /** It marks a part of a line by its place in the whole. */
    takesLabelOffsets = false;
    /** It turns Markdown into a page, so that a picture in it is seen. */
    showsPictures = false;
    /** Commands of its own that may stand behind a lens; a client that names none gets lenses that only tell. */
    private commands: ReadonlySet<string> = new Set();

    constructor(private readonly shared: LangiumSharedServices, private readonly today: Today) {}

    /** Hears what the client says when it starts. */
    listen(): void {
        this.shared.lsp.LanguageServer.onInitialize(params => this.read(params));
    }

    has(command: string): boolean {
        return this.commands.has(command);
    }

    /** A switch under `haversack` in the settings; on until somebody switches it off. */
    async isOn(setting: string): Promise<boolean> {
        return await this.shared.workspace.ConfigurationProvider.getConfiguration('haversack', setting) !== false;
    }

    /** Tells the client that the plan has changed. */
    askAgain(): void {
        if (this.refreshesLenses) this.tell(CodeLensRefreshRequest.method);
        if (this.refreshesHints) this.tell(InlayHintRefreshRequest.method);
    }

    /** Tells the client that names lead elsewhere in files that nobody has typed in: it asks for their colours only where the text has changed. */
    askForTokensAgain(): void {
        if (this.refreshesTokens) this.tell(SemanticTokensRefreshRequest.method);
    }

    private tell(method: string): void {
        // A client that has gone meanwhile answers nothing.
        this.shared.lsp.Connection?.sendRequest(method).catch(() => undefined);
    }

    private read({ capabilities, initializationOptions }: InitializeParams): void {
        this.refreshesLenses = capabilities.workspace?.codeLens?.refreshSupport === true;
        this.refreshesHints = capabilities.workspace?.inlayHint?.refreshSupport === true;
        this.refreshesTokens = capabilities.workspace?.semanticTokens?.refreshSupport === true;
        const markdown = capabilities.general?.markdown;
        this.showsPictures = markdown?.parser === 'marked' || markdown?.allowedTags?.includes('img') === true;
        this.takesSnippets = capabilities.textDocument?.completion?.completionItem?.snippetSupport === true;
        this.takesLabelOffsets = capabilities.textDocument?.signatureHelp?.signatureInformation?.parameterInformation?.labelOffsetSupport === true;
        const options = initializationOptions as { commands?: unknown; today?: unknown; trusted?: unknown } | null | undefined;
        if (Array.isArray(options?.commands)) this.commands = new Set(options.commands.filter(command => typeof command === 'string'));
        this.trusts = options?.trusted === true;
        this.today.be(options?.today);
    }
}
