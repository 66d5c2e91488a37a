import type { ChangeMark } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Need, PartSheet, Step } from '../sheets/sheet.js';
import { fromFile, marked, markOf, originsOf, without, type Line, type WorkingCourse } from './working-course.js';

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

/**
 * A lesson without some of its parts, and without what it needed for these alone. What is used up goes unless a step still uses it: `about` and `why`
 * only tell of it. Where parts that stay use it too, nobody has said how much each of them takes: it is counted in full on both sides, because a
 * little too much is better than nothing to work with.
 */
export function withoutParts(lesson: LessonSheet, gone: ReadonlySet<PartSheet>, { usedUp, mark, titleOf }: Removing): LessonSheet {
    const parts = lesson.parts.filter(part => !gone.has(part));
    const steps = [...lesson.steps, ...parts.flatMap(part => part.steps)];
    const spoken = namesIn(steps);
    const used = namesIn(steps.filter(({ word }) => word !== 'about' && word !== 'why'));
    const lost = namesIn([...gone].flatMap(part => part.steps));
    const needs = lesson.needs.filter(need => needsAny(need, asksForUsedUp(need, usedUp) ? used : spoken) || !needsAny(need, lost));
    return mendUnsure({ ...lesson, parts, ...(needs.length < lesson.needs.length && { needs }) }, lesson, mark, titleOf);
}

interface Removing {
    usedUp: (name: string) => boolean;
    mark: (says: string) => ChangeMark;
    titleOf: (part: PartSheet) => string;
}

export function removing(course: WorkingCourse, line: Line): Removing {
    return { usedUp: course.usedUp, mark: says => markOf(line, says), titleOf: part => course.partTitle(part) };
}

function asksForUsedUp({ options }: Need, usedUp: (name: string) => boolean): boolean {
    return options.some(({ thing }) => usedUp(thing.name));
}

/**
 * A line of a lesson that several of its parts have brought along to one other lesson is a line of that lesson: what is used up was asked for once, for
 * all of them. A copy of a part that is there already takes its own.
 */
export function askedOnce(lesson: LessonSheet, usedUp: (name: string) => boolean): LessonSheet {
    const lineOf = (need: Need, file = lesson.uri): string => `${need.uri ?? file}#${need.at.start.line}`;
    const origin = (part: PartSheet): string => JSON.stringify(originsOf(part, lesson.name));
    const carriers = new Map<string, { part: PartSheet; need: Need }[]>();
    for (const part of lesson.parts) {
        for (const need of part.needs) {
            if (!asksForUsedUp(need, usedUp)) continue;
            const line = lineOf(need, part.uri);
            carriers.set(line, [...carriers.get(line) ?? [], { part, need }]);
        }
    }
    const own = new Set(lesson.needs.map(need => lineOf(need)));
    const shared = new Set<Need>();
    const needs = [...lesson.needs];
    for (const [line, all] of carriers) {
        const others = new Set(own.has(line) ? lesson.parts.filter(part => !all.some(carrier => carrier.part === part)).map(origin) : []);
        const first = all.filter(({ part }, i) => !others.has(origin(part)) && all.findIndex(other => origin(other.part) === origin(part)) === i);
        if (first.length < (own.has(line) ? 1 : 2)) continue;
        for (const { need } of first) shared.add(need);
        if (!own.has(line)) needs.push(fromFile(first[0]!.need, first[0]!.part.uri ?? lesson.uri, lesson.uri));
    }
    if (shared.size === 0) return lesson;
    const copies = new Set<string>();
    const parts = lesson.parts.map(part => {
        const kept = part.needs.filter(need => {
            const key = `${lineOf(need, part.uri)} ${origin(part)}`;
            const isFirst = !copies.has(key);
            copies.add(key);
            return !shared.has(need) || !isFirst;
        });
        return kept.length === part.needs.length ? part : { ...part, needs: kept };
    });
    return { ...lesson, needs, parts };
}

/** Where children who are unsure would meet a part that the lesson no longer has, they meet the lesson again. */
export function mendUnsure(lesson: LessonSheet, before: LessonSheet, mark: (says: string) => ChangeMark, titleOf: (part: PartSheet) => string): LessonSheet {
    const isThere = (name: string, parts: readonly PartSheet[]): boolean => parts.some(part => part.name === name);
    const isLost = ({ unsure }: PartSheet): boolean => unsure?.then === 'repeat' && unsure.of === undefined && !isThere(unsure.activity.name, lesson.parts) && isThere(unsure.activity.name, before.parts);
    if (!lesson.parts.some(isLost)) return lesson;
    const parts = lesson.parts.map((part): PartSheet => {
        const { unsure } = part;
        if (unsure?.then !== 'repeat' || !isLost(part)) return part;
        const lost = before.parts.find(({ name }) => name === unsure.activity.name)!;
        return marked({ ...part, unsure: { then: 'repeat lesson', when: unsure.when, at: unsure.at } }, mark(`if unsure, the lesson again instead of “${titleOf(lost)}”`));
    });
    return { ...lesson, parts };
}
