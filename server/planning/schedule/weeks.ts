import { dayOfIso, isoOfDay, weekdayOf } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { Meeting, TaughtFigures, WeekPlan } from '../schedule-figures.js';
import { counted, once, quoted } from '@haversack/language/facts/wording';
import type { CourseOrder } from './course-order.js';
import type { Piece, Run, RunDay } from './course-run.js';
import { daysInWords, shortDay } from './day-words.js';
import type { DaysOff, Stretch } from './days-off.js';
import type { Taught } from './meeting-room.js';
import { piecesLeft } from './pieces.js';
import type { Pace, Term } from './term.js';

/** What the weeks of a run are shown with. */
export interface WeekContext {
    sheet?: ClassSheet;
    order: CourseOrder;
    pace: Pace;
    /** Absent where the days are plain numbers, so many a week. */
    dated?: { term: Term; off: DaysOff };
    aWeek: number;
}

/** The meetings of a run in weeks from Monday; a week without any meeting gets no number. */
export function weeksOf(run: Run, lessons: readonly (readonly Piece[])[], context: WeekContext): WeekPlan[] {
    const pieces = pieceNumbers(lessons, context.pace);
    const weeks: WeekPlan[] = [];
    let last = Number.NEGATIVE_INFINITY;
    let unsaid = context.dated?.term.start ?? 0;
    const coming = comingFixed(run);
    run.days.forEach((met, i) => {
        const meeting = meetingFigures(met, coming[i], context, pieces);
        const monday = context.dated ? met.day - weekdayOf(met.day) : met.day - (met.day % context.aWeek);
        let week = weeks[weeks.length - 1];
        if (!week || monday !== last) {
            week = { number: weeks.length + 1, from: meeting.date, meetings: [], remarks: [] };
            if (context.dated) week.remarks.push(...once(offRemarks(context.dated, unsaid, monday + 6)));
            unsaid = monday + 7;
            last = monday;
            weeks.push(week);
        }
        week.meetings.push(meeting);
        week.to = meeting.date;
        if (met.usedUp) week.remarks.push(`${met.usedUp === 1 ? 'A day' : `${met.usedUp} days`} to catch up ${met.usedUp === 1 ? 'is' : 'are'} used up by what was taught again.`);
    });
    return context.dated ? weeks : weeks.map(({ number, meetings, remarks }) => ({ number, meetings, remarks }));
}

/** For each piece of a lesson that takes several meetings, which one it is. */
function pieceNumbers(lessons: readonly (readonly Piece[])[], pace: Pace): Map<Taught, { number: number; of: number }> {
    const numbers = new Map<Taught, { number: number; of: number }>();
    for (const pieces of lessons) {
        const work = pieces[0]?.taught.work;
        if (!work || (pieces.length === 1 && work.done >= work.parts.length)) continue;
        const of = pieces.length + piecesLeft(work, pace.session);
        pieces.forEach(({ taught }, i) => numbers.set(taught, { number: i + 1, of }));
    }
    return numbers;
}

/** For each free day on which nothing can be taught, what is taught next on a day of its own. */
function comingFixed(run: Run): (Taught | undefined)[] {
    const coming: (Taught | undefined)[] = [];
    let next: Taught | undefined;
    for (let i = run.days.length - 1; i >= 0; i--) {
        next = run.days[i]?.taught.find(t => t.why === 'fixed') ?? next;
        if (run.days[i]?.free === 'waiting') coming[i] = next;
    }
    return coming;
}

function meetingFigures(met: RunDay, coming: Taught | undefined, context: WeekContext, pieces: ReturnType<typeof pieceNumbers>): Meeting {
    const taught = met.taught.map(t => taughtFigures(t, pieces.get(t), context));
    const lessons = namesOf(taught);
    let minutes = 0;
    for (const one of taught) minutes += one.minutes;
    const meeting: Meeting = context.dated
        ? { date: isoOfDay(met.day), label: shortDay(met.day), lessons, taught, minutes }
        : { label: `Day ${(met.day % context.aWeek) + 1}`, lessons, taught, minutes };
    if (met.free) meeting.free = freeFigures(met, coming, context.sheet);
    return meeting;
}

/** Each lesson once. */
function namesOf(taught: readonly TaughtFigures[]): string[] {
    const names = taught.map(t => t.lesson);
    return names.length > 1 ? [...new Set(names)] : names;
}

function taughtFigures({ work, from, count, minutes, why, cause }: Taught, piece: TaughtFigures['piece'], { sheet, order }: WeekContext): TaughtFigures {
    const { lesson, parts } = work;
    const place = order.shapes[work.position]?.place ?? { uri: lesson.uri, range: lesson.at };
    const figures: TaughtFigures = { lesson: lesson.name, title: lesson.title, place, minutes };
    if (count < lesson.parts.length) figures.parts = parts.slice(from, from + count);
    if (piece) figures.piece = piece;
    if (!why) return figures;
    figures.why = why;
    if (!sheet || cause === undefined) return figures;
    if (why === 'fixed') {
        const line = sheet.fixed[cause];
        figures.remark = `fixed for this day${line?.title === undefined ? '' : `: ${line.title}`}`;
        figures.because = line && { uri: sheet.uri, range: line.at };
    } else {
        const line = sheet.log[cause];
        const day = line && dayOfIso(line.on.date);
        figures.remark = `${why === 'repeat' ? 'again' : 'once more'}: the children were unsure${day === undefined ? '' : ` on ${shortDay(day)}`}`;
        figures.because = line && { uri: sheet.uri, range: line.at };
    }
    return figures;
}

function freeFigures(met: RunDay, coming: Taught | undefined, sheet: ClassSheet | undefined): NonNullable<Meeting['free']> {
    if (met.free === 'catch-up') {
        return {
            why: 'catch-up', words: `Kept free to catch up, after ${counted(met.after ?? 0, 'lesson')}.`,
            place: sheet?.catchUp && { uri: sheet.uri, range: sheet.catchUp.at }
        };
    }
    const line = sheet?.fixed[coming?.cause ?? -1];
    const day = line && dayOfIso(line.on.date);
    if (!sheet || !coming || !line || day === undefined) return { why: 'waiting', words: 'Nothing can be taught yet.' };
    return {
        why: 'waiting', words: `Nothing can be taught yet: what is left waits for ${quoted(coming.work.lesson.title)} on ${shortDay(day)}.`,
        place: { uri: sheet.uri, range: line.at }
    };
}

/** What was off between two days, in a sentence for each stretch that cost a meeting. */
function offRemarks({ term, off }: NonNullable<WeekContext['dated']>, from: number, to: number): string[] {
    return off.between(from, to).filter(s => costs(s, term, from, to)).map(s => (s.from === s.to
        ? `${s.title}: no meeting on ${shortDay(s.from)}.`
        : `${s.title}: no meetings ${daysInWords(s.from, s.to)}.`));
}

/** Whether a stretch takes away one of the class's weekdays between two days of the term. */
export function costs(stretch: Stretch, term: Term, from = term.start, to = term.last): boolean {
    return weekdaysBetween(Math.max(stretch.from, from, term.start), Math.min(stretch.to, to, term.last), term.weekdays) > 0;
}

/** How many of the class's weekdays lie between two days, both included. */
export function weekdaysBetween(from: number, to: number, weekdays: readonly boolean[]): number {
    if (to < from) return 0;
    const whole = Math.floor((to - from + 1) / 7);
    let count = whole * weekdays.filter(Boolean).length;
    for (let day = from + whole * 7; day <= to; day++) if (weekdays[weekdayOf(day)]) count += 1;
    return count;
}
