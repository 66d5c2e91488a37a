import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import type { CoverageLesson } from '../coverage-figures.js';
import type { Meeting, ScheduleFigures } from '../schedule-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import type { Naming, Namings } from './namings.js';

/** A lesson as the term teaches it. */
export interface Column {
    lesson: LessonSheet;
    namings: readonly Naming[];
    /** From 0, in teaching order. */
    index: number;
    /** The meetings that visit it, first to last: where it begins, and where it is taught again. */
    visits: CoveredMeeting[];
}

export interface CoveredMeeting {
    /** From 1, counting every meeting day. */
    meeting: number;
    week: number;
    day: Meeting;
}

export interface Columns {
    lessons: Column[];
    byName: ReadonlyMap<string, Column>;
    /** Number of the last meeting at which anything is taught; 0 where nothing is. */
    last: number;
}

/**
 * The lessons in the order in which they are really taught, each once. A lesson that is split over meetings is visited when it begins; one
 * that is taught again (children were unsure) is visited once more, whichever of its parts come back.
 */
export function columnsOf(programme: Programme, schedule: ScheduleFigures, namings: Namings): Columns {
    const known = new Map<string, Column>();
    let number = 0;
    let last = 0;
    for (const week of schedule.weeks) {
        for (const meeting of week.meetings) {
            number += 1;
            const visit: CoveredMeeting = { meeting: number, week: week.number, day: meeting };
            const teach = (name: string, continues: boolean): void => {
                const lesson = programme.lessons.get(name);
                if (!lesson) return;
                last = number;
                const column = known.get(name);
                if (!column) known.set(name, { lesson, namings: namings.of(lesson), index: known.size, visits: [visit] });
                else if (!continues && column.visits[column.visits.length - 1]?.meeting !== number) column.visits.push(visit);
            };
            // A schedule that does not yet say what of a lesson is taught names it whole.
            if (meeting.taught.length === 0) for (const name of meeting.lessons) teach(name, false);
            for (const { lesson, piece, why } of meeting.taught) teach(lesson, (piece?.number ?? 1) > 1 && why !== 'repeat' && why !== 'revisit');
        }
    }
    return { lessons: [...known.values()], byName: known, last };
}

export function columnFigures({ lesson, index, visits }: Column): CoverageLesson {
    const [first, ...again] = visits;
    return {
        name: lesson.name, title: lesson.title, place: { uri: lesson.uri, range: lesson.at }, index,
        meeting: first?.meeting, label: first?.day.label, date: first?.day.date, week: first?.week,
        ...(again.length > 0 && { again: again.map(({ meeting }) => meeting) })
    };
}

/** "“Weigh it” (week 3)". */
export function inWeek({ lesson, visits }: Column): string {
    return `${quoted(lesson.title)} (week ${visits[0]?.week})`;
}

/** "week 1, Mon 7 Sep". */
export function whenOf({ week, day }: CoveredMeeting): string {
    return `week ${week}, ${day.label}`;
}
