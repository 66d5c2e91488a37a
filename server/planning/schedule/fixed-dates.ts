import { dayOfIso } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { ScheduleProblem } from '../schedule-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import { leftOutBy, type CourseOrder } from './course-order.js';
import { longDay } from './day-words.js';
import type { MeetingDays } from './meeting-days.js';

/** A lesson that has a day of its own. */
export interface FixedDate {
    /** Index of the class's line. */
    line: number;
    /** Where the lesson stands in the course. */
    position: number;
    day: number;
}

/** The fixed dates that fall on a meeting day, by day, and what is wrong with the others. A date that does not exist is told elsewhere. */
export function fixedDates(
    sheet: ClassSheet, order: CourseOrder, days: MeetingDays
): { byDay: Map<number, FixedDate[]>; problems: ScheduleProblem[] } {
    const byDay = new Map<number, FixedDate[]>();
    const problems: ScheduleProblem[] = [];
    const used = new Set<number>();
    sheet.fixed.forEach((line, index) => {
        const { name } = line.lesson;
        const positions = order.meant.get(name) ?? [];
        const title = quoted(order.lessons[positions[0] ?? -1]?.title ?? name);
        const tell = (kind: ScheduleProblem['kind'], message: string): void => {
            problems.push({ kind, message, place: { uri: sheet.uri, range: line.at }, lesson: name, date: line.on.date });
        };
        const day = dayOfIso(line.on.date);
        const position = positions.find(i => !used.has(i));
        if (positions.length === 0) {
            const leaver = leftOutBy(name, order);
            tell('fixed-outside-course', leaver ? `${title} is fixed on ${line.on.date}, but ${leaver} leaves this lesson out. Take one of the two lines out.`
                : `${title} is fixed on ${line.on.date}, but the class is not taught this lesson. Add it to the course, or take this line out.`);
        } else if (position === undefined) {
            tell('fixed-twice', `${title} is fixed on more than one day; the first line counts. Take one of the lines out.`);
        } else if (day === undefined) {
            tell('fixed-not-a-meeting', `${title} is fixed on ${line.on.date}, a date that does not exist: it is taught in its turn. Write year-month-day, such as 2026-10-15.`);
        } else {
            used.add(position);
            const why = days.whyNot(day);
            if (why === undefined) byDay.set(day, [...byDay.get(day) ?? [], { line: index, position, day }]);
            else tell('fixed-not-a-meeting', `${title} is fixed on ${longDay(day)}, but the class does not meet then: ${why}. It is taught in its turn. Choose another day.`);
        }
    });
    return { byDay, problems };
}
