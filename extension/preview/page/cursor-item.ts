import type { SourceLine } from '../messages.js';

/** Lines of one declaration, the last included. */
export interface Around {
    from: number;
    to: number;
}

/**
 * The element that shows a line: of those of the same declaration that can be seen, the one whose own line is nearest at or before it.
 * A line of a folded-out trail only tells where a figure comes from, so anything else goes before it.
 */
export function itemAt(main: Element, { uri, line }: SourceLine, around: Around): HTMLElement | undefined {
    let best: HTMLElement | undefined;
    let bestRank = -1;
    for (const element of main.querySelectorAll<HTMLElement>('[data-line]:not(button)')) {
        const own = Number(element.dataset.line);
        if (element.dataset.uri !== uri || own > line || own < around.from || !element.checkVisibility()) continue;
        const rank = own + (element.closest('.trail') ? 0 : 0.5);
        if (rank > bestRank) {
            best = element;
            bestRank = rank;
        }
    }
    return best;
}

/** A whole lesson or part is marked at its heading. */
export function markOf(item: HTMLElement): HTMLElement {
    return item.querySelector<HTMLElement>(':scope > h2, :scope > h3') ?? item;
}

/** True when its beginning and, for as much as fits, its end are on screen below `top`. */
export function isInView(element: Element, top: number, height: number): boolean {
    const box = element.getBoundingClientRect();
    return box.top >= top && (box.bottom <= height || (box.height > height - top && box.top < (top + height) / 2));
}
