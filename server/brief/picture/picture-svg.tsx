import type { Picture } from '@haversack/language/pictures/picture';
import { pictureInWords } from '@haversack/language/pictures/read-picture';
import type { JSX } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { light } from '../look/palette.js';
import { pictureInk } from '../look/picture.css.js';
import { drawArray } from './array.js';
import { drawBalance } from './balance.js';
import { drawBaseTen } from './base-ten.js';
import { drawBeadString } from './bead-string.js';
import { drawClock } from './clock.js';
import { n, type Drawing } from './drawing.js';
import { drawFractionBar } from './fraction-bar.js';
import { drawNumberLine } from './number-line.js';
import { drawPlaceCards } from './place-cards.js';
import { drawTally } from './tally.js';
import { drawTenFrame } from './ten-frame.js';

interface PictureSvgProps {
    picture: Picture;
    /** What it is called for those who do not see it; by default the whole text equivalent. */
    label?: string;
}

/** A picture on a page, in the page's colours. It has no ids, so that any number of them can stand on one page. */
export function PictureSvg({ picture, label = pictureInWords(picture) }: PictureSvgProps): JSX.Element {
    const { width, height, shapes } = drawPicture(picture);
    return <svg class={`picture ${picture.kind}`} width={n(width)} height={n(height)} viewBox={`0 0 ${n(width)} ${n(height)}`} role="img" aria-label={label}>{shapes}</svg>;
}

const margin = 12;

/** A picture as an SVG file that needs nothing else: on a card of its own, so that it can be read on any background. */
export function pictureSvg(picture: Picture): string {
    const drawing = drawPicture(picture);
    const [width, height] = [n(drawing.width + 2 * margin), n(drawing.height + 2 * margin)];
    const words = pictureInWords(picture);
    const colours = Object.entries(light).map(([name, colour]) => `--${name}: ${colour};`).join('');
    return renderToString(
        <svg xmlns="http://www.w3.org/2000/svg" class={`picture ${picture.kind}`} width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
            <title>{words}</title>
            <style>{`.picture{${colours}font-family:"Segoe UI","Liberation Sans",Arial,sans-serif}${pictureInk}`}</style>
            <rect x="0.5" y="0.5" width={width - 1} height={height - 1} rx="4" fill={light.paper} stroke={light.rule} />
            <g transform={`translate(${margin} ${margin})`}>{drawing.shapes}</g>
        </svg>
    );
}

export function drawPicture(picture: Picture): Drawing {
    switch (picture.kind) {
        case 'ten-frame': return drawTenFrame(picture);
        case 'number-line': return drawNumberLine(picture);
        case 'bead-string': return drawBeadString(picture);
        case 'place-cards': return drawPlaceCards(picture);
        case 'base-ten': return drawBaseTen(picture);
        case 'tally': return drawTally(picture);
        case 'balance': return drawBalance(picture);
        case 'fraction-bar': return drawFractionBar(picture);
        case 'clock': return drawClock(picture);
        case 'array': return drawArray(picture);
    }
}
