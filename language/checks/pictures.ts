import { nearest } from '../lexer/nearest.js';
import { pictureKind, pictureKinds, readPicture } from '../pictures/read-picture.js';
import type { Range } from '../sheets/sheet.js';
import type { Check, Finding } from './check.js';
import { changeTo } from './fixes.js';
import { stepsIn } from './walk-lessons.js';

export const impossiblePicture: Check = {
    code: 'impossible-picture', severity: 'error', title: 'A picture that cannot be drawn',
    explains: 'A `show` line names a kind of picture and what it shows. There may be no picture of that name, a number may be more than the picture holds, or something is missing or too much. Each kind with all it can show: '
        + `${pictureKinds.map(({ examples }) => `\`show ${examples[0]}\``).join(', ')}.`,
    wrong: 'game jump\n  do: How many are there?\n  show ten-frame 23\n\nlesson jumps\n  game jump 5 min',
    right: 'game jump\n  do: How many are there?\n  show base-ten 23\n\nlesson jumps\n  game jump 5 min',
    *find(file) {
        for (const { show } of stepsIn(file)) {
            if (!show || show.picture.name === '') continue;
            const { picture, settings } = show;
            if (!pictureKind(picture.name)) {
                yield unknownKind(picture.name, picture.at, file.uri);
                continue;
            }
            const read = readPicture(show);
            if ('picture' in read) continue;
            const whole = { start: picture.at.start, end: settings.at(-1)?.at.end ?? picture.at.end };
            yield { message: read.message, at: read.at, fixes: read.mends.map((mend, index) => changeTo(file.uri, whole, mend, index === 0)) };
        }
    }
};

function unknownKind(name: string, at: Range, uri: string): Finding {
    const near = nearest(name, pictureKinds.map(({ kind }) => kind));
    const known = `Pictures are ${pictureKinds.map(({ kind }) => kind).join(', ')}.`;
    return { message: near ? `There is no picture '${name}'; did you mean '${near}'?` : `There is no picture '${name}'. ${known}`, at, fixes: near ? [changeTo(uri, at, near)] : [] };
}
