import { execFile } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/** Why nothing can be had from the history, in one sentence for a person. */
export class NoHistory extends Error {}

/** A folder of a repository. */
export interface Repository {
    /** The folder on this disk. */
    folder: string;
    /** Its path in the repository, "" for the repository's own folder, else with a slash at its end. */
    prefix: string;
}

/** A file of a revision. */
export interface Blob {
    /** Its path under the folder, with slashes. */
    path: string;
    id: string;
    size: number;
}

const longestWait = 30_000;
const mostOutput = 512 * 1024 * 1024;

/**
 * Git only reads here. Whatever the repository's own settings say, it starts no other program: no hook, no monitor, no pager, no
 * converter, no check of signatures, and nothing is fetched.
 */
const settings = [
    'core.fsmonitor=false', 'core.hooksPath=/dev/null', 'protocol.allow=never', 'log.showSignature=false', 'safe.bareRepository=explicit', 'core.quotePath=false',
    // Nor do they decide which commits and paths it tells.
    'log.showRoot=true', 'log.follow=false', 'diff.relative=false', 'diff.orderFile=/dev/null'
].flatMap(setting => ['-c', setting]);

/** Runs git on a folder; its arguments end where `--end-of-options` stands. Throws NoHistory where there is no git. */
function git(folder: string, args: readonly string[], input?: string): Promise<{ code: number; out: Buffer; err: string }> {
    return new Promise((resolve, reject) => {
        // Started elsewhere than in the folder: some systems look for programs where they are started.
        const child = execFile('git', ['--no-pager', '--no-optional-locks', ...settings, '-C', folder, ...args], {
            cwd: dirname(process.execPath), env: environment(), encoding: 'buffer', timeout: longestWait, maxBuffer: mostOutput, windowsHide: true
        }, (error, out, err) => {
            const { code } = error ?? {};
            if (code === 'ENOENT') reject(new NoHistory('Git was not found on this computer: install it, or name two folders.'));
            else if (error && typeof code !== 'number') reject(new NoHistory(`Git was stopped: its answer took too long or is too large (${error.message.split('\n')[0]}).`));
            else resolve({ code: typeof code === 'number' ? code : 0, out, err: err.toString('utf8') });
        });
        // Git may end before it has read everything.
        child.stdin?.on('error', () => undefined);
        child.stdin?.end(input ?? '');
    });
}

/** Without what would send git to another repository. */
function environment(): NodeJS.ProcessEnv {
    const own = Object.entries(process.env).filter(([name]) => !/^GIT_/i.test(name));
    return { ...Object.fromEntries(own), LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_ALLOW_PROTOCOL: 'none', GIT_OPTIONAL_LOCKS: '0' };
}

/** The repository that a folder lies in. */
export async function repositoryOf(folder: string): Promise<Repository> {
    if (!existsSync(folder) || !statSync(folder).isDirectory()) throw new NoHistory(`There is no folder ${folder}. Check the path.`);
    const { code, out, err } = await git(folder, ['rev-parse', '--show-prefix']);
    if (code === 0) return { folder, prefix: out.toString('utf8').replace(/\n$/, '') };
    if (/dubious ownership/.test(err)) throw new NoHistory(`The folder ${folder} belongs to somebody else, so git does not read it. Make it your own, or name two folders.`);
    throw new NoHistory(`The folder ${folder} lies in no git repository. Name two folders, or say with --in where the programme is.`);
}

/** The full name of the commit that a tag, a branch or a commit's name means. */
export async function commitOf({ folder }: Repository, revision: string): Promise<string> {
    const unknown = new NoHistory(`There is no revision '${printable(revision)}' in the git repository of ${folder}, and no folder of that name.`);
    // eslint-disable-next-line no-control-regex
    if (revision === '' || revision.length > 500 || revision.startsWith('-') || /[\u0000-\u001f\u007f]/.test(revision)) throw unknown;
    const { code, out } = await git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
    const id = out.toString('utf8').trim();
    if (code !== 0 || !isId(id)) throw unknown;
    return id;
}

/** For a sentence in a terminal, which characters of a name from a repository might steer. */
export function printable(text: string): string {
    return text.replace(/[\p{Cc}\p{Cf}]/gu, '?').slice(0, 100);
}

function isId(text: string): boolean {
    return /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/.test(text);
}

/** The files of the folder in a commit, links left out; undefined where the commit does not have the folder. */
export async function filesIn({ folder, prefix }: Repository, commit: string): Promise<Blob[] | undefined> {
    const tree = await git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${commit}:${prefix}`]);
    const id = tree.out.toString('utf8').trim();
    if (tree.code !== 0 || !isId(id)) return undefined;
    const { code, out } = await git(folder, ['ls-tree', '-r', '-l', '-z', '--full-tree', '--end-of-options', id]);
    if (code !== 0) return undefined;
    return out.toString('utf8').split('\0').flatMap(entry => {
        const [, mode, type, blob, size, path] = /^(\d+) (\w+) ([0-9a-f]+) +(\d+|-)\t(.+)$/s.exec(entry) ?? [];
        return type === 'blob' && mode?.startsWith('100') && blob && path ? [{ path, id: blob, size: Number(size) }] : [];
    });
}

/** What files hold, in their order; undefined for one that is not there. Names are ids of blobs, or `commit:path`. */
export async function contentsOf({ folder }: Repository, names: readonly string[]): Promise<(Uint8Array | undefined)[]> {
    if (names.length === 0) return [];
    const { out } = await git(folder, ['cat-file', '--batch'], names.map(name => `${name}\n`).join(''));
    const contents: (Uint8Array | undefined)[] = [];
    let at = 0;
    while (contents.length < names.length) {
        const end = out.indexOf(10, at);
        if (end < 0) break;
        const [, type, size] = /^[0-9a-f]+ (\w+) (\d+)$/.exec(out.toString('utf8', at, end)) ?? [];
        if (size === undefined) {
            contents.push(undefined);
            at = end + 1;
            continue;
        }
        const from = end + 1;
        contents.push(type === 'blob' ? out.subarray(from, from + Number(size)) : undefined);
        at = from + Number(size) + 1;
    }
    return contents;
}

/** A commit with the files that it touched, as paths in the repository. */
export interface Touch {
    commit: string;
    paths: string[];
}

/** The commits that touched files of the folder, the newest first. `endings` such as ".course". */
export async function touchesOf({ folder, prefix }: Repository, endings: readonly string[], most: number): Promise<Touch[]> {
    const magic = endings.map(ending => `:(top,glob)${escapeGlob(prefix)}**/*${ending}`);
    const { code, out } = await git(folder, [
        'log', `--max-count=${most}`, '--no-show-signature', '--no-ext-diff', '--no-textconv', '--no-renames', '--format=%x01%H', '--name-only', '-z', '--end-of-options', 'HEAD', '--', ...magic
    ]);
    if (code !== 0) return [];
    return out.toString('utf8').split('\u0001').flatMap(entry => {
        const [commit = '', ...paths] = entry.split('\0').map(piece => piece.replace(/^\n/, '')).filter(piece => piece !== '');
        return isId(commit) ? [{ commit, paths }] : [];
    });
}

function escapeGlob(path: string): string {
    return path.replace(/[\\*?[\]]/g, '\\$&');
}
