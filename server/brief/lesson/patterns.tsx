import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';

type Kind = PartFigures['kind'];

/** Neutral fills that differ without any colour: dots, plain, slanted, level and crossed lines. */
const drawings: Record<Kind, JSX.Element> = {
    'warm-up': <circle class="grain" cx="4" cy="4" r="1.3" />,
    activity: <></>,
    game: <path class="thread" d="M-2 2 L2 -2 M-2 10 L10 -2 M6 10 L10 6" />,
    practice: <path class="thread" d="M0 4 H8" />,
    checkpoint: <path class="thread" d="M0 4 H8 M4 0 V8" />
};

/** `id` is the section's own, because ids are shared by the whole page. */
export function Patterns({ id, kinds }: { id: string; kinds: Kind[] }): JSX.Element {
    return (
        <defs>
            {kinds.map(kind => (
                <pattern id={`${id}-${kind}`} width="8" height="8" patternUnits="userSpaceOnUse">
                    <rect class="ground" width="8" height="8" />
                    {drawings[kind]}
                </pattern>
            ))}
        </defs>
    );
}

export function patternFill(id: string, kind: Kind): string {
    return `url(#${id}-${kind})`;
}
