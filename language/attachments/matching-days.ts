import type { RepeatRule } from './attachment.js';
import { civilDate, dayNumber, daysInMonth, daysInYear, weekdayOf, type CivilDate } from './day-numbers.js';
import type { Effort } from './repetitions.js';

/** Which days of a year, month or week a rule names: the table of RFC 5545, 3.3.10 (p. 44). */

interface Period {
    first: number;
    days: number[];
}

/** Where something begins decides the day and month that a rule does not name. */
export function daysOfYear(rule: RepeatRule, year: number, begin: CivilDate, beginWeekday: number, effort: Effort): Period {
    const first = dayNumber(year, 1, 1);
    const { weekdays, monthDays, yearDays, weeks } = rule;
    if (!weekdays && !monthDays && !yearDays && !weeks) {
        const months = rule.months ?? [begin.month];
        effort.left -= months.length;
        return { first, days: months.filter(month => begin.day <= daysInMonth(year, month)).map(month => dayNumber(year, month, begin.day)).sort((a, b) => a - b) };
    }
    // A rule by week number alone means the weekday on which it began.
    const named = weeks && !weekdays && !monthDays && !yearDays ? { ...rule, weekdays: [{ day: beginWeekday, nth: 0 }] } : rule;
    const months = [...rule.months ?? [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]].sort((a, b) => a - b);
    const whole = { first, length: daysInYear(year) };
    return { first, days: months.flatMap(month => matching(named, dayNumber(year, month, 1), daysInMonth(year, month), rule.months ? undefined : whole, effort)) };
}

export function daysOfMonth(rule: RepeatRule, year: number, month: number, begin: CivilDate, effort: Effort): Period {
    const first = dayNumber(year, month, 1);
    const named = rule.weekdays || rule.monthDays || rule.yearDays || rule.weeks ? rule : { ...rule, monthDays: [begin.day] };
    if (rule.months && !rule.months.includes(month)) {
        effort.left -= 1;
        return { first, days: [] };
    }
    return { first, days: matching(named, first, daysInMonth(year, month), undefined, effort) };
}

/** `counted` is the span in which the nth weekday is counted, where that is not the month itself. */
function matching(rule: RepeatRule, first: number, length: number, counted: { first: number; length: number } | undefined, effort: Effort): number[] {
    const days: number[] = [];
    const span = counted ?? { first, length };
    effort.left -= length;
    for (let day = first; day < first + length; day++) {
        if (mayBeOn(rule, day) && (!rule.weekdays || rule.weeks || isNthOf(rule.weekdays, day, span))) days.push(day);
    }
    return days;
}

function isNthOf(weekdays: NonNullable<RepeatRule['weekdays']>, day: number, { first, length }: { first: number; length: number }): boolean {
    const weekday = weekdayOf(day);
    const fromStart = Math.floor((day - first) / 7) + 1;
    const fromEnd = -Math.floor((first + length - 1 - day) / 7) - 1;
    return weekdays.some(named => named.day === weekday && (named.nth === 0 || named.nth === fromStart || named.nth === fromEnd));
}

/** All parts of a rule that speak of the day, but for the count of weekdays within a month or year. */
export function mayBeOn(rule: RepeatRule, number: number): boolean {
    if (rule.weekdays) {
        const weekday = weekdayOf(number);
        if (!rule.weekdays.some(({ day }) => day === weekday)) return false;
    }
    if (!rule.months && !rule.monthDays && !rule.yearDays && !rule.weeks) return true;
    const { year, month, day } = civilDate(number);
    if (rule.months && !rule.months.includes(month)) return false;
    if (rule.monthDays && !rule.monthDays.includes(day) && !rule.monthDays.includes(day - daysInMonth(year, month) - 1)) return false;
    if (rule.yearDays) {
        const ofYear = number - dayNumber(year, 1, 1) + 1;
        if (!rule.yearDays.includes(ofYear) && !rule.yearDays.includes(ofYear - daysInYear(year) - 1)) return false;
    }
    return !rule.weeks || isInWeeks(rule.weeks, number, rule.weekStart);
}

/** Week 1 is the first with at least four days in the year; a day near New Year may belong to a week of the year beside it. */
function isInWeeks(weeks: readonly number[], number: number, weekStart: number): boolean {
    const monday = number - ((weekdayOf(number) - weekStart + 7) % 7);
    const { year } = civilDate(monday + 3);
    const firstWeek = weekOne(year, weekStart);
    const week = (monday - firstWeek) / 7 + 1;
    return weeks.includes(week) || weeks.includes(week - (weekOne(year + 1, weekStart) - firstWeek) / 7 - 1);
}

function weekOne(year: number, weekStart: number): number {
    const fourth = dayNumber(year, 1, 4);
    return fourth - ((weekdayOf(fourth) - weekStart + 7) % 7);
}
