import { replace } from '@haversack/language/checks/fixes';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, PartSheet } from '@haversack/language/sheets/sheet';
import type { ScheduleFigures, ScheduleProblem } from '../planning/schedule-figures.js';
import type { PlanCheck } from './plan-check.js';
import { daysTaught } from './meetings.js';
import { isPast } from './words.js';

const course = 'course measuring\n  unit weighing\n    weigh-1\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 6\n  starts 2026-09-07\n  meets mon\n  session 30 min\n\n';

export const sessionOverrun: PlanCheck = {
    code: 'session-overrun', severity: 'warning', title: 'A part of a lesson longer than the session', on: '2026-09-01',
    explains: 'A long lesson is split between its parts over several meetings, but a part is never broken off. This one alone takes longer than the class meets, so the meeting will run over. Shorten the part, make two of it, or let the session be longer.',
    wrong: `${course}lesson weigh-1\n  activity two-bags 45 min\n    do: Lift one bag, then the other.`,
    right: `${course}lesson weigh-1\n  activity two-bags 30 min\n    do: Lift one bag, then the other.`,
    *find(_view, term) {
        const told = new Set<string>();
        for (const { group, schedule, taught } of term.classes) {
            for (const problem of schedule.problems) {
                const { place, message, lesson, related } = problem;
                const key = `${place.uri} ${place.range.start.line}`;
                if (problem.kind !== 'session-overrun' || told.has(key) || isOver(lesson, schedule, term.today)) continue;
                told.add(key);
                const minutes = partAt(problem, taught)?.minutes;
                yield {
                    uri: place.uri, at: place.range, message, related,
                    fixes: minutes === undefined ? [] : longerSession(group, minutes)
                };
            }
        }
    }
};

function isOver(lesson: string | undefined, schedule: ScheduleFigures, today: string): boolean {
    const days = lesson === undefined ? [] : daysTaught(lesson, schedule);
    return isPast(days[days.length - 1], today);
}

function partAt({ lesson, place }: ScheduleProblem, { lessons }: Programme): PartSheet | undefined {
    const sheet = lesson === undefined ? undefined : lessons.get(lesson);
    return sheet?.parts.find(part => part.at.start.line === place.range.start.line && (part.uri ?? sheet.uri) === place.uri);
}

function longerSession({ name, uri, session }: ClassSheet, minutes: number): { title: string; edits: ReturnType<typeof replace>[] }[] {
    return session ? [{ title: `Let class '${name}' meet for ${minutes} min`, edits: [replace(uri, session.at, String(minutes))] }] : [];
}
