import { listing } from '../facts/wording.js';
import { isFault, type PictureFault, type SettingsReader } from './settings-reader.js';

interface Bounds {
    from: number;
    to: number;
    /** What is wrong with a number outside: "A ten-frame holds 0 to 20; 23 does not fit." */
    outside: (text: string) => string;
    /** Settings that would do in its place; whole pictures of another kind begin with `show `. */
    instead?: (value: number) => (string | undefined)[];
}

/** A whole number within bounds. `missing` says what to write where none stands. */
export function wholeNumber(settings: SettingsReader, missing: string, { from, to, outside, instead }: Bounds): number | PictureFault {
    const text = settings.peek();
    if (text === undefined || !/^\d/.test(text)) return settings.wrongNext(missing);
    settings.take();
    const value = Number(text);
    if (!Number.isInteger(value)) {
        const near = Math.min(Math.max(Math.round(value), from), to);
        return settings.wrong(`'${text}' is no whole number. ${missing}`, Number.isFinite(value) && settings.texts.length === 1 ? String(near) : undefined);
    }
    return value >= from && value <= to ? value : settings.wrong(outside(text), ...(instead?.(value) ?? []));
}

/** The one number of a picture that shows nothing else. */
export function onlyNumber(settings: SettingsReader, missing: string, shows: string, bounds: Bounds): number | PictureFault {
    const value = wholeNumber(settings, missing, bounds);
    return isFault(value) ? value : settings.tooMuch(shows) ?? value;
}

/** A quantity as tens, a five and ones: 8 as 5 and 3, 16 as 10, 5 and 1, 73 as 7 tens and 3. */
function fivesAndTens(count: number): (string | number)[] {
    const tens = Math.floor(count / 10);
    const rest = count % 10;
    return [...(tens > 1 ? [`${tens} tens`] : tens === 1 ? [10] : []), ...(rest > 5 ? [5, rest - 5] : rest > 0 ? [rest] : [])];
}

/** ", as 5 and 3"; empty where the quantity is no more than one piece. */
export function asFivesAndTens(count: number): string {
    const parts = fivesAndTens(count);
    return parts.length > 1 || count > 10 ? `, as ${listing(parts)}` : '';
}
