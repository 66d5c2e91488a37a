/** "a, b and c". */
export function listing(words: readonly (string | number)[], last = 'and'): string {
    if (words.length < 2) return words.join('');
    return `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}

/** "1 pair", "4 pairs". */
export function counted(count: number, one: string, many = `${one}s`): string {
    return `${count} ${count === 1 ? one : many}`;
}

export function capital(text: string): string {
    return text.charAt(0).toUpperCase() + text.slice(1);
}

export function quoted(title: string): string {
    return `“${title}”`;
}

/** Each sentence once, in the order of its first appearance. */
export function once(sentences: Iterable<string>): string[] {
    return [...new Set(sentences)];
}
