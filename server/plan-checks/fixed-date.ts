import type { Fix } from '@haversack/language/checks/check';
import { isDate } from '@haversack/language/checks/dates';
import { changeTo, removeLinesOf } from '@haversack/language/checks/fixes';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import type { ScheduleFigures, ScheduleProblem } from '../planning/schedule-figures.js';
import { dayInWords } from './days.js';
import { daysTaught, meetingsOf, nearestDay } from './meetings.js';
import type { PlanCheck } from './plan-check.js';
import { isPast } from './words.js';

const lessons = 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\nlesson weigh-2\n  activity three-bags 15 min\n    do: Put three bags in order.\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n';

export const fixedDate: PlanCheck = {
    code: 'fixed-date', severity: 'warning', title: 'A fixed date that cannot be kept', on: '2026-09-07',
    explains: 'The lesson cannot be taught on the day that `fixed` says: the class does not meet then, something that it follows has not been taught by then, another fixed lesson leaves no room for it, or its course does not have the lesson. It is taught in its turn instead. Change the date, or remove the line.',
    wrong: `${lessons}  fixed weigh-2 on 2026-09-22`,
    right: `${lessons}  fixed weigh-2 on 2026-09-21`,
    *find(view, term) {
        for (const { group, schedule } of term.classes) {
            for (const problem of schedule.problems) {
                const line = group.fixed.find(({ at }) => problem.place.uri === group.uri && at.start.line === problem.place.range.start.line);
                if (!problem.kind.startsWith('fixed-') || !line || isPast(line.on.date, term.today)) continue;
                // A date or a lesson that does not exist is told of as such.
                const lesson = view.programme.lessons.get(line.lesson.name);
                if (!isDate(line.on.date) || !lesson) continue;
                const others = problem.kind === 'fixed-outside-course' || problem.kind === 'fixed-twice' ? [] : otherDays(problem, line.on.date, lesson, schedule, term.today);
                yield {
                    uri: group.uri, at: problem.kind === 'fixed-outside-course' ? line.lesson.at : line.on.at, message: problem.message, related: problem.related,
                    fixes: [
                        ...others.map((day, index): Fix => ({ ...changeTo(group.uri, line.on.at, day, index === 0), title: `Change to ${dayInWords(day)}` })),
                        { title: `Fix no day for '${line.lesson.name}'`, edits: [removeLinesOf(group.uri, line.at)] }
                    ]
                };
            }
        }
    }
};

/** Meetings around the day, after all that the lesson follows; where the day was too early, the one on which its turn comes. */
function otherDays({ kind }: ScheduleProblem, date: string, lesson: LessonSheet, schedule: ScheduleFigures, today: string): string[] {
    const days = kind === 'fixed-too-early' ? daysTaught(lesson.name, schedule).slice(0, 1) : nearestDay(date, daysAfterFollowed(lesson, schedule));
    return days.filter(day => day !== date && !isPast(day, today));
}

function daysAfterFollowed({ follows }: LessonSheet, schedule: ScheduleFigures): string[] {
    const waiting = new Set(schedule.unplaced.map(({ lesson }) => lesson));
    if (follows.some(({ name }) => waiting.has(name))) return [];
    const last = follows.map(({ name }) => daysTaught(name, schedule).at(-1) ?? '').sort().at(-1) ?? '';
    return meetingsOf(schedule).flatMap(({ date }) => (date !== undefined && date > last ? [date] : []));
}
