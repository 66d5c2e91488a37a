import { dayOfIso } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet, LessonSheet, Unsure } from '@haversack/language/sheets/sheet';

/** A line of the class log: after this lesson, on this day, the children were unsure. */
export interface LogLine {
    /** Index of the class's line. */
    index: number;
    lesson: string;
    day: number;
}

/** The log by day, each lesson and day once. A date that does not exist is told elsewhere and left out. */
export function classLog(sheet: ClassSheet): Map<number, LogLine[]> {
    const byDay = new Map<number, LogLine[]>();
    sheet.log.forEach((line, index) => {
        const day = dayOfIso(line.on.date);
        if (day === undefined) return;
        const lines = byDay.get(day) ?? [];
        if (!lines.some(l => l.lesson === line.lesson.name)) byDay.set(day, [...lines, { index, lesson: line.lesson.name, day }]);
    });
    return byDay;
}

/** What is to be done again, and when. `parts` are indexes of the lesson's parts. */
export type Again =
    | { what: 'part'; lesson: LessonSheet; parts: number[]; when: 'today' | 'tomorrow' }
    | { what: 'lesson'; when: 'today' | 'tomorrow' }
    | { what: 'revisit'; parts: number[]; lessons: number };

/**
 * As the lesson's last checkpoint asks; without one, the whole lesson at the next meeting. `lessonNamed` finds the other piece of a lesson that an
 * adaptation has split.
 */
export function againAfter(lesson: LessonSheet, lessonNamed: (name: string) => LessonSheet | undefined): Again {
    const closing = lesson.parts.map((part, i) => ({ i, unsure: part.unsure })).filter(p => p.unsure !== undefined).pop();
    const unsure: Unsure | undefined = closing?.unsure;
    switch (unsure?.then) {
        case 'repeat': {
            const home = unsure.of === undefined ? lesson : lessonNamed(unsure.of);
            const index = home?.parts.findIndex(part => part.name === unsure.activity.name) ?? -1;
            return home && index >= 0 ? { what: 'part', lesson: home, parts: [index], when: unsure.when } : { what: 'lesson', when: unsure.when };
        }
        case 'repeat lesson': return { what: 'lesson', when: unsure.when ?? 'tomorrow' };
        case 'revisit': return { what: 'revisit', parts: [closing?.i ?? 0], lessons: Number.isFinite(unsure.lessons) ? Math.max(1, unsure.lessons) : 1 };
        default: return { what: 'lesson', when: 'tomorrow' };
    }
}
