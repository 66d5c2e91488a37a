import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { filesNotification, largestNamedFile, wantedFileRequest, type FedFile, type FilesParams } from '@haversack/server/protocol/files';
import { base64 } from './base64.js';
import { filesIn, named, readAtOnce } from './files-in.js';
import { programmeFile } from './programme-file.js';

const pattern = '**/*.{lesson,kit,course,ics,ICS,ical,ICAL,icalendar,ICALENDAR,json,JSON}';

/** So much is sent in one message, in bytes; a larger file goes by itself. */
const messageSize = 512 * 1024;

/** Sends the server the files that it cannot read by itself: all when it starts, later those that change. */
export class FileFeed implements vscode.Disposable {
    private readonly subscriptions: vscode.Disposable[];
    private watchers: vscode.Disposable[] = [];
    /** What the server has been told of, by address. */
    private sent = new Set<string>();
    /** One after another, each as it is then: so an older look never comes after a newer one. */
    private queue: Promise<void> = Promise.resolve();
    private readonly due = new Map<string, vscode.Uri>();

    /** @param reads whether the server reads files of a scheme by itself */
    constructor(private readonly client: BaseLanguageClient, private readonly reads: (scheme: string) => boolean) {
        const wanted = client.onRequest(wantedFileRequest, (given: { uri?: unknown }) => this.wantedFile(given?.uri));
        this.subscriptions = [
            wanted,
            client.onDidChangeState(({ newState }) => { if (newState === State.Running) this.sendAll(); }),
            vscode.workspace.onDidChangeWorkspaceFolders(() => this.followFolders()),
            vscode.workspace.onDidCreateFiles(({ files }) => this.lookAt(files)),
            vscode.workspace.onDidDeleteFiles(({ files }) => this.lookAt(files)),
            vscode.workspace.onDidRenameFiles(({ files }) => this.lookAt(files.flatMap(({ oldUri, newUri }) => [oldUri, newUri])))
        ];
    }

    dispose(): void {
        vscode.Disposable.from(...this.subscriptions, ...this.watchers).dispose();
    }

    private folders(): vscode.Uri[] {
        return (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri).filter(({ scheme }) => !this.reads(scheme));
    }

    private isOurs(uri: vscode.Uri): boolean {
        return !this.reads(uri.scheme) && vscode.workspace.getWorkspaceFolder(uri) !== undefined;
    }

    private sendAll(): void {
        this.sent = new Set();
        this.watch();
        this.then(async () => {
            await this.sendFolders(this.folders());
            await this.send({ whole: true });
        });
    }

    private followFolders(): void {
        this.watch();
        this.then(async () => {
            const gone = [...this.sent].filter(address => !this.isOurs(vscode.Uri.parse(address)));
            await this.sendGone(gone);
            await this.sendFolders(this.folders());
        });
    }

    /** Nothing is watched where the server reads everything by itself. */
    private watch(): void {
        vscode.Disposable.from(...this.watchers).dispose();
        if (this.folders().length === 0) {
            this.watchers = [];
            return;
        }
        const files = vscode.workspace.createFileSystemWatcher(pattern);
        // A folder that comes or goes is told of without what lies in it.
        const anything = vscode.workspace.createFileSystemWatcher('**', false, true, false);
        const look = (uri: vscode.Uri): void => this.lookAt([uri]);
        this.watchers = [files, anything, files.onDidCreate(look), files.onDidChange(look), files.onDidDelete(look), anything.onDidCreate(look), anything.onDidDelete(look)];
    }

    /** Something may have happened there: a file or a folder, which is sent as it is when its turn comes. */
    private lookAt(uris: readonly vscode.Uri[]): void {
        for (const uri of uris) if (this.isOurs(uri)) this.due.set(uri.toString(), uri);
        this.then(async () => {
            const looked = [...this.due.values()];
            this.due.clear();
            for (const uri of looked) await this.lookAgain(uri);
        });
    }

    private async lookAgain(uri: vscode.Uri): Promise<void> {
        const type = await typeOf(uri);
        const before = [...this.sent].filter(address => address === uri.toString() || address.startsWith(`${uri.toString()}/`));
        if (type === undefined) return this.sendGone(before);
        const there = await filesIn(uri, type);
        await this.sendGone(before.filter(address => !there.some(file => file.toString() === address)));
        await this.sendFiles(there);
    }

    private async sendFolders(folders: readonly vscode.Uri[]): Promise<void> {
        for (const folder of folders) await this.sendFiles(await filesIn(folder, vscode.FileType.Directory));
    }

    private async sendFiles(uris: readonly vscode.Uri[]): Promise<void> {
        let files: FedFile[] = [];
        let size = 0;
        for (let at = 0; at < uris.length; at += readAtOnce) {
            for (const file of await Promise.all(uris.slice(at, at + readAtOnce).map(uri => fileAt(uri)))) {
                this.sent.add(file.uri);
                files.push(file);
                size += file.bytes?.length ?? 0;
                if (size < messageSize) continue;
                await this.send({ files });
                files = [];
                size = 0;
            }
        }
        if (files.length > 0) await this.send({ files });
    }

    private async sendGone(gone: string[]): Promise<void> {
        for (const address of gone) this.sent.delete(address);
        if (gone.length > 0) await this.send({ gone });
    }

    /** A server that has ended meanwhile is sent everything when it runs again. */
    private async send(params: FilesParams): Promise<void> {
        if (this.client.state === State.Running) await this.client.sendNotification(filesNotification, params);
    }

    private then(work: () => Promise<void>): void {
        this.queue = this.queue.then(work).catch((error: unknown) => this.client.error(vscode.l10n.t('Files of the programme could not be sent to its checks.'), error, false));
    }

    /** Only what a programme may name, and only from the folders that are open. */
    private async wantedFile(address: unknown): Promise<FedFile | null> {
        if (typeof address !== 'string') return null;
        const uri = vscode.Uri.parse(address);
        if (!named.test(uri.path) || uri.path.split('/').includes('..') || !this.isOurs(uri)) return null;
        try {
            const { size, type } = await vscode.workspace.fs.stat(uri);
            if (!(type & vscode.FileType.File)) return null;
            return size > largestNamedFile ? { uri: address, wrong: 'too-large' } : { uri: address, bytes: base64(await vscode.workspace.fs.readFile(uri)) };
        } catch (error) {
            return error instanceof vscode.FileSystemError && error.code === 'FileNotFound' ? null : { uri: address, wrong: 'unreadable' };
        }
    }
}

/** A programme's own file with what it holds, any other by its name. */
async function fileAt(uri: vscode.Uri): Promise<FedFile> {
    const address = uri.toString();
    if (!programmeFile.test(uri.path)) return { uri: address };
    try {
        return { uri: address, bytes: base64(await vscode.workspace.fs.readFile(uri)) };
    } catch {
        return { uri: address, wrong: 'unreadable' };
    }
}

async function typeOf(uri: vscode.Uri): Promise<vscode.FileType | undefined> {
    try {
        return (await vscode.workspace.fs.stat(uri)).type;
    } catch {
        return undefined;
    }
}
