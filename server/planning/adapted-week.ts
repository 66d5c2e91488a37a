import type { Adapted, AppliedChange } from '@haversack/language/adapting/adapted';
import { markOf } from '@haversack/language/adapting/working-course';
import { changeFigures } from './change-figures.js';
import type { WeekBrief } from './figures.js';
import type { Plan } from './plan.js';
import { weekOfLesson } from './schedule.js';

/**
 * The adaptations of a class, and the lessons that they leave out in a week: each stands in the week of the lesson that stands in its place, at the end
 * of the course in the last week. Undefined where no adaptation applies.
 */
export function adaptedFigures(plan: Plan, adapted: Adapted | undefined, week: number): WeekBrief['adapted'] {
    if (!adapted) return undefined;
    const sheets = new Map(adapted.changes.map(({ adaptation }) => [adaptation.name, adaptation]));
    return {
        adaptations: [...sheets.values()].map(({ name, title, uri, at }) => ({ name, title, place: { uri, range: at } })),
        leftOut: leftOutIn(plan, adapted, week)
    };
}

type LeftOut = NonNullable<WeekBrief['adapted']>['leftOut'];

function leftOutIn(plan: Plan, adapted: Adapted, week: number): LeftOut {
    const { base } = adapted;
    const inOrder = [...new Set(base.units.flatMap(({ lessons }) => lessons.map(({ name }) => name)))];
    const now = new Map<string, string>();
    for (const [name, madeOf] of adapted.madeOf) for (const own of madeOf) if (!now.has(own)) now.set(own, name);
    /** The lesson that now stands where one stood, with the week it is taught in. */
    const standing = (index: number, { change }: AppliedChange): { before?: string; week: number } => {
        const instead = change.does === 'swap lesson' ? [change.forLesson.name] : [];
        for (const name of [...instead, ...inOrder.slice(index + 1)]) {
            const taught = now.get(name);
            const found = taught === undefined ? undefined : weekOfLesson(plan.schedule, taught);
            if (found !== undefined) return { before: taught, week: found };
        }
        return { week: plan.schedule.weeks.length };
    };
    return inOrder.flatMap((name, index): LeftOut => {
        const change = adapted.leftOut.get(name);
        const lesson = plan.programme.lessons.get(name);
        if (!change || !lesson) return [];
        const place = standing(index, change);
        if (place.week !== week) return [];
        return [{ name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at }, change: changeFigures(markOf(change, change.says)), before: place.before }];
    });
}
