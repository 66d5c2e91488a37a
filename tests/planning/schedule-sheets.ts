/** Classes, lessons and readable plans for the tests of the schedule. */
import { attachmentKey, gatherProgramme } from '@haversack/language/sheets/programme';
import type { Attachment } from '@haversack/language/attachments/attachment';
import type { ClassSheet, LessonSheet, PartSheet, Unsure } from '@haversack/language/sheets/sheet';
import type { ScheduleFigures } from '../../server/planning/schedule-figures.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { activity, course, file, klass, lesson, meets, mention, on, part, range, uri } from './sheets.js';

/** A lesson of activities a, b, c ... with these minutes; undefined for a part without. */
export function timed(name: string, minutes: readonly (number | undefined)[], more: Partial<LessonSheet> = {}): LessonSheet {
    return lesson(name, [], minutes.map((m, i) => activity(String.fromCharCode(97 + i), [], { minutes: m })), more);
}
export const follows = (...names: string[]): Partial<LessonSheet> => ({ follows: names.map(mention) });
export const closing = (unsure?: Unsure, minutes = 5): PartSheet => part('checkpoint', 'closing', { minutes, unsure });
export const repeat = (name: string, when: 'today' | 'tomorrow'): Unsure => ({ then: 'repeat', activity: mention(name), when, at: range() });
export const fixed = (name: string, date: string, title?: string) => ({ lesson: mention(name), on: on(date), title, at: range() });
export const unsure = (name: string, date: string) => ({ lesson: mention(name), on: on(date), at: range() });
export const session = (minutes: number) => ({ session: { minutes, at: range() } });
export const perMeeting = (count: number) => ({ lessonsPerMeeting: { count, at: range() } });
export const catchUp = (days: number, everyLessons: number) => ({ catchUp: { days, everyLessons, at: range() } });
/** Mondays and Thursdays from 7 September 2026. */
export const twoDays: Partial<ClassSheet> = { starts: on('2026-09-07'), meets: meets('mon', 'thu') };

/** The plan of these lessons in this order for one class; `calendars` by the path that the class names. */
export function planOf(lessons: LessonSheet[], own: Partial<ClassSheet>, calendars: Record<string, Attachment> = {}): ScheduleFigures {
    const unique = [...new Map(lessons.map(l => [l.name, l])).values()];
    const attachments = new Map(Object.entries(calendars).map(([path, attachment]) => [attachmentKey(uri, path), attachment]));
    return planSchedule(gatherProgramme([file(...unique, course('c', lessons.map(l => l.name)), klass('k', 'c', 7, own))], attachments));
}

/** "Mon 7 Sep: l1.0+1 (fixed), l2", or why the day is free. */
export function told(plan: ScheduleFigures): string[] {
    return plan.weeks.flatMap(w => w.meetings).map(m => `${m.label}: ${m.free ? `free, ${m.free.why}` : m.taught.map(t =>
        `${t.lesson}${t.parts ? `.${t.parts.join('+')}` : ''}${t.why ? ` (${t.why})` : ''}`).join(', ')}`);
}
export const kinds = (plan: ScheduleFigures) => plan.problems.map(p => p.kind);
