import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { upTo } from './counters.js';
import type { Drawing } from './drawing.js';

const between = 8;
const height = 34;
const gate = 34;
/** From one five to the next within a ten, between tens, and rows of two tens. */
const gaps = { five: 14, ten: 30, row: 16 };
const margin = 3;

/** Strokes in fives, two fives to a ten, two tens to a row. */
export function drawTally({ count }: Extract<Picture, { kind: 'tally' }>): Drawing {
    const gates = Math.max(1, Math.ceil(count / 5));
    const left = (index: number): number => {
        const inRow = index % 4;
        return margin + inRow * gate + Math.ceil(inRow / 2) * gaps.five + Math.floor(inRow / 2) * gaps.ten;
    };
    const top = (index: number): number => margin + Math.floor(index / 4) * (height + gaps.row);
    return {
        width: left(Math.min(gates, 4) - 1) + gate + margin, height: top(gates - 1) + height + margin,
        shapes: count === 0 ? <rect class="nothing" x={margin} y={margin} width={gate} height={height} /> : <>{upTo(gates).map(index => <Gate x={left(index)} y={top(index)} strokes={Math.min(5, count - index * 5)} />)}</>
    };
}

function Gate({ x, y, strokes }: { x: number; y: number; strokes: number }): JSX.Element {
    return (
        <g>
            {upTo(Math.min(strokes, 4)).map(index => <path class="drawn mark-stroke" d={`M${x + 5 + index * between} ${y}v${height}`} />)}
            {strokes === 5 && <path class="drawn mark-stroke" d={`M${x} ${y + height - 6}L${x + gate} ${y + 6}`} />}
        </g>
    );
}
