import type { LessonSheet } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { nameObjective, teachBefore } from './fixes.js';
import type { ProgrammeView, Taught } from './programme-view.js';

const course = 'objective compare-mass\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\n';

export const practisedTooEarly: Check = {
    code: 'practised-too-early', severity: 'warning', title: 'An objective practised or checked before it is introduced',
    explains: 'A lesson practises or checks an objective, and the course introduces it only in a later lesson or not at all. Children would be asked for what nobody has shown them. Introduce the objective in this lesson or an earlier one, or change the order.',
    wrong: `${course}lesson weigh-1\n  objectives\n    practices compare-mass\n\nlesson weigh-2\n  objectives\n    introduces compare-mass\n    checks compare-mass`,
    right: `${course}lesson weigh-1\n  objectives\n    introduces compare-mass\n\nlesson weigh-2\n  objectives\n    practices compare-mass\n    checks compare-mass`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            for (const [does, mentions] of [['practises', lesson.practises], ['checks', lesson.checks]] as const) {
                for (const { name, at } of mentions) {
                    if (!view.programme.objectives.has(name) || view.isDoubtful('objective', name)) continue;
                    const early = view.placesOf(lesson).map(here => ({ here, facts: view.factsOfCourse(here.course) }))
                        .map(({ here, facts }) => ({ here, complete: facts.complete, first: facts.introduced.get(name) }))
                        .find(({ here, complete, first }) => (first ? first.index > here.index : complete));
                    if (!early) continue;
                    const { here, first } = early;
                    yield {
                        message: first
                            ? `Lesson '${lesson.name}' ${does} '${name}', but the course '${here.course.name}' introduces it only later, in '${first.mention.name}'.`
                            : `Lesson '${lesson.name}' ${does} '${name}', but no lesson of the course '${here.course.name}' introduces it.`,
                        at, related: first && [{ message: `'${first.mention.name}' is taught here`, place: { uri: here.course.uri, range: first.mention.at } }],
                        fixes: [
                            { title: `Introduce '${name}' in this lesson`, edits: [nameObjective(lesson, 'introduces', name)], preferred: true },
                            ...(first ? [teachBefore(here.course, first.mention, here.mention)] : [])
                        ]
                    };
                }
            }
        }
    }
};

export const neverChecked: Check = {
    code: 'never-checked', severity: 'information', missing: true, title: 'An objective introduced and never checked',
    explains: 'The course introduces this objective, but no later lesson checks it, so nobody finds out whether the children have got it. Write `checks` and its name under the objectives of a lesson whose checkpoint asks for it.',
    wrong: `${course}lesson weigh-1\n  objectives\n    introduces compare-mass\n\nlesson weigh-2\n  objectives\n    practices compare-mass`,
    right: `${course}lesson weigh-1\n  objectives\n    introduces compare-mass\n\nlesson weigh-2\n  objectives\n    checks compare-mass`,
    *find(file, view) {
        for (const { lesson, name, at, here } of firstIntroductions(file.lessons, view)) {
            const { checked, practised, complete } = view.factsOfCourse(here.course);
            if (!complete || (checked.get(name)?.index ?? -1) >= here.index) continue;
            const last = practised.get(name);
            const checks = last?.lesson && last.index > here.index ? last.lesson : lesson;
            yield {
                message: `'${name}' is introduced here, but no lesson of the course '${here.course.name}' checks it afterwards.`, at,
                fixes: [{ title: `Check '${name}' in lesson '${checks.name}'`, edits: [nameObjective(checks, 'checks', name)], preferred: true }]
            };
        }
    }
};

export const buildsOnLater: Check = {
    code: 'builds-on-later', severity: 'warning', title: 'An objective that builds on one taught later',
    explains: 'The objective builds on another one, but the course introduces that other one in a later lesson. Change the order of the course, or take the name out of `builds on` if it is not needed first.',
    wrong: 'objective compare-length\n\nobjective measure-length\n  builds on compare-length\n\ncourse measuring\n  unit lengths\n    long-1\n    long-2\n\nlesson long-1\n  objectives\n    introduces measure-length\n    checks measure-length\n\nlesson long-2\n  objectives\n    introduces compare-length\n    checks compare-length',
    right: 'objective compare-length\n\nobjective measure-length\n  builds on compare-length\n\ncourse measuring\n  unit lengths\n    long-2\n    long-1\n\nlesson long-1\n  objectives\n    introduces measure-length\n    checks measure-length\n\nlesson long-2\n  objectives\n    introduces compare-length\n    checks compare-length',
    *find(file, view) {
        for (const { name, at, here } of firstIntroductions(file.lessons, view)) {
            const objective = view.programme.objectives.get(name)!;
            for (const before of objective.buildsOn) {
                if (view.objectiveCircles.get(name)?.includes(before.name) || view.isDoubtful('objective', before.name)) continue;
                const later = view.factsOfCourse(here.course).introduced.get(before.name);
                if (!later || later.index <= here.index) continue;
                const fixes: Fix[] = [{ ...teachBefore(here.course, later.mention, here.mention), preferred: true }];
                yield {
                    message: `'${name}' builds on '${before.name}', which the course '${here.course.name}' introduces only later, in '${later.mention.name}'.`, at, fixes,
                    related: [{ message: `'${name}' builds on '${before.name}'`, place: { uri: objective.uri, range: before.at } }]
                };
            }
        }
    }
};

/** Objectives that these lessons are the first to introduce, each with the first course in which they are. */
function* firstIntroductions(lessons: readonly LessonSheet[], view: ProgrammeView): Iterable<{ lesson: LessonSheet; name: string; at: LessonSheet['at']; here: Taught }> {
    for (const lesson of lessons) {
        for (const { name, at } of lesson.introduces) {
            if (!view.programme.objectives.has(name) || view.isDoubtful('objective', name)) continue;
            for (const here of view.placesOf(lesson)) {
                if (view.factsOfCourse(here.course).introduced.get(name)?.index === here.index) yield { lesson, name, at, here };
            }
        }
    }
}
