import { execFile } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, vi } from 'vitest';
import { runCommandLine } from '@haversack/server/cli/command-line';

// Each test starts a process; a loaded machine may take seconds for it.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });

const repository = join(import.meta.dirname, '../..');
export const commandFile = join(repository, '.build/cli/haversack.cjs');
export const firstSteps = join(repository, 'examples/first-steps');

export interface Outcome {
    code: number | null;
    out: string;
    err: string;
}

/** Runs the built command line as a process of its own. */
export function startedHaversack(args: readonly string[], cwd = repository): Promise<Outcome> {
    return new Promise(resolve => {
        const child = execFile(process.execPath, [commandFile, ...args], { cwd, encoding: 'utf8', maxBuffer: 1e9 }, (_, out, err) => resolve({ code: child.exitCode, out, err }));
    });
}

let last: Promise<unknown> = Promise.resolve();

/** Runs the command line in this process, one after another, since each has a folder that it is run in. */
export function haversack(args: readonly string[], cwd = repository): Promise<Outcome> {
    const run = last.then(async () => {
        const before = process.cwd();
        const outcome = { code: 0, out: '', err: '' };
        process.chdir(cwd);
        try {
            outcome.code = await runCommandLine(args, text => { outcome.out += text; }, text => { outcome.err += text; });
        } finally {
            process.chdir(before);
        }
        return outcome;
    });
    last = run.catch(() => undefined);
    return run;
}

const made: string[] = [];
afterAll(() => made.forEach(path => rmSync(path, { recursive: true, force: true })));

/** A folder of its own with these files, or with a copy of the example. */
export function folder(files?: Record<string, string | Uint8Array>): string {
    const path = mkdtempSync(join(tmpdir(), 'haversack-cli-'));
    made.push(path);
    if (files) for (const [name, text] of Object.entries(files)) writeFileSync(join(path, name), text);
    else cpSync(firstSteps, path, { recursive: true });
    return path;
}
