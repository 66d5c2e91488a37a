/** Every feature asked about files far larger than anybody writes: an answer, and a server that still stands. */
import { expect, test, vi } from 'vitest';
import { bigTexts, pathologicalProse } from './big-texts.js';
import { everything, Tally } from './chance.js';
import { RawServer } from './raw-server.js';

vi.setConfig({ testTimeout: 3_600_000 });

const features = ['hover', 'completion', 'signatureHelp', 'definition', 'references', 'documentHighlight', 'documentSymbol', 'codeAction', 'codeLens', 'documentLink', 'formatting', 'rangeFormatting', 'onTypeFormatting', 'prepareRename', 'rename', 'foldingRange', 'selectionRange', 'linkedEditingRange', 'prepareCallHierarchy', 'semanticTokens/full', 'semanticTokens/range', 'inlayHint'];
/** What is long in itself, and what is many lines; a hundredth in the sample. The steps of fifty megabytes are read elsewhere. */
const texts = [...bigTexts, ...pathologicalProse].filter(({ name }, index) => !/10,000 (?:steps|tabs)/.test(name) && (everything || index % 20 === 0) && name.includes(process.env['HAVERSACK_ONLY'] ?? ''));
const part = Number(process.env['HAVERSACK_PART'] ?? (everything ? 1 : 1 / 200));

test('requests about large files', async () => {
    const server = new RawServer();
    await server.initialize();
    const tally = new Tally();
    const slow: string[] = [];
    let id = 0;
    for (const { name, full, text } of texts) {
        const whole = text(Math.max(8, Math.floor(full * part)));
        const uri = `${server.root}/big.lesson`;
        const lines = whole.split('\n');
        server.send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'haversack', version: 1, text: whole } } });
        for (const line of [0, Math.floor(lines.length / 2), lines.length - 1]) for (const feature of features) {
            const character = Math.floor((lines[line] ?? '').length * 0.9);
            const before = performance.now();
            const { error } = await server.ask(id++, `textDocument/${feature}`, {
                textDocument: { uri }, position: { line, character }, positions: [{ line, character }], newName: 'new-name', ch: '\n', options: { tabSize: 2, insertSpaces: true },
                range: { start: { line: Math.max(0, line - 20), character: 0 }, end: { line, character } }, context: { diagnostics: [], triggerKind: 1, includeDeclaration: true, isRetrigger: false }
            });
            const took = performance.now() - before;
            expect({ name, feature, line, error: /stack|RangeError|Maximum|Invalid/.exec(error?.message ?? '') && error }).toEqual({ name, feature, line, error: null });
            expect({ name, feature, errors: server.errors, alive: server.alive }).toEqual({ name, feature, errors: '', alive: true });
            tally.add(feature);
            if (took > 5000) slow.push(`${feature} on ${name}: ${(took / 1000).toFixed(1)} s`);
        }
        server.answers.clear();
        server.send({ method: 'textDocument/didClose', params: { textDocument: { uri } } });
        if (everything) console.log(`${name}: ${whole.length} characters asked about.`);
    }
    console.log(`${tally.total} requests about ${texts.length} large files: ${tally}. ${slow.length} took longer than 5 s${slow.length ? `: ${slow.join('; ')}` : ''}.`);
    await server.ask('shutdown', 'shutdown');
    expect({ code: await server.exit(), errors: server.errors }).toEqual({ code: 0, errors: '' });
});
