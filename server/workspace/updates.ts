import { URI, type FileSystemProvider, type LangiumDocuments, type ServiceRegistry } from 'langium';
import { DefaultDocumentUpdateHandler, type LangiumSharedServices } from 'langium/lsp';
import {
    DidChangeWatchedFilesNotification, FileChangeType, WatchKind,
    type DidChangeWatchedFilesParams, type FileEvent, type FileRename, type FileSystemWatcher, type TextDocumentChangeEvent, type WorkspaceFoldersChangeEvent
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { attachmentEndings, endsAs } from '@haversack/language/attachments/endings';
import { addressOf, isIn } from '@haversack/language/linking/programmes';
import type { NameIndex } from '@haversack/language/linking/name-index';
import { wish } from './asked-settings.js';
import type { HaversackBuilder } from './builder.js';
import type { ProgrammeFolders } from './programme-files.js';

/** Calendars and frameworks: whoever follows those that a programme names hears of them. They are no documents of the language. */
const otherEndings = Object.values(attachmentEndings).flat().flatMap(ending => [ending, ending.toUpperCase()]);

/** Files to be read, and files that are of no programme any more. */
interface Update {
    changed: Iterable<string>;
    deleted: Iterable<string>;
}

/** What happens to a file in the editor and outside it. While a file is open, the editor's text counts; else the disk's. */
export class HaversackUpdates extends DefaultDocumentUpdateHandler {
    private readonly openFiles: LangiumSharedServices['workspace']['TextDocuments'];
    private readonly builder: HaversackBuilder;
    private readonly disk: FileSystemProvider;
    private readonly folders: ProgrammeFolders;
    private readonly documents: LangiumDocuments;
    private readonly registry: ServiceRegistry;
    private readonly index: NameIndex;

    constructor(services: LangiumSharedServices) {
        super(services);
        const { workspace } = services;
        this.openFiles = workspace.TextDocuments;
        this.builder = workspace.DocumentBuilder as HaversackBuilder;
        this.disk = workspace.FileSystemProvider;
        this.folders = workspace.WorkspaceManager as ProgrammeFolders;
        this.documents = workspace.LangiumDocuments;
        this.index = workspace.IndexManager as NameIndex;
        this.registry = services.ServiceRegistry;
    }

    /**
     * Listens to our own files and to those of the kinds that they name. Of all else only that something came or went: a folder that is moved or
     * deleted with all that lies in it may be told of as one thing, and no pattern means folders alone.
     */
    protected override getWatchers(): FileSystemWatcher[] {
        return [
            { globPattern: '**/*.{lesson,kit,course}' }, { globPattern: `**/*.{${otherEndings.join(',')}}` },
            { globPattern: '**/*', kind: WatchKind.Create | WatchKind.Delete }
        ];
    }

    protected override registerFileWatcher(services: LangiumSharedServices): void {
        wish(services.lsp.Connection?.client.register(DidChangeWatchedFilesNotification.type, { watchers: this.getWatchers() }));
    }

    protected override fireDocumentUpdate(changed: URI[], deleted: URI[]): void {
        this.builder.announceUpdate();
        // Whatever goes wrong in one build must not end the server: nobody else hears of it.
        this.workspaceManager.ready.then(() => this.workspaceLock.write(token => this.builder.update(changed, deleted, token)))
            .catch((error: unknown) => console.error('A change could not be taken up:', error));
    }

    /** Text that was never saved goes with the editor's tab, and so does a file that is not of a programme's folder. */
    didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
        const uri = URI.parse(document.uri);
        if (this.folders.isWithin(uri) && this.disk.existsSync(uri)) this.fireDocumentUpdate([uri], []);
        else this.fireDocumentUpdate([], [uri]);
    }

    /** Files and folders that came, went or changed on the disk, as it is when they are looked at. */
    override didChangeWatchedFiles({ changes }: DidChangeWatchedFilesParams): void {
        this.onWatchedFilesChangeEmitter.fire({ changes });
        const ours = changes.filter(change => this.concernsUs(change));
        if (ours.length > 0) this.updateLater(() => this.asOnDisk(ours));
    }

    /** Files and folders that the editor has moved. What was open there is opened anew under its new name, with its text. */
    didRenameFiles(files: readonly FileRename[]): void {
        const gone = files.map(({ oldUri }): FileEvent => ({ uri: oldUri, type: FileChangeType.Deleted }));
        const come = files.map(({ newUri }): FileEvent => ({ uri: newUri, type: FileChangeType.Created }));
        this.onWatchedFilesChangeEmitter.fire({ changes: [...gone, ...come] });
        this.updateLater(async () => {
            const { changed, deleted } = await this.asOnDisk(come.filter(change => this.concernsUs(change)));
            return { changed, deleted: [...deleted, ...gone.flatMap(({ uri }) => this.knownIn(uri))] };
        });
    }

    /** Folders are opened and closed while the server runs. */
    didChangeFolders(event: WorkspaceFoldersChangeEvent): void {
        this.updateLater(async () => {
            const { programmes } = this.index;
            const before = this.documents.all.toArray().map(({ uri }) => ({ uri, programme: programmes.of(uri) }));
            this.folders.open(event);
            this.builder.announceOtherProgrammes();
            const found = await Promise.all(event.added.map(({ uri }) => this.filesIn(URI.parse(uri))));
            const gone = before.filter(({ uri }) => !this.folders.isWithin(uri) && !this.isOpen(uri.toString()));
            const moved = before.filter(({ uri, programme }) => programmes.of(uri) !== programme);
            const deleted = new Set(gone.map(({ uri }) => uri.toString()));
            const isNew = (uri: string): boolean => !this.documents.hasDocument(URI.parse(uri));
            return { changed: [...found.flat().filter(isNew), ...moved.map(({ uri }) => uri.toString()).filter(uri => !deleted.has(uri))], deleted };
        });
    }

    /** Looks when all that came before has been taken up; requests that come from now on wait for it. */
    private updateLater(look: () => Promise<Update>): void {
        this.builder.announceUpdate();
        this.workspaceManager.ready.then(() => this.workspaceLock.write(async token => {
            const { changed, deleted } = await look().catch((): Update => ({ changed: [], deleted: [] }));
            await this.builder.update([...new Set(changed)].map(uri => URI.parse(uri)), [...new Set(deleted)].map(uri => URI.parse(uri)), token);
        })).catch((error: unknown) => console.error('A change of files could not be taken up:', error));
    }

    /** Whether anything may have come of it for a programme; what other tools write beside the programme is passed over at once. */
    private concernsUs({ uri: address, type }: FileEvent): boolean {
        const uri = URI.parse(address);
        if (endsAs(address)) return false;
        if (this.knownIn(address).length > 0) return true;
        if (type === FileChangeType.Deleted || !this.folders.isWithin(uri)) return false;
        return this.registry.hasServices(uri) || (type === FileChangeType.Created && this.kindOf(uri) === 'folder');
    }

    private async asOnDisk(changes: readonly FileEvent[]): Promise<Update> {
        const changed = new Set<string>();
        const deleted = new Set<string>();
        const wholeFolders = new Set(changes.filter(({ type }) => type !== FileChangeType.Changed).map(({ uri }) => addressOf(uri)));
        for (const address of new Set(changes.map(({ uri }) => addressOf(uri)))) {
            const uri = URI.parse(address);
            const kind = this.kindOf(uri);
            const there = kind === 'file' && this.folders.isWithin(uri) ? [address]
                : kind === 'folder' && wholeFolders.has(address) ? await this.filesIn(uri) : [];
            for (const one of there) changed.add(one);
            for (const known of this.knownIn(address)) {
                if (this.isOpen(known)) changed.add(known);
                else if (!changed.has(known) && (kind !== 'folder' || wholeFolders.has(address) || known === address)) deleted.add(known);
            }
        }
        return { changed, deleted: [...deleted].filter(uri => !changed.has(uri)) };
    }

    private kindOf(uri: URI): 'file' | 'folder' | undefined {
        try {
            const { isDirectory } = this.disk.statSync(uri);
            return isDirectory ? 'folder' : 'file';
        } catch {
            return undefined;
        }
    }

    /** Files of programmes in a folder; of one that holds more than the open folders, only what lies in those: nobody asked for the rest of the disk. */
    private async filesIn(folder: URI): Promise<string[]> {
        const open = (this.folders.workspaceFolders ?? []).map(({ uri }) => URI.parse(uri));
        const searched = this.folders.isWithin(folder) ? [folder] : open.filter(root => isIn(addressOf(root), addressOf(folder)));
        const files = (await Promise.all(searched.map(root => this.folders.searchFolder(root)))).flat();
        return files.filter(uri => this.folders.isWithin(uri)).map(uri => uri.toString());
    }

    /** Files of programmes at an address or below it. */
    private knownIn(address: string): string[] {
        return this.documents.getDocuments(URI.parse(addressOf(address))).map(({ uri }) => uri.toString());
    }

    private isOpen(uri: string): boolean {
        return this.openFiles.get(URI.parse(uri)) !== undefined;
    }
}
