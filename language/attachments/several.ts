/** So many names are told in one sentence; the rest is counted. */
const told = 3;
const longest = 60;

/** "N.1, N.2, N.3 and 4 more". */
export function several(names: readonly string[]): string {
    const shown = names.slice(0, told).map(name => (name.length > longest ? `${Array.from(name.slice(0, 2 * longest)).slice(0, longest).join('')}…` : name));
    return names.length > told ? `${shown.join(', ')} and ${names.length - told} more` : shown.join(', ');
}
