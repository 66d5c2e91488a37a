import type { JSX } from 'preact';

/** Neutral fills that differ without any colour. */
export type Ground = 'slanted' | 'dotted' | 'level';

const drawings: Record<Ground, JSX.Element> = {
    slanted: <path class="thread" d="M-2 2 L2 -2 M-2 10 L10 -2 M6 10 L10 6" />,
    dotted: <circle class="grain" cx="4" cy="4" r="1.2" />,
    level: <path class="thread" d="M0 4 H8" />
};

/** Definitions for one drawing; `id` is the drawing's own, because ids are shared by the whole page. */
export function Grounds({ id, grounds }: { id: string; grounds: readonly Ground[] }): JSX.Element {
    return (
        <defs>
            {grounds.map(ground => (
                <pattern id={`${id}-${ground}`} width="8" height="8" patternUnits="userSpaceOnUse">
                    <rect class="ground" width="8" height="8" />
                    {drawings[ground]}
                </pattern>
            ))}
        </defs>
    );
}

export function groundFill(id: string, ground: Ground): string {
    return `url(#${id}-${ground})`;
}
