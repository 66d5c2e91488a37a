import { AstUtils, CstUtils, type AstNode, type LangiumDocument } from 'langium';
import { DefaultRenameProvider } from 'langium/lsp';
import { LSPErrorCodes, ResponseError, type RenameParams, type WorkspaceEdit } from 'vscode-languageserver-protocol';
import * as ast from '@haversack/language/generated/ast';
import { isName, nameFrom } from '@haversack/language/lexer/scan';
import type { NameIndex } from '@haversack/language/linking/name-index';
import type { HaversackServerServices } from '../workspace/services.js';

/** Renames a thing wherever it is named, in prose too. Refuses what would be no name, or the name of another thing of its kind. */
export class HaversackRename extends DefaultRenameProvider {
    constructor(private readonly services: HaversackServerServices) {
        super(services);
    }

    override rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
        if (!isName(params.newName)) {
            const suggestion = nameFrom(params.newName);
            const hint = isName(suggestion) ? ` For example: ${suggestion}` : '';
            throw new ResponseError(LSPErrorCodes.RequestFailed, `Names are lower-case words with hyphens.${hint}`);
        }
        const root = document.parseResult.value.$cstNode;
        const leaf = CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(params.position), this.grammarConfig.nameRegexp);
        const declared = leaf && this.references.findDeclarations(leaf)[0];
        if (declared && this.isTaken(params.newName, declared)) {
            const kind = ast.isProgrammeFile(declared.$container) ? declared.$type.toLowerCase() : 'part';
            throw new ResponseError(LSPErrorCodes.RequestFailed, `There is another ${kind} '${params.newName}'. Choose a name that is free.`);
        }
        return super.rename(document, params);
    }

    /** Lessons may teach the same word; other names differ among things of one kind, parts of one lesson, of one material. */
    private isTaken(name: string, declared: AstNode): boolean {
        if (ast.isTaughtWord(declared) || this.nameProvider.getName(declared) === name) return false;
        if (ast.isProgrammeFile(declared.$container)) {
            return (this.services.shared.workspace.IndexManager as NameIndex).elementsSeenFrom(declared, declared.$type).some(other => other.name === name);
        }
        return AstUtils.streamContents(declared.$container!).some(other => other.$containerProperty === declared.$containerProperty && this.nameProvider.getName(other) === name);
    }
}
