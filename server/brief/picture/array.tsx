import type { Picture } from '@haversack/language/pictures/picture';
import { Counter, upTo } from './counters.js';
import type { Drawing } from './drawing.js';

const pitch = 14;
/** After every fifth row and column. */
const gap = 6;

/** Rows of equal length; fives change their look along both ways. */
export function drawArray({ rows, columns }: Extract<Picture, { kind: 'array' }>): Drawing {
    const at = (index: number): number => (index + 0.5) * pitch + Math.floor(index / 5) * gap;
    const long = (count: number): number => at(count - 1) + pitch / 2;
    return {
        width: long(columns), height: long(rows),
        shapes: <>{upTo(rows).map(row => upTo(columns).map(column => <Counter x={at(column)} y={at(row)} radius={5} look={(Math.floor(row / 5) + Math.floor(column / 5)) % 2 === 0 ? 'first' : 'second'} />))}</>
    };
}
