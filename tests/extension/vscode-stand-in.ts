/** As much of the editor's interface as the tests of the extension ask for, to be put in its place by `vi.mock('vscode', ...)`. */
import { URI, Utils } from 'vscode-uri';

/** What was told and asked, in order. */
export const told: [how: string, what: string][] = [];
/** Files by address, each with when it was written. */
export const files = new Map<string, { text: string; mtime: number }>();
export const given = { uiKind: 1, remoteName: undefined as string | undefined, opens: true, button: undefined as string | undefined, paper: 'printer' as unknown, l10n: (text: string): string => text };

export interface Disposes {
    dispose(): void;
}
/** Who listens to what, by the name of the event. */
export const listeners = new Map<string, Set<(event: unknown) => void>>();
export const fire = (name: string, event: unknown): void => { for (const listener of [...listeners.get(name) ?? []]) listener(event); };
const on = (name: string) => (listener: (event: unknown) => void): Disposes => {
    const own = listeners.get(name) ?? new Set();
    listeners.set(name, own.add(listener));
    return { dispose: () => { own.delete(listener); } };
};
/** Severities of the problems of each file, by address, and the files whose problems were asked for. */
export const problems = new Map<string, number[]>();
export const lookedAt: string[] = [];

export const resetStandIn = (): void => {
    told.length = lookedAt.length = 0;
    for (const all of [files, listeners, problems]) all.clear();
    window.activeTextEditor = undefined;
    Object.assign(given, { uiKind: 1, remoteName: undefined, opens: true, button: undefined, paper: 'printer', l10n: (text: string) => text });
};

const say = (how: string) => (what: string): Promise<string | undefined> => {
    told.push([how, what]);
    return Promise.resolve(given.button);
};

export const Uri = { joinPath: Utils.joinPath, parse: URI.parse, file: URI.file };
export const UIKind = { Desktop: 1, Web: 2 };
export const env = {
    language: 'en',
    get uiKind(): number { return given.uiKind; },
    get remoteName(): string | undefined { return given.remoteName; },
    openExternal: (uri: URI): Promise<boolean> => {
        told.push(['opened', uri.toString()]);
        return Promise.resolve(given.opens);
    }
};
export const l10n = { t: (text: string, ...args: unknown[]): string => given.l10n(text).replace(/\{(\d)\}/g, (whole, index: string) => String(args[Number(index)] ?? whole)) };
export class EventEmitter<T> {
    private readonly heard = new Set<(value: T) => void>();
    readonly event = (listener: (value: T) => void): Disposes => {
        this.heard.add(listener);
        return { dispose: () => { this.heard.delete(listener); } };
    };
    fire(value: T): void { for (const listener of this.heard) listener(value); }
    dispose(): void { this.heard.clear(); }
}
export class Disposable implements Disposes {
    constructor(readonly dispose: () => void) {}
    static from(...all: Disposes[]): Disposable { return new Disposable(() => all.forEach(one => one.dispose())); }
}
export const DiagnosticSeverity = { Error: 0, Warning: 1, Information: 2, Hint: 3 };
export const languages = {
    onDidChangeDiagnostics: on('problems'),
    getDiagnostics: (uri: URI): { severity: number }[] => {
        lookedAt.push(uri.toString());
        return (problems.get(uri.toString()) ?? []).map(severity => ({ severity }));
    }
};
export const window = { activeTextEditor: undefined as { document: { languageId: string; uri: URI } } | undefined, showQuickPick: <T>([first]: T[]): Promise<T | undefined> => Promise.resolve(first), showOpenDialog: (_: { defaultUri?: URI }): Promise<URI[] | undefined> => Promise.resolve(undefined), showInformationMessage: say('information'), showErrorMessage: say('error'), setStatusBarMessage: say('status') };
export const commands = { executeCommand: (name: string, ...args: unknown[]): Promise<void> => { told.push(['command', [name, ...args].join(' ').trim()]); return Promise.resolve(); } };
export const FileType = { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 };
export const workspace = {
    workspaceFolders: [] as { uri: URI }[],
    textDocuments: [] as { languageId: string; uri: URI }[],
    findFiles: () => Promise.resolve([]),
    onDidChangeWorkspaceFolders: on('folders'), onDidOpenTextDocument: on('open'), onDidChangeTextDocument: on('change'),
    getConfiguration: () => ({ get: () => given.paper }),
    fs: {
        isWritableFileSystem: (_: string): boolean | undefined => true,
        createDirectory: () => Promise.resolve(),
        readDirectory: (folder: URI) => Promise.resolve([...files.keys()].filter(name => name.startsWith(`${folder.toString()}/`)).map(name => [name.slice(folder.toString().length + 1), 1])),
        stat: (uri: URI) => Promise.resolve(files.get(uri.toString())),
        delete: (uri: URI) => { files.delete(uri.toString()); return Promise.resolve(); },
        writeFile: (uri: URI, bytes: Uint8Array) => { files.set(uri.toString(), { text: new TextDecoder().decode(bytes), mtime: Date.now() }); return Promise.resolve(); }
    }
};
