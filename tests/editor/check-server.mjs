// Starts the editor's server on a free port, asks its version over HTTP, and ends it. Exit code 0 when it answered.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const work = mkdtempSync(join(tmpdir(), 'haversack-editor-check-'));
const server = spawn(process.execPath, [
    process.argv[2], '--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms',
    '--telemetry-level', 'off', '--server-data-dir', join(work, 'data'), '--extensions-dir', join(work, 'extensions'),
], { detached: true });

function finish(code, message) {
    console.log(message);
    try {
        process.kill(-server.pid, 'SIGKILL');
    } catch {
        // Already gone.
    }
    rmSync(work, { recursive: true, force: true, maxRetries: 5 });
    process.exit(code);
}

let printed = '';
let asked = false;
const listen = async (chunk) => {
    printed += chunk;
    const port = /Extension host agent listening on (\d+)/.exec(printed)?.[1];
    if (!port || asked) return;
    asked = true;
    try {
        const answer = await fetch(`http://127.0.0.1:${port}/version`);
        finish(answer.ok ? 0 : 1, `editor: server answered ${answer.status}, commit ${await answer.text()}`);
    } catch (error) {
        finish(1, `editor: server did not answer: ${error}`);
    }
};
server.stdout.on('data', listen);
server.stderr.on('data', listen);
server.on('exit', (code) => finish(1, `editor: server ended with code ${code}\n${printed}`));
setTimeout(() => finish(1, `editor: server not listening within 60 s\n${printed}`), 60_000);
