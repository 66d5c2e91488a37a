import type { LessonSheet, PartSheet, Unsure } from '@haversack/language/sheets/sheet';
import type { Difference, EditionGroup } from '../edition-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import type { Pair } from './alike.js';
import { cautionDifferences } from './caution-differences.js';
import type { Matched } from './matched.js';
import { needDifferences } from './need-differences.js';
import type { Does, ObjectiveShift, ObjectiveShifts } from './objective-shifts.js';
import { movedItems } from './order.js';
import { partTitle } from '../part-title.js';
import { minutesOf, placeIn } from './plain.js';
import { stepDifferences } from './step-differences.js';
import type { Wandered } from './wandered.js';
import { comings, difference, group, instead, minutesText, sureness, type Sides } from './words.js';

/**
 * What a teacher does differently in one lesson. With `shifts`, as one lesson of a whole comparison: what one edit does to several lessons, or to
 * a part and with it to its lesson, is told once.
 */
export function lessonDifferences(matched: Matched, pair: Pair<LessonSheet>, wandered: readonly Wandered[], shifts?: ObjectiveShifts): EditionGroup[] {
    if (!pair.recognised && matched.saysTheSame(pair) && gamesStand(matched, pair)) return [];
    const { old, new: now } = pair;
    const sides = { old: placeIn(old.uri, old.at), new: placeIn(now.uri, now.at) };
    const [before, after] = [minutesOf(old), minutesOf(now)];
    const length = before === after ? undefined : `he lesson takes ${minutesText(after)} instead of ${minutesText(before)}`;
    const parts = partDifferences(matched, pair, wandered);
    const cause = shifts && length !== undefined ? onlyTimed(matched, pair, parts) : undefined;
    return group({
        title: now.title, ...sides,
        differences: [
            ...(length === undefined || cause ? [] : [difference('minutes', `T${length}`, sides)]),
            ...parts.map(one => (one === cause ? { ...one, says: `${one.says}; t${length!}` } : one)),
            ...needDifferences(matched, pair),
            ...listDifferences(matched, pair, shifts),
            ...cautionDifferences(matched, old, now),
            ...stepDifferences(matched, { old: old.steps, new: now.steps }, { old: old.uri, new: now.uri }, ''),
            ...matched.partsOf(pair).pairs.flatMap(parts => withinPart(matched, parts, pair))
        ]
    });
}

/** The one line about a part from which alone the lesson's length follows. */
function onlyTimed(matched: Matched, lessons: Pair<LessonSheet>, told: readonly Difference[]): Difference | undefined {
    const { pairs, gone, added } = matched.partsOf(lessons);
    const retimed = pairs.filter(({ old, new: now }) => old.minutes !== now.minutes).length;
    if (gone.length + added.length + retimed !== 1) return undefined;
    return retimed === 1 ? told.find(({ kind }) => kind === 'part-retimed') : told[0];
}

/** Whether the games that a lesson plays ask for the same things as before: their needs are the lesson's. */
function gamesStand(matched: Matched, { old }: Pair<LessonSheet>): boolean {
    return old.parts.every(part => {
        const [before, after] = [matched.old.games.get(part.name), matched.now.games.get(part.name)];
        return part.kind !== 'game' || before === after || (before !== undefined && after !== undefined && matched.saysTheSame({ old: before, new: after }));
    });
}

/** Parts that came, went, have another name, place or length. */
function partDifferences(matched: Matched, lessons: Pair<LessonSheet>, wandered: readonly Wandered[]): Difference[] {
    const { old, new: now } = lessons;
    const { pairs, gone, added } = matched.partsOf(lessons);
    const title = titlesOf(matched);
    const at = (part: PartSheet, lesson: LessonSheet): Sides['old'] => placeIn(part.uri ?? lesson.uri, part.at);
    const differences: Difference[] = [];
    for (const part of gone) {
        const there = wandered.find(({ pair }) => pair.old === part);
        differences.push(there
            ? difference('part-moved', `${quoted(title.old(part))} now stands in the lesson ${quoted(there.to.title)}`, { old: at(part, old), new: at(there.pair.new, there.to), why: there.pair.recognised && sureness(there.pair.recognised) })
            : difference('part-removed', `${kindWord(part)} ${quoted(title.old(part))} is gone${timed(part)}`, { old: at(part, old) }));
    }
    for (const part of added) {
        const there = wandered.find(({ pair }) => pair.new === part);
        differences.push(there
            ? difference('part-moved', `${quoted(title.new(part))} stood in the lesson ${quoted(there.from.title)} before`, { old: at(there.pair.old, there.from), new: at(part, now) })
            : difference('part-added', `${kindWord(part)} ${quoted(title.new(part))} is new${timed(part)}${standing(part, now, title.new)}`, { new: at(part, now) }));
    }
    const moved = movedItems(pairs.map(pair => now.parts.indexOf(pair.new)));
    pairs.forEach(({ old: before, new: after, recognised }, index) => {
        const sides = { old: at(before, old), new: at(after, now) };
        if (title.old(before) !== title.new(after)) differences.push(difference('part-renamed', `${quoted(title.old(before))} is now called ${quoted(title.new(after))}`, { ...sides, why: recognised && sureness(recognised) }));
        if (before.kind !== after.kind) differences.push(difference('part-renamed', `${quoted(title.new(after))} is now ${article(kindWord(after).toLowerCase())}, no longer ${article(kindWord(before).toLowerCase())}`, sides));
        if (moved.has(index)) differences.push(difference('part-moved', `${quoted(title.new(after))} now comes${standing(after, now, title.new).replace(',', '')}, no longer${standing(before, old, title.old).replace(',', '')}`, sides));
        differences.push(...retimed(matched, { old: before, new: after }, lessons));
    });
    return differences;
}

function retimed(matched: Matched, { old, new: now }: Pair<PartSheet>, lessons: Pair<LessonSheet>): Difference[] {
    const told = instead(old.minutes === undefined ? undefined : minutesText(old.minutes), now.minutes === undefined ? undefined : minutesText(now.minutes));
    return told === undefined ? [] : [difference('part-retimed', `${quoted(titlesOf(matched).new(now))}: ${told}`, {
        old: placeIn(old.uri ?? lessons.old.uri, old.at), new: placeIn(now.uri ?? lessons.new.uri, now.at)
    })];
}

/** What differs in one part: how long it takes and what stands in it. */
export function partChanges(matched: Matched, parts: Pair<PartSheet>, lessons: Pair<LessonSheet>): Difference[] {
    return [...retimed(matched, parts, lessons), ...withinPart(matched, parts, lessons)];
}

function withinPart(matched: Matched, { old, new: now }: Pair<PartSheet>, lessons: Pair<LessonSheet>): Difference[] {
    const title = titlesOf(matched).new(now);
    const uris = { old: old.uri ?? lessons.old.uri, new: now.uri ?? lessons.new.uri };
    const sides = { old: placeIn(uris.old, old.at), new: placeIn(uris.new, now.at) };
    const lines = (part: PartSheet): string[] => (part.practice ?? []).map(line => practiceText(line));
    const practice = comings(lines(old), lines(now), one => one, one => one);
    const items = instead(old.items === undefined ? undefined : `${old.items} items`, now.items === undefined ? undefined : `${now.items} items`);
    const [before, after] = [old.unsure && unsureText(old.unsure, lessons.old), now.unsure && unsureText(now.unsure, lessons.new)];
    const unsure = instead(before, after);
    return [
        ...(items === undefined ? [] : [difference('practice', `${quoted(title)}: ${items}`, sides)]),
        ...practice.gone.map(line => difference('practice', `${quoted(title)}: no longer “${line}”`, sides)),
        ...practice.added.map(line => difference('practice', `${quoted(title)}: now “${line}”`, sides)),
        ...cautionDifferences(matched, { ...old, uri: uris.old }, { ...now, uri: uris.new }, quoted(title)),
        ...stepDifferences(matched, { old: old.steps, new: now.steps }, uris, title),
        ...(unsure === undefined ? [] : [difference('if-unsure', `If a child is unsure after ${quoted(title)}: ${unsure}`, sides)])
    ];
}

function practiceText({ words, numbers }: NonNullable<PartSheet['practice']>[number]): string {
    return [...words, ...numbers].join(' ');
}

/** Prerequisites, objectives, words, what is not needed, and whether it is finished. */
function listDifferences(matched: Matched, { old, new: now }: Pair<LessonSheet>, shifts?: ObjectiveShifts): Difference[] {
    const at = placeIn;
    const lists = (
        pick: (lesson: LessonSheet) => LessonSheet['follows'], renamed: (name: string) => string, kind: Difference['kind'], added: (title: string) => string, gone: (title: string) => string
    ): Difference[] => {
        const change = comings(pick(old), pick(now), ({ name }) => renamed(name), ({ name }) => name);
        return [
            ...change.added.map(one => difference(kind, added(quoted(matched.titleIn('new')(one.name))), { new: at(now.uri, one.at) })),
            ...change.gone.map(one => difference(kind, gone(quoted(matched.titleIn('old')(one.name))), { old: at(old.uri, one.at) }))
        ];
    };
    return [
        ...lists(lesson => lesson.follows, matched.newLesson, 'prerequisite', one => `Now follows ${one}`, one => `No longer follows ${one}`),
        ...(['introduces', 'practises', 'checks'] as const).flatMap(does => objectiveLines(matched, { old, new: now }, does, shifts)),
        ...lists(lesson => lesson.words, one => one, 'word', one => `Now teaches the word ${one}`, one => `No longer teaches the word ${one}`),
        ...lists(lesson => lesson.notNeeded, matched.newThing, 'not-needed', one => `${one} is now said not to be needed`, one => `${one} is no longer said not to be needed`),
        ...(old.draft === now.draft ? [] : [difference('draft', now.draft ? 'Now a draft' : 'No longer a draft', { old: at(old.uri, old.at), new: at(now.uri, now.at) })])
    ];
}

function objectiveLines(matched: Matched, { old, new: now }: Pair<LessonSheet>, does: Does, shifts: ObjectiveShifts | undefined): Difference[] {
    const { gone, added } = comings(old[does], now[does], ({ name }) => matched.newObjective(name), ({ name }) => name);
    const line = (name: string, says: (shift: ObjectiveShift | undefined) => string, sides: Sides): Difference[] => {
        const shift = shifts?.of(does, name);
        return shift?.toldAt && shift.toldAt !== now ? [] : [difference('lesson-objective', says(shift), { old: formerLine(shift), ...sides })];
    };
    return [
        ...added.flatMap(({ name, at }) => line(name, shift => `Now ${does} ${quoted(matched.titleIn('new')(name))}${shift?.toldAt ? `, which ${quoted(shifts!.titleNow(shift.gone[0]!))} did before` : ''}`, { new: placeIn(now.uri, at) })),
        ...gone.flatMap(({ name, at }) => line(matched.newObjective(name), shift => `No longer ${does} ${quoted(matched.titleIn('old')(name))}${nowDoneBy(shift)}`, { old: placeIn(old.uri, at) }))
    ];
}

/** Where the lesson that did it before said so. */
function formerLine(shift: ObjectiveShift | undefined): Sides['old'] {
    const [lesson] = shift?.toldAt ? shift.gone : [];
    const mention = lesson?.[shift!.does].find(({ name }) => name === shift!.old.name);
    return lesson && mention && placeIn(lesson.uri, mention.at);
}

function nowDoneBy(shift: ObjectiveShift | undefined): string {
    if (!shift) return '';
    return shift.toldAt ? `: ${quoted(shift.added[0]!.title)} does now` : shift.after.length === 0 ? '; no lesson does any more' : '';
}

function titlesOf(matched: Matched): Record<'old' | 'new', (part: PartSheet) => string> {
    return {
        old: part => partTitle(matched.old, part),
        new: part => partTitle(matched.now, part)
    };
}

const kindWords: Readonly<Record<PartSheet['kind'], string>> = { 'warm-up': 'Warm-up', activity: 'Activity', game: 'Game', practice: 'Practice', checkpoint: 'Closing questions' };

function kindWord({ kind }: PartSheet): string {
    return kindWords[kind];
}

function article(word: string): string {
    return word.endsWith('s') || word === 'practice' ? word : `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}

function timed({ minutes }: PartSheet): string {
    return minutes === undefined ? '' : ` (${minutesText(minutes)})`;
}

function standing(part: PartSheet, { parts }: LessonSheet, title: (part: PartSheet) => string): string {
    const before = parts[parts.indexOf(part) - 1];
    return before ? `, after ${quoted(title(before))}` : parts.length > 1 ? ', at the start of the lesson' : '';
}

function unsureText(unsure: Unsure, { parts }: LessonSheet): string {
    switch (unsure.then) {
        case 'repeat': return `repeat ${quoted(parts.find(({ name }) => name === unsure.activity.name)?.title ?? unsure.activity.name)} ${unsure.when}`;
        case 'repeat lesson': return ['repeat the lesson', unsure.when].filter(Boolean).join(' ');
        case 'revisit': return `go on and revisit in ${unsure.lessons} ${unsure.lessons === 1 ? 'lesson' : 'lessons'}`;
    }
}

