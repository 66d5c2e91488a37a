import { DefaultLangiumDocumentFactory, DefaultWorkspaceManager, UriUtils, URI, type FileSystemNode, type LangiumDocument, type WorkspaceFolder } from 'langium';
import type { InitializeParams } from 'vscode-languageserver-protocol';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { addressOf, isIn } from '@haversack/language/linking/programmes';

/** Reads files so that one that cannot be read, or has just gone, counts as empty and keeps nothing else from being read. */
export class ReadableFiles extends DefaultLangiumDocumentFactory {
    protected override getInitialText(uri: URI): Promise<string> {
        return this.textOnDisk(uri);
    }

    protected override getUpdatedText(document: LangiumDocument, textDocument: TextDocument | undefined): Promise<string> {
        return textDocument ? Promise.resolve(textDocument.getText()) : this.textOnDisk(document.uri);
    }

    private async textOnDisk(uri: URI): Promise<string> {
        try {
            return await this.fileSystemProvider.readFile(uri);
        } catch {
            return '';
        }
    }
}

/** The same folders as the command line: all but hidden ones and installed packages. */
export class ProgrammeFolders extends DefaultWorkspaceManager {
    /** A client that knows nothing of several folders names one. */
    override initialize(params: InitializeParams): void {
        super.initialize(params);
        const named = params.workspaceFolders === undefined && params.rootUri ? [{ name: '', uri: params.rootUri }] : this.folders;
        // One that is no address must not keep the others from being read.
        this.folders = Array.isArray(named) ? named.filter(({ uri }) => isAddress(uri)) : undefined;
    }

    override shouldIncludeEntry(entry: FileSystemNode): boolean {
        if (!isVisible(UriUtils.basename(entry.uri))) return false;
        return entry.isDirectory || (entry.isFile && this.serviceRegistry.hasServices(entry.uri));
    }

    /** True for what lies in an open folder and in none below it that is passed over, whether it is there or not. */
    isWithin(uri: URI): boolean {
        const address = addressOf(uri);
        return (this.folders ?? []).some(folder => {
            const root = addressOf(folder.uri);
            return isIn(address, root) && address.slice(root.length + 1).split('/').every(name => name === '' || isVisible(name));
        });
    }

    /** From now on other folders are open; what that does to files is for the caller to do. */
    open({ added, removed }: { added: readonly WorkspaceFolder[]; removed: readonly WorkspaceFolder[] }): void {
        const gone = new Set(removed.map(({ uri }) => addressOf(uri)));
        const left = (this.folders ?? []).filter(({ uri }) => !gone.has(addressOf(uri)));
        const known = new Set(left.map(({ uri }) => addressOf(uri)));
        this.folders = [...left, ...added.filter(({ uri }) => !known.has(addressOf(uri)))];
    }
}

function isAddress(uri: unknown): uri is string {
    try {
        return typeof uri === 'string' && URI.parse(uri).scheme !== '';
    } catch {
        return false;
    }
}

function isVisible(name: string): boolean {
    return !name.startsWith('.') && name !== 'node_modules';
}
