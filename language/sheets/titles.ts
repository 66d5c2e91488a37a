/** "pan-balance" becomes "Pan balance". */
export function titleFromName(name: string): string {
    const words = name.replace(/-/g, ' ');
    return words.charAt(0).toUpperCase() + words.slice(1);
}
