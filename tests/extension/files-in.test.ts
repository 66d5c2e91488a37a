import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type * as vscode from 'vscode';
import { URI } from 'vscode-uri';
import { filesIn, readAtOnce } from '../../extension/files-in.js';
import { FileType, resetStandIn, workspace } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));

type Folder = { [name: string]: Folder | 'file' | 'link to a folder' | 'cannot be read' };

let mostAtOnce = 0;

/** A file system far away: every answer takes a turn of the loop. */
function put(root: Folder): void {
    let now = 0;
    vi.spyOn(workspace.fs, 'readDirectory').mockImplementation(async uri => {
        mostAtOnce = Math.max(mostAtOnce, ++now);
        await new Promise(resolve => { setTimeout(resolve); });
        now--;
        const folder = uri.path.split('/').slice(2).reduce<Folder[string] | undefined>((at, name) => (typeof at === 'object' ? at[name] : undefined), root);
        if (typeof folder !== 'object') throw new Error('It cannot be read.');
        return Object.entries(folder).map(([name, is]) => [name, is === 'file' ? FileType.File : is === 'link to a folder' ? FileType.SymbolicLink | FileType.Directory : FileType.Directory]);
    });
}
const found = async (): Promise<string[]> => (await filesIn(URI.parse('far:/root') as vscode.Uri, FileType.Directory)).map(({ path }) => path).sort();

beforeEach(() => { resetStandIn(); mostAtOnce = 0; });
afterEach(() => { vi.restoreAllMocks(); });

it('finds what a programme is made of and may name, however deep, and nothing hidden, installed or linked', async () => {
    put({
        'a.lesson': 'file', 'notes.txt': 'file', 'town.ICS': 'file',
        lessons: { 'b.lesson': 'file', deep: { 'c.kit': 'file' }, locked: 'cannot be read' },
        '.git': { 'd.lesson': 'file' }, node_modules: { 'e.json': 'file' }, round: 'link to a folder', 'odd.lesson': { 'f.course': 'file' }
    });
    expect(await found()).toEqual(['/root/a.lesson', '/root/lessons/b.lesson', '/root/lessons/deep/c.kit', '/root/odd.lesson/f.course', '/root/town.ICS']);
});

it('asks for a few folders at once, however many there are', async () => {
    put(Object.fromEntries(Array.from({ length: 100 }, (_, index) => [`unit-${index}`, { below: { 'a.lesson': 'file' } }] as const)));
    expect(await found()).toHaveLength(100);
    expect(mostAtOnce).toBe(readAtOnce);
});

it('ends in a file system that leads in a circle', async () => {
    const circle: Folder = { 'a.lesson': 'file' };
    circle.again = circle;
    put(circle);
    expect((await found()).length).toBe(41);
});

it('is the file itself, where it is one that counts', async () => {
    for (const [name, count] of [['a.lesson', 1], ['a.txt', 0]] as const) expect(await filesIn(URI.parse(`far:/root/${name}`) as vscode.Uri, FileType.File)).toHaveLength(count);
});
