import type { Meeting, ScheduleFigures } from '../planning/schedule-figures.js';

export function meetingsOf(schedule: ScheduleFigures): Meeting[] {
    return schedule.weeks.flatMap(({ meetings }) => meetings);
}

/** ISO dates of the meetings at which a lesson, or a piece of it, is taught. */
export function daysTaught(lesson: string, schedule: ScheduleFigures): string[] {
    return meetingsOf(schedule).flatMap(({ lessons, date }) => (date !== undefined && lessons.includes(lesson) ? [date] : []));
}

/** Of days in order, the last before a day and the first after it, the nearer one first. */
export function nearestDay(day: string, days: readonly string[]): string[] {
    const before = days.filter(one => one < day).pop();
    const after = days.find(one => one > day);
    const found = [before, after].flatMap(one => one ?? []);
    return found.sort((a, b) => Math.abs(Date.parse(a) - Date.parse(day)) - Math.abs(Date.parse(b) - Date.parse(day)));
}
