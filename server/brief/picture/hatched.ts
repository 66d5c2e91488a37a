import { n } from './drawing.js';

/**
 * Slanted lines that fill a rectangle, as the data of a path. They are lines and not a pattern of SVG's, so that a drawing needs no ids,
 * which several of them on one page would have to share out.
 */
export function hatched(x: number, y: number, width: number, height: number, apart = 6): string {
    const lines: string[] = [];
    for (let reach = apart / 2; reach < width + height; reach += apart) {
        const from = [x + Math.min(reach, width), y + Math.max(0, reach - width)];
        const to = [x + Math.max(0, reach - height), y + Math.min(reach, height)];
        lines.push(`M${from.map(n).join(' ')}L${to.map(n).join(' ')}`);
    }
    return lines.join('');
}
