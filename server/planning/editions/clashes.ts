import type { PartMention, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, MaterialSheet, Mention, PartSheet } from '@haversack/language/sheets/sheet';
import type { Difference, DifferenceKind } from '../edition-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import { alikeTexts } from './alike.js';
import { lessonDifferences, partChanges } from './lesson-differences.js';
import { needDifferences } from './need-differences.js';
import { partTitle } from '../part-title.js';
import type { FoundLesson, FoundPart, Touched } from './touched.js';
import { usesThing } from './uses-thing.js';
import { sameNumber } from './words.js';

/** A text that keeps so many of its words says the same for somebody who leaves it out or puts something in its place. */
const lightlyReworded = 0.7;

/** What the new edition did to the very things that a change is about, in words; empty where the change can be made as before. */
export function clashesOf(touched: Touched, change: WrittenChange): string[] {
    switch (change.does) {
        case 'skip lesson': return lessonClashes(touched, change.lesson, contents);
        case 'swap lesson': return [...lessonClashes(touched, change.lesson, contents), ...brought(touched, change.forLesson)];
        case 'retime lesson': case 'split lesson': return [
            ...lessonClashes(touched, change.lesson, [...lengths, 'part-moved']),
            ...(change.does === 'split lesson' ? partClashes(touched, { lesson: change.lesson, part: change.after, at: change.after.at }, () => []) : [])
        ];
        case 'join lessons': return [change.lesson, ...change.others].flatMap(lesson => lessonClashes(touched, lesson, lengths));
        case 'move lesson': return [...lessonClashes(touched, change.lesson, []), ...lessonClashes(touched, change.anchor, []), ...lessonMoves(touched, change.lesson, change.anchor)];
        case 'insert lesson': return [...brought(touched, change.lesson), ...lessonClashes(touched, change.anchor, []), ...lessonMoves(touched, undefined, change.anchor)];
        case 'add to lesson': return [...lessonClashes(touched, change.lesson, []), ...(change.anchor ? partClashes(touched, { lesson: change.lesson, part: change.anchor, at: change.anchor.at }, () => []) : []), ...additions(touched, change)];
        case 'skip activity': return partClashes(touched, change.activity, substantial);
        case 'swap activity': return [...partClashes(touched, change.activity, substantial), ...partClashes(touched, change.forActivity, () => [])];
        case 'retime activity': case 'split activity': return partClashes(touched, change.activity, onlyLength);
        case 'join activities': return [change.activity, ...change.others].flatMap(part => partClashes(touched, part, onlyLength));
        case 'add to activity': return partClashes(touched, change.activity, () => []);
        case 'insert activity': return [...partClashes(touched, change.activity, () => []), ...partClashes(touched, change.anchor, () => []), ...partMoves(touched, undefined, change.anchor)];
        case 'move activity': return [...partClashes(touched, change.activity, () => []), ...partClashes(touched, change.anchor, () => []), ...partMoves(touched, change.activity, change.anchor)];
        case 'swap thing': return thingClashes(touched, change);
    }
}

/** What a lesson is made of and teaches. */
const contents: readonly DifferenceKind[] = ['part-added', 'part-removed', 'lesson-objective'];
const lengths: readonly DifferenceKind[] = ['minutes', 'part-retimed', 'part-added', 'part-removed'];

function lessonClashes(touched: Touched, mention: Mention, kinds: readonly DifferenceKind[]): string[] {
    const found = touched.lesson(mention);
    const gone = missing(touched, found);
    if (gone !== undefined) return [gone];
    if (!found.pair || kinds.length === 0) return [];
    const told = lessonDifferences(touched.matched, found.pair, []).flatMap(({ differences }) => differences).filter(({ kind }) => kinds.includes(kind));
    return told.map(({ says, kind }) => (kind === 'minutes' || kind === 'lesson-objective' ? `${quoted(found.pair!.new.title)}: ${lower(says)}` : says));
}

function missing(touched: Touched, found: FoundLesson): string | undefined {
    if (!found.old && !found.new) return `neither edition has a lesson ${found.name}`;
    if (!found.new) return `the new edition does not have the lesson ${quoted(found.old!.title)}`;
    const { before, after } = touched.isTaught(found);
    return before && !after ? `the new edition no longer teaches ${quoted(found.new.title)}` : undefined;
}

function brought(touched: Touched, mention: Mention): string[] {
    const found = touched.lesson(mention);
    if (!found.old && !found.new) return [`neither edition has a lesson ${found.name}`];
    if (!found.new) return [`the new edition does not have the lesson ${quoted(found.old!.title)}`];
    return !touched.course.before.includes(found.old!) && touched.course.after.includes(found.new) ? [`the new edition teaches ${quoted(found.new.title)} itself`] : [];
}

type Tells = (differences: readonly Difference[]) => string[];

const onlyLength: Tells = differences => differences.filter(({ kind }) => kind === 'part-retimed').map(({ says }) => says);

/** All but light rewording. */
const substantial: Tells = differences => differences.filter(({ kind, before, after }) => kind !== 'reworded' || before === undefined || after === undefined || alikeTexts(before, after) < lightlyReworded).map(({ says }) => says);

function partClashes(touched: Touched, mention: PartMention, tells: Tells): string[] {
    const found = touched.part(mention);
    const { lesson, old, new: now, pair, name } = found;
    const away = touched.lesson(mention.lesson);
    if (!away.old && !away.new) return [`neither edition has a lesson ${mention.lesson.name}`];
    if (!now) return [lesson.new ? `the new edition has no ${quoted(old ? partTitle(touched.matched.old, old) : name)} in ${quoted(lesson.new.title)}` : `the new edition does not have the lesson ${quoted(lesson.old?.title ?? lesson.name)}`];
    if (!pair || !lesson.pair) return [];
    return tells(partChanges(touched.matched, pair, { old: lesson.pair.old, new: found.nowIn ?? lesson.pair.new }));
}

/** A lesson that both moved is a clash; an anchor that moved takes what hangs on it along. */
function lessonMoves(touched: Touched, moved: Mention | undefined, anchor: Mention): string[] {
    const there = touched.course.movedLessons;
    const stands = (mention: Mention): string => {
        const now = touched.lesson(mention).new!;
        const before = touched.course.after[touched.course.after.indexOf(now) - 1];
        return `${quoted(now.title)} is now taught ${before ? `after ${quoted(before.title)}` : 'first of all'}`;
    };
    const isMoved = (mention: Mention): boolean => there.has(touched.lesson(mention).new?.name ?? '');
    if (isMoved(anchor)) touched.elsewhere.push(stands(anchor));
    return moved && isMoved(moved) ? [stands(moved)] : [];
}

function partMoves(touched: Touched, moved: PartMention | undefined, anchor: PartMention): string[] {
    const isMoved = ({ lesson, new: now }: FoundPart): boolean => lesson.pair !== undefined && now !== undefined && touched.course.movedParts(lesson.pair).has(now);
    const stands = ({ lesson, new: now }: FoundPart): string => {
        const before = lesson.new?.parts[lesson.new.parts.indexOf(now!) - 1];
        const title = (part: PartSheet): string => quoted(partTitle(touched.matched.now, part));
        return `${title(now!)} now comes ${before ? `after ${title(before)}` : 'first in its lesson'}`;
    };
    const hook = touched.part(anchor);
    if (isMoved(hook)) touched.elsewhere.push(stands(hook));
    const part = moved && touched.part(moved);
    return part && isMoved(part) ? [stands(part)] : [];
}

/** The new edition says itself what the adaptation adds, or says more of it. */
function additions(touched: Touched, { lesson, added }: Extract<WrittenChange, { does: 'add to lesson' }>): string[] {
    const { pair } = touched.lesson(lesson);
    if (!pair) return [];
    const { matched } = touched;
    const objectives = (['introduces', 'practises', 'checks'] as const).flatMap(does => added[does].flatMap(({ name }) => {
        const now = matched.newObjective(name);
        const has = (sheet: LessonSheet, called: string): boolean => sheet[does].some(one => one.name === called);
        return has(pair.new, now) && !has(pair.old, name) ? [`${quoted(pair.new.title)} itself now ${does} ${quoted(matched.titleIn('new')(now))}`] : [];
    }));
    const changed = needDifferences(matched, pair);
    const needs = added.needs.flatMap(need => need.options.slice(0, 1)).flatMap(({ thing }) => {
        const title = touched.titles.thing(thing.name);
        return changed.filter(({ says }) => says.startsWith(`${title}: `)).map(({ says }) => `${quoted(pair.new.title)}: ${says}`);
    });
    return [...objectives, ...needs];
}

function thingClashes(touched: Touched, { thing, forThing, ratio, within }: Extract<WrittenChange, { does: 'swap thing' }>): string[] {
    const { matched } = touched;
    const clashes: string[] = [];
    for (const { name } of [thing, forThing]) {
        if (thingNamed(matched.old, name) && !thingNamed(matched.now, touched.newThing(name))) clashes.push(`the new edition does not have ${quoted(matched.titleIn('old')(name))}`);
    }
    if (clashes.length > 0) return clashes;
    if (within) {
        const lost = within.part ? partClashes(touched, { lesson: within.lesson, part: within.part, at: within.part.at }, () => []) : lessonClashes(touched, within.lesson, []);
        if (lost.length > 0) return lost;
    }
    const uses = (programme: Programme, lessons: readonly LessonSheet[], name: string): boolean => lessons.some(lesson => usesThing(programme, lesson, name));
    const scope = within && touched.lesson(within.lesson);
    const before = scope ? [scope.old].flatMap(one => one ?? []) : touched.course.before;
    const after = scope ? [scope.new].flatMap(one => one ?? []) : touched.course.after;
    if (uses(matched.old, before, thing.name) && !uses(matched.now, after, touched.newThing(thing.name))) {
        return [`${quoted(touched.titles.thing(thing.name))} is no longer used${scope?.new ? ` in ${quoted(scope.new.title)}` : ''}`];
    }
    return [...clashes, ...ratioClashes(touched, thing.name, forThing.name, ratio !== undefined)];
}

/** A written ratio holds as long as both are counted as before; without one the stand-in's counts. */
function ratioClashes({ matched, titles }: Touched, thing: string, other: string, written: boolean): string[] {
    const pairOf = (name: string): [MaterialSheet | undefined, MaterialSheet | undefined] => [matched.old.materials.get(name), matched.now.materials.get(matched.newThing(name))];
    const measure = (sheet: MaterialSheet): string => sheet.measured?.unit ?? sheet.counted?.many ?? 'pieces';
    if (written) {
        return [thing, other].flatMap(name => {
            const [old, now] = pairOf(name);
            return old && now && measure(old) !== measure(now) ? [`${quoted(now.title)} is now given in ${measure(now)}, no longer in ${measure(old)}`] : [];
        });
    }
    const [old, now] = pairOf(thing);
    const before = old?.standIns.find(one => one.thing.name === other);
    const after = now?.standIns.find(one => one.thing.name === matched.newThing(other));
    if (!before || (after && sameNumber(before.give, after.give) && sameNumber(before.replaces, after.replaces))) return [];
    const title = quoted(titles.thing(other));
    return [after ? `${after.give} of ${title} now do for ${after.replaces} of ${quoted(now!.title)}, before ${before.give} for ${before.replaces}` : `${title} no longer stands in for ${quoted(titles.thing(thing))}`];
}

function lower(text: string): string {
    return text.charAt(0).toLowerCase() + text.slice(1);
}
