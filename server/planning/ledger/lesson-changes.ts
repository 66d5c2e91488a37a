import type { Place } from '@haversack/language/sheets/sheet';
import type { LedgerFigures, LessonChange, MinutesChange } from '../ledger-figures.js';
import { staysWhereItWas } from './breaks.js';
import type { CourseChanges } from './consequences.js';
import type { CourseReading, ReadLesson } from './course-reading.js';
import { lengthOf, minutesOf } from './stages.js';

/** Each lesson of the course before or after, with what happened to it; one that is left out stands where it stood. */
export function lessonChanges({ base, adapted, stages: { last: after } }: CourseChanges): LessonChange[] {
    return bothSides(base, adapted).map(({ then, now }): LessonChange => {
        const lesson = (now ?? then)!;
        const of = { name: lesson.name, title: lesson.sheet.title, place: placeOf(lesson) };
        const out = now ? undefined : after.leftOut.get(lesson.name);
        if (!now) return { ...of, happened: 'left out', says: out ? [out.says] : [] };
        const changes = after.changes.filter(({ idle, touched }) => idle === undefined && touched.includes(now.name));
        const stays = now.origins.some(origin => base.lastOf.has(origin)) && staysWhereItWas(now, base, adapted);
        const told = changes.filter(({ change }) => !stays || change.does !== 'move lesson');
        const says = told.map(change => change.says);
        if (!now.origins.some(origin => base.lastOf.has(origin))) return { ...of, happened: 'new', says };
        if (told.some(({ change }) => change.does === 'move lesson' && now.origins.includes(change.lesson.name))) return { ...of, happened: 'moved', says };
        return { ...of, happened: says.length > 0 ? 'changed' : 'same', says };
    });
}

export function minutesChange({ base, adapted, stages }: CourseChanges): LedgerFigures['minutes'] {
    return {
        before: stages.minutesAfter(0), after: minutesOf(stages.last),
        lessons: bothSides(base, adapted).map(({ then, now, joined = [] }): MinutesChange => {
            const lesson = (now ?? then)!;
            const before = then && [then, ...joined].reduce((sum, { sheet }) => sum + lengthOf(sheet), 0);
            return { name: lesson.name, title: lesson.sheet.title, place: placeOf(lesson), before, after: now && lengthOf(now.sheet) };
        })
    };
}

interface Sides {
    then?: ReadLesson;
    now?: ReadLesson;
    /** Other lessons of the course that it is made of. */
    joined?: ReadLesson[];
}

/** In the order of the adapted course; a lesson that is no longer there behind the one that stood before it. */
function bothSides(base: CourseReading, adapted: CourseReading): Sides[] {
    const still = new Set(adapted.lessons.map(({ name }) => name));
    const joinedInto = new Set(adapted.lessons.flatMap(({ name, origins }) => origins.filter(origin => origin !== name && !still.has(origin))));
    const behind = new Map<string | undefined, Sides[]>();
    const then = new Map<string, ReadLesson>();
    let last: string | undefined;
    for (const lesson of base.lessons) {
        then.set(lesson.name, lesson);
        if (joinedInto.has(lesson.name)) continue;
        if (!still.has(lesson.name)) behind.set(last, [...behind.get(last) ?? [], { then: lesson }]);
        else last = lesson.name;
    }
    return [...behind.get(undefined) ?? [], ...adapted.lessons.flatMap(now => {
        const gone = behind.get(now.name) ?? [];
        behind.delete(now.name);
        const joined = now.origins.filter(origin => joinedInto.has(origin)).flatMap(origin => then.get(origin) ?? []);
        return [{ then: then.get(now.name), now, joined }, ...gone];
    })];
}

function placeOf({ sheet: { uri, at } }: ReadLesson): Place {
    return { uri, range: at };
}
