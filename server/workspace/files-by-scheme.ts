import { URI, type FileSystemNode, type FileSystemProvider } from 'langium';
import type { AttachmentReader } from '@haversack/language/attachments/attachment-reader';

/** The disk for what lies on it, and what the client sends for all else. */
export class FilesByScheme implements FileSystemProvider {
    constructor(private readonly disk: FileSystemProvider, private readonly sent: FileSystemProvider) {}

    private of(uri: URI): FileSystemProvider {
        return uri.scheme === 'file' ? this.disk : this.sent;
    }

    stat(uri: URI): Promise<FileSystemNode> {
        return this.of(uri).stat(uri);
    }

    statSync(uri: URI): FileSystemNode {
        return this.of(uri).statSync(uri);
    }

    exists(uri: URI): Promise<boolean> {
        return this.of(uri).exists(uri);
    }

    existsSync(uri: URI): boolean {
        return this.of(uri).existsSync(uri);
    }

    readBinary(uri: URI): Promise<Uint8Array> {
        return this.of(uri).readBinary(uri);
    }

    readBinarySync(uri: URI): Uint8Array {
        return this.of(uri).readBinarySync(uri);
    }

    readFile(uri: URI): Promise<string> {
        return this.of(uri).readFile(uri);
    }

    readFileSync(uri: URI): string {
        return this.of(uri).readFileSync(uri);
    }

    readDirectory(uri: URI): Promise<FileSystemNode[]> {
        return this.of(uri).readDirectory(uri);
    }

    readDirectorySync(uri: URI): FileSystemNode[] {
        return this.of(uri).readDirectorySync(uri);
    }
}

/** Likewise for the files that a programme names. */
export function attachmentsByScheme(disk: AttachmentReader, sent: AttachmentReader): AttachmentReader {
    const of = (uri: string): AttachmentReader => (URI.parse(uri).scheme === 'file' ? disk : sent);
    return { read: (uri, within) => of(uri).read(uri, within), list: (folder, within) => of(folder).list(folder, within) };
}
