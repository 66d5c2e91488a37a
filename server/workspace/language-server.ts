import { DefaultLanguageServer } from 'langium/lsp';
import { CodeActionKind, type InitializeParams, type InitializeResult } from 'vscode-languageserver-protocol';

/** Announces the kinds of its code actions: without them an editor does not offer to mend with one key. */
export class HaversackLanguageServer extends DefaultLanguageServer {
    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const result = super.buildInitializeResult(params);
        result.capabilities.codeActionProvider = { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] };
        return result;
    }
}
