import { pictureInWords, readPicture } from '@haversack/language/pictures/read-picture';
import type { Picture } from '@haversack/language/pictures/picture';
import type { PictureLine, Place } from '@haversack/language/sheets/sheet';
import type { PictureFigures } from './figures.js';

/** The picture of a `show` line with its text equivalent; where it cannot be drawn, why not. */
export function pictureFigures(line: PictureLine, place: Place): PictureFigures {
    const read = readPicture(line);
    return 'picture' in read ? { ...pictureToldInWords(read.picture, place), title: line.title } : { text: read.message, title: line.title, place };
}

/** A picture with its text equivalent. */
export function pictureToldInWords(picture: Picture, place: Place): PictureFigures {
    return { picture, text: pictureInWords(picture), place };
}
