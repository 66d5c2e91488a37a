import type { PictureLine } from '../sheets/sheet.js';
import { array } from './array.js';
import { balance } from './balance.js';
import { clock } from './clock.js';
import { baseTen, beadString, placeCards, tally, tenFrame } from './counted-kinds.js';
import { fractionBar } from './fraction-bar.js';
import { numberLine } from './number-line.js';
import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import { SettingsReader, type PictureFault } from './settings-reader.js';

/** Every kind of picture, in the order in which it is offered. */
export const pictureKinds: readonly PictureKind[] = [tenFrame, numberLine, beadString, placeCards, baseTen, tally, balance, fractionBar, clock, array];

export function pictureKind(name: string): PictureKind | undefined {
    return pictureKinds.find(({ kind }) => kind === name);
}

/** What a `show` line shows, or why it cannot be drawn; every mend is a picture that can. Never throws, whatever stands there. */
export function readPicture(line: PictureLine): { picture: Picture } | PictureFault {
    const read = readLine(line);
    return 'picture' in read ? read : { ...read, mends: read.mends.filter(mend => pictureOf(mend)) };
}

function readLine(line: PictureLine): { picture: Picture } | PictureFault {
    const kind = pictureKind(line.picture.name);
    if (!kind) return { message: `There is no picture '${line.picture.name}'. Pictures are ${pictureKinds.map(one => one.kind).join(', ')}.`, at: line.picture.at, mends: [] };
    const read = kind.read(new SettingsReader(line));
    return 'mends' in read ? read : { picture: read };
}

/** The picture of a line such as the table's examples, without a title; absent where it cannot be drawn. */
export function pictureOf(written: string): Picture | undefined {
    const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const [name = '', ...settings] = written.match(/[^\s,]+|,/g) ?? [];
    const read = readLine({ picture: { name, at: nowhere }, settings: settings.map(text => ({ text, at: nowhere })) });
    return 'picture' in read ? read.picture : undefined;
}

/** The text equivalent of a picture: one to three sentences. */
export function pictureInWords(picture: Picture): string {
    return pictureKind(picture.kind)!.inWords(picture);
}
