import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { chooseClass, type Audience, type Wanted } from './audience.js';
import {
    before, dayLabel, daysOff, mondayOf, meetingDays, offRemarks, readDay, weekdaysOf, type Day, type DaysOff
} from './calendar.js';
import type { Meeting, ScheduleFigures, WeekPlan } from './schedule-figures.js';
import { listing, once, quoted } from './wording.js';

/** Lessons in a week where no weekdays are known. */
const assumedLessonsAWeek = 4;

/** One lesson a meeting, week by week. Never throws: what cannot be dated becomes plain weeks, with a sentence that says why. */
export function planSchedule(programme: Programme, wanted: Wanted = {}): ScheduleFigures {
    return scheduleFor(chooseClass(programme, wanted));
}

export function scheduleFor(audience: Audience): ScheduleFigures {
    const { lessons, class: sheet } = audience;
    const assumptions = [...audience.people.figures.assumptions, ...audience.assumptions];
    const dated = sheet && datedWeeks(sheet, lessons, assumptions);
    return {
        course: audience.course?.name,
        class: sheet?.name,
        weeks: dated ?? plainWeeks(lessons, (sheet && weekdaysOf(sheet).size) || assumedLessonsAWeek),
        daysOff: [],
        unplaced: [],
        proposals: [],
        problems: [],
        trail: [],
        assumptions: once(assumptions)
    };
}

/** The week in which a lesson is first taught; undefined where it is not in the schedule. */
export function weekOfLesson(schedule: ScheduleFigures, lesson: string): number | undefined {
    return schedule.weeks.find(w => w.meetings.some(m => m.lessons.includes(lesson)))?.number;
}

function plainWeeks(lessons: readonly LessonSheet[], aWeek: number): WeekPlan[] {
    const weeks: WeekPlan[] = [];
    for (let i = 0; i < lessons.length; i += aWeek) {
        const meetings = lessons.slice(i, i + aWeek).map((lesson, n): Meeting => ({ label: `Day ${n + 1}`, lessons: [lesson.name], taught: [], minutes: 0 }));
        weeks.push({ number: weeks.length + 1, meetings, remarks: [] });
    }
    return weeks;
}

/** Undefined, with a sentence, where the class has no first day or no weekdays. */
function datedWeeks(sheet: ClassSheet, lessons: readonly LessonSheet[], assumptions: string[]): WeekPlan[] | undefined {
    const title = quoted(sheet.title);
    const weekdays = weekdaysOf(sheet);
    if (weekdays.size === 0) {
        assumptions.push(`The class ${title} does not say on which weekdays it meets: ${assumedLessonsAWeek} lessons a week, without dates.`);
        return undefined;
    }
    if (!sheet.starts) {
        assumptions.push(`The class ${title} does not say when it starts: the weeks have no dates.`);
        return undefined;
    }
    const start = readDay(sheet.starts.date);
    if (!start) {
        assumptions.push(`The class ${title} starts on ${sheet.starts.date}, a date that does not exist: the weeks have no dates.`);
        return undefined;
    }
    const { off, problems } = daysOff(sheet);
    assumptions.push(...problems);
    if (sheet.offFrom.length > 0) assumptions.push(unreadCalendars(sheet));
    const days = meetingDays(start, weekdays, off, lessons.length);
    if (days.length < lessons.length) {
        assumptions.push(`The days off of the class ${title} leave too few days to meet: the weeks have no dates.`);
        return undefined;
    }
    return calendarWeeks(start, days, lessons, weekdays, off);
}

function unreadCalendars(sheet: ClassSheet): string {
    const files = once(sheet.offFrom.map(file => quoted(file.path)));
    return `The dates skip only the days off that the class lists itself, not those in ${listing(files)}: compare the two before you rely on a date.`;
}

/**
 * Weeks run from Monday. A week without any meeting gets no number; what was off in it is said in the remarks of the next week
 * that has one.
 */
function calendarWeeks(
    start: Day, days: readonly Day[], lessons: readonly LessonSheet[], weekdays: ReadonlySet<number>, off: readonly DaysOff[]
): WeekPlan[] {
    const weeks: WeekPlan[] = [];
    let unsaid = start;
    let monday: Day | undefined;
    days.forEach((day, i) => {
        const meeting: Meeting = { date: day.toString(), label: dayLabel(day), lessons: [lessons[i]?.name ?? ''], taught: [], minutes: 0 };
        const week = weeks[weeks.length - 1];
        const nextMonday = monday?.add({ days: 7 });
        if (week && nextMonday && before(day, nextMonday)) {
            week.meetings.push(meeting);
            week.to = meeting.date;
            return;
        }
        monday = mondayOf(day);
        const sunday = monday.add({ days: 6 });
        weeks.push({
            number: weeks.length + 1,
            from: meeting.date,
            to: meeting.date,
            meetings: [meeting],
            remarks: offRemarks(unsaid, sunday, weekdays, off)
        });
        unsaid = sunday.add({ days: 1 });
    });
    return weeks;
}
