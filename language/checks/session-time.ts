import type { Adapted, AppliedChange } from '../adapting/adapted.js';
import type { Change } from '../sheets/adaptation-sheet.js';
import type { ClassSheet, LessonSheet, PartSheet } from '../sheets/sheet.js';
import type { Check, Finding, Fix } from './check.js';
import { adaptedOf, classesTaught, type TaughtTo } from './classes-taught.js';
import { insertAfter, lineIn } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const course = 'course measuring\n  unit weighing\n    weigh-1\n\nclass harbour\n  teaches measuring\n  learners 6\n  starts 2026-09-07\n  meets mon\n  session 30 min\n\n';

export const activityWithoutTime: Check = {
    code: 'activity-without-time', severity: 'warning', missing: true, title: 'An activity without a time',
    explains: 'A class that is taught this lesson has sessions of a certain length, and whether the lesson fits can only be told when its parts say how long they take. Write the time at the end of the line: `activity two-bags 15 min`. Practice may go without one.',
    wrong: `${course}lesson weigh-1\n  activity two-bags\n    do: Lift one bag, then the other.`,
    right: `${course}lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            const untimed = lesson.parts.filter(isUntimed);
            const shortest = untimed.length > 0 ? sessionsOf(lesson, view).find(({ taught }) => taught.some(({ parts }) => parts.some(isUntimed))) : undefined;
            if (!shortest) continue;
            const left = (shortest.minutes - minutesOf(lesson.parts)) / untimed.length;
            const minutes = left >= 5 ? Math.floor(left / 5) * 5 : 5;
            for (const part of untimed) {
                yield {
                    message: `How long does '${part.name}' take? Class '${shortest.group.name}' meets for ${shortest.minutes} min.`, at: part.at,
                    fixes: [{ title: `Give it ${minutes} min`, edits: [insertAfter(file.uri, part.head, ` ${minutes} min`)] }]
                };
            }
        }
    }
};

export const lessonTooLong: Check = {
    code: 'lesson-too-long', severity: 'information', title: 'A lesson longer than its session',
    explains: 'The parts of the lesson together take longer than the class meets, so it goes on at the next meeting; it is broken off between two parts. To teach it in one go, shorten a part or let an adaptation for the class skip one. To say where it is broken off, let an adaptation split it.',
    wrong: `${course}lesson weigh-1\n  activity two-bags 20 min\n    do: Lift one bag, then the other.\n  activity three-bags 20 min\n    do: Put three bags in order.`,
    right: `${course}lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n  activity three-bags 15 min\n    do: Put three bags in order.`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            for (const { group, minutes, taught } of sessionsOf(lesson, view)) {
                const long = taught.find(({ parts }) => minutesOf(parts) > minutes);
                if (!long) continue;
                // Told at the line of the adaptation that made it so long.
                if (minutesOf(lesson.parts) <= minutes && lengthenedBy(long, adaptedOf(group, view))) continue;
                // A part that is too long by itself cannot be split: the plan tells of it.
                if (long.parts.some(part => (part.minutes ?? 0) > minutes)) break;
                yield {
                    message: `${lessonInWords(long, lesson)} takes ${minutesOf(long.parts)} min and class '${group.name}' meets for ${minutes} min, so it goes on at the next meeting.`, at: lesson.at,
                    related: [{ message: `The session of '${group.name}'`, place: { uri: group.uri, range: group.session!.at } }],
                    fixes: splitFix(long, group, minutes, view)
                };
                break;
            }
        }
        yield* madeTooLong(file.uri, view);
    }
};

const minutesOf = (parts: readonly PartSheet[]): number => parts.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);

function isUntimed({ minutes, kind, name }: PartSheet): boolean {
    return minutes === undefined && kind !== 'practice' && name !== '';
}

/** A class with its session, and what it is taught of a lesson. */
interface Session extends TaughtTo {
    minutes: number;
}

/** The shortest first. */
function sessionsOf(lesson: LessonSheet, view: ProgrammeView): Session[] {
    return classesTaught(lesson, view).flatMap((one): Session[] => {
        const { session } = one.group;
        return session && session.minutes > 0 ? [{ ...one, minutes: session.minutes }] : [];
    }).sort((a, b) => a.minutes - b.minutes);
}

const lengthens: ReadonlySet<Change['does']> = new Set(['join lessons', 'join activities', 'retime lesson', 'retime activity', 'insert activity', 'swap activity', 'move activity', 'add to lesson']);

/** The last change that gives a lesson minutes. */
function lengthenedBy({ name }: LessonSheet, adapted: Adapted | undefined): AppliedChange | undefined {
    return adapted?.changes.findLast(({ change, idle, touched }) => idle === undefined && lengthens.has(change.does) && touched.includes(name));
}

/** Lessons that fit as they are written and no longer with a change of this file; each line is told for the class with the shortest session. */
function* madeTooLong(uri: string, view: ProgrammeView): Generator<Finding> {
    if (view.programme.adaptations.size === 0) return;
    const told = new Set<string>();
    const groups = [...view.programme.classes.values()].filter(group => group.session && group.session.minutes > 0 && !view.isBroken(group));
    for (const group of groups.sort((a, b) => a.session!.minutes - b.session!.minutes)) {
        const adapted = adaptedOf(group, view);
        const { minutes } = group.session!;
        for (const [name, [first = name]] of adapted?.madeOf ?? []) {
            const long = adapted!.programme.lessons.get(name);
            const written = view.programme.lessons.get(first);
            if (!long || !written || minutesOf(long.parts) <= minutes || minutesOf(written.parts) > minutes || long.parts.some(part => (part.minutes ?? 0) > minutes)) continue;
            const by = lengthenedBy(long, adapted);
            const key = `${by?.place.range.start.line} ${name}`;
            if (by?.place.uri !== uri || told.has(key)) continue;
            told.add(key);
            yield {
                message: `With this change “${long.title}” takes ${minutesOf(long.parts)} min and class '${group.name}' meets for ${minutes} min, so it goes on at the next meeting.`, at: by.place.range,
                related: [{ message: `The session of '${group.name}'`, place: { uri: group.uri, range: group.session!.at } }, { message: 'The lesson as it is written', place: { uri: written.uri, range: written.at } }],
                fixes: splitFix(long, group, minutes, view)
            };
        }
    }
}

/** By its name; one that adaptations have joined or cut into pieces by its title. */
function lessonInWords(taught: LessonSheet, { name, title }: LessonSheet): string {
    return taught.name === name && taught.title === title ? `Lesson '${name}'` : `Lesson '${name}', for this class “${taught.title}”,`;
}

/** Splits the lesson where the session is full, in the class's adaptation or in a new one after the class. */
function splitFix(lesson: LessonSheet, group: ClassSheet, minutes: number, view: ProgrammeView): Fix[] {
    let passed = 0;
    let last: PartSheet | undefined;
    for (const part of lesson.parts.slice(0, -1)) {
        passed += part.minutes ?? 0;
        if (passed > minutes) break;
        if (part.kind !== 'game' && part.name !== '') last = part;
    }
    if (!last || !group.teaches) return [];
    // The line names lesson and part as they are written.
    const from = last.from?.at(-1) ?? { lesson: lesson.name, part: last.name };
    const line = `split ${from.lesson} after ${from.part}`;
    const title = `Split it after '${last.name}' for class '${group.name}'`;
    const own = [...view.programme.adaptations.values()].findLast(({ of, forClass }) => of?.name === group.teaches!.name && forClass?.name === group.name);
    if (own) return [{ title, edits: [lineIn(own.uri, own.at.start.line, own.changes.map(({ at }) => at), line)] }];
    let name = `${group.name}-sessions`;
    while (view.programme.adaptations.has(name)) name += '-2';
    const lines = ['', `adaptation ${name} of ${group.teaches.name} for ${group.name}`, `  ${line}`];
    return [{ title, edits: [{ uri: group.uri, afterLine: group.whole.end.line, like: group.whole.start.line, deeper: 0, lines }] }];
}
