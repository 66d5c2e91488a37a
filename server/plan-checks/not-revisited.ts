import type { Fix } from '@haversack/language/checks/check';
import { nameObjective } from '@haversack/language/checks/fixes';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { CoverageFigures, CoverageGap, CoverageLesson } from '../planning/coverage-figures.js';
import type { PlanCheck } from './plan-check.js';
import { isPast } from './words.js';

const lessons = (second: string): string => `objective compare-mass

lesson weigh-1
  objectives
    introduces compare-mass
  activity two-bags 15 min
    do: Lift one bag, then the other.

lesson pour-1
${second}  activity pour 15 min
    do: Pour from cup to cup.

lesson weigh-2
  objectives
    checks compare-mass
  activity three-bags 15 min
    do: Put three bags in order.

course measuring
  unit weighing
    weigh-1
    pour-1
    weigh-2

class harbour
  teaches measuring
  learners 7
  starts 2026-09-07
  meets mon, tue
  fixed pour-1 on 2026-10-06
  fixed weigh-2 on 2026-11-10`;

export const notRevisited: PlanCheck = {
    code: 'not-revisited', severity: 'information', title: 'An objective that is not come back to', missing: true, on: '2026-09-01',
    explains: 'After the lesson that introduces the objective, many meetings pass before another lesson practises or checks it. What is come back to after days and then weeks is kept; what is met once is soon forgotten. Let a lesson in between practise it, if only in a warm-up.',
    wrong: lessons(''),
    right: lessons('  objectives\n    practises compare-mass\n'),
    *find(view, { classes, today }) {
        const told = new Set<string>();
        for (const { group, coverage } of classes) {
            const course = group.teaches && view.programme.courses.get(group.teaches.name);
            // A lesson that could not be read may say that it comes back to the objective.
            if (!course || !view.factsOfCourse(course).complete) continue;
            // Where no lesson checks it, that is said already.
            const unchecked = new Set(coverage.gaps.flatMap(({ kind, objective }) => (kind === 'never-checked' ? [objective] : [])));
            for (const gap of coverage.gaps) {
                const { kind, objective, place, message } = gap;
                const key = JSON.stringify([course.name, objective]);
                if (kind !== 'not-revisited' || unchecked.has(objective) || told.has(key) || view.isDoubtful('objective', objective)) continue;
                const inTime = lessonsInTime(gap, coverage);
                if (inTime.length > 0 && inTime.every(({ date }) => isPast(date, today))) continue;
                told.add(key);
                yield { uri: place.uri, at: place.range, message, fixes: practiseIn(inTime[inTime.length - 1]?.name, objective, view) };
            }
        }
    }
};

/** Lessons after the one that is not come back to, for as long as coming back would still be in time. */
function lessonsInTime({ lesson }: CoverageGap, { lessons, revisitWithin }: CoverageFigures): CoverageLesson[] {
    const from = lessons.find(({ name }) => name === lesson)?.meeting;
    return from === undefined ? [] : lessons.filter(({ meeting }) => meeting !== undefined && meeting > from && meeting <= from + revisitWithin);
}

function practiseIn(name: string | undefined, objective: string, { programme }: ProgrammeView): Fix[] {
    const chosen = programme.lessons.get(name ?? '');
    return chosen ? [{ title: `Practise it in '${chosen.name}'`, edits: [nameObjective(chosen, 'practises', objective)] }] : [];
}
