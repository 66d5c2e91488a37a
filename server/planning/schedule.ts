import type { CalendarMemo } from '@haversack/language/attachments/calendar-file';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { chooseClass, type Audience, type Wanted } from './audience.js';
import type { ScheduleFigures } from './schedule-figures.js';
import { classLog } from './schedule/class-log.js';
import { courseOrder, type CourseOrder } from './schedule/course-order.js';
import { piecesOf, runCourse, type Run } from './schedule/course-run.js';
import { DaysOff } from './schedule/days-off.js';
import { daysOffFigures, daysTrail } from './schedule/days-trail.js';
import { fixedDates } from './schedule/fixed-dates.js';
import { MeetingDays, plainDays } from './schedule/meeting-days.js';
import { proposalsFor } from './schedule/proposals.js';
import {
    circleProblems, logProblems, missedDates, overrunProblem, sessionProblems, unplacedLessons, waitProblems, type RunReport
} from './schedule/run-problems.js';
import { readTerm, type Pace, type Term, type TermReading } from './schedule/term.js';
import { weeksOf } from './schedule/weeks.js';
import { once, quoted } from '@haversack/language/facts/wording';

export interface ScheduleOptions {
    /** Kept by the caller from one plan to the next: what was worked out of calendars before. */
    calendars?: CalendarMemo;
    /** Kept by the caller for the classes of one programme: what their courses ask for. */
    orders?: Map<object | undefined, CourseOrder>;
    /** Kept by the caller from one plan to the next: what adaptations have made. */
    adapting?: AdaptingMemo;
    /** Of the same programme and class, where it is already known. */
    audience?: Audience;
}

/**
 * Which lesson is taught at which meeting: weekdays less days off, in the order of the course, no lesson before what it follows,
 * short lessons together and long ones in pieces where the class has a session length. What does not hold stands in `problems`.
 * Never throws: what cannot be dated becomes plain weeks, with a sentence that says why.
 */
export function planSchedule(programme: Programme, wanted: Wanted = {}, options: ScheduleOptions = {}): ScheduleFigures {
    const audience = options.audience ?? chooseClass(programme, wanted, options.adapting);
    const { class: sheet } = audience;
    const reading = readTerm(sheet);
    const order = orderOf(audience, options);
    const figures: ScheduleFigures = {
        course: audience.course?.name,
        class: sheet?.name,
        starts: sheet?.starts?.date,
        ends: sheet?.ends?.date,
        session: reading.pace.session,
        weeks: [],
        daysOff: [],
        unplaced: [],
        proposals: [],
        problems: circleProblems(order),
        trail: [],
        assumptions: [...audience.people.figures.assumptions, ...audience.assumptions, ...reading.assumptions]
    };
    const isDated = sheet && reading.term && addDatedWeeks(figures, { sheet, audience, reading, term: reading.term, order, options });
    if (!isDated) addPlainWeeks(figures, sheet, order, reading);
    return { ...figures, assumptions: once(figures.assumptions) };
}

function orderOf({ course, adapted, lessons }: Audience, { orders }: ScheduleOptions): CourseOrder {
    const key = adapted ?? course;
    const known = orders?.get(key);
    if (known) return known;
    const order = courseOrder(lessons, adapted);
    orders?.set(key, order);
    return order;
}

/** The week in which a lesson is first taught; undefined where it is not in the schedule. */
export function weekOfLesson(schedule: ScheduleFigures, lesson: string): number | undefined {
    return schedule.weeks.find(w => w.meetings.some(m => m.lessons.includes(lesson)))?.number;
}

function addPlainWeeks(figures: ScheduleFigures, sheet: ClassSheet | undefined, order: CourseOrder, { pace, aWeek }: TermReading): void {
    const run = runCourse({ order, pace, days: plainDays, fixed: new Map(), log: new Map() });
    const pieces = piecesOf(run, order);
    figures.weeks = weeksOf(run, pieces, { sheet, order, pace, aWeek });
    if (!sheet) return;
    const report: RunReport = { sheet, order, run, pieces, session: pace.session };
    figures.unplaced = unplacedLessons(report);
    figures.problems.push(...sessionProblems(report), ...waitProblems(report));
}

interface DatedClass {
    sheet: ClassSheet;
    audience: Audience;
    reading: TermReading;
    term: Term;
    order: CourseOrder;
    options: ScheduleOptions;
}

/** False, with a sentence, where the class has no day to meet. */
function addDatedWeeks(figures: ScheduleFigures, { sheet, audience, reading, term, order, options }: DatedClass): boolean {
    const { pace } = reading;
    const off = new DaysOff(sheet, audience.attachments, term.start, options.calendars);
    figures.problems.push(...off.problems);
    figures.assumptions.push(...off.assumptions);
    const days = new MeetingDays(term, off);
    if (days.after(undefined) === undefined) {
        sayNoDays(figures, sheet, term);
        return false;
    }
    const log = classLog(sheet);
    const plan = (changed: { order?: CourseOrder; pace?: Pace; term?: Term }): Run => {
        const meetings = changed.term ? new MeetingDays(changed.term, off) : days;
        const lessons = changed.order ?? order;
        return runCourse({ order: lessons, pace: changed.pace ?? pace, days: meetings, fixed: fixedDates(sheet, lessons, meetings).byDay, log });
    };
    const run = plan({});
    const to = term.end ?? run.days.at(-1)?.day ?? term.start;
    const pieces = piecesOf(run, order);
    const report: RunReport = { sheet, order, run, pieces, term, session: pace.session };
    figures.weeks = weeksOf(run, pieces, { sheet, order, pace, dated: { term, off }, aWeek: reading.aWeek });
    figures.daysOff = daysOffFigures(off, term, to);
    figures.unplaced = unplacedLessons(report);
    figures.trail = daysTrail(sheet, pace, term, off, run, pieces);
    figures.problems.push(
        ...off.unmatched(term.start, to), ...fixedDates(sheet, order, days).problems, ...missedDates(report), ...waitProblems(report),
        ...sessionProblems(report), ...logProblems(report), ...overrunProblem(report)
    );
    if (run.unfinished.length > 0 && term.end !== undefined) {
        figures.proposals = proposalsFor({ sheet, order, pace, term: { ...term, end: term.end }, off, run, again: plan });
    }
    return true;
}

function sayNoDays(figures: ScheduleFigures, sheet: ClassSheet, term: Term): void {
    const between = term.end === undefined ? 'The days off' : 'The first and last day and the days off';
    const message = `${between} of the class ${quoted(sheet.title)} leave too few days to meet: the weeks have no dates.`;
    figures.assumptions.push(message);
    figures.problems.push({ kind: 'no-meeting-days', message, place: { uri: sheet.uri, range: (sheet.ends ?? sheet.starts)?.at ?? sheet.at } });
}
