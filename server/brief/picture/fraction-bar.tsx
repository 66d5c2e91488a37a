import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { textWidth } from '../drawing/fit-text.js';
import { upTo } from './counters.js';
import { letters, n, type Drawing } from './drawing.js';
import { hatched } from './hatched.js';

const whole = 252;
const high = 28;
const pitch = 36;
const edge = 1;

/** One bar for each fraction, all of one length, its equal parts counted from the left. */
export function drawFractionBar({ fractions }: Extract<Picture, { kind: 'fraction-bar' }>): Drawing {
    const labels = fractions.map(({ part, of }) => `${part}/${of}`);
    const left = Math.ceil(Math.max(...labels.map(label => textWidth(label, letters)))) + 8;
    return {
        width: left + whole + edge, height: (fractions.length - 1) * pitch + high + 2 * edge,
        shapes: <>{fractions.map((fraction, index) => <Bar {...fraction} label={labels[index] ?? ''} x={left} y={edge + index * pitch} />)}</>
    };
}

function Bar({ part, of, label, x, y }: { part: number; of: number; label: string; x: number; y: number }): JSX.Element {
    const width = whole / of;
    return (
        <g class="whole">
            <text x={x - 8} y={y + high / 2 + 4.3} font-size={letters} text-anchor="end">{label}</text>
            {upTo(of).map(index => <rect class={index < part ? 'part shaded' : 'part'} x={n(x + index * width)} y={y} width={n(width)} height={high} />)}
            {part > 0 && <path class="hatch" d={hatched(x, y, width * part, high)} />}
            {upTo(Math.max(0, of - 1)).map(index => <path class="drawn slight" d={`M${n(x + (index + 1) * width)} ${y}v${high}`} />)}
            <rect class="outline" x={x} y={y} width={whole} height={high} />
        </g>
    );
}
