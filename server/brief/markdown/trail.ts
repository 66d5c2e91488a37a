import type { TrailStep } from '../../planning/figure.js';
import type { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';

/** How a figure came about, in one line under it. */
export function trailItem(out: Outline, depth: number, trail: TrailStep[]): void {
    if (trail.length) out.item(depth, `counted so: ${trail.map(step => plainText(step.words)).join('; ')}`);
}
