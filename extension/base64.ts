/** Bytes as they travel in a message (RFC 4648, section 4). */
export function base64(bytes: Uint8Array): string {
    let text = '';
    // As many as a call takes arguments.
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    return btoa(text);
}
