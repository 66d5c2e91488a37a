import type { JSX } from 'preact';

/** What a picture looks like, in units of about a pixel on screen. Nothing reaches beyond `width` and `height`. */
export interface Drawing {
    width: number;
    height: number;
    shapes: JSX.Element;
}

/** A number as it is written into a drawing: thousandths are finer than any printer. */
export function n(value: number): number {
    return Math.round(value * 1000) / 1000;
}

/** Size of the letters in pictures. */
export const letters = 12;
