import { dayOfIso, lastDay } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet, Weekday, WrittenDate } from '@haversack/language/sheets/sheet';
import { quoted } from '@haversack/language/facts/wording';

/** Lessons in a week where no weekdays are known: a meeting each. */
const assumedLessonsAWeek = 4;
const weekdayOrder: readonly Weekday[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
/** A term without an end is looked at for so long at most: a hundred years of days. */
const longestTerm = 36_525;

/** More days to catch up at once than this are a slip of the hand. */
const mostCatchUp = 50;

/** How much is taught at a meeting. */
export interface Pace {
    /** Minutes of a meeting. */
    session?: number;
    /** The most lessons at one meeting. */
    perMeeting?: number;
    catchUp?: { days: number; every: number };
}

/** Days between which a class meets, counted from 1970-01-01 and both included, and its weekdays from Monday. */
export interface Term {
    start: number;
    /** As declared; absent where the class does not end. */
    end?: number;
    /** The end, or the last day that is looked at. */
    last: number;
    weekdays: readonly boolean[];
}

export interface TermReading {
    pace: Pace;
    /** Absent where the weeks have no dates. */
    term?: Term;
    /** Meetings in a week without dates. */
    aWeek: number;
    /** What had to be assumed or left out, in whole sentences. */
    assumptions: string[];
}

/** What a class says about when and how long it meets. Numbers that cannot be meant count as not said. */
export function readTerm(sheet: ClassSheet | undefined): TermReading {
    if (!sheet) return { pace: {}, aWeek: assumedLessonsAWeek, assumptions: [] };
    const weekdays = weekdayOrder.map(day => sheet.meets.some(m => m.day === day));
    const meetings = weekdays.filter(Boolean).length;
    const reading: TermReading = { pace: paceOf(sheet), aWeek: meetings || assumedLessonsAWeek, assumptions: [] };
    const title = quoted(sheet.title);
    if (sheet.catchUp && !reading.pace.catchUp) {
        reading.assumptions.push(`The class ${title} keeps ${sheet.catchUp.days} days to catch up every ${sheet.catchUp.everyLessons} lessons, which cannot be: no days are kept.`);
    }
    if (meetings === 0) {
        reading.assumptions.push(`The class ${title} does not say on which weekdays it meets: ${assumedLessonsAWeek} lessons a week, without dates.`);
        return reading;
    }
    const start = sheet.starts && dayOfIso(sheet.starts.date);
    if (start === undefined) {
        reading.assumptions.push(sheet.starts
            ? `The class ${title} starts on ${sheet.starts.date}, a date that does not exist: the weeks have no dates.`
            : `The class ${title} does not say when it starts: the weeks have no dates.`);
        return reading;
    }
    const end = readEnd(sheet, sheet.ends, start, reading.assumptions);
    reading.term = { start, end, last: end ?? Math.min(lastDay, start + longestTerm), weekdays };
    return reading;
}

function readEnd(sheet: ClassSheet, ends: WrittenDate | undefined, start: number, assumptions: string[]): number | undefined {
    if (!ends) return undefined;
    const end = dayOfIso(ends.date);
    if (end === undefined) {
        assumptions.push(`The class ${quoted(sheet.title)} ends on ${ends.date}, a date that does not exist: it is planned without an end.`);
    } else if (end < start) {
        assumptions.push(`The class ${quoted(sheet.title)} ends on ${ends.date}, before it starts on ${sheet.starts?.date}: it is planned without an end.`);
        return undefined;
    }
    return end;
}

function paceOf({ session, lessonsPerMeeting, catchUp }: ClassSheet): Pace {
    const days = wholeNumber(catchUp?.days);
    const every = wholeNumber(catchUp?.everyLessons);
    return {
        session: session && Number.isFinite(session.minutes) && session.minutes > 0 ? session.minutes : undefined,
        perMeeting: wholeNumber(lessonsPerMeeting?.count),
        catchUp: days && every && days <= mostCatchUp ? { days, every } : undefined
    };
}

function wholeNumber(value: number | undefined): number | undefined {
    return value !== undefined && Number.isFinite(value) && value >= 1 ? Math.floor(value) : undefined;
}
