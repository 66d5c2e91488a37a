import { readPicture } from '@haversack/language/pictures/read-picture';
import type { Picture } from '@haversack/language/pictures/picture';
import type { PictureFault } from '@haversack/language/pictures/settings-reader';
import type { PictureLine } from '@haversack/language/sheets/sheet';

/** `number-line 0 to 20 mark 7, 12` as the sheet has it, each word with its place in the text. */
export function pictureLine(text: string): PictureLine {
    const words = [...text.matchAll(/[^\s,]+|,/g)].map(({ 0: word, index }) => ({
        text: word, at: { start: { line: 0, character: index }, end: { line: 0, character: index + word.length } }
    }));
    const [name, ...settings] = words;
    return { picture: { name: name!.text, at: name!.at }, settings };
}

export function read(text: string): Picture | PictureFault {
    const found = readPicture(pictureLine(text));
    return 'picture' in found ? found.picture : found;
}

/** The picture of a line that is legal. */
export function legal(text: string): Picture {
    const found = read(text);
    if ('mends' in found) throw new Error(`${text}: ${found.message}`);
    return found;
}
