import { distance } from 'fastest-levenshtein';

/** The known word nearest to a misspelt one, when it is near enough to be meant. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
    let best: string | undefined;
    let least = Math.max(1, Math.floor(word.length / 3)) + 1;
    for (const candidate of known) {
        if (Math.abs(candidate.length - word.length) >= least) continue;
        const d = isSwapped(word, candidate) ? 1 : distance(word, candidate);
        if (d < least) {
            least = d;
            best = candidate;
        }
    }
    return best;
}

/** Two letters side by side have changed places: one slip of the keys. */
function isSwapped(word: string, other: string): boolean {
    if (word.length !== other.length) return false;
    let at = 0;
    while (at < word.length && word[at] === other[at]) at++;
    return at + 1 < word.length && word[at] === other[at + 1] && word[at + 1] === other[at] && word.slice(at + 2) === other.slice(at + 2);
}
