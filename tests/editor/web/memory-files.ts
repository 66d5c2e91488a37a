// An extension of the tests' own: a folder that lies nowhere but in memory, as a folder of a web site does. The test's server has the files at
// the start, hears what is written, and tells of what somebody else changes.
import * as vscode from 'vscode';

/** Absent for what is gone; a folder ends with a slash. */
export interface MemoryChange {
    path: string;
    base64?: string;
}

export function activate(context: vscode.ExtensionContext): void {
    const files = new MemoryFiles(context.extensionUri.with({ path: '/files' }).toString(true));
    context.subscriptions.push(files, vscode.workspace.registerFileSystemProvider('memory', files, { isCaseSensitive: true }));
    void files.follow();
}

class MemoryFiles implements vscode.FileSystemProvider, vscode.Disposable {
    private readonly files = new Map<string, Uint8Array>();
    private readonly folders = new Set<string>(['/', '/first-steps']);
    private readonly changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
    private readonly ready: Promise<void>;
    private going = true;
    readonly onDidChangeFile = this.changed.event;

    constructor(private readonly site: string) {
        this.ready = this.load();
    }

    private async load(): Promise<void> {
        const all = await (await fetch(`${this.site}/all`)).json() as MemoryChange[];
        for (const { path, base64 } of all) this.put(path, bytesOf(base64!));
    }

    /** Takes up changes from outside, each request waiting for the next one. */
    async follow(): Promise<void> {
        await this.ready;
        while (this.going) {
            const changes = await (await fetch(`${this.site}/changes`)).json() as MemoryChange[];
            this.changed.fire(changes.flatMap(({ path, base64 }) => (base64 === undefined ? this.take(path) : this.put(path, bytesOf(base64)))));
        }
    }

    private put(path: string, bytes: Uint8Array): vscode.FileChangeEvent[] {
        const type = this.files.has(path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
        const events: vscode.FileChangeEvent[] = [];
        for (let end = path.indexOf('/', 1); end > 0; end = path.indexOf('/', end + 1)) {
            const folder = path.slice(0, end);
            // As on most systems, a new folder is told of without what lies in it.
            if (!this.folders.has(folder)) events.push({ type: vscode.FileChangeType.Created, uri: uriOf(folder) });
            this.folders.add(folder);
        }
        this.files.set(path, bytes);
        return events.length > 0 ? events.slice(0, 1) : [{ type, uri: uriOf(path) }];
    }

    private take(path: string): vscode.FileChangeEvent[] {
        for (const one of [...this.files.keys(), ...this.folders]) {
            if (one !== path && !one.startsWith(`${path}/`)) continue;
            this.files.delete(one);
            this.folders.delete(one);
        }
        return [{ type: vscode.FileChangeType.Deleted, uri: uriOf(path) }];
    }

    private async tell(change: MemoryChange): Promise<void> {
        await fetch(`${this.site}/written`, { method: 'POST', body: JSON.stringify(change) });
    }

    watch(): vscode.Disposable {
        return new vscode.Disposable(() => undefined);
    }

    async stat({ path }: vscode.Uri): Promise<vscode.FileStat> {
        await this.ready;
        const bytes = this.files.get(path);
        if (bytes) return { type: vscode.FileType.File, ctime: 0, mtime: 0, size: bytes.length };
        if (this.folders.has(path)) return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
        throw vscode.FileSystemError.FileNotFound(path);
    }

    async readDirectory({ path }: vscode.Uri): Promise<[string, vscode.FileType][]> {
        await this.ready;
        const inside = (one: string): boolean => one.startsWith(`${path}/`) && !one.slice(path.length + 1).includes('/');
        return [
            ...[...this.folders].filter(inside).map((one): [string, vscode.FileType] => [one.slice(path.length + 1), vscode.FileType.Directory]),
            ...[...this.files.keys()].filter(inside).map((one): [string, vscode.FileType] => [one.slice(path.length + 1), vscode.FileType.File])
        ];
    }

    async readFile({ path }: vscode.Uri): Promise<Uint8Array> {
        await this.ready;
        const bytes = this.files.get(path);
        if (!bytes) throw vscode.FileSystemError.FileNotFound(path);
        return bytes;
    }

    async writeFile({ path }: vscode.Uri, bytes: Uint8Array): Promise<void> {
        this.changed.fire(this.put(path, bytes));
        await this.tell({ path, base64: btoa(String.fromCharCode(...bytes)) });
    }

    async delete({ path }: vscode.Uri): Promise<void> {
        this.changed.fire(this.take(path));
        await this.tell({ path });
    }

    async rename(from: vscode.Uri, to: vscode.Uri): Promise<void> {
        for (const [path, bytes] of [...this.files]) {
            if (path !== from.path && !path.startsWith(`${from.path}/`)) continue;
            await this.writeFile(uriOf(to.path + path.slice(from.path.length)), bytes);
        }
        await this.delete(from);
    }

    createDirectory({ path }: vscode.Uri): void {
        this.folders.add(path);
        this.changed.fire([{ type: vscode.FileChangeType.Created, uri: uriOf(path) }]);
    }

    dispose(): void {
        this.going = false;
    }
}

const uriOf = (path: string): vscode.Uri => vscode.Uri.from({ scheme: 'memory', path });

function bytesOf(base64: string): Uint8Array {
    return Uint8Array.from(atob(base64), character => character.charCodeAt(0));
}
