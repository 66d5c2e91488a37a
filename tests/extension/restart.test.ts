import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { URI } from 'vscode-uri';
import { followSchemes, Restart } from '../../extension/restart.js';
import { fire, resetStandIn, workspace } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));

/** A client as vscode-languageclient 10.1 is (lib/common/client.js): one that is starting cannot be stopped, one that is stopping cannot be started. */
class StandIn {
    state: 'stopped' | 'starting' | 'running' | 'stopping' = 'stopped';
    readonly did: string[] = [];
    failsToStart = 0;
    failsToStop = 0;
    readonly clientOptions = { documentSelector: [{ scheme: 'file', language: 'haversack' }] };
    private starting: Promise<void> | undefined;

    needsStop(): boolean { return this.state === 'starting' || this.state === 'running'; }
    isRunning(): boolean { return this.state === 'running'; }

    start(): Promise<void> {
        if (this.state === 'stopping') return Promise.reject(new Error('Client is currently stopping.'));
        this.starting ??= this.go('starting', 'running', () => this.failsToStart-- > 0).catch((error: unknown) => { this.starting = undefined; throw error; });
        return this.starting;
    }

    async stop(): Promise<void> {
        if (this.state !== 'running') throw new Error(`Client is not running: ${this.state}`);
        this.starting = undefined;
        await this.go('stopping', 'stopped', () => this.failsToStop-- > 0);
    }

    private async go(during: 'starting' | 'stopping', then: 'running' | 'stopped', fails: () => boolean): Promise<void> {
        this.state = during;
        await new Promise(resolve => { setTimeout(resolve); });
        const failed = fails();
        this.state = failed ? 'stopped' : then;
        this.did.push(failed ? `failed ${during}` : then);
        if (failed) throw new Error(during);
    }
}

let client: StandIn;
let restart: Restart;
const asClient = (): BaseLanguageClient => client as unknown as BaseLanguageClient;
beforeEach(() => {
    resetStandIn();
    workspace.workspaceFolders = [];
    client = new StandIn();
    restart = new Restart(asClient());
});

describe('starting again', () => {
    it('goes one after another', async () => {
        await client.start();
        await Promise.all([restart.now(), restart.now()]);
        expect(client.did).toEqual(['running', 'stopped', 'running', 'stopped', 'running']);
    });

    it('waits for one that is just starting', async () => {
        void client.start();
        await restart.now();
        expect(client.did).toEqual(['running', 'stopped', 'running']);
    });

    it('only starts what does not run, and what has died', async () => {
        await restart.now();
        expect(client.did).toEqual(['running']);
        client.failsToStop = 1;
        await restart.now();
        expect(client.did).toEqual(['running', 'failed stopping', 'running']);
    });

    it('is heard by nobody where it fails, and can be asked again', async () => {
        client.failsToStart = 1;
        await expect(restart.now()).resolves.toBeUndefined();
        expect(client.isRunning()).toBe(false);
        await restart.now();
        expect(client.isRunning()).toBe(true);
    });
});

describe('a new kind of place', () => {
    const schemes = (): string[] => client.clientOptions.documentSelector.map(({ scheme }) => scheme);

    it('makes the client start again, once for each, and two that come at once do not cross', async () => {
        await client.start();
        const following = followSchemes(asClient(), restart);
        workspace.workspaceFolders = [{ uri: URI.parse('far:/a') }];
        fire('folders', {});
        workspace.workspaceFolders = [...workspace.workspaceFolders, { uri: URI.parse('wide:/b') }];
        fire('folders', {});
        fire('folders', {});
        await vi.waitFor(() => expect(client.did).toEqual(['running', 'stopped', 'running', 'stopped', 'running']));
        expect(schemes()).toEqual(['file', 'untitled', 'far', 'wide']);
        following.dispose();
    });

    it('is only kept in mind where none runs', async () => {
        followSchemes(asClient(), restart);
        workspace.workspaceFolders = [{ uri: URI.parse('far:/a') }];
        fire('folders', {});
        await new Promise(resolve => { setTimeout(resolve, 5); });
        expect(client.did).toEqual([]);
        expect(schemes()).toContain('far');
    });
});
