import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { vi } from 'vitest';
import {
    createProtocolConnection, FileChangeType, StreamMessageReader, StreamMessageWriter, type ClientCapabilities, type CompletionItem, type CompletionList, type Diagnostic, type InitializeResult,
    type Position, type ProtocolConnection, type PublishDiagnosticsParams, type Registration, type WorkspaceEdit
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { BriefAnswer, BriefParams, BriefRefusal } from '../../server/protocol/pages.js';
import { builtServer, serverAtPipe, type ServerEnd } from './server-end.js';

// Each test starts a process; a loaded machine may take seconds for it.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });

export const firstSteps = join(import.meta.dirname, '../../examples/first-steps');

/** Longest wait for anything; far above what a loaded machine needs, so that only a hang meets it. */
const patience = 15_000;

export interface StartOptions {
    /** A programme to copy; `{}` gives an empty folder, `null` no folder at all. Default: examples/first-steps. */
    programme?: string | Record<string, string> | null;
    /** The folders below it that are open in its place, by their names. */
    folders?: string[];
    /** What the person has set under `haversack`. */
    settings?: Record<string, unknown>;
    /** Commands of the client's that may stand behind a lens. */
    commands?: string[];
    /** What the client can do beside what every test's can, under `textDocument` and `workspace`. */
    capabilities?: Pick<ClientCapabilities, 'textDocument' | 'workspace'>;
    /** The client takes snippets from completion. */
    snippets?: boolean;
    /** The client asks again for lenses and hints when it is told to. */
    asksAgain?: boolean;
    /** The client shows Markdown as a page. */
    showsPictures?: boolean;
    /** The person trusts the workspace. */
    trusted?: boolean;
    /** The day on which the plan is looked at. */
    today?: string;
    /** The built server in a process of its own, in place of the same server at the other end of a pipe: several times as slow to start. */
    built?: boolean;
}

/** A protocol client for the built server, on a folder of its own. */
export class Client {
    readonly registrations: Registration[] = [];
    /** Every message of the server's that is neither an answer nor diagnostics nor about settings, by method. */
    readonly heard: string[] = [];
    private readonly documents = new Map<string, TextDocument>();
    private readonly published = new Map<string, Diagnostic[]>();
    private readonly told: string[] = [];
    private readonly listeners = new Set<() => void>();

    private constructor(readonly folder: string, private readonly server: ServerEnd, readonly connection: ProtocolConnection) {}

    initialized!: InitializeResult;

    static async start({ programme = firstSteps, folders, settings, commands, snippets = false, asksAgain = false, showsPictures = false, capabilities = {}, trusted, today = '2026-09-01', built = false }: StartOptions = {}): Promise<Client> {
        const folder = mkdtempSync(join(tmpdir(), 'haversack-server-'));
        if (typeof programme === 'string') cpSync(programme, folder, { recursive: true, verbatimSymlinks: true });
        else for (const [name, text] of Object.entries(programme ?? {})) writeWithFolders(join(folder, name), text);
        const server = built ? builtServer() : serverAtPipe();
        const connection = createProtocolConnection(new StreamMessageReader(server.output), new StreamMessageWriter(server.input));
        const client = new Client(folder, server, connection);
        connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
            client.published.set(params.uri, params.diagnostics);
            client.told.push(params.uri);
            client.tellListeners();
        });
        connection.onUnhandledNotification(({ method }) => { client.heard.push(method); client.tellListeners(); });
        connection.onRequest('client/registerCapability', (params: { registrations: Registration[] }) => { client.registrations.push(...params.registrations); });
        for (const method of ['workspace/codeLens/refresh', 'workspace/inlayHint/refresh', 'workspace/diagnostic/refresh']) {
            connection.onRequest(method, () => { client.heard.push(method); client.tellListeners(); return null; });
        }
        connection.onRequest('workspace/configuration', (params: { items: unknown[] }) => params.items.map(() => settings ?? null));
        connection.listen();
        client.initialized = await connection.sendRequest('initialize', {
            processId: process.pid, rootUri: null,
            workspaceFolders: programme === null ? null : (folders ?? ['']).map(name => ({ name: name || 'programme', uri: pathToFileURL(join(folder, name)).toString() })),
            initializationOptions: { commands, today, trusted },
            capabilities: {
                ...(showsPictures && { general: { markdown: { parser: 'marked' } } }),
                workspace: {
                    didChangeWatchedFiles: { dynamicRegistration: true }, configuration: true, workspaceFolders: true,
                    codeLens: { refreshSupport: asksAgain }, inlayHint: { refreshSupport: asksAgain }, ...capabilities.workspace
                },
                textDocument: {
                    publishDiagnostics: { relatedInformation: true }, completion: { completionItem: { snippetSupport: snippets } },
                    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } }, ...capabilities.textDocument
                }
            }
        });
        await connection.sendNotification('initialized', {});
        await client.settled();
        return client;
    }

    /** The server's exit code, once it has ended. */
    get ended(): Promise<number | null> {
        return this.server.ended;
    }

    uri(file: string): string {
        return file.includes(':') ? file : pathToFileURL(join(this.folder, file)).toString();
    }

    /** The text as the editor shows it, or else as it is on disk. */
    text(file: string): string {
        return this.documents.get(this.uri(file))?.getText() ?? readFileSync(join(this.folder, file), 'utf8');
    }

    open(file: string, text = this.text(file)): Promise<void> {
        this.documents.set(this.uri(file), TextDocument.create(this.uri(file), 'haversack', 1, text));
        return this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri: this.uri(file), languageId: 'haversack', version: 1, text } });
    }

    /** Gives an open file another text, as one incremental change of the part that differs. */
    change(file: string, text: string): Promise<void> {
        const uri = this.uri(file);
        const document = this.documents.get(uri);
        if (!document) throw new Error(`${file} is not open.`);
        const old = document.getText();
        let start = 0;
        while (start < old.length && old[start] === text[start]) start++;
        let end = 0;
        while (end < Math.min(old.length, text.length) - start && old[old.length - 1 - end] === text[text.length - 1 - end]) end++;
        const change = { range: { start: document.positionAt(start), end: document.positionAt(old.length - end) }, text: text.slice(start, text.length - end) };
        const version = document.version + 1;
        this.documents.set(uri, TextDocument.create(uri, 'haversack', version, text));
        return this.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [change] });
    }

    /** Replaces one piece of an open file. */
    edit(file: string, from: string, to: string): Promise<void> {
        const text = this.text(file);
        if (!text.includes(from)) throw new Error(`'${from}' does not stand in ${file}.`);
        return this.change(file, text.replace(from, () => to));
    }

    close(file: string): Promise<void> {
        this.documents.delete(this.uri(file));
        return this.connection.sendNotification('textDocument/didClose', { textDocument: { uri: this.uri(file) } });
    }

    /** Writes a file beside the editor and tells the server as an editor's watcher would. */
    writeOutside(file: string, text: string): Promise<void> {
        const path = join(this.folder, file);
        const type = existsSync(path) ? FileChangeType.Changed : FileChangeType.Created;
        writeWithFolders(path, text);
        return this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: this.uri(file), type }] });
    }

    deleteOutside(file: string): Promise<void> {
        rmSync(join(this.folder, file), { recursive: true });
        return this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: this.uri(file), type: FileChangeType.Deleted }] });
    }

    /** Opens and closes folders below the client's own, as an editor does. */
    async changeFolders(opened: readonly string[], closed: readonly string[]): Promise<void> {
        const named = (names: readonly string[]): { name: string; uri: string }[] => names.map(name => ({ name, uri: this.uri(name) }));
        await this.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: named(opened), removed: named(closed) } });
        await this.settled();
    }

    /** Tells of files and folders that were changed beside the editor; what they hold is on the disk already. */
    async tellOutside(changes: Record<string, FileChangeType>): Promise<void> {
        await this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: Object.entries(changes).map(([file, type]) => ({ uri: this.uri(file), type })) });
        await this.settled();
    }

    /** Everything as it was at the start: no file open, the programme on disk as it was copied. */
    async reset(): Promise<void> {
        for (const uri of [...this.documents.keys()]) await this.close(uri);
        const files = (folder: string): string[] => readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(name => /\.(lesson|kit|course)$/.test(name));
        const original = files(firstSteps);
        for (const file of files(this.folder)) if (!original.includes(file)) await this.deleteOutside(file);
        for (const file of original) await this.writeOutside(file, readFileSync(join(firstSteps, file), 'utf8'));
        await this.settled();
    }

    /** Where `|` stands in a piece of a file's text. */
    at(file: string, marked: string): Position {
        const text = this.text(file);
        const index = text.indexOf(marked.replace('|', ''));
        if (index < 0) throw new Error(`'${marked}' does not stand in ${file}.`);
        return TextDocument.create('', '', 0, text).positionAt(index + marked.indexOf('|'));
    }

    /** The text that a range of a file holds. */
    inRange(file: string, range: { start: Position; end: Position }): string {
        return TextDocument.create('', '', 0, this.text(file)).getText(range);
    }

    /** The problems of every file of which the server has told, by its address. */
    allProblems(): ReadonlyMap<string, Diagnostic[]> {
        return this.published;
    }

    /** How often problems of files under an address have been told. */
    toldOf(start: string): number {
        return this.told.filter(uri => uri.startsWith(this.uri(start))).length;
    }

    /** A request about a place in a file. */
    ask<T>(method: string, file: string, marked: string, more: object = {}): Promise<T> {
        return this.connection.sendRequest(method, { textDocument: { uri: this.uri(file) }, position: this.at(file, marked), ...more });
    }

    /** What completion offers at a place, in the order in which an editor shows it. */
    async complete(file: string, marked: string): Promise<CompletionItem[]> {
        const { items } = await this.ask<CompletionList>('textDocument/completion', file, marked, { context: { triggerKind: 1 } });
        return items.sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
    }

    brief(params: BriefParams = {}): Promise<BriefAnswer & Partial<BriefRefusal>> {
        return this.connection.sendRequest('haversack/brief', params);
    }

    /** All changes sent so far have been read, and the problems of the changed files have come. */
    async settled(): Promise<void> {
        await this.within(this.brief(), 'the server to take the changes in');
    }

    problems(file: string): Diagnostic[] {
        return this.published.get(this.uri(file)) ?? [];
    }

    codes(file: string): (string | number | undefined)[] {
        return this.problems(file).map(({ code }) => code);
    }

    /** Waits until a condition holds; looks again whenever the server has said something. */
    until(what: string, holds: () => boolean): Promise<void> {
        if (holds()) return Promise.resolve();
        let look = (): void => undefined;
        const met = new Promise<void>(resolve => {
            look = () => { if (holds()) resolve(); };
            this.listeners.add(look);
        });
        return this.within(met, what).finally(() => this.listeners.delete(look));
    }

    /** Makes the changes of an edit: in open files as typing, in others on disk. */
    async apply(edit: WorkspaceEdit): Promise<void> {
        for (const [uri, edits] of Object.entries(edit.changes ?? {})) {
            const open = this.documents.get(uri);
            if (open) {
                await this.change(uri, TextDocument.applyEdits(open, edits));
            } else {
                const path = new URL(uri);
                writeFileSync(path, TextDocument.applyEdits(TextDocument.create(uri, 'haversack', 0, readFileSync(path, 'utf8')), edits));
                await this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: FileChangeType.Changed }] });
            }
        }
        await this.settled();
    }

    /** Ends the server as an editor does; answers its exit code and what it wrote to its error output. */
    async stop(): Promise<{ code: number | null; errors: string }> {
        await this.within(this.connection.sendRequest('shutdown'), 'the server to shut down');
        await this.connection.sendNotification('exit');
        const code = await this.within(this.server.ended, 'the server to end');
        this.connection.dispose();
        rmSync(this.folder, { recursive: true, force: true });
        return { code, errors: this.server.errors() };
    }

    private tellListeners(): void {
        for (const listener of [...this.listeners]) listener();
    }

    private within<T>(wait: Promise<T>, what: string): Promise<T> {
        let timer: NodeJS.Timeout | undefined;
        const late = new Promise<never>((_, reject) => {
            timer = setTimeout(() => reject(new Error(`Waited too long for ${what}. Last problems: ${JSON.stringify([...this.published])}. ${this.server.errors()}`)), patience);
        });
        return Promise.race([wait, late]).finally(() => clearTimeout(timer));
    }
}

function writeWithFolders(path: string, text: string): void {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
}
