import { pictureKind } from '@haversack/language/pictures/read-picture';
import type { JSX } from 'preact';
import type { PictureFigures } from '../../planning/figures.js';
import { PictureSvg } from './picture-svg.js';

/** A picture with what it shows below it; where it cannot be drawn, why not. */
export function PictureFigure({ figures: { picture, text, title } }: { figures: PictureFigures }): JSX.Element {
    if (!picture) return <p class="quiet"><bdi>{text}</bdi></p>;
    return (
        <figure class="shown">
            <PictureSvg picture={picture} label={pictureKind(picture.kind)?.title} />
            <figcaption>{title && <><b><bdi>{title}</bdi></b> </>}<bdi>{text}</bdi></figcaption>
        </figure>
    );
}
