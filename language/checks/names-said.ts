import type { FileSheet, LessonSheet, Mention } from '../sheets/sheet.js';
import type { LessonReadings } from './lesson-facts.js';

/**
 * Every name that a file of lessons says, each at what it says it of, as one text. While it stays the same, whatever hangs on the
 * lessons' names alone stays the same too, whatever else of them is written anew.
 */
export function namesSaid(file: FileSheet, readings: LessonReadings): string {
    return JSON.stringify([file.unreadable, file.lessons.map(lesson => namesOfLesson(lesson, readings))]);
}

function namesOfLesson(lesson: LessonSheet, readings: LessonReadings): unknown[] {
    const { needs, named } = readings.of(lesson);
    return [
        lesson.name, names(lesson.follows), names(lesson.introduces), names(lesson.practises), names(lesson.checks), names(lesson.words), names(lesson.notNeeded),
        needs.map(({ options }) => options.map(({ thing }) => thing.name)), [...named.keys()], lesson.parts.map(({ kind, name }) => [kind, name])
    ];
}

function names(mentions: readonly Mention[]): string[] {
    return mentions.map(({ name }) => name);
}
