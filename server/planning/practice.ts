import { pictureInWords, readPicture } from '@haversack/language/pictures/read-picture';
import type { Picture } from '@haversack/language/pictures/picture';
import { lineInWords } from '@haversack/language/practice/practice-lines';
import { itemsAskedFor, possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import type { LessonSheet, PartSheet, Place, Range } from '@haversack/language/sheets/sheet';
import type { PictureFigures, PracticeItemFigures, PracticeSheetFigures } from './figures.js';

/** The lines of a practice as they are written. */
export function practiceLines({ practice = [] }: PartSheet): string[] {
    return practice.map(line => lineInWords(line));
}

/** The items of a practice as the brief shows them, or further ones: `count` of them from the one numbered `from` (0 is the first). */
export function practiceItemFigures(part: PartSheet, lesson: Pick<LessonSheet, 'name' | 'uri'>, some: { count?: number; from?: number } = {}): PracticeItemFigures[] {
    const place = placeOfPart(part, lesson, part.at);
    return practiceItems(part, lesson.name, some).map(({ ask, answer, room, show }) => ({ ask, answer, room, picture: show && pictureFigures(show, place) }));
}

/**
 * The practices of a lesson as a sheet to write on, one of them or all that have items. With `more`, so many further items of each instead, which
 * go on where the brief ends.
 */
export function planPracticeSheet(lesson: LessonSheet, { practice, more }: { practice?: string; more?: number } = {}): PracticeSheetFigures {
    const parts = practicesOf(lesson).filter(({ name }) => practice === undefined || name === practice);
    return {
        lesson: { name: lesson.name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at } },
        further: more !== undefined,
        practices: parts.map(part => {
            const from = more === undefined ? 0 : itemsAskedFor(part);
            return {
                name: part.name,
                title: part.title,
                lines: practiceLines(part),
                first: from + 1,
                items: practiceItemFigures(part, lesson, { from, count: more }),
                possible: possibleItems(part),
                pictures: shownIn(part, lesson),
                place: placeOfPart(part, lesson, part.at)
            };
        })
    };
}

/** The parts of a lesson from whose lines items can be made. */
export function practicesOf(lesson: LessonSheet): PartSheet[] {
    return lesson.parts.filter(part => part.kind === 'practice' && itemsAskedFor(part) > 0);
}

function shownIn(part: PartSheet, lesson: LessonSheet): PictureFigures[] {
    return part.steps.flatMap(({ show, at }) => {
        const read = show && readPicture(show);
        return read && 'picture' in read ? [{ ...pictureFigures(read.picture, placeOfPart(part, lesson, at)), title: show.title }] : [];
    });
}

function pictureFigures(picture: Picture, place: Place): PictureFigures {
    return { picture, text: pictureInWords(picture), place };
}

function placeOfPart(part: PartSheet, lesson: Pick<LessonSheet, 'uri'>, range: Range): Place {
    return { uri: part.uri ?? lesson.uri, range };
}
