import { noSuchFile, type AttachmentReader } from './attachment-reader.js';

/** Reads from texts by address in place of a disk: for examples and tests. */
export function memoryReader(files: ReadonlyMap<string, string>): AttachmentReader {
    return {
        read(uri) {
            const text = files.get(uri);
            return text === undefined ? noSuchFile : { text };
        },
        list: folder => [...new Set([...files.keys()].filter(uri => uri.startsWith(`${folder}/`)).map(uri => {
            const [name, ...deeper] = uri.slice(folder.length + 1).split('/') as [string, ...string[]];
            return deeper.length > 0 ? `${name}/` : name;
        }))]
    };
}
