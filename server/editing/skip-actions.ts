import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { Edit } from '@haversack/language/checks/check';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, CourseSheet, FileSheet, LessonSheet, PartSheet, Range } from '@haversack/language/sheets/sheet';
import { skipLesson, skipPart, writeForClass, type ChangeToWrite } from '../plan-checks/change-lines.js';
import { partTitle } from '../planning/part-title.js';

/** A change that somebody can choose to make. */
export interface SkipAction {
    /** "Skip ‘Which is heavier?’ for Harbour co-op". */
    title: string;
    edit: Edit;
}

/**
 * Leaving out a lesson at its first line or at its line in a course, and a part at its first line: once for each class that is taught it
 * and does not leave it out already.
 */
export function skipActions(sheet: FileSheet, range: Range, programme: Programme, memo: AdaptingMemo): SkipAction[] {
    const isAt = (line: number): boolean => range.start.line <= line && line <= range.end.line;
    const named = sheet.courses.flatMap(course => course.units.flatMap(({ lessons }) => lessons).filter(({ at }) => isAt(at.start.line))
        .flatMap(({ name }) => programme.lessons.get(name) ?? []).flatMap(lesson => forClasses(lesson, undefined, programme, memo, course)));
    const declared = sheet.lessons.flatMap(lesson => [
        ...(isAt(lesson.at.start.line) ? forClasses(lesson, undefined, programme, memo) : []),
        ...lesson.parts.filter(({ head }) => isAt(head.start.line)).flatMap(part => forClasses(lesson, part, programme, memo))
    ]);
    return [...named, ...declared];
}

function forClasses(lesson: LessonSheet, part: PartSheet | undefined, programme: Programme, memo: AdaptingMemo, of?: CourseSheet): SkipAction[] {
    if (programme.lessons.get(lesson.name) !== lesson) return [];
    const title = part ? partTitle(programme, part) : lesson.title;
    const change: ChangeToWrite = part ? skipPart(lesson.name, part.name) : skipLesson(lesson.name);
    return [...programme.classes.values()].flatMap(group => {
        const course = group.teaches && programme.courses.get(group.teaches.name);
        if (!course || (of && of !== course) || !isTaught(lesson, part, group, course, programme, memo)) return [];
        return [{ title: `Skip ‘${title}’ for ${group.title}`, edit: writeForClass([change], group, course, programme) }];
    });
}

function isTaught({ name }: LessonSheet, part: PartSheet | undefined, group: ClassSheet, course: CourseSheet, programme: Programme, memo: AdaptingMemo): boolean {
    if (!course.units.some(({ lessons }) => lessons.some(mention => mention.name === name))) return false;
    const adapted = adaptedFor(programme, { class: group.name, course: course.name }, memo);
    if (!adapted) return true;
    const still = [...adapted.madeOf].filter(([, origins]) => origins.includes(name));
    if (!part) return still.length > 0;
    const sheets = [...adapted.madeOf.keys()].flatMap(lesson => adapted.programme.lessons.get(lesson) ?? []);
    return sheets.some(sheet => sheet.parts.some(own => (own.from ?? [{ lesson: sheet.name, part: own.name }]).some(from => from.lesson === name && from.part === part.name)));
}
