import type { LessonSheet, PartSheet, Place } from '@haversack/language/sheets/sheet';

/** How a lesson is made up; made once for each lesson of a course. */
export interface LessonShape {
    lesson: LessonSheet;
    /** Indexes of its parts. */
    parts: readonly number[];
    whole: Length;
    place: Place;
}

/** A lesson, or what is left of one, that is to be taught: which parts, from which on. */
export interface Work {
    /** Where the lesson stands in the course. */
    position: number;
    lesson: LessonSheet;
    /** Indexes of the parts to be taught, in order. */
    parts: readonly number[];
    /** All of these parts together. */
    whole: Length;
    /** How many of them have been taught. */
    done: number;
}

export interface Length {
    /** Minutes that are written. */
    minutes: number;
    /** Some part has no minutes, or there are no parts: the work takes the rest of its meeting. */
    open: boolean;
}

/** Minutes of a part; undefined where none, or none that can be meant, are written. */
function minutesOf(part: PartSheet | undefined): number | undefined {
    const minutes = part?.minutes;
    return minutes !== undefined && Number.isFinite(minutes) && minutes >= 0 ? minutes : undefined;
}

export function shapeOf(lesson: LessonSheet): LessonShape {
    const parts = lesson.parts.map((_, i) => i);
    return { lesson, parts, whole: addUp(lesson, parts, 0, parts.length), place: { uri: lesson.uri, range: lesson.at } };
}

export function wholeLesson(position: number, { lesson, parts, whole }: LessonShape): Work {
    return { position, lesson, parts, whole, done: 0 };
}

export function someParts(position: number, lesson: LessonSheet, parts: readonly number[]): Work {
    return { position, lesson, parts, whole: addUp(lesson, parts, 0, parts.length), done: 0 };
}

/** How long the next `count` parts take; all that are left where no count is given. */
export function lengthOf({ lesson, parts, whole, done }: Work, count = parts.length - done): Length {
    return count === parts.length ? whole : addUp(lesson, parts, done, count);
}

function addUp(lesson: LessonSheet, parts: readonly number[], from: number, count: number): Length {
    let minutes = 0;
    let open = parts.length === 0;
    for (let i = from; i < from + count; i++) {
        const part = minutesOf(lesson.parts[parts[i] ?? -1]);
        if (part === undefined) open = true;
        else minutes += part;
    }
    return { minutes, open };
}

/** How many parts from the next on fit into so many minutes; a part without minutes takes none. */
export function partsThatFit({ lesson, parts, done }: Work, minutes: number): number {
    let left = minutes;
    let count = 0;
    for (let i = done; i < parts.length; i++) {
        left -= minutesOf(lesson.parts[parts[i] ?? -1]) ?? 0;
        if (left < 0) break;
        count += 1;
    }
    return count;
}

/** How many meetings of its own the work would still take. */
export function piecesLeft(work: Work, session: number | undefined): number {
    let pieces = 0;
    for (let { done } = work; done < work.parts.length; pieces++) {
        done += session === undefined ? work.parts.length : Math.max(1, partsThatFit({ ...work, done }, session));
    }
    return pieces;
}

/** Whether the next `count` parts hold more than something to warm up with. */
export function isWorthAMeeting({ lesson, parts, done }: Work, count: number): boolean {
    return parts.slice(done, done + count).some(i => lesson.parts[i]?.kind !== 'warm-up');
}
