import type { Adapted, AppliedChange } from '../adapting/adapted.js';
import { lessonsBrought, lessonsChanged, partsNamed } from '../sheets/adaptation-names.js';
import type { Change, WrittenChange } from '../sheets/adaptation-sheet.js';
import type { AdaptationSheet, CourseSheet } from '../sheets/sheet.js';
import type { Check, Finding } from './check.js';
import { changeTo, removeLinesOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const adaptationMisses: Check = {
    code: 'adaptation-misses', severity: 'warning', title: 'A change that changes nothing',
    explains: 'A line of an adaptation has nothing to do: its course does not teach the lesson, another change has left it out already, a lesson would be split behind its last part, it takes that long anyway, or nothing uses what is swapped. Or the adaptation is made for a class that is taught another course. Name what is there, or remove the line.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n\nlesson weigh-1\nlesson weigh-4\n\ncourse other\n  unit more\n    weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-4\n\nlesson weigh-1\nlesson weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    *find(file, view) {
        for (const adaptation of file.adaptations) {
            const course = adaptation.of && view.programme.courses.get(adaptation.of.name);
            if (!course || view.isBroken(course) || view.programme.adaptations.get(adaptation.name) !== adaptation) continue;
            const courses = adaptedCourses(adaptation, course, view);
            for (const change of adaptation.changes) {
                const idle = courses.map(({ changes }) => changes.find(applied => applied.change === change));
                const [first] = idle;
                if (first && idle.every(applied => applied?.idle !== undefined && !applied.unknown) && isCertain(change, view)) yield changesNothing(adaptation, first);
            }
            const wrongClass = otherCourse(adaptation, course.name, view);
            if (wrongClass) yield wrongClass;
        }
    }
};

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
