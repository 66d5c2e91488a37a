import { pictureInWords, readPicture } from '@haversack/language/pictures/read-picture';
import type { PictureLine, Place } from '@haversack/language/sheets/sheet';
import type { PictureFigures } from './figures.js';

/** The picture of a `show` line with its text equivalent; where it cannot be drawn, why not. */
export function pictureFigures(line: PictureLine, place: Place): PictureFigures {
    const read = readPicture(line);
    return 'picture' in read ? { picture: read.picture, text: pictureInWords(read.picture), title: line.title, place } : { text: read.message, title: line.title, place };
}
