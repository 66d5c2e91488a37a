import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import type { PracticeItemFigures } from '../../planning/figures.js';
import { PictureSvg } from '../picture/picture-svg.js';

/** What is seen without being counted. */
const seen: Partial<Record<Picture['kind'], string>> = { 'ten-frame': 'A ten-frame with counters', 'bead-string': 'A string with beads pushed aside' };

/** The picture of a practice item. Its name tells those who do not see it what it is; the numbers are asked for, and stand in the key. */
export function ItemPicture({ picture }: Pick<PracticeItemFigures, 'picture'>): JSX.Element | null {
    return picture?.picture ? <PictureSvg picture={picture.picture} label={seen[picture.picture.kind] ?? 'A picture'} /> : null;
}
