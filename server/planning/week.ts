import type { Programme } from '@haversack/language/sheets/programme';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import { adaptedFigures } from './adapted-week.js';
import type { Wanted } from './audience.js';
import { adaptingOf, newPlanningCache, type PlanningCache } from './cache.js';
import { buyList, orderNow } from './buying.js';
import { eachOnce, youngestIn } from './cautions.js';
import type { LessonFigures, WeekBrief } from './figures.js';
import type { ScheduleFigures } from './schedule-figures.js';
import { lessonFigures } from './lessons.js';
import { nameFigures, namesInProse } from './names.js';
import { Plan } from './plan.js';
import { sharedWeek } from './shared-week.js';
import { putAway, stayOnShelf } from './shelf.js';
import { fetchGroups, weekThings, type WeekThing } from './things.js';
import { once } from '@haversack/language/facts/wording';

export interface WeekWanted extends Wanted {
    /** From 1. */
    week: number;
}

export interface WeekOptions {
    /** A schedule of the same programme, class and course, so that it is not made again for each week. */
    schedule?: ScheduleFigures;
    /** Kept by the caller from one plan to the next; without one nothing is remembered. */
    cache?: PlanningCache;
    /** ISO date; without it nothing is late. */
    today?: string;
}

/**
 * Everything the brief of one week shows. A week that the schedule does not have gives an empty brief with a sentence in
 * `assumptions`. Never throws.
 */
export function planWeek(programme: Programme, wanted: WeekWanted, options: WeekOptions = {}): WeekBrief {
    const cache = options.cache ?? newPlanningCache();
    const plan = new Plan(programme, { class: wanted.class, course: wanted.course }, cache, options.schedule);
    const { audience, schedule } = plan;
    const number = wanted.week;
    const week = plan.week(number);
    const taught = plan.taught(number);
    const things = weekThings(plan, number);
    const youngest = youngestIn(audience.class, audience.course);
    const lessons = taught.map(t => lessonFigures(plan.programme, audience.people.crowds, t, youngest));
    const cautions = weekCautions(things, lessons);
    const { course, class: sheet } = audience;
    return {
        course: course
            ? { name: course.name, title: course.title, place: { uri: course.uri, range: course.at } }
            : { name: '', title: 'All lessons' },
        class: sheet && { name: sheet.name, title: sheet.title, place: { uri: sheet.uri, range: sheet.at } },
        week: number,
        weeks: schedule.weeks.length,
        from: week?.from,
        to: week?.to,
        people: audience.people.figures,
        assumptions: once([
            ...schedule.assumptions,
            ...(week ? [] : [absentWeek(number, schedule.weeks.length)]),
            ...taught.flatMap(t => t.demand.assumptions),
            ...things.flatMap(t => [...t.need.problems, ...t.stock.problems])
        ]),
        remarks: [...week?.remarks ?? [], ...sharedWeek(plan, number)],
        meetings: week?.meetings ?? [],
        minutes: lessons.reduce((total, lesson) => total + lesson.minutes, 0),
        fetch: fetchGroups(things),
        stayOnShelf: week ? stayOnShelf(plan, number) : [],
        putAway: putAway(plan, number, things),
        buy: buyList(plan, things, number, options.today),
        cautions,
        lessons,
        next: nextWeek(plan, number, options.today),
        ...(schedule.unplaced.length > 0 ? { unplaced: schedule.unplaced } : {}),
        names: {
            ...namesInProse(programme, audience.adapted?.changes.map(({ change }) => change.because) ?? []),
            ...nameFigures(plan.programme, taught.map(t => t.lesson), things.map(t => t.figures), cautions)
        },
        adapted: adaptedFigures(plan, adaptedFor(programme, { class: sheet?.name, course: course?.name }, adaptingOf(cache)), number),
        ages: sheet?.ages ?? course?.ages
    };
}

function absentWeek(number: number, weeks: number): string {
    return weeks === 0 ? 'There are no lessons to plan.' : `The plan has ${weeks} ${weeks === 1 ? 'week' : 'weeks'}: there is no week ${number}.`;
}

/** Those of the week's things first, then what lessons and their parts add. */
function weekCautions(things: readonly WeekThing[], lessons: readonly LessonFigures[]): WeekBrief['cautions'] {
    return eachOnce([
        ...things.flatMap(t => t.figures.cautions),
        ...lessons.flatMap(l => [...l.cautions, ...l.parts.flatMap(p => p.cautions)])
    ]);
}

function nextWeek(plan: Plan, current: number, today: string | undefined): WeekBrief['next'] {
    const week = plan.week(current + 1);
    if (!week || !plan.week(current)) return undefined;
    const next = weekThings(plan, week.number);
    return {
        week: week.number,
        from: week.from,
        lessons: plan.taught(week.number).map(({ lesson }) => ({ name: lesson.name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at } })),
        newThings: next.map(t => t.figures).filter(f => f.isNew).map(({ title, amount, source }) => ({ title, amount, source })),
        order: orderNow(plan, current, today)
    };
}
