import { afterEach, describe, expect, test } from 'vitest';
import type { DocumentDiagnosticReport, WorkspaceDiagnosticReport } from 'vscode-languageserver-protocol/node';
import { Client, type StartOptions } from './client.js';
import { planProgramme } from './plan-programme.js';

let client: Client;
afterEach(() => client.stop());

/** A client that fetches problems and shows none that are sent. */
const fetching: StartOptions = { capabilities: { textDocument: { publishDiagnostics: undefined, diagnostic: { dynamicRegistration: false } }, workspace: { diagnostics: { refreshSupport: true } } } };

const fetch = (file: string, previousResultId?: string): Promise<DocumentDiagnosticReport> => client.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri: client.uri(file) }, previousResultId });
const fetchAll = (previousResultIds: { uri: string; value: string }[] = []): Promise<WorkspaceDiagnosticReport> => client.connection.sendRequest('workspace/diagnostic', { previousResultIds });
const codes = (report: DocumentDiagnosticReport): unknown[] => (report.kind === 'full' ? report.items.map(({ code }) => code) : [report.kind]);
const askedAgain = (): number => client.heard.filter(method => method === 'workspace/diagnostic/refresh').length;

const listen = 'lessons/listen-1.lesson';

describe('a client that fetches problems', () => {
    test('gets those of the text as it is now, and nothing is sent', async () => {
        client = await Client.start(fetching);
        expect(client.initialized.capabilities.diagnosticProvider).toEqual({ identifier: 'haversack', interFileDependencies: true, workspaceDiagnostics: true });
        await client.open(listen);
        expect(codes(await fetch(listen))).toEqual([]);
        void client.edit(listen, 'hand-bell     1', 'hand-bel     1');
        const report = await fetch(listen);
        expect(codes(report)).toContain('unknown-name');
        const { resultId } = report as { resultId: string };
        expect(await fetch(listen, resultId)).toEqual({ kind: 'unchanged', resultId });
        void client.edit(listen, 'hand-bel ', 'hand-bell ');
        expect(codes(await fetch(listen, resultId))).toEqual([]);
        expect(client.problems(listen)).toEqual([]);
    });

    test('is told to ask again when the plan has something new for a file that nobody touched', async () => {
        client = await Client.start({ programme: planProgramme, today: '2026-09-07', ...fetching });
        await client.open('weigh.lesson');
        await client.open('weighing.course');
        expect(codes(await fetch('weigh.lesson'))).toEqual([]);
        const before = askedAgain();
        // Seven children are four pairs, with twenty cubes for each: 80 are needed, and three boxes hold 60.
        await client.edit('weighing.course', 'kits weighing-box 4', 'kits weighing-box 3');
        await client.until('the client to be told', () => askedAgain() > before);
        expect(codes(await fetch('weigh.lesson'))).toEqual(['short-at-meeting']);
        const { items } = await fetchAll();
        expect(items.map(item => `${item.uri.split('/').at(-1)} ${codes(item).join()}`)).toEqual(['weigh.lesson short-at-meeting']);
        await client.edit('weighing.course', 'kits weighing-box 3', 'kits weighing-box 4');
        const again = askedAgain();
        await client.until('the client to be told again', () => askedAgain() > again);
        expect(codes(await fetch('weigh.lesson'))).toEqual([]);
    });

    test('gets the problems of all files, each with its own result, and unchanged ones as such', async () => {
        client = await Client.start({ programme: { 'a.lesson': 'lesson one\n  follows nowhere\n', 'b.lesson': 'lesson two\n  zzz\n', 'c.kit': '# Nothing.\n' }, ...fetching });
        const { items } = await fetchAll();
        expect(items.map(({ uri }) => uri).sort()).toEqual([client.uri('a.lesson'), client.uri('b.lesson')]);
        const ids = items.map(item => ({ uri: item.uri, value: item.resultId! }));
        expect((await fetchAll(ids)).items.map(({ kind }) => kind)).toEqual(['unchanged', 'unchanged']);
        await client.writeOutside('a.lesson', '# Gone.\n');
        await client.deleteOutside('b.lesson');
        const after = await fetchAll(ids);
        expect(after.items.map(item => [item.kind, 'items' in item ? item.items.length : undefined])).toEqual([['full', 0], ['full', 0]]);
    });

    test('of a file that is not there: none', async () => {
        client = await Client.start(fetching);
        expect(await fetch('gone.lesson')).toEqual({ kind: 'full', items: [] });
    });
});

describe('a client that is sent problems', () => {
    test.each([
        ['and fetches none', {}],
        ['and could fetch them: every problem comes once', { textDocument: { diagnostic: { dynamicRegistration: true } }, workspace: { diagnostics: { refreshSupport: true } } }]
    ])('%s', async (_, capabilities) => {
        client = await Client.start({ capabilities });
        expect(client.initialized.capabilities.diagnosticProvider).toBeUndefined();
        expect(client.registrations.map(({ method }) => method)).not.toContain('textDocument/diagnostic');
        await client.open(listen);
        await client.edit(listen, 'hand-bell     1', 'hand-bel     1');
        await client.settled();
        expect(client.codes(listen)).toContain('unknown-name');
        expect(askedAgain()).toBe(0);
    });
});
