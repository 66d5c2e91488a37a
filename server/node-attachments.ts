import { closeSync, constants, fstatSync, openSync, readdirSync, readSync, realpathSync } from 'node:fs';
import { isAbsolute, relative, sep } from 'node:path';
import { URI } from 'langium';
import { noSuchFile, type AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { decodeText } from './decode-text.js';
import { largestNamedFile } from './protocol/files.js';

/** Reads the files that a programme names from the disk: those that really lie in its folder, and no other. */
export class NodeAttachments implements AttachmentReader {
    read(uri: string, within: string): ReturnType<AttachmentReader['read']> {
        const file = URI.parse(uri);
        if (file.scheme !== 'file') return { wrong: 'The file is not on this computer\'s disk, so it cannot be read.' };
        try {
            const real = realpathSync.native(file.fsPath);
            if (!liesIn(real, realpathSync.native(URI.parse(within).fsPath))) {
                return { wrong: 'The file is a link that leads out of the programme\'s folder. Copy the file itself into the programme.' };
            }
            const answer = readFile(real);
            const address = URI.file(real).toString();
            return 'text' in answer && address !== uri ? { ...answer, real: address } : answer;
        } catch (error) {
            const { code } = error as NodeJS.ErrnoException;
            return code === 'ENOENT' || code === 'ENOTDIR' ? noSuchFile : { wrong: whyNot(code) };
        }
    }

    list(folder: string, within: string): string[] {
        try {
            const real = realpathSync.native(URI.parse(folder).fsPath);
            const root = realpathSync.native(URI.parse(within).fsPath);
            if (real !== root && !liesIn(real, root)) return [];
            return readdirSync(real, { withFileTypes: true }).filter(entry => entry.isFile() || entry.isDirectory())
                .map(entry => (entry.isDirectory() ? `${entry.name}/` : entry.name)).sort();
        } catch {
            return [];
        }
    }
}

function liesIn(path: string, folder: string): boolean {
    const way = relative(folder, path);
    return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Opened without waiting, so that a pipe that nobody writes to holds nothing up, and looked at through what was opened. */
function readFile(path: string): { text: string } | { wrong: string } {
    const opened = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
        const stat = fstatSync(opened);
        if (stat.isDirectory()) return { wrong: 'This is a folder. Name a file in it.' };
        if (!stat.isFile()) return { wrong: 'This is no ordinary file, so it is not read. Copy what it holds into a file.' };
        if (stat.size > largestNamedFile) return { wrong: `The file is larger than ${largestNamedFile / 1024 / 1024} MB and is not read. Save only the years that are needed.` };
        // No more than the size says, however much comes meanwhile.
        const bytes = new Uint8Array(stat.size);
        let length = 0;
        for (let read = -1; read !== 0 && length < bytes.length; length += read) read = readSync(opened, bytes, length, bytes.length - length, null);
        return decodeText(bytes.subarray(0, length));
    } finally {
        closeSync(opened);
    }
}

function whyNot(code: string | undefined): string {
    const known: Record<string, string> = {
        EACCES: 'There is no permission to read the file.', EPERM: 'There is no permission to read the file.', ELOOP: 'The file is a link that leads in a circle. Copy the file itself into the programme.',
        ENAMETOOLONG: 'The path is too long for a file. Give file and folders shorter names.', EISDIR: 'This is a folder. Name a file in it.'
    };
    return (code && known[code]) ?? `The file could not be read${code ? ` (${code})` : ''}.`;
}
