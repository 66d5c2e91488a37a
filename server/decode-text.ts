/** Bytes as text, without a byte order mark; or why they are none. */
export function decodeText(bytes: Uint8Array): { text: string } | { wrong: string } {
    if ((bytes[0] === 0xFF && bytes[1] === 0xFE) || (bytes[0] === 0xFE && bytes[1] === 0xFF)) return { wrong: 'The file is written in UTF-16. Save it again with the encoding UTF-8.' };
    if (bytes.includes(0)) return { wrong: 'The file is no text: it may be packed (zip) or made for another program. Save it again as plain text.' };
    const text = decode(bytes) ?? decode(unfolded(bytes));
    return text === undefined ? { wrong: 'The file is not written in UTF-8. Open it in an editor and save it with the encoding UTF-8.' } : { text };
}

function decode(bytes: Uint8Array): string | undefined {
    try {
        return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
        return undefined;
    }
}

/** Without the folds of a calendar, which may fall inside a letter of several bytes (RFC 5545, 3.1). */
function unfolded(bytes: Uint8Array): Uint8Array {
    const kept = new Uint8Array(bytes.length);
    let length = 0;
    for (let at = 0; at < bytes.length; at++) {
        const end = bytes[at] === 0x0D && bytes[at + 1] === 0x0A ? at + 1 : at;
        const next = bytes[end + 1];
        if (bytes[end] === 0x0A && (next === 0x20 || next === 0x09)) at = end + 1;
        else kept[length++] = bytes[at]!;
    }
    return kept.subarray(0, length);
}
