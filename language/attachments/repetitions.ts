import type { RepeatRule } from './attachment.js';
import { civilDate, lastDay, secondsADay, weekdayOf } from './day-numbers.js';
import { daysOfMonth, daysOfYear, mayBeOn } from './matching-days.js';

/** How much may still be looked at: one for each day or time that is tried. No rule runs on when it is used up. */
export interface Effort {
    left: number;
}

const shortUnits = { SECONDLY: 1, MINUTELY: 60, HOURLY: 3600 } as const;

/**
 * The times at which a rule lets something begin that began first at `start`: RFC 5545, 3.3.10. Ascending, in wall-clock seconds
 * since 1970-01-01, none before `from` or after `to`. For whole days BYHOUR, BYMINUTE and BYSECOND count for nothing, as the
 * standard asks. It ends early when the effort is used up. Written here because the library's own iterator has no
 * week numbers and can search without end for a day that never comes.
 */
export function* repetitions(rule: RepeatRule, start: number, from: number, to: number, effort: Effort, wholeDays = false): Generator<number, void> {
    const end = Math.min(to, rule.until ?? Number.POSITIVE_INFINITY, (lastDay + 1) * secondsADay - 1);
    let left = rule.count ?? Number.POSITIVE_INFINITY;
    // With a count every time since the first is counted; without one the search can begin where it is asked for.
    const lookFrom = rule.count === undefined ? Math.max(start, from) : start;
    for (const period of isShort(rule) ? shortPeriods(rule, start, lookFrom, end, effort) : longPeriods(rule, start, lookFrom, end, effort, wholeDays)) {
        for (const time of atPositions(period, rule.positions)) {
            if (time < start) continue;
            if (time > end || left <= 0) return;
            left--;
            if (time >= from) yield time;
        }
        if (left <= 0) return;
    }
}

function isShort(rule: RepeatRule): rule is RepeatRule & { every: keyof typeof shortUnits } {
    return rule.every in shortUnits;
}

/** The times of each day, month or year in which the rule may hold. */
function* longPeriods(rule: RepeatRule, start: number, lookFrom: number, end: number, effort: Effort, wholeDays: boolean): Generator<number[]> {
    const startDay = Math.floor(start / secondsADay);
    const times = wholeDays ? [start - startDay * secondsADay] : timesOfDay(rule, start - startDay * secondsADay);
    const endDay = Math.floor(end / secondsADay);
    for (const { first, days } of dayPeriods(rule, startDay, Math.floor(lookFrom / secondsADay), effort)) {
        if (first > endDay || effort.left <= 0) return;
        effort.left -= days.length * times.length;
        yield days.flatMap(day => times.map(time => day * secondsADay + time));
    }
}

/** Endless: each period's first day, and the days in it that the rule names. */
function* dayPeriods(rule: RepeatRule, startDay: number, lookFrom: number, effort: Effort): Generator<{ first: number; days: number[] }> {
    const { interval } = rule;
    const begin = civilDate(startDay);
    const look = civilDate(lookFrom);
    if (rule.every === 'YEARLY') {
        for (let year = begin.year + skipped(look.year - begin.year, interval); ; year += interval) yield daysOfYear(rule, year, begin, weekdayOf(startDay), effort);
    }
    if (rule.every === 'MONTHLY') {
        const month = begin.year * 12 + begin.month - 1;
        for (let at = month + skipped(look.year * 12 + look.month - 1 - month, interval); ; at += interval) {
            yield daysOfMonth(rule, Math.floor(at / 12), (at % 12) + 1, begin, effort);
        }
    }
    const ownDay = [{ day: weekdayOf(startDay), nth: 0 }];
    const length = rule.every === 'WEEKLY' ? 7 : 1;
    const first = length === 7 ? startDay - ((weekdayOf(startDay) - rule.weekStart + 7) % 7) : startDay;
    const named = length === 7 ? { ...rule, weekdays: rule.weekdays ?? ownDay } : rule;
    for (let at = first + skipped(lookFrom - first, interval * length); ; at += interval * length) {
        effort.left -= length;
        const days: number[] = [];
        for (let day = at; day < at + length; day++) if (mayBeOn(named, day)) days.push(day);
        yield { first: at, days };
    }
}

/** How far whole intervals reach without passing what is looked for. */
function skipped(distance: number, interval: number): number {
    return Math.max(0, Math.floor(distance / interval)) * interval;
}

/** The times of each hour, minute or second in which the rule may hold. */
function* shortPeriods(rule: RepeatRule & { every: keyof typeof shortUnits }, start: number, lookFrom: number, end: number, effort: Effort): Generator<number[]> {
    const unit = shortUnits[rule.every];
    const step = unit * rule.interval;
    const first = Math.floor(start / unit) * unit;
    const within = (unit === 3600 ? rule.minutes ?? [Math.floor(start / 60) % 60] : [0])
        .flatMap(minute => (unit >= 60 ? rule.seconds ?? [((start % 60) + 60) % 60] : [0]).map(second => minute * 60 + second)).sort((a, b) => a - b);
    for (let at = first + skipped(lookFrom - first, step); at <= end && effort.left > 0; at += step) {
        effort.left -= 1;
        const day = Math.floor(at / secondsADay);
        if (!mayBeOn(rule, day)) {
            const nextDay = (day + 1) * secondsADay;
            at += Math.max(0, Math.ceil((nextDay - at) / step) - 1) * step;
            continue;
        }
        const ofDay = at - day * secondsADay;
        if (!isIn(rule.hours, Math.floor(ofDay / 3600)) || (unit < 3600 && !isIn(rule.minutes, Math.floor(ofDay / 60) % 60)) || (unit < 60 && !isIn(rule.seconds, ofDay % 60))) continue;
        effort.left -= within.length;
        yield within.map(time => at + time);
    }
}

function isIn(numbers: readonly number[] | undefined, number: number): boolean {
    return numbers === undefined || numbers.includes(number);
}

function timesOfDay(rule: RepeatRule, start: number): number[] {
    const hours = rule.hours ?? [Math.floor(start / 3600)];
    const minutes = rule.minutes ?? [Math.floor(start / 60) % 60];
    const seconds = rule.seconds ?? [start % 60];
    return hours.flatMap(hour => minutes.flatMap(minute => seconds.map(second => hour * 3600 + minute * 60 + second))).sort((a, b) => a - b);
}

/** BYSETPOS: only the first, the last and so on of the times of one period. */
function atPositions(times: number[], positions: readonly number[] | undefined): number[] {
    if (!positions) return times;
    return times.filter((_, index) => positions.includes(index + 1) || positions.includes(index - times.length));
}

/** The most times that a rule can hold in one year, without working them out. */
export function timesAYear(rule: RepeatRule, wholeDays: boolean): number {
    const many = (list: readonly unknown[] | undefined, otherwise = 1): number => list?.length ?? otherwise;
    const daily = wholeDays ? 1 : many(rule.hours) * many(rule.minutes) * many(rule.seconds);
    switch (rule.every) {
        case 'SECONDLY': case 'MINUTELY': case 'HOURLY':
            return (366 * secondsADay / shortUnits[rule.every] / rule.interval) * (rule.every === 'HOURLY' ? many(rule.minutes) : 1) * (rule.every === 'SECONDLY' ? 1 : many(rule.seconds));
        case 'DAILY': return 366 / rule.interval * daily;
        case 'WEEKLY': return 53 / rule.interval * Math.min(7, many(rule.weekdays)) * daily;
        case 'MONTHLY': return 12 / rule.interval * Math.min(many(rule.positions, 31), rule.weekdays ? 31 : many(rule.monthDays)) * daily;
        case 'YEARLY': return Math.min(many(rule.positions, 366), rule.weekdays || rule.weeks ? 366 : rule.yearDays ? rule.yearDays.length : many(rule.months, rule.monthDays ? 12 : 1) * many(rule.monthDays)) / rule.interval * daily;
    }
}
