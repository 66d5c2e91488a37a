import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { removeLinesOf } from '@haversack/language/checks/fixes';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { ScheduleProblem } from '../planning/schedule-figures.js';
import { daysTaught } from './meetings.js';
import type { PlanCheck } from './plan-check.js';
import { isPast } from './words.js';

const lessons = 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\nlesson weigh-2\n  follows weigh-1\n  activity three-bags 15 min\n    do: Put three bags in order.\n\nlesson weigh-3\n  activity four-bags 15 min\n    do: Put four bags in order.\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n    weigh-3\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n';

export const lessonWaits: PlanCheck = {
    code: 'lesson-waits', severity: 'information', title: 'A lesson that waits for a fixed day', on: '2026-09-07',
    explains: 'The course names this lesson earlier than it can be taught: something that it follows has a fixed day further on, so later lessons come first. Nothing is lost. If that is not what is wanted, fix an earlier day.',
    wrong: `${lessons}  fixed weigh-1 on 2026-09-28`,
    right: `${lessons}  fixed weigh-1 on 2026-09-14`,
    *find(view, term) {
        for (const { group, schedule } of term.classes) {
            for (const problem of schedule.problems) {
                const { kind, place, message, related, lesson } = problem;
                const line = fixedFor(problem, group);
                if (kind !== 'waits' || !line || lesson === undefined || followsLater(lesson, line.lesson.name, group, view)) continue;
                if (isPast(daysTaught(lesson, schedule)[0], term.today)) continue;
                yield {
                    uri: place.uri, at: place.range, message, related,
                    fixes: [{ title: `Fix no day for '${line.lesson.name}'`, edits: [removeLinesOf(group.uri, line.at)] }]
                };
            }
        }
    }
};

function fixedFor({ related }: ScheduleProblem, group: ClassSheet): ClassSheet['fixed'][number] | undefined {
    const cause = related?.[0]?.place;
    return cause && group.fixed.find(({ at }) => cause.uri === group.uri && at.start.line === cause.range.start.line);
}

/** Where the course itself has the two the wrong way round, that is told without a plan. */
function followsLater(lesson: string, before: string, { teaches }: ClassSheet, view: ProgrammeView): boolean {
    const index = (name: string): number => view.taughtAt.get(name)?.find(({ course }) => course.name === teaches?.name)?.index ?? -1;
    return index(before) > index(lesson);
}
