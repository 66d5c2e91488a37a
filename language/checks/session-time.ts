import type { ClassSheet, LessonSheet, PartSheet } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
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
            const untimed = lesson.parts.filter(part => part.minutes === undefined && part.kind !== 'practice' && part.name !== '');
            const shortest = untimed.length > 0 ? shortestSession(lesson, view) : undefined;
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
            for (const { group, minutes } of sessionsOf(lesson, view)) {
                const parts = partsFor(lesson, group, view);
                const total = parts && minutesOf(parts);
                if (!parts || total === undefined || total <= minutes) continue;
                // A part that is too long by itself cannot be split: the plan tells of it.
                if (parts.some(part => (part.minutes ?? 0) > minutes)) break;
                yield {
                    message: `Lesson '${lesson.name}' takes ${total} min and class '${group.name}' meets for ${minutes} min, so it goes on at the next meeting.`, at: lesson.at,
                    related: [{ message: `The session of '${group.name}'`, place: { uri: group.uri, range: group.session!.at } }],
                    fixes: splitFix(lesson, parts, group, minutes, view)
                };
                break;
            }
        }
    }
};

const minutesOf = (parts: readonly PartSheet[]): number => parts.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);

function sessionsOf(lesson: LessonSheet, view: ProgrammeView): { group: ClassSheet; minutes: number }[] {
    return view.placesOf(lesson).flatMap(({ course: taughtIn }) => view.factsOfCourse(taughtIn).classes)
        .flatMap(group => (group.session && group.session.minutes > 0 && !view.isBroken(group) ? [{ group, minutes: group.session.minutes }] : []))
        .sort((a, b) => a.minutes - b.minutes);
}

function shortestSession(lesson: LessonSheet, view: ProgrammeView): { group: ClassSheet; minutes: number } | undefined {
    return sessionsOf(lesson, view)[0];
}

/** The parts that one class is taught at one go; absent when an adaptation skips or splits the lesson. */
function partsFor(lesson: LessonSheet, group: ClassSheet, view: ProgrammeView): PartSheet[] | undefined {
    let parts = lesson.parts;
    for (const { of, forClass, changes } of view.programme.adaptations.values()) {
        if (of?.name !== group.teaches?.name || (forClass && forClass.name !== group.name)) continue;
        for (const change of changes) {
            if (change.does === 'skip activity' && change.activity.lesson.name === lesson.name) parts = parts.filter(({ name }) => name !== change.activity.part.name);
            if ((change.does === 'skip lesson' || change.does === 'split lesson') && change.lesson.name === lesson.name) return undefined;
        }
    }
    return parts;
}

/** Splits the lesson where the session is full, in the class's adaptation or in a new one after the class. */
function splitFix(lesson: LessonSheet, parts: readonly PartSheet[], group: ClassSheet, minutes: number, view: ProgrammeView): Fix[] {
    let passed = 0;
    let last: PartSheet | undefined;
    for (const part of parts.slice(0, -1)) {
        passed += part.minutes ?? 0;
        if (passed > minutes) break;
        if (part.kind !== 'game' && part.name !== '') last = part;
    }
    if (!last || !group.teaches) return [];
    const line = `split ${lesson.name} after ${last.name}`;
    const title = `Split it after '${last.name}' for class '${group.name}'`;
    const own = [...view.programme.adaptations.values()].find(({ of, forClass }) => of?.name === group.teaches!.name && forClass?.name === group.name);
    if (own) return [{ title, edits: [lineIn(own.uri, own.at.start.line, own.changes.map(({ at }) => at), line)] }];
    let name = `${group.name}-sessions`;
    while (view.programme.adaptations.has(name)) name += '-2';
    const lines = ['', `adaptation ${name} of ${group.teaches.name} for ${group.name}`, `  ${line}`];
    return [{ title, edits: [{ uri: group.uri, afterLine: group.whole.end.line, like: group.whole.start.line, deeper: 0, lines }] }];
}
