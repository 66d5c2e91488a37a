/**
 * Rows of 1, 2, 3, ... numbered through: 0 is row 0, 1 and 2 are row 1, 3 to 5 are row 2. Pairs of numbers stand in such rows, so
 * that one of very many is found without listing them.
 */

/** How many stand in rows 0 to `rows` - 1. Exact below 2^53. */
export function inRows(rows: number): number {
    return (rows * (rows + 1)) / 2;
}

/** Row and column of a number. */
export function rowOf(index: number): { row: number; column: number } {
    let row = Math.floor((Math.sqrt(8 * index + 1) - 1) / 2);
    while (inRows(row) > index) row--;
    while (inRows(row + 1) <= index) row++;
    return { row, column: index - inRows(row) };
}
