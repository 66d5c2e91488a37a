import type { ChangeMark } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Need, PartSheet, Step } from '../sheets/sheet.js';
import { fromFile, marked, originsOf, without } from './working-course.js';

/** Names in braces in these steps and those under them. */
export function namesIn(steps: readonly Step[]): Set<string> {
    const names = new Set<string>();
    const read = (step: Step): void => {
        for (const part of step.prose.parts) if ('name' in part) names.add(part.name);
        step.under.forEach(read);
    };
    steps.forEach(read);
    return names;
}

export function needsAny({ options }: Need, names: ReadonlySet<string>): boolean {
    return options.some(({ thing }) => names.has(thing.name));
}

/** Things that these needs ask for. */
export function thingsOf(needs: readonly Need[]): Set<string> {
    return new Set(needs.flatMap(({ options }) => options.map(({ thing }) => thing.name)));
}

/** Alike for needs that ask for as much of the same. */
export function asMuch({ options, amount, per, optional }: Need): string {
    return JSON.stringify([options.map(({ thing, parts }) => [thing.name, parts.map(({ name }) => name)]), amount?.value, amount?.unit, per, optional]);
}

/**
 * A part as it stands in another lesson: it leads to its own file, remembers what it was written as, and brings what it speaks of from
 * the needs of its whole lesson, unless that is handed back and the other lesson has as much.
 */
export function broughtInto(part: PartSheet, from: LessonSheet, into: LessonSheet, usedUp: (name: string) => boolean): PartSheet {
    const file = part.uri ?? from.uri;
    const spoken = namesIn(part.steps);
    const own = thingsOf(part.needs);
    const there = new Set(into.needs.map(asMuch));
    const isThere = (need: Need): boolean => there.has(asMuch(need)) && !need.options.some(({ thing }) => usedUp(thing.name));
    const brought = from.needs.filter(need => needsAny(need, spoken) && !needsAny(need, own) && !isThere(need)).map(need => fromFile(need, from.uri, file));
    return {
        ...without(part, 'uri'),
        ...(file !== into.uri && { uri: file }),
        ...(brought.length > 0 && { needs: [...part.needs, ...brought] }),
        from: originsOf(part, from.name)
    };
}

/** A part whose name `others` have, with another that `more` do not have either; a game keeps the name of the game that is played. */
export function namedApart(part: PartSheet, others: readonly PartSheet[], more: readonly PartSheet[] = []): PartSheet {
    if (part.kind === 'game' || !others.some(({ name }) => name === part.name)) return part;
    const taken = new Set([...others, ...more].map(({ name }) => name));
    for (let n = 2; ; n++) {
        const name = `${part.name}-${n}`;
        if (!taken.has(name)) return { ...part, name };
    }
}

/** A lesson without some of its parts, and without what it needed for these alone. */
export function withoutParts(lesson: LessonSheet, gone: ReadonlySet<PartSheet>, mark: (says: string) => ChangeMark, titleOf: (part: PartSheet) => string): LessonSheet {
    const parts = lesson.parts.filter(part => !gone.has(part));
    const spoken = namesIn([...lesson.steps, ...parts.flatMap(({ steps }) => steps)]);
    const lost = namesIn([...gone].flatMap(({ steps }) => steps));
    const needs = lesson.needs.filter(need => needsAny(need, spoken) || !needsAny(need, lost));
    return mendUnsure({ ...lesson, parts, ...(needs.length < lesson.needs.length && { needs }) }, lesson, mark, titleOf);
}

/** Where children who are unsure would meet a part that the lesson no longer has, they meet the lesson again. */
export function mendUnsure(lesson: LessonSheet, before: LessonSheet, mark: (says: string) => ChangeMark, titleOf: (part: PartSheet) => string): LessonSheet {
    const isThere = (name: string, parts: readonly PartSheet[]): boolean => parts.some(part => part.name === name);
    const isLost = ({ unsure }: PartSheet): boolean => unsure?.then === 'repeat' && !isThere(unsure.activity.name, lesson.parts) && isThere(unsure.activity.name, before.parts);
    if (!lesson.parts.some(isLost)) return lesson;
    const parts = lesson.parts.map((part): PartSheet => {
        const { unsure } = part;
        if (unsure?.then !== 'repeat' || !isLost(part)) return part;
        const lost = before.parts.find(({ name }) => name === unsure.activity.name)!;
        return marked({ ...part, unsure: { then: 'repeat lesson', when: unsure.when, at: unsure.at } }, mark(`if unsure, the lesson again instead of “${titleOf(lost)}”`));
    });
    return { ...lesson, parts };
}
