import { readFileSync } from 'node:fs';
import type { Browser, Page, Worker } from 'playwright-core';
import { createProtocolConnection, AbstractMessageReader, AbstractMessageWriter, type DataCallback, type Diagnostic, type Disposable, type InitializeResult, type Message, type ProtocolConnection } from 'vscode-languageserver-protocol/node';
import { filesNotification, wantedFileRequest, type FedFile, type FilesParams } from '../../server/protocol/files.js';
import { startBrowser } from '../brief/browser.js';
import { until } from '../editor/until.js';

const workerFile = '.build/server/worker-server.js';
export const folder = 'memory://cupboard/programme';
const site = 'http://127.0.0.1:1';

/** A protocol client for the server as a worker of a real browser. Nothing of the programme is on a disk: the test has the files. */
export class WorkerClient {
    readonly published = new Map<string, Diagnostic[]>();
    /** Every state of the problems of each file, in order. */
    readonly states: { file: string; codes: (string | number | undefined)[] }[] = [];
    readonly fetched: string[] = [];
    readonly errors: string[] = [];
    initialized!: InitializeResult;

    private constructor(private readonly browser: Browser, private readonly page: Page, readonly connection: ProtocolConnection, readonly files: Map<string, string | Uint8Array>) {}

    /** @param files what lies in the folder, by path; a calendar or framework is sent when it is asked for */
    static async start(files: Record<string, string | Uint8Array>, { sendsFiles = true }: { sendsFiles?: boolean } = {}): Promise<WorkerClient> {
        const browser = await startBrowser();
        const page = await browser.newPage();
        await page.route(`${site}/**`, route => (route.request().url().endsWith('.js')
            ? route.fulfill({ contentType: 'text/javascript', body: readFileSync(workerFile, 'utf8') })
            : route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Worker</title>' })));
        let heard: (message: Message) => void = () => undefined;
        await page.exposeFunction('hear', (message: Message) => heard(message));
        await page.goto(`${site}/`);
        const pageOf = { page };
        const connection = createProtocolConnection(new PageReader(listener => { heard = listener; }), new PageWriter(pageOf));
        const client = new WorkerClient(browser, page, connection, new Map(Object.entries(files)));
        page.on('console', message => { if (message.type() === 'error') client.errors.push(message.text()); });
        page.on('pageerror', error => client.errors.push(String(error)));
        await page.evaluate(() => {
            const worker = new Worker('/worker-server.js', { name: 'haversack-test' });
            worker.onmessage = ({ data }) => (window as unknown as { hear(message: unknown): void }).hear(data);
            Object.assign(window, { worker });
        });
        connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) => {
            client.published.set(uri, diagnostics);
            client.states.push({ file: uri.slice(folder.length + 1), codes: diagnostics.map(({ code }) => code) });
        });
        connection.onRequest(wantedFileRequest, ({ uri }: { uri: string }): FedFile | null => {
            const path = uri.slice(folder.length + 1);
            client.fetched.push(path);
            const content = client.files.get(path);
            return content === undefined ? null : { uri, bytes: base64(content) };
        });
        for (const method of ['client/registerCapability', 'workspace/codeLens/refresh', 'workspace/inlayHint/refresh']) connection.onRequest(method, () => null);
        connection.listen();
        client.initialized = await connection.sendRequest('initialize', {
            processId: null, rootUri: null, workspaceFolders: [{ name: 'programme', uri: folder }], capabilities: {}, initializationOptions: { sendsFiles, today: '2026-09-01' }
        });
        await connection.sendNotification('initialized', {});
        return client;
    }

    uri(path: string): string {
        return `${folder}/${path}`;
    }

    /** Sends files as they are now, those that a programme may name by their names alone; and what is gone. */
    send(paths: readonly string[], more: Partial<FilesParams> = {}): Promise<void> {
        const files = paths.map((path): FedFile => (/\.(?:ics|json)$/.test(path) ? { uri: this.uri(path) } : { uri: this.uri(path), bytes: base64(this.files.get(path)!) }));
        return this.connection.sendNotification(filesNotification, { files, ...more } satisfies FilesParams);
    }

    codes(path: string): (string | number | undefined)[] {
        return (this.published.get(this.uri(path)) ?? []).map(({ code }) => code);
    }

    until(what: string, holds: () => boolean): Promise<boolean> {
        return until(what, () => Promise.resolve(holds()), held => held, 15_000);
    }

    /** The worker itself, as the browser runs it. */
    get worker(): Worker {
        return this.page.workers()[0]!;
    }

    /** The names of locks that somebody holds in the page's origin. */
    locks(): Promise<(string | undefined)[]> {
        return this.page.evaluate(async () => (await navigator.locks.query()).held?.map(({ name }) => name) ?? []);
    }

    async stop(): Promise<string[]> {
        this.connection.dispose();
        await this.browser.close();
        return this.errors;
    }
}

class PageReader extends AbstractMessageReader {
    constructor(private readonly follow: (listener: (message: Message) => void) => void) {
        super();
    }

    listen(callback: DataCallback): Disposable {
        this.follow(callback);
        return { dispose: () => undefined };
    }
}

class PageWriter extends AbstractMessageWriter {
    private last: Promise<unknown> = Promise.resolve();

    constructor(private readonly of: { page: Page }) {
        super();
    }

    write(message: Message): Promise<void> {
        const written = this.last.then(() => this.of.page.evaluate(data => (window as unknown as { worker: globalThis.Worker }).worker.postMessage(data), message));
        this.last = written.catch(() => undefined);
        return written;
    }

    end(): void {
        // The page ends with the browser.
    }
}

const base64 = (content: string | Uint8Array): string => Buffer.from(content).toString('base64');
