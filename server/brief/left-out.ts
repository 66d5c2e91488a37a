/** Lessons of the course that a class is not taught, and where that is told. */
import type { ChangeFigures, WeekBrief } from '../planning/figures.js';

export type LeftOutLesson = NonNullable<WeekBrief['adapted']>['leftOut'][number];

/** Those that get a line of their own: a lesson that is taught instead says itself what it stands for. */
export function toldLeftOut(leftOut: readonly LeftOutLesson[] | undefined, taught: readonly { changes?: ChangeFigures[] }[]): LeftOutLesson[] {
    const told = new Set(taught.flatMap(({ changes = [] }) => changes.map(lineOf)));
    return (leftOut ?? []).filter(({ change }) => !told.has(lineOf(change)));
}

function lineOf({ place: { uri, range } }: ChangeFigures): string {
    return `${uri}#${range.start.line}`;
}

export function leftOutOfWeek({ adapted, lessons }: WeekBrief): LeftOutLesson[] {
    return toldLeftOut(adapted?.leftOut, lessons);
}

/** Those that stood before the lesson at this index, told at its first visit of the week. */
export function leftOutBefore(brief: WeekBrief, index: number): LeftOutLesson[] {
    const name = brief.lessons[index]?.name;
    return name === undefined || brief.lessons.findIndex(lesson => lesson.name === name) !== index ? [] : leftOutOfWeek(brief).filter(({ before }) => before === name);
}

/** Those behind the week's last lesson. */
export function leftOutAtEnd(brief: WeekBrief): LeftOutLesson[] {
    return leftOutOfWeek(brief).filter(({ before }) => !brief.lessons.some(({ name }) => name === before));
}
