import type { JSX } from 'preact';
import { n } from './drawing.js';

/** Counted things are told apart in fives: filled ones, then rings with a point. */
export type Look = 'first' | 'second';

/** The look of the thing at an index from 0: five of one, five of the other, and so on. */
export function lookOf(index: number): Look {
    return Math.floor(index / 5) % 2 === 0 ? 'first' : 'second';
}

interface CounterProps {
    x: number;
    y: number;
    radius: number;
    look: Look;
}

export function Counter({ x, y, radius, look }: CounterProps): JSX.Element {
    return (
        <>
            <circle class={`counter ${look}`} cx={n(x)} cy={n(y)} r={look === 'first' ? radius : n(radius - 0.4)} />
            {look === 'second' && <circle class="pip" cx={n(x)} cy={n(y)} r={n(radius / 3)} />}
        </>
    );
}

/** Numbers from 0 up to but without `count`. */
export function upTo(count: number): number[] {
    return Array.from({ length: count }, (_, index) => index);
}
