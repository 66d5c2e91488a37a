import type { JSX } from 'preact';

/** Words of a practice item; a count and its place, as in "1-hundred", stay on one line. */
export function ItemWords({ text }: { text: string }): JSX.Element {
    const pieces = text.split(/(\d-[a-z][a-z-]*)/);
    return <>{pieces.map((piece, index) => (index % 2 ? <span class="unbroken">{piece}</span> : piece))}</>;
}
