import type { Change } from '../sheets/adaptation-sheet.js';
import type { Mention } from '../sheets/sheet.js';
import type { AppliedChange } from './adapted.js';
import { asWritten } from './swap-thing.js';
import { markOf, marked, type Line, type Outcome, type Taught, type WorkingCourse } from './working-course.js';
import { quoted } from '../facts/wording.js';

/** Changes of which lessons are taught, and in which order. */

type Of<D extends Change['does']> = Extract<Change, { does: D }>;

export function skipLesson(course: WorkingCourse, { lesson }: Of<'skip lesson'>, applied: AppliedChange): Outcome {
    const meant = course.meant(lesson.name);
    if (meant.length === 0) return course.missing(lesson);
    leaveOut(course, meant, applied);
    return { touched: [] };
}

export function swapLesson(course: WorkingCourse, { lesson, forLesson }: Of<'swap lesson'>, line: Line, applied: AppliedChange): Outcome {
    const meant = course.meant(lesson.name);
    const [first] = meant;
    if (!first) return course.missing(lesson);
    if (forLesson.name === lesson.name) return { idle: 'it is the same lesson' };
    const problem = cannotBring(course, forLesson);
    if (problem) return problem;
    course.put([brought(course, forLesson, line)], 'before', [first]);
    leaveOut(course, meant, applied);
    course.leftOut.delete(forLesson.name);
    markLessons(course, [forLesson.name], line, `instead of ${quoted(course.lesson(lesson.name))}`);
    return { touched: [forLesson.name] };
}

export function insertLesson(course: WorkingCourse, { lesson, side, anchor }: Of<'insert lesson'>, line: Line): Outcome {
    const anchors = course.meant(anchor.name);
    if (anchors.length === 0) return course.missing(anchor);
    const problem = cannotBring(course, lesson);
    if (problem) return problem;
    course.put([brought(course, lesson, line)], side, anchors);
    course.leftOut.delete(lesson.name);
    markLessons(course, [lesson.name], line, 'brought in');
    return { touched: [lesson.name] };
}

export function moveLesson(course: WorkingCourse, { lesson, side, anchor }: Of<'move lesson'>, line: Line): Outcome {
    const meant = course.meant(lesson.name);
    const anchors = course.meant(anchor.name);
    if (meant.length === 0) return course.missing(lesson);
    if (anchors.length === 0) return course.missing(anchor);
    if (anchors.some(taught => meant.includes(taught))) return { idle: lesson.name === anchor.name ? 'a lesson cannot stand beside itself' : 'the two are one lesson now' };
    const before = course.all();
    course.take(new Set(meant));
    course.put(meant, side, anchors);
    if (course.all().every((taught, i) => taught === before[i])) return { idle: 'it stands there already' };
    const names = namesOf(meant);
    markLessons(course, names, line, `moved to ${side} ${quoted(course.lesson(anchor.name))}`);
    return { touched: names };
}

/** A mark on each of these lessons. */
export function markLessons(course: WorkingCourse, names: readonly string[], line: Line, says: string): void {
    for (const name of names) course.change(name, [line.change, says], sheet => marked(sheet, markOf(line, says)));
}

export function namesOf(taught: readonly Taught[]): string[] {
    return [...new Set(taught.map(({ name }) => name))];
}

function cannotBring(course: WorkingCourse, lesson: Mention): Outcome | undefined {
    const { name, at } = lesson;
    if (!course.programme.lessons.has(name)) return course.missing(lesson);
    return course.meant(name).length > 0 ? { at, idle: `the course teaches ${quoted(course.lesson(name))} already` } : undefined;
}

/** A line for a lesson of the programme, as it is written but for what is swapped everywhere. */
function brought(course: WorkingCourse, mention: Mention, line: Line): Taught {
    const { uri } = line.adaptation;
    course.sheets.delete(mention.name);
    const sheet = asWritten(course, mention.name);
    if (sheet) course.sheets.set(mention.name, sheet);
    const own = uri === course.base.uri ? mention : course.memo.of(mention, [uri], () => ({ ...mention, uri }));
    return { name: mention.name, mention: own, madeOf: [mention.name] };
}

function leaveOut(course: WorkingCourse, meant: readonly Taught[], applied: AppliedChange): void {
    course.take(new Set(meant));
    for (const { name, madeOf } of meant) {
        course.renamed(name, []);
        for (const own of madeOf) course.leftOut.set(own, applied);
    }
}
