const safeSchemes = /^(?:https?:\/\/|mailto:)/i;

/** True for an address of a link in somebody's text that leads to a page or a letter: what it opens can neither run here nor read a file. */
export function isSafeAddress(address: string): boolean {
    return safeSchemes.test(address);
}
