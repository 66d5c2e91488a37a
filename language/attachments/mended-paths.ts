import { URI } from 'langium';
import { attachmentKey, type Programme } from '../sheets/programme.js';
import type { FileSheet, Range } from '../sheets/sheet.js';
import { resolvePath } from './attachment-path.js';
import { pathsIn } from './attachment-store.js';

/** A file or folder that gets another address; all that lies in a folder moves with it. */
export interface Move {
    from: string;
    to: string;
}

/** A path between quotes to be written anew in a file. */
export interface MendedPath {
    uri: string;
    at: Range;
    /** With its quotes. */
    text: string;
}

/**
 * What has to be written in the files of a programme, before files are moved, so that each path leads afterwards to the file that it leads to now. `folders`
 * are those that are open. A path that could not lead there stays as it is: its file has then left the programme, or bears a name that no path can say.
 */
export function mendedPaths(programme: Programme, moves: readonly Move[], folders: readonly string[]): MendedPath[] {
    return [...programme.files.values()].flatMap(sheet => pathsIn(sheet).flatMap(({ path, at }) => mended(sheet, path, at, programme, moves, folders) ?? []));
}

function mended(sheet: FileSheet, path: string, at: Range, programme: Programme, moves: readonly Move[], folders: readonly string[]): MendedPath | undefined {
    const named = resolvePath(sheet.uri, path, folders);
    if ('wrong' in named) return undefined;
    const naming = addressAfter(sheet.uri, moves);
    const target = addressAfter(named.uri, moves);
    const isMoved = target !== named.uri;
    if (naming === sheet.uri && !isMoved) return undefined;
    // A path that leads to nothing may be right where its file goes.
    const attachment = programme.attachments.get(attachmentKey(sheet.uri, path));
    if (!isMoved && attachment?.state === 'wrong' && attachment.near) return undefined;
    if (leadsTo(naming, path, folders) === target) return undefined;
    const text = wayFrom(naming, target);
    return !text.includes('"') && leadsTo(naming, text, folders) === target ? { uri: sheet.uri, at, text: `"${text}"` } : undefined;
}

function leadsTo(naming: string, path: string, folders: readonly string[]): string | undefined {
    const named = resolvePath(naming, path, folders);
    return 'uri' in named ? named.uri : undefined;
}

/** The address that a file has after all moves at once: that of the narrowest of the moved folders it lies in counts. */
function addressAfter(uri: string, moves: readonly Move[]): string {
    const [move] = moves.filter(({ from }) => uri === from || uri.startsWith(`${from}/`)).sort((a, b) => b.from.length - a.from.length);
    return move ? move.to + uri.slice(move.from.length) : uri;
}

/** From the folder of a file to another file, names as they are. */
function wayFrom(naming: string, target: string): string {
    const from = URI.parse(naming).path.split('/').slice(0, -1);
    const to = URI.parse(target).path.split('/');
    let shared = 0;
    while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
    return [...from.slice(shared).map(() => '..'), ...to.slice(shared)].join('/');
}
