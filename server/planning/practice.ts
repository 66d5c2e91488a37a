import type { Adapted } from '@haversack/language/adapting/adapted';
import { inWords, withAnd, wordsSaid } from '@haversack/language/practice/number-names';
import type { ItemInTurn } from '@haversack/language/practice/practice-item';
import { lineInWords } from '@haversack/language/practice/practice-lines';
import { itemsAskedFor, itemsBeforeFurther, possibleItems, practiceItems } from '@haversack/language/practice/sequence';
import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, PartSheet, Place, Range } from '@haversack/language/sheets/sheet';
import type { PictureFigures, PracticeItemFigures, PracticeSheetFigures } from './figures.js';
import { pictureFigures, pictureToldInWords } from './pictures.js';

/** The lines of a practice as they are written. */
export function practiceLines({ practice = [] }: PartSheet): string[] {
    return practice.map(line => lineInWords(line));
}

/** The items of a practice as the brief shows them, or further ones: `count` of them from the one numbered `from` (0 is the first). */
export function practiceItemFigures(part: PartSheet, lesson: Pick<LessonSheet, 'name' | 'uri'>, some: { count?: number; from?: number } = {}): PracticeItemFigures[] {
    const place = placeOfPart(part, lesson, part.at);
    return practiceItems(part, lesson.name, some).map(item => ({
        ask: item.ask, answer: item.answer, room: item.room, picture: item.show && pictureToldInWords(item.show, place), alsoSaid: alsoSaid(item, part)
    }));
}

function alsoSaid({ ask, answer, about, line }: ItemInTurn, { practice = [] }: PartSheet): PracticeItemFigures['alsoSaid'] {
    const name = about.map(number => (/^\d+$/.test(number) ? inWords(Number(number)) : '')).find(words => words !== '' && (ask.includes(words) || answer.includes(words)));
    const other = name && withAnd(name);
    if (!other) return undefined;
    return practice[line]?.words[0] === 'digits' ? { name: other, words: wordsSaid(other).length } : { name: other };
}

/**
 * The practices of a lesson as a sheet to write on, one of them or all that have items. With `more`, so many further items of each instead, which
 * go on where the brief ends.
 */
export function planPracticeSheet(lesson: LessonSheet, { practice, more }: { practice?: string; more?: number } = {}): PracticeSheetFigures {
    const named = practicesOf(lesson).filter(({ name }) => practice === undefined || name === practice);
    // The pieces of a split practice have the same further items.
    const parts = more === undefined ? named : named.filter(part => !part.piece?.before || !named.some(other => other.piece?.before === 0 && isPieceOf(other, part)));
    return {
        lesson: { name: lesson.name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at } },
        further: more !== undefined,
        practices: parts.map(part => {
            const from = more === undefined ? 0 : itemsBeforeFurther(part);
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

/**
 * A lesson by its name in the course, as a class is taught it: where an adaptation has split it, with the parts of every piece, and where it is joined, the
 * joined lesson. A piece has a name of its own too. Undefined where no lesson has the name.
 */
export function lessonAsTaught(name: string, base: Programme, adapted: Adapted | undefined): LessonSheet | undefined {
    if (!adapted) return base.lessons.get(name);
    const pieces = [...adapted.madeOf].flatMap(([piece, names]) => (names.includes(name) ? adapted.programme.lessons.get(piece) ?? [] : []));
    const [first, ...others] = pieces;
    if (!first || others.length === 0) return first ?? adapted.programme.lessons.get(name);
    const parts = pieces.flatMap(piece => piece.parts.map((part): PartSheet => ({ ...part, uri: part.uri ?? piece.uri, from: part.from ?? [{ lesson: piece.name, part: part.name }] })));
    return { ...first, name, title: base.lessons.get(name)?.title ?? first.title, parts };
}

function isPieceOf(first: PartSheet, second: PartSheet): boolean {
    const origin = second.from?.[0];
    return origin !== undefined && origin.part === (first.from?.[0]?.part ?? first.name);
}

function shownIn(part: PartSheet, lesson: LessonSheet): PictureFigures[] {
    return part.steps.flatMap(({ show, at }) => {
        const figures = show && pictureFigures(show, placeOfPart(part, lesson, at));
        return figures?.picture ? [figures] : [];
    });
}

function placeOfPart(part: PartSheet, lesson: Pick<LessonSheet, 'uri'>, range: Range): Place {
    return { uri: part.uri ?? lesson.uri, range };
}
