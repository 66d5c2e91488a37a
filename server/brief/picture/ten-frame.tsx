import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { Counter, lookOf, upTo } from './counters.js';
import { n, type Drawing } from './drawing.js';

const cell = 28;
const apart = 16;
const edge = 1;

/** One frame of two rows of five, or two of them above ten; filled row by row. */
export function drawTenFrame({ count }: Extract<Picture, { kind: 'ten-frame' }>): Drawing {
    const frames = count > 10 ? 2 : 1;
    return {
        width: frames * cell * 5 + (frames - 1) * apart + 2 * edge, height: cell * 2 + 2 * edge,
        shapes: <>{upTo(frames).map(frame => <Frame x={edge + frame * (cell * 5 + apart)} filled={Math.min(10, count - frame * 10)} />)}</>
    };
}

function Frame({ x, filled }: { x: number; filled: number }): JSX.Element {
    return (
        <g class="frame">
            {upTo(10).map(index => <rect class="cell" x={x + (index % 5) * cell} y={edge + Math.floor(index / 5) * cell} width={cell} height={cell} />)}
            <rect class="outline" x={x} y={edge} width={cell * 5} height={cell * 2} />
            {upTo(filled).map(index => <Counter x={n(x + ((index % 5) + 0.5) * cell)} y={edge + (Math.floor(index / 5) + 0.5) * cell} radius={10} look={lookOf(index)} />)}
        </g>
    );
}
