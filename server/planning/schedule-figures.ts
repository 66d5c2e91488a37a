/** The term as it falls on days: plain JSON-safe data, each finding with the place it comes from. */
import type { Place } from '@haversack/language/sheets/sheet';
import type { TrailStep } from './figure.js';

/** A lesson, or a piece of one, at a meeting. */
export interface TaughtFigures {
    lesson: string;
    title: string;
    place: Place;
    /** Indexes (from 0) of the lesson's parts that are taught here; absent for the whole lesson. */
    parts?: number[];
    /** "part 1 of 2"; absent for the whole lesson. */
    piece?: { number: number; of: number };
    /** Sum of what is taught here; the flag of the lesson says whether a part has no minutes. */
    minutes: number;
    /** What brought it here, other than its turn. */
    why?: 'fixed' | 'repeat' | 'revisit';
    /** In words: "again: the children were unsure on Thu 10 Sep". */
    remark?: string;
    /** Line that brought it here: of the fixed date, of the log. */
    because?: Place;
}

export interface Meeting {
    /** ISO date; absent when the class has no start (plain weeks). */
    date?: string;
    /** "Mon 14 Sep" or "Day 2". */
    label: string;
    /** Names of the lessons taught here, whole or in part, each once. */
    lessons: string[];
    taught: TaughtFigures[];
    /** A day kept free to catch up, or on which nothing can be taught yet. */
    free?: { why: 'catch-up' | 'waiting'; words: string; place?: Place };
    minutes: number;
}

export interface WeekPlan {
    /** From 1. */
    number: number;
    /** ISO dates of the first and the last meeting. */
    from?: string;
    to?: string;
    meetings: Meeting[];
    /** "Harvest week: no meetings 23 to 27 November." */
    remarks: string[];
}

/** Days without meetings, inclusive. */
export interface DaysOffFigures {
    from: string;
    to: string;
    title: string;
    /** The class's own line, or the line that names the calendar. */
    place?: Place;
    /** Path of the calendar as written. */
    calendar?: string;
    /** Whether it takes a meeting away. */
    costs: boolean;
}

export type ScheduleProblemKind =
    | 'session-overrun' | 'term-overrun' | 'fixed-not-a-meeting' | 'fixed-too-early' | 'fixed-no-room' | 'fixed-outside-course' | 'fixed-twice'
    | 'waits' | 'circle'
    | 'log-not-taught' | 'no-meeting-days' | 'calendar';

/** Something in the term that does not hold, in a teacher's words, where it can be mended. */
export interface ScheduleProblem {
    kind: ScheduleProblemKind;
    message: string;
    place: Place;
    lesson?: string;
    date?: string;
    related?: { message: string; place: Place }[];
}

/** A way out of an overrun, and what it gives up. */
export interface Proposal {
    /** "Meet on Wednesdays too". */
    title: string;
    /** "All lessons fit; it costs 11 more days and the free Wednesdays." */
    gives: string;
    givesUp: string;
    /** How many of the unplaced lessons it would place. */
    places: number;
    /** A line to write in the class, where it is one: replaces or adds the statement of that head. */
    line?: { head: string; text: string };
    /** Names of the lessons that it leaves out, in the order of the course. */
    leavesOut?: string[];
}

export interface Unplaced {
    lesson: string;
    title: string;
    place: Place;
    why: string;
}

export interface ScheduleFigures {
    course?: string;
    class?: string;
    /** ISO dates of the first and last day as declared. */
    starts?: string;
    ends?: string;
    /** Minutes of a meeting, where declared. */
    session?: number;
    weeks: WeekPlan[];
    daysOff: DaysOffFigures[];
    unplaced: Unplaced[];
    proposals: Proposal[];
    problems: ScheduleProblem[];
    assumptions: string[];
    /** How the meeting days came about. */
    trail: TrailStep[];
}
