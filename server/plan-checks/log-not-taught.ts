import { changeTo, removeLinesOf } from '@haversack/language/checks/fixes';
import { dayInWords } from './days.js';
import { daysTaught, nearestDay } from './meetings.js';
import type { PlanCheck } from './plan-check.js';

const lessons = 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\nlesson weigh-2\n  activity three-bags 15 min\n    do: Put three bags in order.\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n  log\n';

export const logNotTaught: PlanCheck = {
    code: 'log-not-taught', severity: 'warning', title: 'A log line of a lesson that was not taught that day', on: '2026-09-22',
    explains: 'The log says that the children were unsure after this lesson on this day, but the plan does not teach it then, so nothing is repeated. Correct the day or the lesson. If the class was taught something else that day than planned, say so with `fixed`.',
    wrong: `${lessons}    unsure weigh-1 on 2026-09-21`,
    right: `${lessons}    unsure weigh-1 on 2026-09-14`,
    *find({ programme }, { classes }) {
        for (const { group, schedule } of classes) {
            for (const problem of schedule.problems) {
                const line = group.log.find(({ at }) => problem.place.uri === group.uri && at.start.line === problem.place.range.start.line);
                if (problem.kind !== 'log-not-taught' || !line || !programme.lessons.has(line.lesson.name)) continue;
                const [day] = nearestDay(line.on.date, daysTaught(line.lesson.name, schedule));
                yield {
                    uri: group.uri, at: line.on.at, message: problem.message, related: problem.related,
                    fixes: [
                        ...(day === undefined ? [] : [{ ...changeTo(group.uri, line.on.at, day), title: `Change to ${dayInWords(day)}` }]),
                        { title: 'Remove this line', edits: [removeLinesOf(group.uri, line.at)] }
                    ]
                };
            }
        }
    }
};
