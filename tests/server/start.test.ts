import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CancellationTokenSource, ResponseError, type DidChangeWatchedFilesRegistrationOptions, WatchKind } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

describe('start and end', () => {
    test('says what it can do, and listens for our files only', async () => {
        const client = await Client.start({ built: true });
        const { capabilities } = client.initialized;
        expect(capabilities).toMatchObject({
            textDocumentSync: { openClose: true, change: 2 },
            hoverProvider: true, definitionProvider: true, referencesProvider: true, documentSymbolProvider: true, documentHighlightProvider: true,
            foldingRangeProvider: true, renameProvider: { prepareProvider: true }, completionProvider: { triggerCharacters: expect.arrayContaining(['{', '(']) as unknown }
        });
        expect(capabilities.codeActionProvider).toEqual({ codeActionKinds: ['quickfix', 'refactor.rewrite'] });
        expect(capabilities.workspaceSymbolProvider).toBeTruthy();
        const watcher = client.registrations.find(({ method }) => method === 'workspace/didChangeWatchedFiles');
        const { watchers } = watcher!.registerOptions as DidChangeWatchedFilesRegistrationOptions;
        expect(watchers.map(({ globPattern }) => globPattern)).toEqual(['**/*.{lesson,kit,course}', '**/*.{ics,ICS,ical,ICAL,icalendar,ICALENDAR,json,JSON}', '**/*']);
        // Of everything else only that it came or went, as a folder does.
        expect(watchers[2]!.kind).toBe(WatchKind.Create | WatchKind.Delete);
        expect(await client.stop()).toEqual({ code: 0, errors: '' });
    });

    // The code is the protocol's own: "exit ... code 0 if shutdown was received before, 1 otherwise" (Language Server Protocol 3.17, Exit Notification).
    test('an exit without a shutdown ends with code 1', async () => {
        const client = await Client.start({ programme: {}, built: true });
        await client.connection.sendNotification('exit');
        expect(await client.ended).toBe(1);
        rmSync(client.folder, { recursive: true });
    });

    test('an unknown request is refused with the protocol’s own code', async () => {
        const client = await Client.start({ programme: {} });
        // MethodNotFound is -32601 in JSON-RPC 2.0, section 5.1.
        await expect(client.connection.sendRequest('haversack/dance', {})).rejects.toMatchObject({ code: -32601 });
        await client.stop();
    });
});

describe('a cancelled request', () => {
    const long = (lines: number): string => `lesson long "Long"\n  activity many "Many" 10 min\n${'    do: Lift the {hand-bell} and put it down again.\n'.repeat(lines)}`;

    test('is answered with error -32800, never with a result', async () => {
        const client = await Client.start();
        await client.open('long.lesson', long(10));
        let cancelled = 0;
        for (let round = 0; round < 6; round++) {
            void client.change('long.lesson', long(900 + round));
            const source = new CancellationTokenSource();
            const answer = client.connection.sendRequest<unknown>('textDocument/hover', {
                textDocument: { uri: client.uri('long.lesson') }, position: { line: 2, character: 20 }
            }, source.token).then(value => ({ value }), (error: unknown) => ({ error }));
            if (round % 2 === 1) await new Promise(resolve => setImmediate(resolve));
            source.cancel();
            const got = await answer;
            if ('error' in got) {
                expect(got.error).toBeInstanceOf(ResponseError);
                // RequestCancelled in the Language Server Protocol 3.17, "Cancellation Support".
                expect((got.error as ResponseError<unknown>).code).toBe(-32800);
                cancelled++;
            } else {
                expect(got.value).toHaveProperty('contents');
            }
        }
        expect(cancelled).toBeGreaterThan(0);
        await client.stop();
    });

    // Two copies of the protocol library give the error back as a result; see `overrides` in package.json.
    test('one copy of each protocol library is installed', () => {
        const lock = JSON.parse(readFileSync(join(import.meta.dirname, '../../package-lock.json'), 'utf8')) as { packages: Record<string, { version: string }> };
        const copies = (name: string): string[] => Object.entries(lock.packages).filter(([path]) => path.endsWith(`node_modules/${name}`)).map(([path, { version }]) => `${path}@${version}`);
        expect(copies('vscode-jsonrpc')).toEqual(['node_modules/vscode-jsonrpc@9.0.3']);
        expect(copies('vscode-languageserver-protocol')).toEqual(['node_modules/vscode-languageserver-protocol@3.18.4']);
        expect(copies('vscode-languageserver-types')).toEqual(['node_modules/vscode-languageserver-types@3.18.4']);
    });
});
