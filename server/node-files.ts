import { statSync } from 'node:fs';
import type { FileSystemNode } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';

/** The disk, with links to files followed. Links to folders are not: they may lead in a circle. */
export class NodeFiles extends NodeFileSystemProvider {
    override async readDirectory(...folder: Parameters<NodeFileSystemProvider['readDirectory']>): Promise<FileSystemNode[]> {
        const entries = await super.readDirectory(...folder);
        return entries.map(entry => (entry.isFile || entry.isDirectory ? entry : { ...entry, isFile: isFile(entry.uri.fsPath) }));
    }
}

function isFile(path: string): boolean {
    return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}
