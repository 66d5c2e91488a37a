/** Every feature that the server announces, asked over the wire about damaged files and random places: an answer in time, and no place outside the text. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test, vi } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { InitializeResult, SemanticTokens, TextEdit } from 'vscode-languageserver-protocol';
import { strayPlaces, strayTokens } from './answers.js';
import { cases, Chance, everything, seed, Tally } from './chance.js';
import { corpus, small } from './corpus.js';
import { mangled } from './mangle.js';
import { RawServer, type Message } from './raw-server.js';

vi.setConfig({ testTimeout: 3_600_000 });

type Position = { line: number; character: number };

/** What is asked where a capability is announced. */
const asked: Readonly<Record<string, readonly string[]>> = {
    hoverProvider: ['hover'], completionProvider: ['completion'], signatureHelpProvider: ['signatureHelp'], definitionProvider: ['definition'], referencesProvider: ['references'], documentHighlightProvider: ['documentHighlight'],
    documentSymbolProvider: ['documentSymbol'], codeActionProvider: ['codeAction'], codeLensProvider: ['codeLens'], documentLinkProvider: ['documentLink'], documentFormattingProvider: ['formatting'], documentRangeFormattingProvider: ['rangeFormatting'],
    documentOnTypeFormattingProvider: ['onTypeFormatting'], renameProvider: ['prepareRename', 'rename'], foldingRangeProvider: ['foldingRange'], selectionRangeProvider: ['selectionRange'], linkedEditingRangeProvider: ['linkedEditingRange'],
    callHierarchyProvider: ['prepareCallHierarchy'], typeHierarchyProvider: ['prepareTypeHierarchy'], semanticTokensProvider: ['semanticTokens/full', 'semanticTokens/range'], inlayHintProvider: ['inlayHint'], diagnosticProvider: ['diagnostic'],
    declarationProvider: ['declaration'], typeDefinitionProvider: ['typeDefinition'], implementationProvider: ['implementation'], colorProvider: ['documentColor']
};
/** Announced, and not about a place in a file. */
const elsewhere = new Set(['textDocumentSync', 'workspace', 'workspaceSymbolProvider', 'executeCommandProvider', 'positionEncoding', 'experimental', 'notebookDocumentSync']);

const sure = new RawServer();
afterAll(async () => {
    await sure.ask('shutdown', 'shutdown');
    expect({ code: await sure.exit(), errors: sure.errors }).toEqual({ code: 0, errors: '' });
});

const slow: string[] = [];
let requests = 0;
const ask = async (method: string, params: unknown): Promise<unknown> => {
    const before = performance.now();
    const id = requests++;
    const answer: Message = await sure.ask(id, method, params);
    sure.answers.delete(id);
    const took = performance.now() - before;
    if (took > 1000) slow.push(`${method}: ${Math.round(took)} ms`);
    expect({ method, error: answer.error }).toEqual({ method, error: undefined });
    return answer.result;
};

const withoutBlanks = (text: string): string => text.replace(/[\s\ufeff]/g, '');

test('every announced feature on damaged files', async () => {
    const { capabilities } = (await sure.initialize()).result as InitializeResult;
    const unknown = Object.keys(capabilities).filter(name => !elsewhere.has(name) && !(name in asked));
    expect(unknown).toEqual([]);
    const methods = Object.entries(asked).flatMap(([capability, names]) => (capabilities[capability as keyof typeof capabilities] ? names : []));
    const tally = new Tally();
    const damage = new Tally();
    for (let number = 0; number < cases(4000, 5); number++) {
        const chance = new Chance(Math.imul(seed, 17) + number);
        const { file } = chance.one(small);
        const uri = `${sure.root}/${file}`;
        const { text: good } = chance.happens(70) ? small.find(one => one.file === file)! : chance.one(corpus.filter(({ text }) => text.length < 20_000));
        const { text: opened, kinds } = mangled(good, chance.one(corpus).text.slice(0, 5000), chance);
        kinds.forEach(kind => damage.add(kind));
        sure.send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'haversack', version: 1, text: opened } } });
        let document = TextDocument.create(uri, 'haversack', 1, opened);
        const change = (range: { start: Position; end: Position }, text: string): void => {
            const version = document.version + 1;
            sure.send({ method: 'textDocument/didChange', params: { textDocument: { uri, version }, contentChanges: [{ range, text }] } });
            document = TextDocument.update(document, [{ range, text }], version);
        };
        const place = (): Position => document.positionAt(chance.below(document.getText().length + 1));
        for (let edits = chance.below(4); edits > 0; edits--) {
            const [from, to] = [chance.below(document.getText().length + 1), chance.below(8)];
            change({ start: document.positionAt(from), end: document.positionAt(from + to) }, chance.one(['', 'x', '\n', '\n    ', '{', '"', 'hand-bell', '🔔', '\r', '\u2028', '# ']));
        }
        const texts = (of: string): string | undefined => {
            if (of === uri) return document.getText();
            try { return readFileSync(fileURLToPath(of), 'utf8'); } catch { return undefined; }
        };
        try {
            for (const name of everything ? methods : methods.filter((_, index) => (index + number) % 3 === 0)) {
                const position = place();
                const range = { start: { line: 0, character: 0 }, end: document.positionAt(document.getText().length) };
                const result = await ask(`textDocument/${name}`, {
                    textDocument: { uri }, position, positions: [position, place()], range, newName: chance.one(['new-name', 'x-1', 'épée']), ch: '\n', options: { tabSize: 2, insertSpaces: true }, query: 'a',
                    context: { diagnostics: [], triggerKind: 1, includeDeclaration: true, isRetrigger: false }
                });
                tally.add(name);
                expect({ name, stray: strayPlaces(result, uri, texts) }).toEqual({ name, stray: [] });
                if (name.startsWith('semanticTokens')) expect(strayTokens(result as SemanticTokens, document.getText())).toEqual([]);
                if (/ormatting$/.test(name) && result) {
                    const after = TextDocument.applyEdits(document, result as TextEdit[]);
                    expect(withoutBlanks(after)).toBe(withoutBlanks(document.getText()));
                }
                if (name === 'completion') {
                    const { items } = result as { items: object[] };
                    const [item] = items;
                    if (item && capabilities.completionProvider?.resolveProvider) await ask('completionItem/resolve', item);
                }
                if (name === 'prepareCallHierarchy') for (const item of (result ?? []) as object[]) {
                    for (const way of ['incomingCalls', 'outgoingCalls']) expect(strayPlaces(await ask(`callHierarchy/${way}`, { item }), (item as { uri: string }).uri, texts)).toEqual([]);
                }
            }
            // Piece by piece and in one go, the text is the same to the server.
            const inPieces = await ask('textDocument/documentSymbol', { textDocument: { uri } });
            sure.send({ method: 'textDocument/didChange', params: { textDocument: { uri, version: document.version + 1 }, contentChanges: [{ text: document.getText() }] } });
            expect(await ask('textDocument/documentSymbol', { textDocument: { uri } })).toEqual(inPieces);
            if (chance.happens(30)) await ask('workspace/symbol', { query: chance.one(['', 'bell', 'a']) });
        } catch (error) {
            throw new Error(`case ${number} (${file}; ${kinds.join(', ')}), seed ${seed}:\n${JSON.stringify(document.getText()).slice(0, 4000)}`, { cause: error });
        }
        sure.send({ method: 'textDocument/didClose', params: { textDocument: { uri } } });
        expect(sure.errors).toBe('');
    }
    console.log(`${requests} requests about ${damage.total} damages, seed ${seed}: ${tally}. ${slow.length} took longer than a second${slow.length ? `: ${slow.slice(0, 10).join('; ')}` : ''}. Damages: ${damage}.`);
    expect(new Set(methods).size).toBeGreaterThan(10);
});
