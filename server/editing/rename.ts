import type { LangiumDocument } from 'langium';
import { DefaultRenameProvider } from 'langium/lsp';
import { LSPErrorCodes, ResponseError, type RenameParams, type WorkspaceEdit } from 'vscode-languageserver-protocol';
import { isName, nameFrom } from '@haversack/language/lexer/scan';

/** Renames a thing wherever it is named, in prose too. */
export class HaversackRename extends DefaultRenameProvider {
    override rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
        if (!isName(params.newName)) {
            const suggestion = nameFrom(params.newName);
            const hint = isName(suggestion) ? ` For example: ${suggestion}` : '';
            throw new ResponseError(LSPErrorCodes.RequestFailed, `Names are lower-case words with hyphens.${hint}`);
        }
        return super.rename(document, params);
    }
}
