import type { Adapted } from '@haversack/language/adapting/adapted';
import { markOf } from '@haversack/language/adapting/working-course';
import { changeFigures } from './change-figures.js';
import type { WeekBrief } from './figures.js';
import type { Plan } from './plan.js';
import { placeOfLeftOut } from './taught-as.js';

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
    return inOrder.flatMap((name): LeftOut => {
        const change = adapted.leftOut.get(name);
        const lesson = plan.programme.lessons.get(name);
        if (!change || !lesson) return [];
        const place = placeOfLeftOut(name, adapted, plan.schedule);
        if (place.week !== week) return [];
        return [{ name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at }, change: changeFigures(markOf(change, change.says)), before: place.before }];
    });
}
