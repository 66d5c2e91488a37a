import { EmptyFileSystem, URI, UriUtils } from 'langium';
import { programmeFile } from '@haversack/language/facts/programme-file';
import { noSuchFile, type AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { createHaversackServices } from '@haversack/language/module';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { FileSheet } from '@haversack/language/sheets/sheet';
import { decodeText } from '../decode-text.js';
import { contentsOf, filesIn, NoHistory, printable, type Blob, type Repository } from './git.js';

const beside = /\.(?:ics|json)$/i;
const largestFile = 8 * 1024 * 1024;
const largestProgramme = 128 * 1024 * 1024;
const mostFiles = 20_000;

/**
 * The programme as one commit has it, with the calendars and frameworks that it names, of that same commit. Its files have the
 * addresses they would have in the folder today. `others`: sheets of files outside the folder.
 */
export async function programmeAt(repository: Repository, commit: string, name: string, others: readonly FileSheet[] = []): Promise<Programme> {
    const all = await filesIn(repository, commit);
    if (!all) throw new NoHistory(`The revision '${name}' does not have the folder ${repository.folder}.`);
    const visible = all.filter(({ path }) => !path.split('/').some(piece => piece.startsWith('.') || piece === 'node_modules'));
    const files = visible.filter(({ path }) => programmeFile.test(path));
    if (files.length === 0) throw new NoHistory(`There is no .lesson, .kit or .course file in ${repository.folder} in the revision '${name}'.`);
    mustFit(files, name);
    const root = URI.file(repository.folder);
    const address = ({ path }: Blob): URI => UriUtils.joinPath(root, ...path.split('/'));
    const reader = new BlobReader(new Map(visible.filter(({ path }) => beside.test(path)).map(blob => [address(blob).toString(), blob])));
    const store = new AttachmentStore(reader, () => [root.toString()]);
    const { shared, haversack } = createHaversackServices(EmptyFileSystem, store);
    const texts = await contentsOf(repository, files.map(({ id }) => id));
    const sheets: FileSheet[] = [];
    for (const [index, blob] of files.entries()) {
        const document = shared.workspace.LangiumDocumentFactory.fromString(textOf(texts[index], blob, name), address(blob));
        sheets.push(haversack.sheets.sheetOf(document));
        // Reading a large programme must not keep an editor waiting.
        await new Promise(resolve => setImmediate(resolve));
    }
    store.of(sheets);
    await reader.readWanted(repository);
    store.refresh([root.toString()]);
    return gatherProgramme([...sheets, ...others], store.of(sheets));
}

function mustFit(files: readonly Blob[], name: string): void {
    const large = files.find(({ size }) => size > largestFile);
    if (large) throw new NoHistory(`The file ${printable(large.path)} in the revision '${name}' is larger than ${largestFile / 1024 / 1024} MB and is not read.`);
    if (files.length > mostFiles || files.reduce((sum, { size }) => sum + size, 0) > largestProgramme) {
        throw new NoHistory(`The revision '${name}' holds more than ${largestProgramme / 1024 / 1024} MB or ${mostFiles} files of programmes and is not read. Say with --in which folder is meant.`);
    }
}

function textOf(bytes: Uint8Array | undefined, { path }: Blob, name: string): string {
    if (!bytes) throw new NoHistory(`The file ${printable(path)} of the revision '${name}' could not be read.`);
    const decoded = decodeText(bytes);
    if ('wrong' in decoded) throw new NoHistory(`${printable(path)} in the revision '${name}' is not UTF-8 text.`);
    return decoded.text;
}

/** Calendars and frameworks of a commit. The first time that one is asked for it is only noted; after `readWanted` it is there. */
class BlobReader implements AttachmentReader {
    private readonly wanted = new Set<Blob>();
    private readonly texts = new Map<Blob, ReturnType<AttachmentReader['read']>>();

    constructor(private readonly blobs: ReadonlyMap<string, Blob>) {}

    read(uri: string): ReturnType<AttachmentReader['read']> {
        const blob = this.blobs.get(uri);
        if (!blob) return noSuchFile;
        this.wanted.add(blob);
        return this.texts.get(blob) ?? noSuchFile;
    }

    list(): string[] {
        return [];
    }

    async readWanted(repository: Repository): Promise<void> {
        const blobs = [...this.wanted];
        for (const blob of blobs) if (blob.size > largestFile) this.texts.set(blob, { wrong: `The file is larger than ${largestFile / 1024 / 1024} MB and is not read.` });
        const small = blobs.filter(({ size }) => size <= largestFile);
        const contents = await contentsOf(repository, small.map(({ id }) => id));
        small.forEach((blob, index) => {
            const bytes = contents[index];
            if (bytes) this.texts.set(blob, decodeText(bytes));
        });
    }
}
