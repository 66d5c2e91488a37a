import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { textWidth } from '../drawing/fit-text.js';
import { upTo } from './counters.js';
import { letters, n, type Drawing } from './drawing.js';

type NumberLine = Extract<Picture, { kind: 'number-line' }>;

const width = 316;
const marksHigh = 34;
/** Between two numbers, beside the room they need. */
const air = 5;

const widthOf = (value: number): number => textWidth(String(value), letters);
/** Marked numbers are bold. */
const boldWidthOf = (value: number): number => widthOf(value) * 1.12;

/** A line with its numbers below it and marked numbers above, each led to its point. */
export function drawNumberLine({ from, to, by, marks }: NumberLine): Drawing {
    const margin = Math.ceil(Math.max(widthOf(from), widthOf(to)) / 2) + 2;
    const at = (value: number): number => margin + ((value - from) / (to - from)) * (width - 2 * margin);
    const top = marks.length > 0 ? marksHigh : 4;
    const line = top + 6;
    const ticks = upTo(Math.round((to - from) / by) + 1).map(index => exact(from + index * by));
    const labelled = withRoom(ticks, by, at);
    return {
        width, height: line + 26,
        shapes: (
            <>
                <path class="drawn" d={`M${margin} ${line}H${width - margin}`} />
                {ticks.map(value => <path class={labelled.has(value) ? 'drawn tick' : 'drawn slight tick'} d={`M${n(at(value))} ${line - (labelled.has(value) ? 6 : 4)}V${line + (labelled.has(value) ? 6 : 4)}`} />)}
                {[...labelled].map(value => <text x={n(at(value))} y={line + 20} font-size={letters} text-anchor="middle">{value}</text>)}
                <Marks marks={marks} at={at} line={line} />
            </>
        )
    };
}

/** Sums of steps such as 0.1 without the last places of floating point. */
function exact(value: number): number {
    return Math.round(value * 100) / 100;
}

/** The ends and, where not all numbers have room, those at round multiples of the step. */
function withRoom(ticks: readonly number[], by: number, at: (value: number) => number): Set<number> {
    const [first = 0, last = 0] = [ticks[0], ticks.at(-1)];
    const clear = (a: number, b: number): boolean => Math.abs(at(a) - at(b)) >= (widthOf(a) + widthOf(b)) / 2 + air;
    for (const every of [1, 2, 4, 5, 10, 20]) {
        const rounded = ticks.filter((value, index) => value !== first && value !== last && (first % by === 0 ? Math.round(value / by) : index) % every === 0);
        const inner = rounded.filter(value => clear(value, first) && clear(value, last));
        // The first step that leaves room is taken; only beside the ends may a number be left out.
        if (rounded.every((value, index) => index === 0 || clear(value, rounded[index - 1] ?? value)) && rounded.length - inner.length <= (every > 1 ? 2 : 0)) return new Set([first, ...inner, last]);
    }
    return new Set([first, last]);
}

function Marks({ marks, at, line }: { marks: readonly number[]; at: (value: number) => number; line: number }): JSX.Element {
    const sorted = [...marks].sort((a, b) => a - b);
    const places = sideBySide(sorted.map(value => ({ middle: at(value), width: boldWidthOf(value) + air })));
    return (
        <>
            {sorted.map((value, index) => (
                <g class="marked">
                    <path class="drawn slight" d={`M${n(places[index] ?? 0)} 16L${n(at(value))} ${line - 5}`} />
                    <circle class="pip" cx={n(at(value))} cy={line} r="3.5" />
                    <text class="bold" x={n(places[index] ?? 0)} y="12" font-size={letters} text-anchor="middle">{value}</text>
                </g>
            ))}
        </>
    );
}

/** Middles as near as can be to those wished, without one lying on another or leaving the drawing. */
function sideBySide(labels: readonly { middle: number; width: number }[]): number[] {
    const places = labels.map(({ middle }) => middle);
    const apart = (index: number): number => ((labels[index]?.width ?? 0) + (labels[index + 1]?.width ?? 0)) / 2;
    // Neighbours that touch move apart by the same way, until none does; then the ends hold them in.
    for (let round = 0; round < 200; round++) {
        places.forEach((place, index) => {
            const next = places[index + 1];
            const short = next === undefined ? 0 : apart(index) - (next - place);
            if (next !== undefined && short > 0.01) {
                places[index] = place - short / 2;
                places[index + 1] = next + short / 2;
            }
        });
    }
    places.forEach((place, index) => { places[index] = Math.max(place, index === 0 ? (labels[0]?.width ?? 0) / 2 : (places[index - 1] ?? 0) + apart(index - 1)); });
    for (let index = places.length - 1; index >= 0; index--) {
        const end = index === places.length - 1 ? width - (labels[index]?.width ?? 0) / 2 : (places[index + 1] ?? 0) - apart(index);
        places[index] = Math.min(places[index] ?? 0, end);
    }
    return places;
}
