/** So many names are told in one sentence; the rest is counted. */
const told = 3;

/** "N.1, N.2, N.3 and 4 more". */
export function several(names: readonly string[]): string {
    const shown = names.slice(0, told).map(name => (name.length > 60 ? `${name.slice(0, 60)}…` : name));
    return names.length > told ? `${shown.join(', ')} and ${names.length - told} more` : shown.join(', ');
}
