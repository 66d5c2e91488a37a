import type { Picture } from '../pictures/picture.js';
import type { ItemSet } from './practice-item.js';

/** The largest quantity that is shown: one hundred is ten tens. */
export const largestQuantity = 100;

/** A quantity from 1 to 100 as tens, a five and ones: 8 is "5 and 3", 16 is "10, 5 and 1", 43 is "4 tens and 3". */
export function asFivesAndTens(quantity: number): string {
    const tens = Math.floor(quantity / 10);
    const rest = quantity % 10;
    const parts = [
        ...(tens > 1 ? [`${tens} tens`] : tens === 1 ? ['10'] : []),
        ...(rest >= 5 ? ['5'] : []),
        ...(rest % 5 > 0 ? [String(rest % 5)] : [])
    ];
    return parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}` : parts.join('');
}

/** Quantities from 1 to 100 to be seen as fives and tens. */
export function quantities(from: number, to: number): ItemSet {
    return {
        total: to - from + 1,
        at: index => ({ ask: `Show ${from + index} as fives and tens`, answer: asFivesAndTens(from + index), about: [String(from + index)], show: pictureOf(from + index), room: 'line' }),
        find: ([number, ...more]) => (number !== undefined && more.length === 0 && number >= from && number <= to ? number - from : undefined)
    };
}

/** Five of one kind and the rest of another above five (common practice, no source): so ten-frames and bead strings are drawn. */
function pictureOf(quantity: number): Picture {
    return quantity <= 20 ? { kind: 'ten-frame', count: quantity } : { kind: 'bead-string', count: quantity, of: 100 };
}
