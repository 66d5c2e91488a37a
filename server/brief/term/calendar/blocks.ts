/** The term laid out for a calendar: a block for each month, a row for each week, a cell for each weekday on which the class meets. */
import { Temporal } from 'temporal-polyfill';
import { shortName, weekdayNames } from '@haversack/language/facts/day-names';
import type { DaysOffFigures, Meeting, ScheduleFigures, WeekPlan } from '../../../planning/schedule-figures.js';
import { dayAndMonth, dayInWords, monthInWords } from '../../days.js';

type Day = Temporal.PlainDate;

export interface Cell {
    /** ISO date; absent in weeks without dates. */
    date?: string;
    /** "21 Sep", or the label of a day without a date. */
    label: string;
    /** "Mon 21 Sep", or that label. */
    day: string;
    meeting?: Meeting;
    /** Why there is no meeting on a day that would have one. */
    off?: DaysOffFigures;
    today: boolean;
}

export interface WeekRow {
    kind: 'week';
    week: WeekPlan;
    /** One for each column of the block; absent before the first and after the last day. */
    cells: (Cell | undefined)[];
    /** Today is in this week, though on no day of the calendar. */
    now: boolean;
}

/** Whole weeks without a meeting. */
export interface GapRow {
    kind: 'gap';
    off: DaysOffFigures[];
    /** "Apple week: no meetings Mon 19 Oct to Fri 23 Oct". */
    text: string;
    now: boolean;
}

export interface Block {
    /** For ids: "2026-09", or "weeks-1". */
    id: string;
    /** "September 2026", or "Weeks 1 to 12". */
    title: string;
    /** "Mon", "Wed"; empty without dates. */
    columns: string[];
    columnCount: number;
    rows: (WeekRow | GapRow)[];
}

/** Weeks of one block where there are no months. */
const undatedWeeks = 12;

/** By month where every week has dates, else by stretches of weeks. `today` is an ISO date. */
export function calendarBlocks(schedule: ScheduleFigures, today: string | undefined): Block[] {
    const weeks = schedule.weeks.filter(week => week.meetings.length > 0);
    const dated = weeks.map(week => datedWeek(week)).filter(week => week !== undefined);
    return dated.length === weeks.length ? datedBlocks(dated, schedule.daysOff, readDay(today)) : plainBlocks(weeks);
}

interface DatedWeek {
    week: WeekPlan;
    monday: Day;
    meetings: { meeting: Meeting; day: Day }[];
}

function datedWeek(week: WeekPlan): DatedWeek | undefined {
    const meetings = week.meetings.flatMap(meeting => {
        const day = readDay(meeting.date);
        return day ? [{ meeting, day }] : [];
    });
    const [first] = meetings;
    return first && meetings.length === week.meetings.length ? { week, meetings, monday: first.day.subtract({ days: first.day.dayOfWeek - 1 }) } : undefined;
}

function datedBlocks(weeks: readonly DatedWeek[], daysOff: readonly DaysOffFigures[], today: Day | undefined): Block[] {
    const weekdays = [...new Set(weeks.flatMap(({ meetings }) => meetings.map(({ day }) => day.dayOfWeek)))].sort((a, b) => a - b);
    const off = daysOff.flatMap(figures => {
        const from = readDay(figures.from);
        const to = readDay(figures.to);
        return from && to && figures.costs ? [{ figures, from, to }] : [];
    });
    const first = weeks[0]?.meetings[0]?.day;
    const last = weeks[weeks.length - 1]?.meetings.slice(-1)[0]?.day;
    const blocks: Block[] = [];
    weeks.forEach((dated, index) => {
        const before = weeks[index - 1];
        const id = dated.meetings[0]?.day.toString().slice(0, 7) ?? '';
        let block = blocks[blocks.length - 1];
        if (block && before) {
            const gap = gapBetween(before.monday.add({ days: 7 }), dated.monday, off, today);
            if (gap) block.rows.push(gap);
        }
        if (block?.id !== id) {
            block = { id, title: monthInWords(id), columns: weekdays.map(number => shortName(weekdayNames[number - 1])), columnCount: weekdays.length, rows: [] };
            blocks.push(block);
        }
        block.rows.push(weekRow(dated));
    });
    return blocks;

    function weekRow({ week, monday, meetings }: DatedWeek): WeekRow {
        const cells = weekdays.map((weekday): Cell | undefined => {
            const day = monday.add({ days: weekday - 1 });
            const found = meetings.find(one => one.day.equals(day));
            const free = off.find(one => !isBefore(day, one.from) && !isBefore(one.to, day));
            if (!found && (!free || !first || !last || isBefore(day, first) || isBefore(last, day))) return undefined;
            const date = day.toString();
            return { date, label: dayAndMonth(date), day: dayInWords(date, false), meeting: found?.meeting, off: found ? undefined : free?.figures, today: today?.equals(day) === true };
        });
        const now = today !== undefined && isIn(today, monday) && !cells.some(cell => cell?.today);
        return { kind: 'week', week, cells, now };
    }
}

interface Off {
    figures: DaysOffFigures;
    from: Day;
    to: Day;
}

/** One row for all weeks from `from` to before `to`. */
function gapBetween(from: Day, to: Day, off: readonly Off[], today: Day | undefined): GapRow | undefined {
    if (!isBefore(from, to)) return undefined;
    const found = off.filter(one => isBefore(one.from, to) && !isBefore(one.to, from));
    const stretch = (first: Day, last: Day): string => (first.equals(last) ? `on ${short(first)}` : `${short(first)} to ${short(last)}`);
    const text = found.length > 0
        ? found.map(one => `${one.figures.title}: ${one.from.equals(one.to) ? 'no meeting' : 'no meetings'} ${stretch(one.from, one.to)}`).join('; ')
        : `No meetings ${stretch(from, to.subtract({ days: 1 }))}`;
    return { kind: 'gap', off: found.map(one => one.figures), text, now: today !== undefined && !isBefore(today, from) && isBefore(today, to) };
}

function plainBlocks(weeks: readonly WeekPlan[]): Block[] {
    const blocks: Block[] = [];
    const columnCount = weeks.reduce((most, week) => Math.max(most, week.meetings.length), 0);
    for (let at = 0; at < weeks.length; at += undatedWeeks) {
        const of = weeks.slice(at, at + undatedWeeks);
        const [from, to] = [of[0]?.number ?? 0, of[of.length - 1]?.number ?? 0];
        blocks.push({
            id: `weeks-${from}`, title: from === to ? `Week ${from}` : `Weeks ${from} to ${to}`, columns: [], columnCount,
            rows: of.map(week => ({
                kind: 'week', week, now: false,
                cells: Array.from({ length: columnCount }, (_, index) => {
                    const meeting = week.meetings[index];
                    return meeting && { label: meeting.label, day: meeting.label, meeting, today: false };
                })
            }))
        });
    }
    return blocks;
}

function readDay(iso: string | undefined): Day | undefined {
    if (iso === undefined) return undefined;
    try {
        return Temporal.PlainDate.from(iso);
    } catch {
        return undefined;
    }
}

function isBefore(one: Day, other: Day): boolean {
    return Temporal.PlainDate.compare(one, other) < 0;
}

function isIn(day: Day, monday: Day): boolean {
    return !isBefore(day, monday) && isBefore(day, monday.add({ days: 7 }));
}

function short(day: Day): string {
    return dayInWords(day.toString(), false);
}
