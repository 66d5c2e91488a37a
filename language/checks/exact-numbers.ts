import type { Exact } from '../sheets/sheet.js';

/** The size of an exact number, near enough to tell zero from more; infinite for "1/0". */
export function sizeOf(exact: Exact): number {
    return exact.trim().split(/\s+/).reduce((sum, part) => {
        const [above, below] = part.split('/');
        return sum + (below === undefined ? Number(above) : Number(above) / Number(below));
    }, 0);
}
