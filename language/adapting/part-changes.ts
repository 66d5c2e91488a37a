import type { Change, ChangeMark, PartMention, Side } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, PartSheet } from '../sheets/sheet.js';
import { askedOnce, broughtInto, namedApart, namesIn, removing, thingsOf, withoutParts } from './moved-parts.js';
import { lostRepeats } from './repeats.js';
import { asWritten } from './swap-thing.js';
import { markOf, marked, originsOf, type FoundPart, type Idle, type Line, type Outcome, type WorkingCourse } from './working-course.js';
import { listing, quoted } from '../facts/wording.js';
import { done, thingInWords } from './words.js';

/** Changes of which parts a lesson has, and in which order. */

type Of<D extends Change['does']> = Extract<Change, { does: D }>;

export function skipActivity(course: WorkingCourse, { activity }: Of<'skip activity'>, line: Line): Outcome {
    const found = course.parts(activity);
    if (found.length === 0) return course.missingPart(activity);
    const says = `${quoted(course.part(activity))} is left out`;
    const before = sheetsOf(course, found);
    for (const [name, parts] of byLesson(found)) takeOut(course, name, parts, line, says);
    return { touched: lessonsOf(found), says: `${done(line.change, course)}${lostRepeats(course, before)}` };
}

export function moveActivity(course: WorkingCourse, { activity, side, anchor }: Of<'move activity'>, line: Line): Outcome {
    const found = course.parts(activity);
    const beside = anchorOf(course, anchor, side);
    if (found.length === 0) return course.missingPart(activity);
    if ('idle' in beside) return beside;
    if (found.some(({ part }) => part === beside.part)) return { idle: 'an activity cannot stand beside itself' };
    const target = course.sheet(beside.lesson)!;
    const own = new Set(found.map(({ part }) => part));
    const place = `${side} ${quoted(course.part(anchor))}`;
    if (found.every(({ lesson }) => lesson === beside.lesson)) {
        const kept = target.parts.filter(part => !own.has(part));
        const parts = besideOf(kept, beside.part, side, target.parts.filter(part => own.has(part)));
        if (parts.every((part, i) => part === target.parts[i])) return { idle: 'it stands there already' };
    }
    const says = `moved to ${place}`;
    const sheets = byLesson(found);
    const moved = [...sheets].map(([name, parts]) => ({ sheet: course.sheet(name)!, parts }));
    const isAway = moved.some(({ sheet }) => sheet !== target);
    course.change(beside.lesson, [line.change, says, ...moved.map(({ sheet }) => sheet), ...course.thingsIn([target, ...moved.map(({ sheet }) => sheet)])], sheet => {
        const kept = sheet.parts.filter(part => !own.has(part));
        const mark = (from: LessonSheet): ChangeMark => markOf(line, from === sheet ? says : `from ${quoted(from.title)}`);
        const placed: PartSheet[] = [];
        for (const { sheet: from, parts } of moved) {
            for (const part of parts) placed.push(marked(from === sheet ? part : namedApart(broughtInto(part, from, sheet, course.usedUp), [...sheet.parts, ...placed]), mark(from)));
        }
        return askedOnce({ ...sheet, parts: besideOf(kept, beside.part, side, placed) }, course.usedUp);
    });
    if (isAway) {
        const away = `${quoted(course.part(activity))} moves to ${quoted(target.title)}`;
        for (const [name, parts] of sheets) if (name !== beside.lesson) takeOut(course, name, parts, line, away);
    }
    const before = moved.map(({ sheet }) => sheet);
    return { touched: [...new Set([beside.lesson, ...lessonsOf(found)])], says: `${done(line.change, course)}${countedInBoth(course, moved, beside.lesson)}${lostRepeats(course, before)}` };
}

/** What a moved part brings along, used up, and its former lesson goes on asking for: nobody has said how much each of them takes. */
function countedInBoth(course: WorkingCourse, moved: readonly { sheet: LessonSheet; parts: readonly PartSheet[] }[], into: string): string {
    const there = course.sheet(into)!;
    const asked = thingsOf([...there.needs, ...there.parts.flatMap(({ needs }) => needs)]);
    const names = moved.filter(({ sheet }) => sheet.name !== into).flatMap(({ sheet, parts }) => {
        const spoken = namesIn(parts.flatMap(({ steps }) => steps));
        return [...thingsOf(course.sheet(sheet.name)!.needs)].filter(name => course.usedUp(name) && spoken.has(name) && asked.has(name));
    });
    return names.length === 0 ? '' : `; each of the two lessons counts its own ${listing([...new Set(names)].map(name => thingInWords(course, name)))}`;
}

function sheetsOf(course: WorkingCourse, found: readonly FoundPart[]): LessonSheet[] {
    return lessonsOf(found).map(name => course.sheet(name)!);
}

export function insertActivity(course: WorkingCourse, { activity, side, anchor }: Of<'insert activity'>, line: Line): Outcome {
    const beside = anchorOf(course, anchor, side);
    if ('idle' in beside) return beside;
    const twice = alreadyIn(course, activity, beside.lesson);
    if (twice) return twice;
    const source = sourceOf(course, activity, beside.lesson);
    if ('idle' in source) return source;
    course.change(beside.lesson, [line.change, ...source.sheets, ...course.thingsIn(source.sheets)], sheet => ({
        ...sheet, parts: besideOf(sheet.parts, beside.part, side, copies(course, source, sheet, sheet.parts, markOf(line, 'brought in')))
    }));
    return { touched: [beside.lesson] };
}

export function swapActivity(course: WorkingCourse, { activity, forActivity }: Of<'swap activity'>, line: Line): Outcome {
    const found = course.parts(activity);
    const [first] = found;
    if (!first) return course.missingPart(activity);
    if (activity.lesson.name === forActivity.lesson.name && activity.part.name === forActivity.part.name) return { idle: 'it is the same activity' };
    const twice = alreadyIn(course, forActivity, first.lesson);
    if (twice) return twice;
    const source = sourceOf(course, forActivity, first.lesson);
    if ('idle' in source) return source;
    const before = sheetsOf(course, found);
    const says = `instead of ${quoted(course.part(activity))}`;
    for (const [name, parts] of byLesson(found)) {
        if (name !== first.lesson) takeOut(course, name, parts, line, `${quoted(course.part(activity))} is left out`);
    }
    const gone = new Set(found.filter(({ lesson }) => lesson === first.lesson).map(({ part }) => part));
    course.change(first.lesson, [line.change, says, ...source.sheets, ...course.thingsIn([course.sheet(first.lesson)!, ...source.sheets])], sheet => {
        const without = withoutParts(sheet, gone, removing(course, line));
        const placed = copies(course, source, without, without.parts, markOf(line, says));
        return { ...without, parts: [...without.parts.slice(0, first.index), ...placed, ...without.parts.slice(first.index)] };
    });
    return { touched: lessonsOf(found), says: `${done(line.change, course)}${lostRepeats(course, before)}` };
}

/** A lesson does not get an activity twice. */
function alreadyIn(course: WorkingCourse, { lesson, part, at }: PartMention, into: string): Idle | undefined {
    const sheet = course.sheet(into);
    const isThere = sheet?.parts.some(own => originsOf(own, into).some(from => from.lesson === lesson.name && from.part === part.name));
    return isThere ? { at, idle: `${quoted(sheet!.title)} has ${quoted(course.part({ lesson, part }))} already` } : undefined;
}

/** Parts with the lessons they are copied from. */
interface Source {
    parts: { part: PartSheet; from: LessonSheet }[];
    sheets: LessonSheet[];
}

/** A part as the course teaches it now; of a lesson that it does not teach, as it is written. */
function sourceOf(course: WorkingCourse, mention: PartMention, into: string): Source | Idle {
    const found = course.parts(mention);
    const taught = found.map(({ lesson, part }) => ({ part, from: course.sheet(lesson)! }));
    if (taught.length > 0) return { parts: taught, sheets: [...new Set(taught.map(({ from }) => from))] };
    const from = asWritten(course, mention.lesson.name, into);
    if (!from) return course.missing(mention.lesson);
    const part = from.parts.find(({ name }) => name === mention.part.name);
    return part ? { parts: [{ part, from }], sheets: [from] } : { idle: `${quoted(from.title)} has no part “${mention.part.name}”`, unknown: true };
}

function copies(course: WorkingCourse, { parts }: Source, into: LessonSheet, others: readonly PartSheet[], mark: ChangeMark): PartSheet[] {
    const made: PartSheet[] = [];
    for (const { part, from } of parts) made.push(marked(namedApart(alone(broughtInto(part, from, into, course.usedUp)), [...others, ...made]), mark));
    return made;
}

/** Away from its lesson, a checkpoint can only repeat the lesson it stands in. */
function alone(part: PartSheet): PartSheet {
    return part.unsure?.then === 'repeat' ? { ...part, unsure: { then: 'repeat lesson', when: part.unsure.when, at: part.unsure.at } } : part;
}

function anchorOf(course: WorkingCourse, anchor: PartMention, side: Side): FoundPart | Idle {
    const found = course.parts(anchor);
    return (side === 'after' ? found.at(-1) : found[0]) ?? course.missingPart(anchor);
}

function besideOf(parts: readonly PartSheet[], anchor: PartSheet, side: Side, placed: readonly PartSheet[]): PartSheet[] {
    const at = parts.indexOf(anchor) + (side === 'after' ? 1 : 0);
    return [...parts.slice(0, at), ...placed, ...parts.slice(at)];
}

function takeOut(course: WorkingCourse, name: string, parts: readonly PartSheet[], line: Line, says: string): void {
    const gone = new Set(parts);
    course.change(name, [line.change, says, 'out', ...course.thingsIn([course.sheet(name)!])], sheet => marked(withoutParts(sheet, gone, removing(course, line)), markOf(line, says)));
}

export function byLesson(found: readonly FoundPart[]): Map<string, PartSheet[]> {
    const lessons = new Map<string, PartSheet[]>();
    for (const { lesson, part } of found) lessons.set(lesson, [...lessons.get(lesson) ?? [], part]);
    return lessons;
}

export function lessonsOf(found: readonly FoundPart[]): string[] {
    return [...new Set(found.map(({ lesson }) => lesson))];
}

