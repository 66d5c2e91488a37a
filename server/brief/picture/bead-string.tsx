import type { Picture } from '@haversack/language/pictures/picture';
import { Counter, lookOf, upTo } from './counters.js';
import type { Drawing } from './drawing.js';

const inRow = 20;
const radius = 6;
const pitch = 13;
const row = 24;
/** Free thread between the beads pushed aside and those left over. */
const free = 20;
const side = 10;

/** Beads on a thread that goes on in the next row after every twenty. */
export function drawBeadString({ count, of }: Extract<Picture, { kind: 'bead-string' }>): Drawing {
    const rows = Math.ceil(of / inRow);
    const width = side * 2 + Math.min(of, inRow) * pitch + free;
    const middle = (index: number): number => row * (index + 0.5);
    return {
        width, height: rows * row,
        shapes: (
            <>
                {upTo(rows).map(index => <path class="drawn" d={`M2 ${middle(index)}H${width - 2}`} />)}
                <circle class="pip knot" cx="3" cy={middle(0)} r="2.5" />
                <circle class="pip knot" cx={width - 3} cy={middle(rows - 1)} r="2.5" />
                {upTo(of).map(bead => {
                    const x = side + (bead % inRow + 0.5) * pitch;
                    const y = middle(Math.floor(bead / inRow));
                    return bead < count ? <Counter x={x} y={y} radius={radius} look={lookOf(bead)} /> : <circle class="left-over" cx={x + free} cy={y} r={radius - 1} />;
                })}
            </>
        )
    };
}
