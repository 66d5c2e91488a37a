import type { Adapted, AppliedChange } from '@haversack/language/adapting/adapted';
import type { ScheduleFigures } from './schedule-figures.js';
import { weekOfLesson } from './schedule.js';

/** What a class is taught of a lesson, as its course calls it. */
export interface TaughtAs {
    /** Names of the adapted course, in its order: itself, its pieces, or the lesson that it is joined to; empty where it is left out. */
    names: readonly string[];
    /** Names of the other lessons, as the course calls them, that it is one with. */
    joinedWith: readonly string[];
    leftOut?: AppliedChange;
}

export function taughtAs(lesson: string, adapted: Pick<Adapted, 'madeOf' | 'leftOut'> | undefined): TaughtAs {
    const found = adapted ? [...adapted.madeOf].filter(([, madeOf]) => madeOf.includes(lesson)) : [];
    if (found.length > 0) return { names: found.map(([name]) => name), joinedWith: [...new Set(found.flatMap(([, madeOf]) => madeOf))].filter(name => name !== lesson) };
    const leftOut = adapted?.leftOut.get(lesson);
    return { names: leftOut ? [] : [lesson], joinedWith: [], ...(leftOut && { leftOut }) };
}

/** The first week in which something of a lesson is taught; undefined where nothing is. */
export function weekOfTaught(schedule: ScheduleFigures, { names }: TaughtAs): number | undefined {
    const weeks = names.flatMap(name => weekOfLesson(schedule, name) ?? []);
    return weeks.length === 0 ? undefined : Math.min(...weeks);
}

/** Where a lesson that is left out would stand: the week of what now stands in its place, at the end of the course the last week. */
export function placeOfLeftOut(lesson: string, adapted: Adapted, schedule: ScheduleFigures): { before?: string; week: number } {
    const inOrder = adapted.base.units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
    const change = adapted.leftOut.get(lesson)?.change;
    const instead = change?.does === 'swap lesson' ? [change.forLesson.name] : [];
    for (const name of [...instead, ...inOrder.slice(inOrder.indexOf(lesson) + 1)]) {
        const [taught] = adapted.leftOut.has(name) ? [] : taughtAs(name, adapted).names;
        const week = taught === undefined ? undefined : weekOfLesson(schedule, taught);
        if (week !== undefined) return { before: taught, week };
    }
    return { week: schedule.weeks.length };
}
