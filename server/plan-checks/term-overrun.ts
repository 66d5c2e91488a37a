import type { Edit, Fix } from '@haversack/language/checks/check';
import { lineIn, removeLinesOf, replace } from '@haversack/language/checks/fixes';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ClassSheet, Range } from '@haversack/language/sheets/sheet';
import type { Proposal } from '../planning/schedule-figures.js';
import { skipLesson, writeForClass } from './change-lines.js';
import type { PlanCheck } from './plan-check.js';
import { isPast } from './words.js';

const lessons = 'lesson weigh-1\n  activity two-bags 15 min\n    do: Lift one bag, then the other.\n\nlesson weigh-2\n  activity three-bags 15 min\n    do: Put three bags in order.\n\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\n\nclass harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n';

export const termOverrun: PlanCheck = {
    code: 'term-overrun', severity: 'warning', title: 'More lessons than days', on: '2026-09-07',
    explains: 'The class `ends` before all lessons of its course have had their turn. Each quick fix is one way out and says what it gives up: meet on another weekday, keep no days free to catch up, share days between short lessons, end later, or leave lessons out for this class, which an adaptation then says.',
    wrong: `${lessons}  ends 2026-09-18`,
    right: `${lessons}  ends 2026-09-21`,
    *find(view, term) {
        for (const { group, schedule } of term.classes) {
            if (isPast(group.ends?.date, term.today)) continue;
            for (const { kind, message, place, related } of schedule.problems) {
                if (kind !== 'term-overrun') continue;
                yield { uri: place.uri, at: place.range, message, related, fixes: schedule.proposals.flatMap(proposal => fixFor(proposal, group, view)) };
            }
        }
    }
};

function fixFor({ title, gives, givesUp, line, leavesOut }: Proposal, group: ClassSheet, view: ProgrammeView): Fix[] {
    const edit = line ? editFor(line, group) : leavesOut && editToLeaveOut(leavesOut, group, view);
    const sentences = [title, gives, givesUp && `Gives up: ${givesUp.charAt(0).toLowerCase()}${givesUp.slice(1)}`];
    return edit ? [{ title: sentences.flatMap(words => (words ? words.replace(/\.$/, '') : [])).join('. '), edits: [edit] }] : [];
}

/** A line for each lesson in the class's adaptation; one that an adaptation has made or brought in goes with its own line. */
function editToLeaveOut(lessons: readonly string[], group: ClassSheet, { programme, courses }: ProgrammeView): Edit | undefined {
    const course = group.teaches && programme.courses.get(group.teaches.name);
    const isOfCourse = course && lessons.every(name => courses.get(course.name)?.some(({ mention }) => mention.name === name));
    return isOfCourse ? writeForClass(lessons.map(skipLesson), group, course, programme) : undefined;
}

/** Puts the line in place of the class's own statement of that head, so that a remark behind it stays; or adds it. */
function editFor({ head, text }: { head: string; text: string }, group: ClassSheet): Edit | undefined {
    const at = rangeOf(head, group);
    if (text === '') return at && removeLinesOf(group.uri, at);
    if (!at) return lineIn(group.uri, group.at.start.line, beside(group), text);
    const value = text.slice(head.length).trim();
    const justNumber = head === 'session' || head === 'lessons';
    return replace(group.uri, at, justNumber ? /\d+/.exec(value)?.[0] ?? value : value);
}

/** Where the value of a statement stands. */
function rangeOf(head: string, { meets, ends, starts, session, lessonsPerMeeting, catchUp }: ClassSheet): Range | undefined {
    switch (head) {
        case 'meets': {
            const first = meets[0];
            const last = meets[meets.length - 1];
            return first && last && first.at.start.line === last.at.start.line ? { start: first.at.start, end: last.at.end } : undefined;
        }
        case 'ends': return ends?.at;
        case 'starts': return starts?.at;
        case 'session': return session?.at;
        case 'lessons': return lessonsPerMeeting?.at;
        case 'catch-up': return catchUp?.at;
        default: return undefined;
    }
}

function beside({ meets, ends, starts, session }: ClassSheet): Range[] {
    return [...meets, ...[ends, starts, session].flatMap(one => one ?? [])].map(({ at }) => at);
}
