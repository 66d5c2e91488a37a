import type { Programme } from '@haversack/language/sheets/programme';
import { lessonsBrought, partsNamed } from '@haversack/language/sheets/adaptation-names';
import type { CourseSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import type { Matched } from './matched.js';

/** A course in both editions, or in one of them. */
export interface CoursePair {
    old?: CourseSheet;
    new?: CourseSheet;
}

/** The courses to compare: the one that is named in either edition, or all, those of the new edition first. */
export function coursesCompared({ courses: { pairs, gone, added }, now }: Matched, name: string | undefined): CoursePair[] {
    const order = [...now.courses.keys()];
    const place = ({ new: course }: CoursePair): number => (course ? order.indexOf(course.name) : order.length);
    const all: CoursePair[] = [...pairs.map(pair => ({ old: pair.old, new: pair.new })), ...added.map(one => ({ new: one })), ...gone.map(one => ({ old: one }))];
    const both = all.sort((a, b) => place(a) - place(b));
    return name === undefined ? both : both.filter(pair => pair.old?.name === name || pair.new?.name === name);
}

/** Names of a course's lessons in teaching order, each once; those that are not declared are passed over. */
export function taughtIn(course: CourseSheet | undefined, programme: Programme): LessonSheet[] {
    const names = new Set(course?.units.flatMap(({ lessons }) => lessons.map(({ name }) => name)));
    return [...names].flatMap(name => programme.lessons.get(name) ?? []);
}

/**
 * Names of the lessons of one edition that somebody is taught: those of the courses, and those that adaptations of these bring in.
 * Where no course is declared, all.
 */
export function lessonsMet(programme: Programme, courses: readonly CourseSheet[]): Set<string> {
    if (courses.length === 0 && programme.courses.size === 0) return new Set(programme.lessons.keys());
    const names = new Set(courses.flatMap(course => taughtIn(course, programme).map(({ name }) => name)));
    for (const adaptation of programme.adaptations.values()) {
        if (!courses.some(({ name }) => name === adaptation.of?.name)) continue;
        for (const change of adaptation.changes) {
            for (const { name } of lessonsBrought(change)) names.add(name);
            for (const { lesson } of partsNamed(change)) names.add(lesson.name);
        }
    }
    return names;
}
