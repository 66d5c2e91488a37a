import { partsNamed } from '../sheets/adaptation-names.js';
import type { LessonSheet, PartSheet, Unsure } from '../sheets/sheet.js';
import type { AppliedChange } from './adapted.js';
import { markOf, marked, originsOf, type FoundPart, type WorkingCourse } from './working-course.js';
import { listing, quoted } from '../facts/wording.js';

/** What a checkpoint asks for where children are unsure, when adaptations take apart or away what it repeats. */

type RepeatPart = Extract<Unsure, { then: 'repeat' }>;

/** A part of the later piece of a split lesson: what it repeats of the earlier piece is still taught, so it is that which comes again. Until `repeatsAsTaught` it is called as it was written. */
export function repeatingEarlier(part: PartSheet, early: readonly PartSheet[], lesson: string): PartSheet {
    const { unsure } = part;
    if (unsure?.then !== 'repeat' || unsure.of !== undefined) return part;
    const repeated = early.find(({ name }) => name === unsure.activity.name);
    const origin = repeated && originsOf(repeated, lesson)[0];
    return origin ? { ...part, unsure: { ...unsure, of: origin.lesson, activity: { ...unsure.activity, name: origin.part } } } : part;
}

/** Once every change is made: where that is which the later piece of a split lesson repeats; the lesson again where it is gone. */
export function repeatsAsTaught(course: WorkingCourse): void {
    for (const name of new Set(course.all().map(taught => taught.name))) {
        const asking = course.sheet(name)?.parts.flatMap(part => (part.unsure?.then === 'repeat' && part.unsure.of !== undefined ? [{ part, unsure: part.unsure }] : [])) ?? [];
        const lost: { change: AppliedChange; part: PartSheet }[] = [];
        for (const { part, unsure } of asking) {
            const found = whereTaught(course, unsure, name);
            const change = found ? undefined : goneWith(course, unsure);
            if (change) lost.push({ change, part });
            course.change(name, ['repeats', part, found?.lesson, found?.part.name, change?.change], sheet => ({
                ...sheet, parts: sheet.parts.map(own => (own === part ? repeating(part, unsure, { name, found, change }) : own))
            }));
        }
        for (const { change, part } of lost) change.says += lostInWords([course.partTitle(part)]);
    }
}

function whereTaught(course: WorkingCourse, { of, activity, at }: RepeatPart, lesson: string): FoundPart | undefined {
    const found = course.parts({ lesson: { name: of!, at }, part: activity });
    return found.find(one => one.lesson === lesson) ?? found[0];
}

function goneWith(course: WorkingCourse, { of, activity }: RepeatPart): AppliedChange | undefined {
    return [...course.changes].reverse().find(({ change, idle }) => idle === undefined && partsNamed(change).some(({ lesson, part }) => lesson.name === of && part.name === activity.name));
}

function repeating(part: PartSheet, unsure: RepeatPart, { name, found, change }: { name: string; found?: FoundPart; change?: AppliedChange }): PartSheet {
    const { then, activity, when, at } = unsure;
    if (found) return { ...part, unsure: { then, activity: { ...activity, name: found.part.name }, ...(found.lesson !== name && { of: found.lesson }), when, at } };
    const again: PartSheet = { ...part, unsure: { then: 'repeat lesson', when, at } };
    return change ? marked(again, markOf(change, 'if unsure, the lesson again')) : again;
}

/** For the sentence of a change: whose repeat it takes away. `before`: the lessons as they were. */
export function lostRepeats(course: WorkingCourse, before: readonly LessonSheet[]): string {
    const titles = before.flatMap(old => course.sheet(old.name)?.parts.flatMap(part => {
        const was = part.unsure?.then === 'repeat lesson' ? old.parts.find(({ name }) => name === part.name) : undefined;
        return was?.unsure?.then === 'repeat' ? [course.partTitle(part)] : [];
    }) ?? []);
    return titles.length === 0 ? '' : lostInWords(titles);
}

function lostInWords(titles: readonly string[]): string {
    return `; whoever is unsure at ${listing(titles.map(quoted))} has the whole lesson again instead`;
}
