import type { Adapted } from '../adapting/adapted.js';
import type { ClassSheet, CourseSheet, LessonSheet } from '../sheets/sheet.js';
import type { ProgrammeView } from './programme-view.js';

/** A class, and what it is taught of a lesson: the lesson as it is written or adapted, or its pieces. */
export interface TaughtTo {
    group: ClassSheet;
    taught: readonly LessonSheet[];
}

/** Without classes for which the lesson is left out or joined to one before it. */
export function classesTaught(lesson: LessonSheet, view: ProgrammeView): TaughtTo[] {
    const groups = [...view.placesOf(lesson).flatMap(({ course }) => view.factsOfCourse(course).classes), ...view.broughtTo.get(lesson.name) ?? []];
    return groups.filter(group => !view.isBroken(group)).map(group => ({ group, taught: taughtTo(lesson, group, view) })).filter(({ taught }) => taught.length > 0);
}

function taughtTo(lesson: LessonSheet, group: ClassSheet, view: ProgrammeView): LessonSheet[] {
    const adapted = adaptedOf(group, view);
    if (!adapted) return [lesson];
    return [...adapted.madeOf].flatMap(([name, [first]]) => (first === lesson.name ? adapted.programme.lessons.get(name) ?? [] : []));
}

export function adaptedOf(group: ClassSheet, view: ProgrammeView): Adapted | undefined {
    const course: CourseSheet | undefined = view.programme.courses.get(group.teaches?.name ?? '');
    return course && view.adapted(course, group);
}
