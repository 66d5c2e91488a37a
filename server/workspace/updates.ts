import { UriUtils, URI, type FileSystemProvider, type WorkspaceManager } from 'langium';
import { DefaultDocumentUpdateHandler, type LangiumSharedServices } from 'langium/lsp';
import { FileChangeType, type DidChangeWatchedFilesParams, type FileSystemWatcher, type TextDocumentChangeEvent } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { attachmentEndings, endsAs } from '@haversack/language/attachments/endings';
import type { HaversackBuilder } from './builder.js';

/** Calendars and frameworks: whoever follows those that a programme names hears of them. They are no documents of the language. */
const otherEndings = Object.values(attachmentEndings).flat().flatMap(ending => [ending, ending.toUpperCase()]);

/** What happens to a file in the editor and outside it. While a file is open, the editor's text counts; else the disk's. */
export class HaversackUpdates extends DefaultDocumentUpdateHandler {
    private readonly openFiles: LangiumSharedServices['workspace']['TextDocuments'];
    private readonly builder: HaversackBuilder;
    private readonly disk: FileSystemProvider;
    private readonly folders: WorkspaceManager;

    constructor(services: LangiumSharedServices) {
        super(services);
        this.openFiles = services.workspace.TextDocuments;
        this.builder = services.workspace.DocumentBuilder as HaversackBuilder;
        this.disk = services.workspace.FileSystemProvider;
        this.folders = services.workspace.WorkspaceManager;
    }

    /** Listens to our own files and to those of the kinds that they name: nothing that the tool writes wakes it. */
    protected override getWatchers(): FileSystemWatcher[] {
        return [{ globPattern: '**/*.{lesson,kit,course}' }, { globPattern: `**/*.{${otherEndings.join(',')}}` }];
    }

    protected override fireDocumentUpdate(changed: URI[], deleted: URI[]): void {
        this.builder.announceUpdate();
        super.fireDocumentUpdate(changed, deleted);
    }

    /** Text that was never saved goes with the editor's tab, and so does a file that is not of the programme's folders. */
    didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
        const uri = URI.parse(document.uri);
        const ours = (this.folders.workspaceFolders ?? []).some(folder => UriUtils.contains(folder.uri, uri));
        if (ours && this.disk.existsSync(uri)) this.fireDocumentUpdate([uri], []);
        else this.fireDocumentUpdate([], [uri]);
    }

    /** A file that is deleted on disk, alone or with its folder, stays in the programme for as long as it is open. */
    override didChangeWatchedFiles({ changes }: DidChangeWatchedFilesParams): void {
        this.onWatchedFilesChangeEmitter.fire({ changes });
        const ours = changes.filter(({ uri }) => !endsAs(uri));
        if (ours.length === 0) return;
        const deleted = [...new Set(ours.filter(({ type }) => type === FileChangeType.Deleted).map(({ uri }) => UriUtils.normalize(uri)))];
        const stillOpen = this.openFiles.keys().filter(uri => deleted.some(gone => uri === gone || uri.startsWith(`${gone}/`)));
        const changed = new Set([...ours.filter(({ type }) => type !== FileChangeType.Deleted).map(({ uri }) => uri), ...stillOpen]);
        this.fireDocumentUpdate([...changed].map(uri => URI.parse(uri)), deleted.map(uri => URI.parse(uri)));
    }
}
