import { URI, type FileSystemNode, type FileSystemProvider } from 'langium';
import { noReader, noSuchFile, type AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { endsAs } from '@haversack/language/attachments/endings';
import { decodeText } from '../decode-text.js';
import { largestNamedFile, type FedFile } from '../protocol/files.js';

/** What is known of a file: what it holds, why it cannot be had, or only that it is there. */
type Known = { bytes: Uint8Array } | { wrong: string } | 'there';

/** Gets a file that is known to be there; nothing where it has gone meanwhile. */
export type Fetch = (uri: string) => Promise<FedFile | undefined>;

const tooLarge = `The file is larger than ${largestNamedFile / 1024 / 1024} MB and is not read. Save only the years that are needed.`;
const unreadable = 'The file could not be read where it lies. Look whether it can be opened in the editor.';
const onItsWay = 'The file is still on its way here.';

/**
 * Files that the client sends, in place of a disk. Of calendars and frameworks only names are sent; what one holds is fetched when it is
 * first asked for. Addresses are written as `URI.toString()` writes them.
 */
export class FedFiles implements FileSystemProvider, AttachmentReader {
    private readonly known = new Map<string, Known>();
    /** Calendars and frameworks that somebody has asked for, whether they are there or not. */
    private readonly wanted = new Set<string>();
    /** Of these, what is known is older than what lies there now. */
    private readonly outdated = new Set<string>();
    private readonly onTheWay = new Map<string, Promise<void>>();
    private arrived: (uri: string) => void = () => undefined;
    private wholeSent: () => void = () => undefined;
    private whole: Promise<void> | undefined;
    private fetcher: Fetch | undefined;

    /** The client has said that it sends files: until all of them have come, who looks into a folder waits. `arrived` is called with each file that was fetched. */
    expect(fetch: Fetch, arrived: (uri: string) => void): void {
        this.fetcher = fetch;
        this.arrived = arrived;
        this.whole = new Promise(resolve => { this.wholeSent = resolve; });
    }

    /** Everything has come. */
    complete(): void {
        this.wholeSent();
    }

    /** Takes up what the client sent. @returns its address; undefined where nothing has changed yet for anybody: the name alone of a calendar or framework, or one that nobody has asked for */
    take(file: FedFile): string | undefined {
        const uri = URI.parse(file.uri).toString();
        const named = endsAs(uri);
        if (named && file.bytes === undefined && !file.wrong) {
            // Until the new text is here, the one before stands.
            if (this.known.has(uri)) this.outdated.add(uri);
            else this.known.set(uri, 'there');
            this.onTheWay.delete(uri);
            if (this.wanted.has(uri)) void this.fetch([uri]);
            return undefined;
        }
        this.keep(uri, knownOf(file));
        return !named || this.wanted.has(uri) ? uri : undefined;
    }

    /** @param gone address of a file or a folder. @returns the addresses of the files that were known there */
    forget(gone: string): string[] {
        const uri = URI.parse(gone).toString().replace(/\/$/, '');
        const lost = [...this.known.keys()].filter(known => known === uri || known.startsWith(`${uri}/`));
        for (const one of lost) {
            this.known.delete(one);
            this.outdated.delete(one);
            this.onTheWay.delete(one);
        }
        return lost;
    }

    /** Gets what is there of these files but has not been sent; never throws. */
    async fetch(uris: readonly string[]): Promise<void> {
        for (const uri of uris) this.wanted.add(uri);
        await Promise.all(uris.filter(uri => this.known.get(uri) === 'there' || this.outdated.has(uri)).map(uri => this.onTheWay.get(uri) ?? this.fetchOne(uri)));
    }

    private fetchOne(uri: string): Promise<void> {
        const way = (this.fetcher?.(uri) ?? Promise.resolve(undefined)).catch((): FedFile => ({ uri, wrong: 'unreadable' })).then(file => {
            // It has changed again meanwhile, or is gone: another answer counts.
            if (this.onTheWay.get(uri) !== way) return;
            this.onTheWay.delete(uri);
            if (file) this.keep(uri, knownOf(file.bytes === undefined && !file.wrong ? { uri, wrong: 'unreadable' } : file));
            else this.forget(uri);
            this.arrived(uri);
        });
        this.onTheWay.set(uri, way);
        return way;
    }

    private keep(uri: string, file: Known): void {
        this.known.set(uri, file);
        this.outdated.delete(uri);
    }

    read(address: string): ReturnType<AttachmentReader['read']> {
        const uri = URI.parse(address).toString();
        void this.fetch([uri]);
        const file = this.known.get(uri);
        if (file === 'there') return { wrong: onItsWay };
        if (file) return 'wrong' in file ? file : decodeText(file.bytes);
        if (!this.fetcher) return noReader.read(uri, '');
        return this.isFolder(uri) ? { wrong: 'This is a folder. Name a file in it.' } : noSuchFile;
    }

    list(folder: string): string[] {
        return this.entries(URI.parse(folder)).map(({ name, isFolder }) => (isFolder ? `${name}/` : name)).sort();
    }

    existsSync(uri: URI): boolean {
        return this.known.has(uri.toString()) || this.isFolder(uri.toString());
    }

    exists(uri: URI): Promise<boolean> {
        return Promise.resolve(this.existsSync(uri));
    }

    statSync(uri: URI): FileSystemNode {
        const isFile = this.known.has(uri.toString());
        if (!isFile && !this.isFolder(uri.toString())) throw new Error(`${uri.toString()} was not sent.`);
        return { isFile, isDirectory: !isFile, uri };
    }

    stat(uri: URI): Promise<FileSystemNode> {
        return settled(() => this.statSync(uri));
    }

    readBinarySync(uri: URI): Uint8Array {
        const file = this.known.get(uri.toString());
        if (file === undefined || file === 'there' || 'wrong' in file) throw new Error(`${uri.toString()} was not sent.`);
        return file.bytes;
    }

    readBinary(uri: URI): Promise<Uint8Array> {
        return settled(() => this.readBinarySync(uri));
    }

    /** Without a byte order mark; what is no UTF-8 is shown as an editor shows it. */
    readFileSync(uri: URI): string {
        return new TextDecoder().decode(this.readBinarySync(uri));
    }

    readFile(uri: URI): Promise<string> {
        return settled(() => this.readFileSync(uri));
    }

    readDirectorySync(folder: URI): FileSystemNode[] {
        return this.entries(folder).map(({ name, isFolder }) => ({ isFile: !isFolder, isDirectory: isFolder, uri: childOf(folder, name) }));
    }

    async readDirectory(folder: URI): Promise<FileSystemNode[]> {
        await this.whole;
        return this.readDirectorySync(folder);
    }

    private isFolder(uri: string): boolean {
        const start = `${uri.replace(/\/$/, '')}/`;
        for (const known of this.known.keys()) if (known.startsWith(start)) return true;
        return false;
    }

    private entries(folder: URI): { name: string; isFolder: boolean }[] {
        const start = `${folder.toString().replace(/\/$/, '')}/`;
        const folders = new Set<string>();
        const files = new Set<string>();
        for (const known of this.known.keys()) {
            if (!known.startsWith(start)) continue;
            const end = known.indexOf('/', start.length);
            (end < 0 ? files : folders).add(known.slice(start.length, end < 0 ? undefined : end));
        }
        return [...[...folders].map(name => ({ name, isFolder: true })), ...[...files].map(name => ({ name, isFolder: false }))]
            .map(({ name, isFolder }) => ({ name: decodeURIComponent(name), isFolder }));
    }
}

function childOf(folder: URI, name: string): URI {
    return folder.with({ path: `${folder.path.replace(/\/$/, '')}/${name}` });
}

function knownOf({ bytes, wrong }: FedFile): Known {
    if (wrong !== undefined) return { wrong: wrong === 'too-large' ? tooLarge : unreadable };
    if (bytes === undefined) return 'there';
    try {
        const binary = atob(bytes);
        return { bytes: Uint8Array.from(binary, character => character.charCodeAt(0)) };
    } catch {
        return { wrong: unreadable };
    }
}

/** What throws is a rejected promise. */
function settled<T>(work: () => T): Promise<T> {
    return new Promise(resolve => resolve(work()));
}
