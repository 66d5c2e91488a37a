import { removeLinesOf } from '@haversack/language/checks/fixes';
import type { PlanCheck } from './plan-check.js';

const lesson = 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\ncourse measuring\n  unit weighing\n    weigh-1\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets wed\n';

export const neverMeets: PlanCheck = {
    code: 'never-meets', severity: 'warning', title: 'A class without a day to meet', on: '2026-09-07',
    explains: 'Between the first and the last day of the class no day is left on which it meets: its weekdays do not come up, or all of them are days off. No lesson is planned. Correct `starts`, `ends`, `meets` or the days off.',
    wrong: `${lesson}  ends 2026-09-15`,
    right: `${lesson}  ends 2026-09-16`,
    *find(_view, { classes }) {
        for (const { group, schedule } of classes) {
            const problem = schedule.problems.find(({ kind }) => kind === 'no-meeting-days');
            if (!problem) continue;
            yield {
                uri: problem.place.uri, at: problem.place.range, message: problem.message, related: problem.related,
                fixes: group.ends ? [{ title: "Remove 'ends': the class meets until all lessons are taught", edits: [removeLinesOf(group.uri, group.ends.at)] }] : []
            };
        }
    }
};
