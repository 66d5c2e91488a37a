import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { PassThrough, type Readable, type Writable } from 'node:stream';
import { createConnection, ProposedFeatures, type WatchDog } from 'vscode-languageserver';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node';
import { startOnDisk } from '../../server/start-on-disk.js';
import { inOrder } from '../../server/workspace/message-order.js';

export const serverFile = join(import.meta.dirname, '../../.build/server/node-server.cjs');

/** A server with the two ends of the wire that a client holds. */
export interface ServerEnd {
    readonly input: Writable;
    readonly output: Readable;
    /** Its exit code, once it has ended. */
    readonly ended: Promise<number | null>;
    /** What it wrote to its error output. */
    errors(): string;
}

/** The bundle that ships, as an editor starts it. */
export function builtServer(): ServerEnd {
    const child = spawn(process.execPath, [serverFile, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
    let errors = '';
    child.stderr.on('data', chunk => { errors += String(chunk); });
    return { input: child.stdin, output: child.stdout, ended: once(child, 'exit').then(([code]) => code as number | null), errors: () => errors };
}

/** The same server from its sources, in this process, at the other end of two pipes: every message is written and read as it is over a process's input and output. */
export function serverAtPipe(): ServerEnd {
    const input = new PassThrough();
    const output = new PassThrough();
    let end = (_code: number): void => undefined;
    const ended = new Promise<number>(resolve => { end = resolve; });
    const watchDog: WatchDog = { shutdownReceived: false, initialize: () => undefined, exit: code => end(code) };
    const connection = createConnection(
        logger => createProtocolConnection(new StreamMessageReader(input), new StreamMessageWriter(output), logger, { messageStrategy: inOrder() }), watchDog, ProposedFeatures.all
    );
    startOnDisk(connection);
    return { input, output, ended, errors: () => '' };
}
