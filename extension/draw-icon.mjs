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
const ring = (centreX, centreY, outer, inner) => (x, y) => {
    const distance = Math.hypot(x - centreX, y - centreY);
    return distance <= outer && distance >= inner;
};
const less = (shape, hole) => (x, y) => shape(x, y) && !hole(x, y);

/** From back to front: a ground of its own, so that it stands out on light and dark alike; a bag of canvas, a sheet of paper in it, its flap, strap and buckle. */
const layers = [
    [[0x2c, 0x4a, 0x4a], box(2, 2, 126, 126, 26)],
    [[0xe0, 0xbb, 0x84], less(ring(64, 54, 40, 31), box(0, 54, 128, 128, 0))],
    [[0xfb, 0xf7, 0xee], box(42, 30, 86, 80, 3)],
    [[0x5f, 0x74, 0x72], box(49, 38, 79, 42, 2)],
    [[0x5f, 0x74, 0x72], box(49, 46, 71, 50, 2)],
    [[0xb0, 0x82, 0x4f], box(22, 54, 106, 110, 13)],
    [[0x86, 0x5f, 0x37], box(22, 78, 106, 86, 8)],
    [[0xd6, 0xab, 0x72], box(22, 54, 106, 83, 12)],
    [[0x57, 0x3b, 0x25], box(57, 54, 71, 98, 3)],
    [[0xfb, 0xf7, 0xee], less(box(51, 77, 77, 97, 4), box(57, 83, 71, 91, 2))]
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
