import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { build } from 'esbuild';
import { quietSettings } from '../editor-server.js';
import type { MemoryChange } from './memory-files.js';

const types: Readonly<Record<string, string>> = {
    '.html': 'text/html', '.js': 'text/javascript', '.cjs': 'text/javascript', '.mjs': 'text/javascript', '.css': 'text/css', '.json': 'application/json', '.svg': 'image/svg+xml', '.png': 'image/png',
    '.ttf': 'font/ttf', '.wasm': 'application/wasm', '.mp3': 'audio/mpeg', '.md': 'text/markdown'
};

export interface WebServerOptions {
    /** VS Code's web build. */
    readonly editor: string;
    /** The unpacked extension. */
    readonly extension: string;
    /** What lies in the folder at the start, by path from its top. */
    readonly files: ReadonlyMap<string, Uint8Array>;
    readonly settings?: Readonly<Record<string, unknown>>;
}

const webviews = '/out/vs/workbench/contrib/webview/browser/pre/';

/** The name of the folder that is open. */
export const top = '/first-steps';

/** A site that serves VS Code for the web, the extension, and the files of a folder that lies nowhere else. */
export class WebServer {
    /** What lies in the folder now, by path from its top. */
    readonly files: Map<string, Uint8Array>;
    private readonly server: Server;
    private changes: MemoryChange[] = [];
    private waiting: ServerResponse | undefined;
    private memoryFiles = '';
    address = '';

    private constructor(private readonly options: WebServerOptions) {
        this.files = new Map(options.files);
        this.server = createServer((request, response) => {
            this.answer(request, response).catch((error: unknown) => response.writeHead(500).end(String(error)));
        });
    }

    static async start(options: WebServerOptions): Promise<WebServer> {
        const server = new WebServer(options);
        const { outputFiles } = await build({
            entryPoints: [join(import.meta.dirname, 'memory-files.ts')], bundle: true, write: false, format: 'cjs', platform: 'browser', external: ['vscode']
        });
        server.memoryFiles = outputFiles[0]!.text;
        await new Promise<void>(resolve => server.server.listen(0, '127.0.0.1', resolve));
        server.address = `http://127.0.0.1:${(server.server.address() as AddressInfo).port}`;
        return server;
    }

    /** Somebody else changes a file of the folder, or takes it or a folder away. */
    changeOutside(path: string, content: string | Uint8Array | undefined): void {
        if (content === undefined) for (const one of [...this.files.keys()]) { if (one === path || one.startsWith(`${path}/`)) this.files.delete(one); }
        else this.files.set(path, Buffer.from(content));
        this.changes.push({ path: `${top}/${path}`, ...(content !== undefined && { base64: Buffer.from(content).toString('base64') }) });
        this.sendChanges();
    }

    text(path: string): string {
        return Buffer.from(this.files.get(path) ?? '').toString('utf8');
    }

    async stop(): Promise<void> {
        this.server.closeAllConnections();
        await new Promise(resolve => this.server.close(resolve));
    }

    private sendChanges(): void {
        if (!this.waiting || this.changes.length === 0) return;
        json(this.waiting, this.changes);
        this.waiting = undefined;
        this.changes = [];
    }

    private async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
        const path = decodeURIComponent(new URL(request.url ?? '/', this.address).pathname);
        switch (path) {
            case '/': return void response.writeHead(200, { 'content-type': 'text/html' }).end(await this.page());
            case '/product.json': return json(response, this.configuration());
            case '/memory-files/package.nls.json': return json(response, {});
            case '/memory-files/package.json': return json(response, memoryManifest);
            case '/memory-files/extension.js': return void response.writeHead(200, { 'content-type': 'text/javascript' }).end(this.memoryFiles);
            case '/files/all': return json(response, [...this.files].map(([name, bytes]): MemoryChange => ({ path: `${top}/${name}`, base64: Buffer.from(bytes).toString('base64') })));
            case '/files/changes':
                this.waiting = response;
                return this.sendChanges();
            case `${webviews}index.html`: return void response.writeHead(200, { 'content-type': 'text/html' }).end(await this.webviewPage());
            case '/files/written': return this.written(request, response);
        }
        const file = this.fileOf(path);
        try {
            const content = await readFile(file);
            response.writeHead(200, { 'content-type': types[extname(file)] ?? 'application/octet-stream', 'service-worker-allowed': '/' }).end(content);
        } catch {
            response.writeHead(404).end();
        }
    }

    private fileOf(path: string): string {
        const plain = normalize(path);
        if (plain.startsWith('/haversack/')) return join(this.options.extension, plain.slice('/haversack'.length));
        return join(this.options.editor, plain.startsWith('/vs/') ? `/out${plain}` : plain);
    }

    private async written(request: IncomingMessage, response: ServerResponse): Promise<void> {
        let body = '';
        for await (const chunk of request) body += String(chunk);
        const { path, base64 } = JSON.parse(body) as MemoryChange;
        const name = path.slice(top.length + 1);
        if (base64 === undefined) for (const one of [...this.files.keys()]) { if (one === name || one.startsWith(`${name}/`)) this.files.delete(one); }
        else this.files.set(name, Buffer.from(base64, 'base64'));
        json(response, true);
    }

    private async page(): Promise<string> {
        const page = await readFile(join(this.options.editor, 'out/vs/code/browser/workbench/workbench.html'), 'utf8');
        return page.replaceAll('{{WORKBENCH_WEB_BASE_URL}}', this.address).replace(/\{\{[A-Z_]+\}\}/g, '');
    }

    /** The browser takes no service worker from another site, so webviews are of this one: their page must not insist on a site of their own. */
    private async webviewPage(): Promise<string> {
        const page = await readFile(join(this.options.editor, webviews, 'index-no-csp.html'), 'utf8');
        const check = /if \(hostname === parentOriginHash[^{]*\{/;
        if (!check.test(page)) throw new Error('The webview\'s page is not as expected.');
        return page.replace(check, 'if (true) {');
    }

    private configuration(): unknown {
        const { hostname, port } = new URL(this.address);
        const at = (path: string): object => ({ scheme: 'http', authority: `${hostname}:${port}`, path });
        return {
            productConfiguration: { nameShort: 'Editor', nameLong: 'Editor', applicationName: 'editor', dataFolderName: '.editor', version: '1.91.1', enableTelemetry: false },
            folderUri: { scheme: 'memory', path: top },
            additionalBuiltinExtensions: [at('/haversack'), at('/memory-files')],
            configurationDefaults: { ...quietSettings, 'security.workspace.trust.enabled': false, ...this.options.settings },
            webviewEndpoint: this.address + webviews
        };
    }
}

const memoryManifest = {
    name: 'memory-files', publisher: 'tests', version: '1.0.0', engines: { vscode: '^1.91.0' }, browser: './extension.js', activationEvents: ['onFileSystem:memory'],
    capabilities: { virtualWorkspaces: true, untrustedWorkspaces: { supported: true } }
};

function json(response: ServerResponse, value: unknown): void {
    response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(value));
}
