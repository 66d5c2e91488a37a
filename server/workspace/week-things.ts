import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import { spanInWords } from '../brief/days.js';
import { lessonAt } from '../editing/candidates.js';
import type { BuyFigures, ThingFigures, WeekBrief } from '../planning/figures.js';
import { nothingTaught } from '../planning/nothing-taught.js';
import { weekOn } from '../planning/week-on.js';
import type { BuyThing, GatherThing, WeekAnswer, WeekParams, WeekRefusal } from '../protocol/programme.js';
import { classAt, programmeOf, sheetAt } from './asked-for.js';
import { placeOf, programmeTitle } from './programme-tree.js';
import type { HaversackServerServices } from './services.js';

/** What has to be fetched and bought for one week of a class: the figures of the week's brief, as a list. */
export function weekThings(params: WeekParams, services: HaversackServerServices): WeekAnswer | WeekRefusal {
    const { all } = services.programmes;
    const key = params.programme !== undefined && all.includes(params.programme) ? params.programme : programmeOf(params, services);
    const plans = services.plans.at(key);
    const { programme } = plans.current;
    if (programme.lessons.size === 0) return { refusal: 'There is no lesson in this folder yet.', empty: true };
    const className = known(params.class, key, services) ?? known(classAt(params, services), key, services);
    const schedule = plans.schedule(className);
    const weeks = schedule.weeks.length;
    if (weeks === 0) return { refusal: `${nothingTaught(programme, { class: className })}, so there is no week to show.`, empty: false };
    const wanted = params.week ?? weekAt(params, key, className, services) ?? params.otherwise ?? weekOn(schedule, services.today.date);
    const week = Math.min(Math.max(Number.isInteger(wanted) ? wanted : 1, 1), weeks);
    const brief = plans.brief(week, className);
    const course = programme.courses.get(brief.course.name);
    return {
        programme: key,
        class: brief.class && { name: brief.class.name, title: brief.class.title },
        classes: all.flatMap(one => services.plans.at(one).classes().map(group => ({ ...group, programme: one, programmeTitle: programmeTitle(one) }))),
        course: brief.course.title,
        courseFile: course && { name: course.name, title: course.title, uri: course.uri, line: course.whole.end.line, character: course.whole.end.character },
        week, weeks,
        from: brief.from,
        dates: spanInWords(brief.from, brief.to),
        minutes: brief.minutes,
        groups: params.brief ? [] : brief.fetch.map(({ source, title, things }) => ({ source, title, things: things.map(gatherThing) })),
        buy: params.brief ? [] : toBuy(brief)
    };
}

function known(className: string | undefined, key: ProgrammeKey, { sheets }: HaversackServerServices): string | undefined {
    return className !== undefined && sheets.viewAt(key).programme.classes.has(className) ? className : undefined;
}

/** The week of the lesson at the line, or of the file's first. */
function weekAt({ uri, line }: WeekParams, key: ProgrammeKey, className: string | undefined, services: HaversackServerServices): number | undefined {
    const sheet = line === undefined ? undefined : sheetAt(uri, services);
    const lesson = sheet && services.programmes.of(sheet.uri) === key ? lessonAt(sheet.lessons, line ?? 0) ?? sheet.lessons[0] : undefined;
    return lesson && services.plans.at(key).weekTelling(lesson.name, className);
}

function gatherThing({ name, title, place, amount, days, lessons, optional, or, atHand, missing, remark }: ThingFigures): GatherThing {
    return {
        name, title, at: placeOf(place.uri, place.range), amount: amount.text, days, lessons: lessons.map(lesson => lesson.title), optional, or,
        atHand: atHand?.text, missing: missing?.text, remark
    };
}

function toBuy({ buy, next }: WeekBrief): BuyThing[] {
    return [...buy.map(one => buyThing(one, false)), ...(next?.order ?? []).map(one => buyThing(one, true))];
}

function buyThing({ name, title, place, missing, packsToBuy, when, cost, late }: BuyFigures, ahead: boolean): BuyThing {
    return { name, title, at: placeOf(place.uri, place.range), what: packsToBuy?.map(({ text }) => text).join(', ') || missing.text, when, cost: cost?.text, late: late?.words, ahead };
}
