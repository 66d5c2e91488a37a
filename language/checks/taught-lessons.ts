import type { LessonSheet } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { removeLinesOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const lessonNotTaught: Check = {
    code: 'lesson-not-taught', severity: 'information', missing: true, title: 'A lesson in no course',
    explains: 'No course names this lesson and no adaptation brings it or one of its activities in, so it is never scheduled and its materials are never bought. Add its name to a unit of a course, at the place where it is taught.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n\nlesson weigh-1\n\nlesson weigh-2',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nlesson weigh-1\n\nlesson weigh-2',
    *find(file, view) {
        const { programme, taughtAt } = view;
        if (programme.courses.size === 0) return;
        for (const lesson of file.lessons) {
            if (taughtAt.has(lesson.name) || view.broughtIn.has(lesson.name) || view.isDoubtful('lesson', lesson.name)) continue;
            yield { message: `Lesson '${lesson.name}' is in no course, so it is never taught. Add it to a unit.`, at: lesson.at, fixes: addToCourse(lesson, view) };
        }
    }
};

/** After the lesson of the same family that is nearest before it, or else at the end of the last unit of the first course. */
function addToCourse(lesson: LessonSheet, view: ProgrammeView): Fix[] {
    const { family, number } = numbered(lesson.name) ?? { family: lesson.name, number: 0 };
    let before: { name: string; number: number } | undefined;
    for (const name of view.taughtAt.keys()) {
        const other = numbered(name);
        if (other?.family !== family || other.number >= number) continue;
        if (!before || other.number > before.number) before = { name, number: other.number };
    }
    const place = before && view.taughtAt.get(before.name)![0]!;
    if (place) {
        return [{
            title: `Teach it after '${before!.name}'`, preferred: true,
            edits: [{ uri: place.course.uri, afterLine: place.mention.at.end.line, deeper: 0, lines: [lesson.name] }]
        }];
    }
    const course = [...view.programme.courses.values()].find(({ units }) => units.length > 0);
    const unit = course?.units[course.units.length - 1];
    if (!course || !unit) return [];
    const last = unit.lessons[unit.lessons.length - 1]?.at.end.line;
    return [{
        title: `Add it to the unit '${unit.title}'`,
        edits: [last === undefined
            ? { uri: course.uri, afterLine: unit.whole.end.line, like: unit.at.start.line, deeper: 1, lines: [lesson.name] }
            : { uri: course.uri, afterLine: last, deeper: 0, lines: [lesson.name] }]
    }];
}

export const taughtTwice: Check = {
    code: 'taught-twice', severity: 'warning', title: 'A lesson twice in one course',
    explains: 'The course names this lesson a second time, so it would be taught, and its materials used, twice. To come back to a lesson later, let its checkpoint say `if unsure: go on and revisit in 3 lessons`, or write a lesson of its own. Otherwise remove one of the two lines.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-1\n\nlesson weigh-1', right: 'course measuring\n  unit weighing\n    weigh-1\n\nlesson weigh-1',
    *find(file, view) {
        for (const course of file.courses) {
            const first = new Map<string, number>();
            const lessons = course.units.flatMap(unit => unit.lessons);
            for (const [index, { name, at }] of lessons.entries()) {
                const before = first.get(name);
                if (before === undefined) first.set(name, index);
                else if (view.programme.lessons.has(name)) {
                    yield {
                        message: `Lesson '${name}' is already taught in this course. Keep one of the two lines.`, at,
                        related: [{ message: `'${name}' is taught here first`, place: { uri: file.uri, range: lessons[before]!.at } }],
                        fixes: [{ title: `Remove this '${name}'`, edits: [removeLinesOf(file.uri, at)], preferred: true }]
                    };
                }
            }
        }
    }
};

/** "weigh" and 2 of "weigh-2"; undefined where no number stands at the end. */
function numbered(name: string): { family: string; number: number } | undefined {
    let start = name.length;
    while (start > 0 && /\d/.test(name[start - 1]!)) start--;
    return start === name.length ? undefined : { family: name.slice(0, start).replace(/-$/, ''), number: Number(name.slice(start)) };
}
