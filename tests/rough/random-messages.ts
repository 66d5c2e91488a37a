/** Messages of the Language Server Protocol and of nobody, right and wrong, in any order. */
import type { Chance } from './chance.js';
import type { CorpusFile } from './corpus.js';
import { mangled } from './mangle.js';
import type { Message } from './raw-server.js';

/** Requests about a place in a file. */
const atPlace = ['hover', 'completion', 'definition', 'declaration', 'typeDefinition', 'implementation', 'references', 'documentHighlight', 'prepareRename', 'rename', 'signatureHelp', 'selectionRange', 'linkedEditingRange', 'prepareCallHierarchy', 'prepareTypeHierarchy', 'onTypeFormatting', 'moniker', 'inlineValue'].map(name => `textDocument/${name}`);
const ofFile = ['documentSymbol', 'foldingRange', 'codeLens', 'documentLink', 'documentColor', 'codeAction', 'inlayHint', 'formatting', 'rangeFormatting', 'semanticTokens/full', 'semanticTokens/range', 'semanticTokens/full/delta', 'diagnostic', 'willSaveWaitUntil'].map(name => `textDocument/${name}`);
const others = ['workspace/symbol', 'workspace/executeCommand', 'workspace/diagnostic', 'workspace/willRenameFiles', 'workspace/willCreateFiles', 'workspace/willDeleteFiles', 'completionItem/resolve', 'codeAction/resolve', 'codeLens/resolve', 'documentLink/resolve', 'inlayHint/resolve', 'workspaceSymbol/resolve', 'callHierarchy/incomingCalls', 'callHierarchy/outgoingCalls', 'typeHierarchy/supertypes'];
const own = ['brief', 'term', 'changes', 'practice', 'import', 'programme'].map(name => `haversack/${name}`);
const unknown = ['haversack/dance', 'textDocument/constructor', '__proto__', 'toString', '$/unheardOf', '', 'a'.repeat(5000), 'hasOwnProperty'];
const notifications = ['textDocument/didSave', 'textDocument/willSave', 'workspace/didChangeConfiguration', 'workspace/didRenameFiles', 'workspace/didDeleteFiles', 'workspace/didCreateFiles', '$/setTrace', '$/progress', 'window/workDoneProgress/cancel', 'notebookDocument/didOpen', 'haversack/trusted', 'initialized'];

export class RandomMessages {
    private nextId = 0;
    private readonly versions = new Map<string, number>();

    constructor(private readonly root: string, private readonly files: readonly CorpusFile[], private readonly chance: Chance) {}

    /** A message and what kind of case it is. */
    next(): { message: Message; kind: string } {
        const { chance } = this;
        const at = chance.below(100);
        if (at < 24) return this.request('request about a place', chance.one(atPlace), this.place());
        if (at < 38) return this.request('request about a file', chance.one(ofFile), this.file());
        if (at < 42) return this.request('other request', chance.one(others), this.otherParams());
        if (at < 45) return this.request('request of our own', chance.one(own), this.ownParams());
        if (at < 51) return this.request('parameters of a wrong kind', chance.one([...atPlace, ...ofFile, ...others, ...own]), this.nonsense(0));
        if (at < 55) return this.request('unknown method', chance.one(unknown), chance.happens(50) ? this.place() : this.nonsense(0));
        if (at < 65) return { kind: 'change of a file', message: this.change() };
        if (at < 70) return { kind: 'opening', message: this.open() };
        if (at < 73) return { kind: 'closing', message: { method: 'textDocument/didClose', params: { textDocument: { uri: this.uri() } } } };
        if (at < 79) return { kind: 'cancelling', message: { method: '$/cancelRequest', params: chance.happens(10) ? this.nonsense(0) : { id: chance.one([this.nextId, this.nextId - 1, chance.below(this.nextId + 5), `r${chance.below(this.nextId + 5)}`, -1]) } } };
        if (at < 83) return { kind: 'watched files', message: { method: 'workspace/didChangeWatchedFiles', params: chance.happens(20) ? this.nonsense(0) : { changes: Array.from({ length: chance.below(4) }, () => ({ uri: this.uri(), type: chance.one([1, 2, 3, 9, null]) })) } } };
        if (at < 88) return { kind: 'other notification', message: { method: chance.one(notifications), params: chance.happens(50) ? this.nonsense(0) : this.file() } };
        if (at < 91) return { kind: 'notification of a wrong kind', message: { method: chance.one(['textDocument/didOpen', 'textDocument/didChange', 'textDocument/didClose', 'workspace/didChangeWorkspaceFolders']), params: this.nonsense(0) } };
        if (at < 93) return { kind: 'unknown notification', message: { method: chance.one(unknown), params: this.nonsense(0) } };
        if (at < 95) return { kind: 'answer to nothing', message: { id: chance.one([chance.below(10), 'x', null]), ...(chance.happens(50) ? { result: this.nonsense(0) } : { error: { code: chance.below(9), message: 'No' } }) } };
        if (at < 96) return this.request('initialize again', 'initialize', chance.happens(50) ? this.nonsense(0) : { processId: null, rootUri: this.root, capabilities: {} });
        return this.request('request about a place', chance.one(atPlace), this.place());
    }

    request(kind: string, method: string, params: unknown): { message: Message; kind: string } {
        const number = this.nextId++;
        return { kind, message: { id: this.chance.happens(20) ? `r${number}` : number, method, params } };
    }

    private uri(): string {
        const { chance, root, files } = this;
        if (chance.happens(85)) return `${root}/${chance.one(files).file}`;
        return chance.one([`${root}/new-${chance.below(3)}.lesson`, 'untitled:Untitled-1', `${root}/../out.lesson`, `${root}/%00.kit`, 'file:///etc/passwd', 'file:///etc/passwd.kit', '', 'x', '%', 'file://host/share/a.kit', `${root}/a b.kit`, `${root}/${'d/'.repeat(300)}e.kit`, 'vscode-vfs://x/y.course', root, `${root}/calendars/a.ics`]);
    }

    private number(): unknown {
        const { chance } = this;
        return chance.happens(80) ? chance.below(40) : chance.one([-1, -4_294_967_296, 4_294_967_295, 1e308, 2_147_483_648, 0.5, null, '3', 9_007_199_254_740_992, true]);
    }

    private position(): unknown {
        return { line: this.number(), character: this.number() };
    }

    private range(): unknown {
        return { start: this.position(), end: this.position() };
    }

    private place(): unknown {
        const { chance } = this;
        return {
            textDocument: { uri: this.uri() }, position: this.position(), positions: chance.happens(90) ? [this.position()] : [], newName: chance.one(['new-name', 'x', '', '9', 'a b', '\0', 'ä'.repeat(3000)]),
            context: { triggerKind: chance.below(4), triggerCharacter: '{', includeDeclaration: true, isRetrigger: false }, ch: chance.one(['\n', '}', '']), options: { tabSize: this.number(), insertSpaces: chance.happens(50) }
        };
    }

    private file(): unknown {
        const { chance } = this;
        return {
            textDocument: { uri: this.uri() }, range: this.range(), context: { diagnostics: [], only: chance.happens(20) ? ['quickfix'] : undefined, triggerKind: 1 }, options: { tabSize: this.number(), insertSpaces: true },
            previousResultId: chance.one(['1', '', undefined]), settings: { haversack: { severity: { unused: chance.one(['off', 'error', 7]) } } }, value: 'off', files: [{ oldUri: this.uri(), newUri: this.uri() }], token: 1, reason: 1
        };
    }

    private otherParams(): unknown {
        const { chance } = this;
        return {
            query: chance.one(['', 'bell', '\\', '(((', '\ud800', 'x'.repeat(10_000)]), command: chance.one(['haversack.x', '']), arguments: [], label: 'hand-bell', data: this.nonsense(1), title: 'x', range: this.range(), previousResultIds: [],
            files: [{ oldUri: this.uri(), newUri: this.uri(), uri: this.uri() }], item: { name: 'x', kind: 5, uri: this.uri(), range: this.range(), selectionRange: this.range(), data: this.nonsense(1) }, target: this.uri(), position: this.position()
        };
    }

    private ownParams(): unknown {
        const { chance } = this;
        return {
            uri: this.uri(), line: this.number(), class: chance.one([undefined, 'family', 'gone', 7]), week: chance.one([undefined, 1, 2, this.number()]), format: chance.one([undefined, 'html', 'md', 'json', 'notes', 'csv', 'ics', 'x']),
            lesson: chance.one([undefined, 'listen-1', '']), key: chance.happens(50), more: this.number(), bytes: chance.one(['', 'QUJD', '%%', [1, 2, 3], 5]), known: { week: 'x' }, before: chance.one([undefined, 'BEGIN:VCALENDAR', '\0']), rate: this.number(), today: chance.one([undefined, '2026-13-45', '2026-09-01'])
        };
    }

    /** Any value that JSON knows. */
    private nonsense(depth: number): unknown {
        const { chance } = this;
        const inner = (): unknown => (depth > 2 ? null : this.nonsense(depth + 1));
        return chance.one<() => unknown>([
            () => undefined, () => null, () => 0, () => -1.5, () => '', () => 'text', () => true, () => [], () => ({}), () => [inner(), inner()], () => ({ textDocument: inner(), position: inner(), range: inner(), changes: inner(), contentChanges: inner(), uri: inner() }),
            () => ({ textDocument: { uri: inner(), text: inner(), version: inner() }, event: inner(), settings: inner(), files: inner(), options: inner() }), () => ({ id: inner(), item: inner(), data: inner() })
        ])();
    }

    private open(): Message {
        const { chance } = this;
        const { file, text } = chance.one(this.files);
        const uri = chance.happens(90) ? `${this.root}/${file}` : this.uri();
        const version = chance.below(5);
        this.versions.set(uri, version);
        return { method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: chance.one(['haversack', 'haversack', 'python', '']), version, text: chance.happens(60) ? text : mangled(text, '', chance).text } } };
    }

    private change(): Message {
        const { chance } = this;
        const uri = this.uri();
        const version = (this.versions.get(uri) ?? 0) + chance.one([1, 1, 1, 0, -3, 1000]);
        this.versions.set(uri, version);
        const contentChanges = Array.from({ length: 1 + chance.below(3) }, () => (chance.happens(92) ? { range: this.range(), text: chance.one(['', 'x', '\n  about: {hand-bell}\n', 'lesson q "Q"\n', '"', '\0']) } : { text: chance.one(this.files).text }));
        return { method: 'textDocument/didChange', params: { textDocument: { uri, version: chance.happens(95) ? version : null }, contentChanges } };
    }
}
