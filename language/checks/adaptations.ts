import type { AdaptationSheet, Mention } from '../sheets/sheet.js';
import { lessonsBrought, lessonsChanged } from '../sheets/adaptation-names.js';
import type { Check, Finding } from './check.js';
import { changeTo, removeLinesOf } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const adaptationMisses: Check = {
    code: 'adaptation-misses', severity: 'warning', title: 'A change to what is not there',
    explains: 'An adaptation changes a lesson that its course does not teach, or it is made for a class that is taught another course. Such a change does nothing. Name a lesson of the course, name the right course, or remove the line.',
    wrong: 'course measuring\n  unit weighing\n    weigh-1\n\nlesson weigh-1\nlesson weigh-4\n\ncourse other\n  unit more\n    weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-4\n\nlesson weigh-1\nlesson weigh-4\n\nadaptation shorter of measuring\n  skip lesson weigh-4',
    *find(file, view) {
        for (const adaptation of file.adaptations) {
            const course = adaptation.of && view.programme.courses.get(adaptation.of.name);
            if (!course || view.isBroken(course)) continue;
            const taught = new Set(view.courses.get(course.name)?.map(({ mention }) => mention.name));
            for (const change of adaptation.changes) for (const { name } of lessonsBrought(change)) taught.add(name);
            for (const change of adaptation.changes) {
                for (const lesson of lessonsChanged(change)) {
                    if (!taught.has(lesson.name) && view.programme.lessons.has(lesson.name) && !view.isDoubtful('lesson', lesson.name)) yield notTaught(adaptation, course.name, lesson, change.at);
                }
            }
            const wrongClass = otherCourse(adaptation, course.name, view);
            if (wrongClass) yield wrongClass;
        }
    }
};

function notTaught(adaptation: AdaptationSheet, course: string, lesson: Mention, line: AdaptationSheet['changes'][number]['at']): Finding {
    return {
        message: `The course '${course}' does not teach lesson '${lesson.name}', so this changes nothing.`, at: lesson.at,
        fixes: [{ title: 'Remove this change', edits: [removeLinesOf(adaptation.uri, line)] }]
    };
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
