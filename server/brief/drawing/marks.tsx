/** Small signs that are told apart by their shape. Each stands for itself in a key beside the drawing. */
import type { JSX } from 'preact';

export type Mark = 'fixed' | 'repeat' | 'revisit' | 'introduces' | 'practises' | 'checks' | 'arrives' | 'bought' | 'runs-out' | 'changed' | 'added' | 'left-out';

/** Drawn around 0, 0; about 9 pixels wide and high. */
const shapes: Record<Mark, JSX.Element> = {
    fixed: <path class="solid" d="M0 -4.5 L4.5 0 L0 4.5 L-4.5 0 Z" />,
    repeat: <><circle class="outline" r="4" /><circle class="solid" r="1.6" /></>,
    revisit: <circle class="outline" r="4" />,
    introduces: <path class="solid" d="M-4.5 4 L0 -4.5 L4.5 4 Z" />,
    practises: <circle class="outline" r="3.6" />,
    checks: <><rect class="outline" x="-4" y="-4" width="8" height="8" /><path class="stroke" d="M-4 -4 L4 4 M4 -4 L-4 4" /></>,
    arrives: <path class="outline" d="M-3.2 3 L0 -3.2 L3.2 3 Z" />,
    bought: <path class="solid" d="M-3.4 3 L0 -3.4 L3.4 3 Z" />,
    'runs-out': <path class="stroke" d="M-3.5 -3.5 L3.5 3.5 M3.5 -3.5 L-3.5 3.5" />,
    // What was there is an outline, what is there now is filled.
    changed: <><rect class="outline" x="-4.5" y="-4.5" width="6" height="6" /><rect class="solid" x="-1.5" y="-1.5" width="6" height="6" /></>,
    added: <rect class="solid" x="-3" y="-3" width="6" height="6" />,
    'left-out': <rect class="outline" x="-3.5" y="-3.5" width="7" height="7" stroke-dasharray="2 1.5" />
};

export function MarkAt({ mark, x, y }: { mark: Mark; x: number; y: number }): JSX.Element {
    return <g class="mark" transform={`translate(${x} ${y})`}>{shapes[mark]}</g>;
}

/** A sign beside words that say the same. */
export function MarkBeside({ mark }: { mark: Mark }): JSX.Element {
    return <svg class="drawing swatch" width="16" height="16" aria-hidden="true"><MarkAt mark={mark} x={8} y={8} /></svg>;
}

/** Signs with their words, under a drawing's heading. */
export function Key({ children }: { children: JSX.Element[] }): JSX.Element | null {
    return children.length > 0 ? <ul class="key-list">{children}</ul> : null;
}

export function KeyMark({ mark, children }: { mark: Mark; children: string }): JSX.Element {
    return (
        <li>
            <MarkBeside mark={mark} />
            <span>{children}</span>
        </li>
    );
}

export function KeySwatch({ draw, children }: { draw: JSX.Element; children: string }): JSX.Element {
    return (
        <li>
            <svg class="drawing swatch" width="22" height="16" aria-hidden="true">{draw}</svg>
            <span>{children}</span>
        </li>
    );
}
