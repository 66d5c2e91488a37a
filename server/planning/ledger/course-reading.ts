import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { courseOrder, Turns } from '../schedule/course-order.js';
import type { CourseMemo } from './course-memo.js';
import type { Stage } from './stages.js';

/** A lesson at its place in a stage of the course. */
export interface ReadLesson {
    name: string;
    /** As it is taught: no lesson before what it follows. */
    index: number;
    /** As the course lists it. */
    listed: number;
    sheet: LessonSheet;
    /** Names of the lessons of the course as written of which it is made. */
    origins: readonly string[];
}

/** What a stage of the course teaches where. Lessons stand in the order in which they are taught; indexes count them from 0. */
export interface CourseReading {
    programme: Programme;
    lessons: readonly ReadLesson[];
    /** Where each objective is introduced first. */
    introduced: ReadonlyMap<string, ReadLesson>;
    /** Lessons that practise or check each objective, in order. */
    practised: ReadonlyMap<string, readonly ReadLesson[]>;
    checked: ReadonlyMap<string, readonly ReadLesson[]>;
    /** Where each word is taught first. */
    taughtWords: ReadonlyMap<string, ReadLesson>;
    /** The last lesson that is made of a lesson of the course, or that is taught in its place. */
    lastOf: ReadonlyMap<string, ReadLesson>;
    /** Words of the programme that a lesson names in its text. */
    wordsIn(lesson: ReadLesson): Iterable<string>;
}

/** `words` are those of the whole programme. */
export function readCourse({ programme, course, madeOf, changes }: Stage, words: ReadonlySet<string>, memo: CourseMemo): CourseReading {
    const lessons: ReadLesson[] = [];
    const introduced = new Map<string, ReadLesson>();
    const practised = new Map<string, ReadLesson[]>();
    const checked = new Map<string, ReadLesson[]>();
    const taughtWords = new Map<string, ReadLesson>();
    const lastOf = new Map<string, ReadLesson>();
    const sheets = course.units.flatMap(unit => unit.lessons).flatMap(({ name }) => programme.lessons.get(name) ?? []);
    for (const listed of asTaught(sheets)) {
        const sheet = sheets[listed]!;
        const { name } = sheet;
        const lesson: ReadLesson = { name, index: lessons.length, listed, sheet, origins: madeOf.get(name) ?? [name] };
        lessons.push(lesson);
        for (const { name: objective } of sheet.introduces) if (!introduced.has(objective)) introduced.set(objective, lesson);
        for (const { name: objective } of sheet.practises) push(practised, objective, lesson);
        for (const { name: objective } of sheet.checks) push(checked, objective, lesson);
        for (const { name: word } of sheet.words) if (!taughtWords.has(word)) taughtWords.set(word, lesson);
        for (const origin of [name, ...lesson.origins]) lastOf.set(origin, lesson);
    }
    // A lesson that takes the place of another is what others follow from then on.
    for (const { change, idle } of changes) {
        if (change.does !== 'swap lesson' || idle !== undefined || lastOf.has(change.lesson.name)) continue;
        const instead = lastOf.get(change.forLesson.name);
        if (instead) lastOf.set(change.lesson.name, instead);
    }
    const wordsIn = ({ sheet }: ReadLesson): string[] => [...memo.namedIn(sheet)].filter(name => words.has(name));
    return { programme, lessons, introduced, practised, checked, taughtWords, lastOf, wordsIn };
}

/** Positions in the order in which the lessons are taught. */
function asTaught(sheets: readonly LessonSheet[]): number[] {
    const turns = new Turns(courseOrder(sheets), []);
    const taught: number[] = [];
    for (let next = turns.next(); next !== undefined; next = turns.next()) {
        turns.take();
        turns.taught(next);
        taught.push(next);
    }
    return taught;
}

/** Words that some lesson teaches: a name in braces means one only where nothing else has that name. */
export function wordsOf(programme: Programme): ReadonlySet<string> {
    const others = [programme.materials, programme.prints, programme.books, programme.games, programme.lessons, programme.objectives];
    const words = new Set<string>();
    for (const lesson of programme.lessons.values()) {
        for (const { name } of lesson.words) if (!others.some(names => names.has(name))) words.add(name);
    }
    return words;
}

function push(map: Map<string, ReadLesson[]>, name: string, lesson: ReadLesson): void {
    const known = map.get(name);
    if (!known) map.set(name, [lesson]);
    else if (known[known.length - 1] !== lesson) known.push(lesson);
}
