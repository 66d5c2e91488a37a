import { Inflate, strFromU8, zipSync } from 'fflate';
import { limits, type Refusal } from './table.js';

/** The parts of a workbook that hold cells: the bytes of XML by path. */
export type WorkbookParts = ReadonlyMap<string, Uint8Array>;

const damaged: Refusal = { refusal: 'The spreadsheet is damaged and cannot be opened. Open it in your spreadsheet program, save it anew and import that.' };
const locked: Refusal = { refusal: 'The spreadsheet is protected by a password. Save a copy without one and import that.' };
const swollen: Refusal = {
    refusal: `Unpacked, the spreadsheet would have more than ${limits.unpacked / (1024 * 1024)} MB, so it was not opened. Copy the inventory alone into a new spreadsheet and import that.`
};

/** As many files as the package of a workbook with every kind of ornament may have. */
const mostEntries = 5000;

/** Compressed bytes that are unpacked at a time: DEFLATE makes at most about 1032 times as many of them. */
const step = 4096;

interface Entry {
    path: string;
    method: number;
    encrypted: boolean;
    packed: number;
    unpacked: number;
    at: number;
}

/**
 * Unpacks what of a workbook is needed to read its cells. Sizes are checked before anything is unpacked, and again while it is: what
 * is longer than it says, or than the limit, is stopped there.
 */
export function unpackWorkbook(bytes: Uint8Array): WorkbookParts | Refusal {
    const entries = directoryOf(bytes);
    if (!entries) return damaged;
    if (entries.some(({ path }) => path === 'mimetype' || path === 'content.xml')) {
        return { refusal: 'This kind of spreadsheet cannot be read. Save it as .xlsx or .csv in your spreadsheet program and import that.' };
    }
    if (!entries.some(({ path }) => path === 'xl/workbook.xml')) return { refusal: 'This is not a spreadsheet in .xlsx format. Save it as .xlsx or .csv in your spreadsheet program and import that.' };
    const wanted = entries.filter(({ path }) => /^xl\/(?:_rels\/)?[^/]+\.(?:xml|rels)$|^xl\/worksheets\/[^/]+\.xml$/.test(path));
    if (wanted.some(({ encrypted }) => encrypted)) return locked;
    if (wanted.reduce((sum, { unpacked }) => sum + unpacked, 0) > limits.unpacked) return swollen;
    const parts = new Map<string, Uint8Array>();
    let left: number = limits.unpacked;
    for (const entry of wanted) {
        const part = unpack(bytes, entry, left);
        if ('refusal' in part) return part;
        parts.set(entry.path, part);
        left -= part.length;
    }
    return parts;
}

/** Packs parts into an archive that holds them as they are, so that whoever opens it has nothing to unpack. */
export function packPlainly(parts: WorkbookParts): Uint8Array {
    return zipSync(Object.fromEntries(parts), { level: 0 });
}

/** The entries of the archive's directory (PKWARE APPNOTE 6.3.10, sections 4.3.12 and 4.3.16); undefined where there is none. */
function directoryOf(bytes: Uint8Array): Entry[] | undefined {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const end = endOfDirectory(view);
    if (end === undefined) return undefined;
    const count = view.getUint16(end + 10, true);
    let at = view.getUint32(end + 16, true);
    if (count > mostEntries) return undefined;
    const entries: Entry[] = [];
    for (let index = 0; index < count; index++) {
        if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50) return undefined;
        const nameLength = view.getUint16(at + 28, true);
        entries.push({
            path: strFromU8(bytes.subarray(at + 46, at + 46 + nameLength)).replaceAll('\\', '/'),
            encrypted: (view.getUint16(at + 8, true) & 1) === 1, method: view.getUint16(at + 10, true),
            packed: view.getUint32(at + 20, true), unpacked: view.getUint32(at + 24, true), at: view.getUint32(at + 42, true)
        });
        at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    }
    return entries;
}

/** The record at the end of the archive may be followed by a remark of up to 65,535 bytes. */
function endOfDirectory(view: DataView): number | undefined {
    for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 0xffff); at--) {
        if (view.getUint32(at, true) === 0x06054b50) return at;
    }
    return undefined;
}

function unpack(bytes: Uint8Array, { at, method, packed, unpacked }: Entry, left: number): Uint8Array | Refusal {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    if (at + 30 > bytes.length || view.getUint32(at, true) !== 0x04034b50) return damaged;
    const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
    if (start + packed > bytes.length) return damaged;
    const data = bytes.subarray(start, start + packed);
    if (method === 0) return data.length > left ? swollen : data.slice();
    return method === 8 ? inflate(data, unpacked, left) : damaged;
}

function inflate(data: Uint8Array, says: number, left: number): Uint8Array | Refusal {
    const pieces: Uint8Array[] = [];
    let length = 0;
    const stream = new Inflate(piece => {
        length += piece.length;
        pieces.push(piece);
    });
    try {
        for (let at = 0; at < data.length; at += step) {
            stream.push(data.subarray(at, at + step), at + step >= data.length);
            if (length > left) return swollen;
            if (length > says) return damaged;
        }
    } catch {
        return damaged;
    }
    const whole = new Uint8Array(length);
    let at = 0;
    for (const piece of pieces) {
        whole.set(piece, at);
        at += piece.length;
    }
    return whole;
}
