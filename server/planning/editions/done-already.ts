import type { PartMention, Side, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { LessonSheet, Mention, PartSheet } from '@haversack/language/sheets/sheet';
import { listing, quoted } from '@haversack/language/facts/wording';
import { minutesOf } from './plain.js';
import type { Touched } from './touched.js';
import { usesThing } from './uses-thing.js';

/**
 * What the new edition did that the change asks for, in words, where it does all of it and the old edition did not: then nobody needs the line any
 * more. Undefined otherwise, also in doubt.
 */
export function doneAlready(touched: Touched, change: WrittenChange): string | undefined {
    switch (change.does) {
        case 'skip lesson': return isLeftOut(touched, change.lesson) ? leftOutWords(touched, change.lesson) : undefined;
        case 'swap lesson': return isLeftOut(touched, change.lesson) && isBroughtIn(touched, change.forLesson) ? `it teaches ${lessonTitle(touched, change.forLesson)} instead of ${lessonTitle(touched, change.lesson)}` : undefined;
        case 'move lesson': return standsNow(touched, change.lesson, change.side, change.anchor) ? `it teaches ${lessonTitle(touched, change.lesson)} ${change.side} ${lessonTitle(touched, change.anchor)}` : undefined;
        case 'insert lesson': return isBroughtIn(touched, change.lesson) && standsNow(touched, change.lesson, change.side, change.anchor) ? `it teaches ${lessonTitle(touched, change.lesson)} ${change.side} ${lessonTitle(touched, change.anchor)}` : undefined;
        case 'retime lesson': {
            const { pair } = touched.lesson(change.lesson);
            return pair && minutesOf(pair.new) === change.minutes && minutesOf(pair.old) !== change.minutes ? `${quoted(pair.new.title)} takes ${change.minutes} min in it` : undefined;
        }
        case 'retime activity': {
            const { pair } = touched.part(change.activity);
            return pair && pair.new.minutes === change.minutes && pair.old.minutes !== change.minutes ? `${partTitle(touched, change.activity)} takes ${change.minutes} min in it` : undefined;
        }
        case 'skip activity': return partLeftOut(touched, change.activity);
        case 'move activity': return partStandsNow(touched, change.activity, change.side, change.anchor) ? `${partTitle(touched, change.activity)} comes ${change.side} ${partTitle(touched, change.anchor)} in it` : undefined;
        case 'swap thing': return swappedNow(touched, change);
        case 'add to lesson': return addedNow(touched, change);
        default: return undefined;
    }
}

function lessonTitle(touched: Touched, { name }: Mention): string {
    return quoted(touched.titles.lesson(name));
}

function partTitle(touched: Touched, mention: PartMention): string {
    return quoted(touched.titles.part(mention));
}

function isLeftOut(touched: Touched, mention: Mention): boolean {
    const found = touched.lesson(mention);
    const { before, after } = touched.isTaught(found);
    return found.old !== undefined && before && (!found.new || !after);
}

function leftOutWords(touched: Touched, mention: Mention): string {
    return touched.lesson(mention).new ? `it no longer teaches ${lessonTitle(touched, mention)}` : `it does not have the lesson ${lessonTitle(touched, mention)}`;
}

function isBroughtIn(touched: Touched, mention: Mention): boolean {
    const { old, new: now } = touched.lesson(mention);
    return now !== undefined && touched.course.after.includes(now) && !(old && touched.course.before.includes(old));
}

/** Whether the lesson stands right beside its anchor in the new edition and did not in the old one. */
function standsNow(touched: Touched, mention: Mention, side: Side, anchor: Mention): boolean {
    const [lesson, beside] = [touched.lesson(mention), touched.lesson(anchor)];
    return isBeside(touched.course.after, lesson.new, side, beside.new) && !isBeside(touched.course.before, lesson.old, side, beside.old);
}

function isBeside<T>(row: readonly T[], one: T | undefined, side: Side, anchor: T | undefined): boolean {
    if (one === undefined || anchor === undefined || !row.includes(one) || !row.includes(anchor)) return false;
    return row.indexOf(one) === row.indexOf(anchor) + (side === 'after' ? 1 : -1);
}

/** Where other parts came to that lesson, one of them may stand in its place: then somebody must look. */
function partLeftOut(touched: Touched, mention: PartMention): string | undefined {
    const { lesson: { pair }, old, new: now } = touched.part(mention);
    if (!pair || !old || now || touched.matched.partsOf(pair).added.length > 0) return undefined;
    return `it has no ${partTitle(touched, mention)} in ${quoted(pair.new.title)}`;
}

function partStandsNow(touched: Touched, mention: PartMention, side: Side, anchor: PartMention): boolean {
    const [part, beside] = [touched.part(mention), touched.part(anchor)];
    const row = (home: LessonSheet | undefined): readonly PartSheet[] => home?.parts ?? [];
    return isBeside(row(beside.nowIn ?? beside.lesson.new), part.new, side, beside.new) && !isBeside(row(beside.lesson.old), part.old, side, beside.old);
}

function swappedNow(touched: Touched, { thing, forThing, within }: Extract<WrittenChange, { does: 'swap thing' }>): string | undefined {
    if (within?.part) return undefined;
    const { matched, course } = touched;
    const scope = within && touched.lesson(within.lesson);
    const before = scope ? [scope.old].flatMap(one => one ?? []) : course.before;
    const after = scope ? [scope.new].flatMap(one => one ?? []) : course.after;
    const usedBefore = ({ name }: Mention): boolean => before.some(lesson => usesThing(matched.old, lesson, name));
    const usedAfter = ({ name }: Mention): boolean => after.some(lesson => usesThing(matched.now, lesson, touched.newThing(name)));
    if (!usedBefore(thing) || usedAfter(thing) || usedBefore(forThing) || !usedAfter(forThing)) return undefined;
    return `it uses ${quoted(touched.titles.thing(forThing.name))} instead of ${quoted(touched.titles.thing(thing.name))}${scope?.new ? ` in ${quoted(scope.new.title)}` : ''}`;
}

/** Only where objectives and words are all that is added: whether a step says the same is for people to judge. */
function addedNow(touched: Touched, { lesson, added }: Extract<WrittenChange, { does: 'add to lesson' }>): string | undefined {
    const { pair } = touched.lesson(lesson);
    if (!pair || [added.steps, added.needs, added.cautions, added.parts].some(list => list.length > 0)) return undefined;
    const { matched } = touched;
    const asked = [
        ...(['introduces', 'practises', 'checks'] as const).flatMap(does => added[does].map(({ name }) => ({
            says: `${does} ${quoted(matched.titleIn('new')(matched.newObjective(name)))}`,
            before: pair.old[does].some(one => one.name === name), after: pair.new[does].some(one => one.name === matched.newObjective(name))
        }))),
        ...added.words.map(({ name }) => ({ says: `teaches the word ${quoted(name)}`, before: pair.old.words.some(one => one.name === name), after: pair.new.words.some(one => one.name === name) }))
    ];
    if (asked.length === 0 || asked.some(({ after }) => !after) || asked.every(({ before }) => before)) return undefined;
    return `in it ${quoted(pair.new.title)} ${listing(asked.map(({ says }) => says))}`;
}
