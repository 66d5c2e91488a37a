import { DefaultLangiumDocumentFactory, DefaultWorkspaceManager, UriUtils, type FileSystemNode, type LangiumDocument, type URI } from 'langium';
import type { TextDocument } from 'vscode-languageserver-textdocument';

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
    override shouldIncludeEntry(entry: FileSystemNode): boolean {
        const name = UriUtils.basename(entry.uri);
        if (name.startsWith('.')) return false;
        return entry.isDirectory ? name !== 'node_modules' : entry.isFile && this.serviceRegistry.hasServices(entry.uri);
    }
}
