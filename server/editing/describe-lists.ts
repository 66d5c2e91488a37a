import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { counted } from '@haversack/language/facts/wording';
import { thingNamed } from '@haversack/language/sheets/programme';
import type { CourseSheet, KitSheet, LessonSheet, PartSheet, UnitSheet } from '@haversack/language/sheets/sheet';
import { meetingsOf } from '../plan-checks/meetings.js';
import type { ClassTerm } from '../plan-checks/term.js';

/** Facts of what holds or lists others, a line each: for the hover. */

const mostListed = 12;

export function kitFacts(kit: KitSheet, { programme }: ProgrammeView): string[] {
    const held = kit.holds.map(({ thing, amount }) => `${thingNamed(programme, thing.name)?.title ?? thing.name}${amount ? `: ${[amount.value, amount.unit].filter(Boolean).join(' ')}` : ''}`);
    return held.length > mostListed ? [...held.slice(0, mostListed), `and ${held.length - mostListed} more`] : held;
}

export function courseFacts(course: CourseSheet, view: ProgrammeView, terms: readonly ClassTerm[]): string[] {
    const lessons = course.units.flatMap(unit => unit.lessons);
    return [
        ...(course.edition === undefined ? [] : [`edition ${course.edition}`]),
        ...(course.ages ? [`ages ${course.ages.from}${course.ages.to === undefined ? ' and up' : ` to ${course.ages.to}`}`] : []),
        `${counted(lessons.length, 'lesson')} in ${counted(course.units.length, 'unit')}${inMinutes(lessonsOf(lessons, view))}`,
        ...terms.filter(({ group }) => group.teaches?.name === course.name).map(({ group, schedule }) => {
            const meetings = meetingsOf(schedule);
            return meetings.length === 0 ? `${group.title}: no meetings` : `${group.title}: ${counted(meetings.length, 'meeting')}, ${meetings[0]!.label} to ${meetings.at(-1)!.label}`;
        })
    ];
}

export function unitFacts(unit: UnitSheet, view: ProgrammeView): string[] {
    return [`${counted(unit.lessons.length, 'lesson')}${inMinutes(lessonsOf(unit.lessons, view))}`];
}

export function partFacts({ minutes }: PartSheet): string[] {
    return minutes === undefined ? [] : [`${minutes} min`];
}

function lessonsOf(mentions: readonly { name: string }[], { programme }: ProgrammeView): LessonSheet[] {
    return mentions.flatMap(({ name }) => programme.lessons.get(name) ?? []);
}

function inMinutes(lessons: readonly LessonSheet[]): string {
    const minutes = lessons.flatMap(({ parts }) => parts).reduce((sum, part) => sum + (part.minutes ?? 0), 0);
    return minutes > 0 ? `, ${minutes} min` : '';
}
