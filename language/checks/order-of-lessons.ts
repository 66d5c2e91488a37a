import type { Mention } from '../sheets/sheet.js';
import type { Check } from './check.js';
import { removeFromList, teachBefore } from './fixes.js';

export const followsLater: Check = {
    code: 'follows-later', severity: 'warning', title: 'A prerequisite that is taught later',
    explains: 'The lesson says that it follows another one, but the course teaches that other lesson later. Change the order of the course, or take the name out of `follows` if it is not needed first.',
    wrong: 'course measuring\n  unit weighing\n    weigh-2\n    weigh-1\n\nlesson weigh-1\n\nlesson weigh-2\n  follows weigh-1',
    right: 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nlesson weigh-1\n\nlesson weigh-2\n  follows weigh-1',
    *find(file, view) {
        for (const lesson of file.lessons) {
            for (const before of lesson.follows) {
                if (view.lessonCircles.get(lesson.name)?.includes(before.name)) continue;
                for (const here of view.placesOf(lesson)) {
                    const there = view.taughtAt.get(before.name)?.find(({ course }) => course === here.course);
                    if (!there || there.index < here.index) continue;
                    yield {
                        message: `Lesson '${lesson.name}' follows '${before.name}', but the course '${here.course.name}' teaches '${before.name}' later.`, at: before.at,
                        related: [{ message: `'${before.name}' is taught here`, place: { uri: here.course.uri, range: there.mention.at } }],
                        fixes: [
                            { ...teachBefore(here.course, there.mention, here.mention), preferred: true },
                            { title: `Remove '${before.name}' from 'follows'`, edits: [removeFromList(file.uri, lesson.follows, before)] }
                        ]
                    };
                    break;
                }
            }
        }
    }
};

export const circle: Check = {
    code: 'circle', severity: 'error', title: 'Lessons or objectives that wait for each other',
    explains: 'Each of these lessons follows another of them, or each of these objectives builds on another, so none can be the first. One of the names is there by mistake: remove it.',
    wrong: 'lesson weigh-1\n  follows weigh-2\n\nlesson weigh-2\n  follows weigh-1', right: 'lesson weigh-1\n\nlesson weigh-2\n  follows weigh-1',
    *find(file, view) {
        const tell = function* (kind: 'follows' | 'builds on', name: string, list: readonly Mention[], names: readonly string[] | undefined) {
            const next = names && list.find(mention => mention.name === names[1 % names.length]);
            if (!next) return;
            const round = [...names, name].map(one => `'${one}'`).join(` ${kind} `);
            yield {
                message: names.length === 1 ? `'${name}' ${kind} itself.` : `These go round in a circle: ${round}. Remove one of them.`, at: next.at,
                fixes: [{ title: `Remove '${next.name}' from '${kind}'`, edits: [removeFromList(file.uri, list, next)] }]
            };
        };
        for (const { name, follows } of file.lessons) yield* tell('follows', name, follows, view.lessonCircles.get(name));
        for (const { name, buildsOn } of file.objectives) yield* tell('builds on', name, buildsOn, view.objectiveCircles.get(name));
    }
};
