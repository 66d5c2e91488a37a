/**
 * Haversack as a library, for Node and browsers: texts in memory in, sheets, problems and figures out, and pages and files made of figures. It reads
 * no disk, no network and no clock. Types of figures are documented where they are declared.
 */
// Node 20 and older browsers lack Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import type { Programme } from '@haversack/language/sheets/programme';
import { briefMarkdown as markdownOfBrief } from './brief/markdown.js';
import { briefPage } from './brief/page.js';
import { termMarkdown as markdownOfTerm } from './brief/term/markdown.js';
import { termPage } from './brief/term/page.js';
import { scheduleCalendar, sectionHours } from './exports/calendar.js';
import { briefJson as jsonOfBrief } from './exports/brief-json.js';
import { figuresJson } from './exports/json.js';
import { shoppingList as listOfOrders } from './exports/shopping-list.js';
import { dayOf } from './library/day.js';
import { root } from './library/read-texts.js';
import { newPlanningCache } from './planning/cache.js';
import type { WeekBrief } from './planning/figures.js';
import { planSchedule } from './planning/schedule.js';
import type { SupplyFigures } from './planning/supply-figures.js';
import type { TermFigures } from './planning/term-figures.js';
import { planTerm as figuresOfTerm } from './planning/term.js';
import { planWeek as figuresOfWeek } from './planning/week.js';

export { readProgramme } from './library/read-texts.js';
export type { Mend, ReadProgramme, TextProblem, Texts, TextChange } from './library/read-texts.js';
export type { Programme, WeekBrief, TermFigures, SupplyFigures };
export type { ScheduleFigures } from './planning/schedule-figures.js';
export type { CoverageFigures } from './planning/coverage-figures.js';
export type { FileSheet, LessonSheet, MaterialSheet, CourseSheet, ClassSheet, Place, Range } from '@haversack/language/sheets/sheet';

/** For whom is planned. An absent or unknown class means the first of the programme, an absent course the one that the class is taught. */
export interface For {
    class?: string;
    course?: string;
}

/** How a page looks. */
export interface Look {
    /** Without it, as the reader's system has it. */
    theme?: 'light' | 'dark';
    /** What it is printed on; without it, what the printer has. */
    paper?: 'a4' | 'letter';
}

/**
 * Everything that the brief of a week shows.
 * @param wanted `week` counts from 1; `today` is an ISO 8601 date, from which orders count as late
 * @returns an empty brief with a sentence in `assumptions` for a week that the plan does not have
 * @throws RangeError for a `today` that is no date
 */
export function planWeek(programme: Programme, wanted: For & { week: number; today: string }): WeekBrief {
    return figuresOfWeek(programme, wanted, { today: dayOf(wanted.today) });
}

/**
 * The whole term of a class: which lesson on which day, stock and buying, coverage of objectives.
 * @param wanted `today` is an ISO 8601 date, from which orders count as late
 * @throws RangeError for a `today` that is no date
 */
export function planTerm(programme: Programme, wanted: For & { today: string }): TermFigures {
    return figuresOfTerm(programme, wanted, { schedule: planSchedule(programme, wanted), today: dayOf(wanted.today), cache: newPlanningCache() });
}

/** The brief as one HTML page that needs nothing else: no script, no font, no picture. */
export function briefHtml(brief: WeekBrief, look: Look = {}): string {
    return briefPage(brief, { theme: look.theme, paper: look.paper, root });
}

/** The brief as CommonMark. */
export function briefMarkdown(brief: WeekBrief): string {
    return markdownOfBrief(brief);
}

/** The brief for programs, as `haversack brief --format json` writes it. */
export function briefJson(brief: WeekBrief): string {
    return jsonOfBrief(brief);
}

/** The term as one HTML page that needs nothing else: calendar, stock, buying and coverage, drawn and in words. */
export function termHtml(term: TermFigures, look: Look = {}): string {
    return termPage(term, { theme: look.theme, paper: look.paper, root });
}

/** The term as CommonMark. */
export function termMarkdown(term: TermFigures): string {
    return markdownOfTerm(term);
}

/** The term for programs. */
export function termJson(term: TermFigures): string {
    return figuresJson('haversack-term', { term });
}

/**
 * The term as iCalendar (RFC 5545): lessons, days off, last days to order. A plan without dates gives a calendar without events.
 * @param options `now` is the instant at which it is written, ISO 8601 ("2026-09-01T08:00:00Z"); `before` is the file written last time, so that what did
 * not change keeps its stamp and what is gone is called off
 * @throws RangeError for a `now` that is no instant
 */
export function termCalendar(programme: Programme, term: TermFigures, options: { now: string; before?: string }): string {
    const group = term.schedule.class === undefined ? undefined : programme.classes.get(term.schedule.class);
    const title = [term.course?.title ?? 'All lessons', ...(term.class ? [term.class.title] : [])].join(', ');
    return scheduleCalendar(term.schedule, { title, orders: term.supplies.orders, hours: sectionHours(group?.sections ?? []), ...options });
}

/** What to buy as CSV (RFC 4180) for a spreadsheet, over the term or in one week (from 1). */
export function shoppingList(supplies: SupplyFigures, week?: number): string {
    return listOfOrders(supplies, week);
}
