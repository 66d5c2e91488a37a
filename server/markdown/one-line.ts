/** Text on one line without control characters, which would steer a terminal: spaces with any of them, or with the end of a line, are one space. */
export function onOneLine(text: string): string {
    return text.replace(/[\s\p{Cc}]+/gu, space => (/[\p{Cc}\u2028\u2029]/u.test(space) ? ' ' : space)).trim();
}
