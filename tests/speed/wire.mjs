// A protocol client for measuring: starts a server over stdio, times requests, keeps the newest diagnostics of every file.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { pathToFileURL } from 'node:url';

export class Wire {
    #waiting = [];

    constructor(command, args) {
        this.process = spawn(command, args, { stdio: ['pipe', 'pipe', process.env.BENCH_LOG ? 'inherit' : 'ignore'] });
        this.connection = createMessageConnection(new StreamMessageReader(this.process.stdout), new StreamMessageWriter(this.process.stdin));
        this.diagnostics = new Map();
        this.settings = {};
        this.connection.onNotification('textDocument/publishDiagnostics', params => {
            this.diagnostics.set(params.uri, { at: performance.now(), ...params });
            this.#waiting = this.#waiting.filter(({ test, done }) => !(test(params) && (done(params), true)));
        });
        this.connection.onRequest('client/registerCapability', () => null);
        this.connection.onRequest('window/workDoneProgress/create', () => null);
        this.connection.onRequest('workspace/configuration', params => params.items.map(item => this.settings[item.section] ?? null));
        this.connection.onRequest((method) => { void method; return null; });
        this.connection.listen();
    }

    async initialize(folder) {
        const uri = pathToFileURL(folder).href;
        await this.connection.sendRequest('initialize', {
            processId: process.pid, rootUri: uri, workspaceFolders: [{ uri, name: 'bench' }],
            capabilities: { workspace: { configuration: true, workspaceFolders: true }, textDocument: { publishDiagnostics: { versionSupport: true } } }
        });
        await this.connection.sendNotification('initialized', {});
    }

    until(test) {
        return new Promise(done => this.#waiting.push({ test, done }));
    }

    open(uri, languageId, text, version = 1) {
        return this.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId, version, text } });
    }

    change(uri, version, range, text) {
        return this.connection.sendNotification('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [{ range, text }] });
    }

    request(method, params) {
        return this.connection.sendRequest(method, params);
    }

    /** Resident memory in MB, now and at its highest. */
    memory() {
        const status = readFileSync(`/proc/${this.process.pid}/status`, 'utf8');
        const mb = key => Math.round(Number(new RegExp(`${key}:\\s+(\\d+)`).exec(status)[1]) / 1024);
        return { now: mb('VmRSS'), highest: mb('VmHWM') };
    }

    stop() {
        this.connection.dispose();
        this.process.kill('SIGKILL');
    }
}

export function median(values) {
    const sorted = [...values].sort((a, b) => a - b);
    return sorted[Math.floor(sorted.length / 2)];
}

export function highest(values, share) {
    const sorted = [...values].sort((a, b) => a - b);
    return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
}
