import * as vscode from 'vscode';
import { programmeFile } from './programme-file.js';

/** What a programme may name; it is not sent unasked. */
export const named = /\.(?:ics|ical|icalendar|json)$/i;

/** The most files or folders that a file system far away is asked for at once. */
export const readAtOnce = 16;
/** No programme lies deeper; a file system that leads in a circle does. */
const deepest = 40;

/** Files of a programme and those it may name, below a folder, hidden ones and installed packages left out; or the file itself. Links to folders are not followed: they may lead in a circle. */
export async function filesIn(uri: vscode.Uri, type: vscode.FileType): Promise<vscode.Uri[]> {
    if (type & vscode.FileType.File) return isOurs(uri) ? [uri] : [];
    const found: vscode.Uri[] = [];
    let level = type === vscode.FileType.Directory ? [uri] : [];
    for (let depth = 0; level.length > 0 && depth <= deepest; depth++) {
        const below: vscode.Uri[] = [];
        for (let at = 0; at < level.length; at += readAtOnce) {
            for (const [entry, kind] of (await Promise.all(level.slice(at, at + readAtOnce).map(entriesOf))).flat()) {
                if (kind & vscode.FileType.File) {
                    if (isOurs(entry)) found.push(entry);
                } else if (kind === vscode.FileType.Directory) below.push(entry);
            }
        }
        level = below;
    }
    return found;
}

const isOurs = ({ path }: vscode.Uri): boolean => programmeFile.test(path) || named.test(path);

async function entriesOf(folder: vscode.Uri): Promise<[vscode.Uri, vscode.FileType][]> {
    try {
        const entries = await vscode.workspace.fs.readDirectory(folder);
        return entries.filter(([name]) => !name.startsWith('.') && name !== 'node_modules').map(([name, kind]) => [vscode.Uri.joinPath(folder, name), kind]);
    } catch {
        // A folder that cannot be read holds nothing for us.
        return [];
    }
}
