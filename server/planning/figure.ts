import type { Exact, Place } from '@haversack/language/sheets/sheet';

/** One step of how a figure came about: "Weigh the bags: 20 x 4 pairs = 80", leading back to its line. */
export interface TrailStep {
    words: string;
    place?: Place;
}

/** An amount with its trail. `text` is for people: "80", "1 1/2 cups", "2 sets", "1.2 kg". */
export interface Figure {
    exact: Exact;
    /** Unit word after conversion; absent for plain pieces. */
    unit?: string;
    text: string;
    trail: TrailStep[];
}
