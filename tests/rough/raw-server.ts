/** The built server as a process, spoken to in bare frames, so that nothing between puts wrong messages right. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { firstSteps } from '../server/client.js';
import { serverFile } from '../server/server-end.js';

export interface Message {
    id?: number | string | null;
    method?: string;
    params?: unknown;
    result?: unknown;
    error?: { code: number; message: string };
}

/** Far above what any case needs on a loaded machine: only a hang meets it. */
const patience = Number(process.env['HAVERSACK_PATIENCE'] ?? 120_000);

export class RawServer {
    readonly folder = mkdtempSync(join(tmpdir(), 'haversack-rough-'));
    readonly root = pathToFileURL(this.folder).href;
    readonly process: ChildProcess;
    /** How many answers came to each request. */
    readonly answers = new Map<number | string, Message[]>();
    /** What came beside answers, by method. */
    readonly heard = new Map<string, number>();
    /** Everything that came and is no answer goes here as well, where a test wants it. */
    onMessage: ((message: Message) => void) | undefined;
    errors = '';
    strayAnswers = 0;
    private readonly waiting = new Map<number | string, Message>();
    private whenNone: (() => void) | undefined;
    private pieces: Buffer[] = [];
    private readonly ended: Promise<unknown>;
    /** What the client answers to the server's own requests. */
    reply: (message: Message) => Partial<Message> = message => ({ result: message.method === 'workspace/configuration' ? [null] : null });

    constructor(programme = firstSteps, options: readonly string[] = (process.env['HAVERSACK_NODE_OPTIONS'] ?? '').split(' ').filter(Boolean)) {
        cpSync(programme, this.folder, { recursive: true });
        this.process = spawn(process.execPath, [...options, process.env['HAVERSACK_SERVER'] ?? serverFile, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
        this.ended = once(this.process, 'exit').then(() => this.whenNone?.());
        this.process.stdin!.on('error', () => undefined);
        this.process.stderr!.on('data', chunk => { this.errors += String(chunk); });
        this.process.stdout!.on('data', (chunk: Buffer) => this.take(chunk));
    }

    get alive(): boolean {
        return this.process.exitCode === null && this.process.signalCode === null;
    }

    send(...messages: readonly Message[]): void {
        this.process.stdin!.write(messages.map(message => frame(JSON.stringify({ jsonrpc: '2.0', ...message }))).join(''));
        for (const message of messages) if (message.id !== undefined && message.id !== null && message.method !== undefined) this.waiting.set(message.id, message);
    }

    /** Bytes as they are. */
    sendText(text: string): void {
        this.process.stdin!.write(text);
    }

    async ask(id: number | string, method: string, params?: unknown): Promise<Message> {
        this.send({ id, method, params });
        await this.answered();
        return this.answers.get(id)![0]!;
    }

    async initialize(id: number | string = 'initialize'): Promise<Message> {
        const answer = await this.ask(id, 'initialize', initializeParams(this.root));
        this.send({ method: 'initialized', params: {} });
        return answer;
    }

    /** Until every request has its answer, or the process has ended. Fails when that takes longer than the patience. */
    async answered(): Promise<void> {
        if (this.waiting.size === 0 || !this.alive) return;
        let timer: NodeJS.Timeout | undefined;
        const none = new Promise<void>(resolve => { this.whenNone = resolve; });
        const late = new Promise<never>((_, reject) => {
            timer = setTimeout(() => reject(new Error(`${this.waiting.size} requests have no answer after ${patience / 1000} s: ${JSON.stringify([...this.waiting.values()].slice(0, 5)).slice(0, 3000)}. ${this.errors.slice(0, 2000)}`)), patience);
        });
        await Promise.race([none, late]).finally(() => clearTimeout(timer));
    }

    get unanswered(): readonly (number | string)[] {
        return [...this.waiting.keys()];
    }

    /** Resident memory in MB. */
    memory(): number {
        return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${this.process.pid}/status`, 'utf8'))![1]) / 1024;
    }

    async exit(): Promise<number | null> {
        this.send({ method: 'exit' });
        return this.gone();
    }

    /** Until the process has ended; its exit code. */
    async gone(): Promise<number | null> {
        const timer = setTimeout(() => this.process.kill('SIGKILL'), patience);
        await this.ended;
        clearTimeout(timer);
        this.forget();
        return this.process.exitCode;
    }

    /** Until the process has ended; its folder stays. */
    async died(): Promise<void> {
        await this.ended;
    }

    forget(): void {
        rmSync(this.folder, { recursive: true, force: true });
    }

    kill(): void {
        this.process.kill('SIGKILL');
    }

    private take(chunk: Buffer): void {
        this.pieces.push(chunk);
        let bytes = this.pieces.length === 1 ? chunk : Buffer.concat(this.pieces);
        for (;;) {
            const head = bytes.indexOf('\r\n\r\n');
            const length = head < 0 ? Infinity : Number(/Content-Length: (\d+)/i.exec(bytes.toString('latin1', 0, head))![1]);
            if (bytes.length < head + 4 + length) break;
            this.read(JSON.parse(bytes.toString('utf8', head + 4, head + 4 + length)) as Message);
            bytes = bytes.subarray(head + 4 + length);
        }
        this.pieces = bytes.length > 0 ? [bytes] : [];
    }

    private read(message: Message): void {
        const { id, method } = message;
        if (method !== undefined) {
            this.heard.set(method, (this.heard.get(method) ?? 0) + 1);
            this.onMessage?.(message);
            if (id !== undefined && id !== null && this.alive) this.process.stdin!.write(frame(JSON.stringify({ jsonrpc: '2.0', id, ...this.reply(message) })));
            return;
        }
        if (id === undefined || id === null) {
            this.strayAnswers++;
            return;
        }
        const before = this.answers.get(id);
        if (before) before.push(message);
        else this.answers.set(id, [message]);
        this.waiting.delete(id);
        if (this.waiting.size === 0) this.whenNone?.();
    }
}

function frame(body: string): string {
    return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
}

/** As a full-grown editor introduces itself. */
export function initializeParams(root: string): object {
    return {
        processId: process.pid, rootUri: null, workspaceFolders: [{ name: 'programme', uri: root }], initializationOptions: { today: '2026-09-01', commands: ['haversack.open'] },
        capabilities: {
            general: { positionEncodings: ['utf-16'] },
            workspace: {
                didChangeWatchedFiles: { dynamicRegistration: true }, configuration: true, workspaceFolders: true, codeLens: { refreshSupport: true }, inlayHint: { refreshSupport: true }, semanticTokens: { refreshSupport: true },
                diagnostics: { refreshSupport: true }, workspaceEdit: { documentChanges: true }, fileOperations: { willRename: true, didRename: true, didDelete: true }
            },
            textDocument: {
                publishDiagnostics: { relatedInformation: true, versionSupport: true }, completion: { completionItem: { snippetSupport: true, resolveSupport: { properties: ['documentation', 'additionalTextEdits'] } } },
                codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor'] } }, resolveSupport: { properties: ['edit'] } },
                semanticTokens: { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] }, diagnostic: {}, linkedEditingRange: {}, callHierarchy: {}, typeHierarchy: {}, foldingRange: {}, rename: { prepareSupport: true }
            }
        }
    };
}
