import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import writeWorkbook, { type SheetData } from 'write-excel-file/node';

/** A workbook as the package write-excel-file makes it. */
export async function workbook(sheets: Record<string, SheetData>): Promise<Uint8Array> {
    const buffer = await writeWorkbook(Object.entries(sheets).map(([sheet, data]) => ({ sheet, data }))).toBuffer();
    return new Uint8Array(buffer);
}

/** The same workbook with the XML of one part changed. */
export function withPart(book: Uint8Array, path: string, change: (xml: string) => string): Uint8Array {
    const parts = unzipSync(book);
    if (!parts[path]) throw new Error(`There is no ${path}.`);
    return zipSync({ ...parts, [path]: strToU8(change(strFromU8(parts[path]))) });
}

/** The same archive, whose directory and headers say another unpacked size of an entry. */
export function sayingSize(archive: Uint8Array, path: string, size: number): Uint8Array {
    const lying = archive.slice();
    const view = new DataView(lying.buffer);
    let changed = 0;
    for (let at = 0; at + 46 < lying.length; at++) {
        const signature = view.getUint32(at, true);
        const [nameAt, sizeAt, lengthAt] = signature === 0x02014b50 ? [46, 24, 28] : signature === 0x04034b50 ? [30, 22, 26] : [0, 0, 0];
        if (nameAt === 0 || strFromU8(lying.subarray(at + nameAt, at + nameAt + view.getUint16(at + lengthAt, true))) !== path) continue;
        view.setUint32(at + sizeAt, size, true);
        changed++;
    }
    if (changed < 2) throw new Error(`The size of ${path} was not found.`);
    return lying;
}
