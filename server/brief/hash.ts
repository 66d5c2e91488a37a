/** 64 bits of FNV-1a (two 32-bit runs with different starts) as 16 hexadecimal digits; tells changed text, guards nothing. */
export function textHash(text: string): string {
    let first = 0x811c9dc5;
    let second = 0x050c5d1f;
    for (let i = 0; i < text.length; i++) {
        const code = text.charCodeAt(i);
        first = Math.imul(first ^ code, 0x01000193);
        second = Math.imul(second ^ code, 0x01000193);
    }
    return [first, second].map(half => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
