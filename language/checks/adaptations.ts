import { isEmptied } from '../adapting/adapt-course.js';
import type { Adapted, AppliedChange } from '../adapting/adapted.js';
import { lessonsBrought, lessonsChanged, partsNamed } from '../sheets/adaptation-names.js';
import type { Change, WrittenChange } from '../sheets/adaptation-sheet.js';
import type { AdaptationSheet, CourseSheet } from '../sheets/sheet.js';
import type { Check, Finding } from './check.js';
import { changeTo, removeLinesOf, replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const adaptationMisses: Check = {
    code: 'adaptation-misses', severity: 'warning', title: 'A change that changes nothing',
    explains: 'A line of an adaptation has nothing to do: its course does not teach the lesson, another change has left it out already, a lesson would be split behind its last part, it takes that long anyway, the lesson has that activity already, nothing uses what is swapped, or nothing says how much of one thing does for the other. Or the adaptation is made for a class that is taught another course. Name what is there, or remove the line.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n\nlesson weigh-1\nlesson weigh-4\n\ncourse other\n  unit more\n    weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-4\n\nlesson weigh-1\nlesson weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    *find(file, view) {
        for (const adaptation of file.adaptations) {
            const course = adaptation.of && view.programme.courses.get(adaptation.of.name);
            if (!course || view.isBroken(course) || view.programme.adaptations.get(adaptation.name) !== adaptation) continue;
            const applied = adaptedCourses(adaptation, course, view).map(({ changes }) => new Map(changes.map(one => [one.change, one])));
            for (const change of adaptation.changes) {
                const idle = applied.map(changes => changes.get(change));
                const [first] = idle;
                if (first && idle.every(one => one?.idle !== undefined && !one.unknown) && isCertain(change, view)) yield changesNothing(adaptation, first);
            }
            const wrongClass = otherCourse(adaptation, course.name, view);
            if (wrongClass) yield wrongClass;
        }
    }
};

export const adaptationEmpties: Check = {
    code: 'adaptation-empties', severity: 'warning', title: 'A change after which nothing is left of a lesson',
    explains: 'The change takes the last part of a lesson away. The lesson is still taught and has its meeting, but nothing is done in it, so it introduces, practises and checks nothing. Leave out the whole lesson, or keep one of its parts.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nlesson weigh-1\n  activity sums 20 min\n    do: Add.\n\nlesson weigh-2\n  activity song 10 min\n    do: Sing.\n\nadaptation shorter of measuring\n  skip activity weigh-2.song',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nlesson weigh-1\n  activity sums 20 min\n    do: Add.\n\nlesson weigh-2\n  activity song 10 min\n    do: Sing.\n\nadaptation shorter of measuring\n  skip lesson weigh-2',
    *find(file, view) {
        for (const adaptation of file.adaptations) {
            const course = adaptation.of && view.programme.courses.get(adaptation.of.name);
            if (!course || view.isBroken(course) || view.programme.adaptations.get(adaptation.name) !== adaptation) continue;
            const told = new Set<WrittenChange>();
            for (const adapted of adaptedCourses(adaptation, course, view)) {
                for (const [name, madeOf] of adapted.madeOf) {
                    if (!isEmptied(adapted.programme.lessons.get(name), madeOf, view.programme)) continue;
                    const last = [...adapted.changes].reverse().find(({ change, idle, touched }) => idle === undefined && touched.includes(name) && emptying.has(change.does));
                    if (last?.adaptation !== adaptation || told.has(last.change) || !isCertain(last.change, view)) continue;
                    told.add(last.change);
                    yield nothingLeft(adaptation, last.change, madeOf, view);
                }
            }
        }
    }
};

/** What can take the last part of a lesson away. */
const emptying: ReadonlySet<Change['does']> = new Set(['skip activity', 'move activity', 'join activities', 'swap activity']);

function nothingLeft(adaptation: AdaptationSheet, change: WrittenChange, madeOf: readonly string[], { programme }: ProgrammeView): Finding {
    const [name] = madeOf;
    const title = (name !== undefined && programme.lessons.get(name)?.title) || name;
    const skips = madeOf.length === 1 && change.does === 'skip activity' ? adaptation.changes.filter(other => other.does === 'skip activity' && other.activity.lesson.name === name) : [];
    return {
        message: `Nothing is left of “${title}”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.`, at: change.head,
        fixes: skips.length === 0 ? [removal(adaptation, change)] : [{
            title: `Leave out '${name}' instead`,
            edits: [
                replace(adaptation.uri, { start: change.head.start, end: change.wordsEnd ?? change.head.end }, `skip lesson ${name}`),
                ...skips.flatMap(other => (other === change ? [] : [removeLinesOf(adaptation.uri, other.at)]))
            ]
        }, removal(adaptation, change)]
    };
}

/** The course as it is for everybody whom the adaptation reaches: what is idle for one class may serve another. */
function adaptedCourses({ forClass }: AdaptationSheet, course: CourseSheet, view: ProgrammeView): Adapted[] {
    const own = forClass && view.programme.classes.get(forClass.name);
    if (forClass) return [own && view.adapted(course, own)].flatMap(adapted => adapted ?? []);
    const classes = [...view.programme.classes.values()].filter(({ teaches }) => teaches?.name === course.name);
    return (classes.length > 0 ? classes : [undefined]).flatMap(group => view.adapted(course, group) ?? []);
}

/** Not where a name may be misspelt in the course or a line of a lesson could not be read: that has a message of its own. */
function isCertain(change: Change, view: ProgrammeView): boolean {
    const lessons = [...lessonsChanged(change), ...lessonsBrought(change), ...partsNamed(change).map(({ lesson }) => lesson)];
    return lessons.every(({ name }) => {
        const lesson = view.programme.lessons.get(name);
        return lesson && !view.isBroken(lesson) && !view.isDoubtful('lesson', name);
    });
}

function changesNothing(adaptation: AdaptationSheet, { change, idle = '', idleAt }: AppliedChange): Finding {
    return {
        message: `${idle.charAt(0).toUpperCase()}${idle.slice(1)}, so this changes nothing.`, at: idleAt ?? change.head,
        fixes: [removal(adaptation, change)]
    };
}

function removal({ uri }: AdaptationSheet, { at }: WrittenChange): NonNullable<Finding['fixes']>[number] {
    return { title: 'Remove this change', edits: [removeLinesOf(uri, at)] };
}

function otherCourse(adaptation: AdaptationSheet, course: string, view: ProgrammeView): Finding | undefined {
    const group = adaptation.forClass && view.programme.classes.get(adaptation.forClass.name);
    if (!group?.teaches || group.teaches.name === course || !view.programme.courses.has(group.teaches.name)) return undefined;
    return {
        message: `The class '${group.name}' is taught '${group.teaches.name}', so changes to '${course}' never reach it.`, at: adaptation.of!.at,
        related: [{ message: `The class '${group.name}'`, place: { uri: group.uri, range: group.teaches.at } }],
        fixes: [changeTo(adaptation.uri, adaptation.of!.at, group.teaches.name)]
    };
}
