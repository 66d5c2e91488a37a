import type { LessonSheet } from '@haversack/language/sheets/sheet';
import type { ScheduleFigures, TaughtFigures, WeekPlan } from '../schedule-figures.js';

/** The schedule with lessons that say the same in other lines, by name; undefined where it tells of them in words, too. */
export function movedSchedule(schedule: ScheduleFigures, moved: ReadonlyMap<string, LessonSheet>): ScheduleFigures | undefined {
    const files = new Set([...moved.values()].map(({ uri }) => uri));
    const told = [...schedule.unplaced, ...schedule.problems, ...schedule.problems.flatMap(({ related = [] }) => related)];
    if (told.some(({ place }) => files.has(place.uri))) return undefined;
    return { ...schedule, weeks: schedule.weeks.map(week => movedWeek(week, moved)) };
}

function movedWeek(week: WeekPlan, moved: ReadonlyMap<string, LessonSheet>): WeekPlan {
    const isMoved = ({ lesson }: TaughtFigures): boolean => moved.has(lesson);
    if (!week.meetings.some(({ taught }) => taught.some(isMoved))) return week;
    const meetings = week.meetings.map(meeting => (meeting.taught.some(isMoved) ? { ...meeting, taught: meeting.taught.map(one => movedLesson(one, moved)) } : meeting));
    return { ...week, meetings };
}

function movedLesson(taught: TaughtFigures, moved: ReadonlyMap<string, LessonSheet>): TaughtFigures {
    const lesson = moved.get(taught.lesson);
    return lesson ? { ...taught, place: { uri: lesson.uri, range: lesson.at } } : taught;
}
