/** As much of the editor's interface as pages and printing ask for, to be put in its place by `vi.mock('vscode', ...)`. */
import { URI, Utils } from 'vscode-uri';

/** What was told and asked, in order. */
export const told: [how: string, what: string][] = [];
/** Files by address, each with when it was written. */
export const files = new Map<string, { text: string; mtime: number }>();
export const given = { uiKind: 1, remoteName: undefined as string | undefined, opens: true, button: undefined as string | undefined, paper: 'printer' as unknown, l10n: (text: string): string => text };

export const resetStandIn = (): void => {
    told.length = 0;
    files.clear();
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
export const window = { showInformationMessage: say('information'), showErrorMessage: say('error'), setStatusBarMessage: say('status') };
export const commands = { executeCommand: (name: string, ...args: unknown[]): Promise<void> => { told.push(['command', [name, ...args].join(' ').trim()]); return Promise.resolve(); } };
export const workspace = {
    getConfiguration: () => ({ get: () => given.paper }),
    fs: {
        createDirectory: () => Promise.resolve(),
        readDirectory: (folder: URI) => Promise.resolve([...files.keys()].filter(name => name.startsWith(`${folder.toString()}/`)).map(name => [name.slice(folder.toString().length + 1), 1])),
        stat: (uri: URI) => Promise.resolve(files.get(uri.toString())),
        delete: (uri: URI) => { files.delete(uri.toString()); return Promise.resolve(); },
        writeFile: (uri: URI, bytes: Uint8Array) => { files.set(uri.toString(), { text: new TextDecoder().decode(bytes), mtime: Date.now() }); return Promise.resolve(); }
    }
};
