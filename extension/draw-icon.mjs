// Draws the extension's icon (128 x 128 pixels) as a PNG, so that no binary is kept in the repository.
import { deflateSync } from 'node:zlib';

const size = 128;
/** Samples along each side of a pixel, for soft edges. */
const samples = 4;

const box = (left, top, right, bottom, round) => (x, y) => {
    const dx = Math.max(left + round - x, 0, x - right + round);
    const dy = Math.max(top + round - y, 0, y - bottom + round);
    return x >= left && x <= right && y >= top && y <= bottom && dx * dx + dy * dy <= round * round;
};
const less = (shape, hole) => (x, y) => shape(x, y) && !hole(x, y);

/** From back to front: a bag of canvas with a flap, two straps and a handle. */
const layers = [
    [[0x6b, 0x4a, 0x2f], less(box(44, 10, 84, 50, 14), box(52, 18, 76, 50, 8))],
    [[0xb0, 0x82, 0x4f], box(16, 32, 112, 118, 14)],
    [[0x8f, 0x66, 0x3c], box(16, 74, 112, 80, 0)],
    [[0xc9, 0x9d, 0x68], box(16, 32, 112, 76, 14)],
    [[0x6b, 0x4a, 0x2f], box(34, 32, 44, 96, 3)],
    [[0x6b, 0x4a, 0x2f], box(84, 32, 94, 96, 3)],
    [[0xf3, 0xec, 0xdd], less(box(30, 82, 48, 98, 3), box(34, 86, 44, 94, 1))],
    [[0xf3, 0xec, 0xdd], less(box(80, 82, 98, 98, 3), box(84, 86, 94, 94, 1))]
];

function pixel(column, row) {
    let red = 0, green = 0, blue = 0, covered = 0;
    for (let i = 0; i < samples * samples; i++) {
        const x = column + ((i % samples) + 0.5) / samples;
        const y = row + (Math.floor(i / samples) + 0.5) / samples;
        const colour = layers.findLast(([, shape]) => shape(x, y))?.[0];
        if (!colour) continue;
        covered++;
        red += colour[0];
        green += colour[1];
        blue += colour[2];
    }
    return covered === 0 ? [0, 0, 0, 0] : [red / covered, green / covered, blue / covered, (255 * covered) / (samples * samples)];
}

/** The cyclic redundancy code that ISO/IEC 15948, annex D, asks for. */
function crc32(bytes) {
    let code = 0xffffffff;
    for (const byte of bytes) {
        code ^= byte;
        for (let bit = 0; bit < 8; bit++) code = (code >>> 1) ^ (code & 1 ? 0xedb88320 : 0);
    }
    return ~code >>> 0;
}

function chunk(type, data) {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
}

/** @returns the picture as the bytes of a PNG (ISO/IEC 15948): 8 bits a channel, with alpha */
export function drawIcon() {
    const rows = [];
    for (let row = 0; row < size; row++) {
        const unfiltered = 0;
        rows.push(unfiltered, ...Array.from({ length: size }, (_, column) => pixel(column, row)).flat().map(Math.round));
    }
    const header = Buffer.alloc(13);
    header.writeUInt32BE(size, 0);
    header.writeUInt32BE(size, 4);
    header.set([8, 6, 0, 0, 0], 8);
    const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', deflateSync(Buffer.from(rows), { level: 9 })), chunk('IEND', Buffer.alloc(0))]);
}
