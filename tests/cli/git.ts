import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Git in a folder, as somebody who has no settings. */
export function git(folder: string, ...args: string[]): string {
    return execFileSync('git', ['-C', folder, '-c', 'user.name=Somebody', '-c', 'user.email=somebody@example.org', '-c', 'init.defaultBranch=main', '-c', 'commit.gpgsign=false', ...args], {
        encoding: 'utf8', env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' }
    });
}

/** Writes files, takes away those that are given as undefined, and commits. */
export function commit(folder: string, files: Record<string, string | undefined>, tag?: string): void {
    for (const [name, text] of Object.entries(files)) {
        const path = join(folder, name);
        if (text === undefined) rmSync(path);
        else {
            mkdirSync(dirname(path), { recursive: true });
            writeFileSync(path, text);
        }
    }
    git(folder, 'add', '-A', '.');
    git(folder, 'commit', '-q', '--allow-empty', '-m', 'A step');
    if (tag !== undefined) git(folder, 'tag', tag);
}
