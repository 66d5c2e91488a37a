import type { Change, PartMention } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Need, PartSheet } from '../sheets/sheet.js';
import { broughtInto, mendUnsure, namedApart, removing, thingsOf, withoutParts } from './moved-parts.js';
import { byLesson, lessonsOf } from './part-changes.js';
import { lostRepeats } from './repeats.js';
import { fromFile, markOf, marked, originsOf, without, type Line, type Outcome, type WorkingCourse } from './working-course.js';
import { listing, quoted } from '../facts/wording.js';
import { done, minutesInWords } from './words.js';

/** Two parts of one: what is handed back is needed by both, what is used up is counted with the first; the steps stand in both. */
export function splitActivity(course: WorkingCourse, { activity, minutes }: Extract<Change, { does: 'split activity' }>, line: Line): Outcome {
    const found = course.parts(activity);
    const [one] = found;
    if (!one) return course.missingPart(activity);
    if (found.length > 1) return { idle: 'another change has split it already' };
    const { part, lesson, index } = one;
    const title = quoted(course.partTitle(part));
    if (part.minutes === undefined) return { idle: `${title} says no minutes` };
    if (!(minutes > 0)) return { idle: 'there is nothing before its first minute' };
    if (minutes >= part.minutes) return { idle: `${title} takes only ${minutesInWords(part.minutes)}` };
    const game = part.kind === 'game' ? course.gameNamed(part.name) : undefined;
    const things = [...thingsOf(part.needs)].map(name => course.thingNamed(name));
    const says = `${minutesInWords(minutes)} of ${minutesInWords(part.minutes)}`;
    course.change(lesson, [line.change, says, game, ...things], sheet => {
        const [first, second] = splitPart(part, sheet, minutes, ({ options }) => options.every(({ thing }) => course.usedUp(thing.name)));
        const rest = minutesInWords(part.minutes! - minutes);
        const pieces = [marked(first, markOf(line, says)), marked(second, markOf(line, `the other ${rest}`))];
        return { ...sheet, parts: [...sheet.parts.slice(0, index), ...pieces, ...sheet.parts.slice(index + 1)] };
    });
    return { touched: [lesson] };
}

function splitPart(part: PartSheet, sheet: LessonSheet, minutes: number, usedUp: (need: Need) => boolean): [PartSheet, PartSheet] {
    const rest = part.minutes! - minutes;
    const items = part.items === undefined ? undefined : Math.min(part.items, Math.max(1, Math.round((part.items * minutes) / part.minutes!)));
    const second = namedApart({ ...part, name: part.kind === 'game' ? part.name : `${part.name}-part-2` }, sheet.parts);
    return [
        { ...without(part, 'unsure'), minutes, ...(items !== undefined && { items }), ...(part.practice && { piece: { of: part.items, before: 0 } }) },
        {
            ...second, title: `${part.title}, part 2`, minutes: rest, needs: part.needs.filter(need => !usedUp(need)),
            ...(items !== undefined && { items: part.items! - items }), ...(part.practice && { piece: { of: part.items, before: items } }), from: originsOf(part, sheet.name)
        }
    ];
}

/** One part of several, in the place of the first that is named. */
export function joinActivities(course: WorkingCourse, { activity, others }: Extract<Change, { does: 'join activities' }>, line: Line): Outcome {
    const wanted = [activity, ...others];
    const again = others.find((other, i) => wanted.findIndex(one => isSame(one, other)) <= i);
    if (again) return { at: again.at, idle: isSame(again, activity) ? 'an activity cannot be joined with itself' : `the line names ${quoted(course.part(again))} twice` };
    const missing = wanted.find(mention => course.parts(mention).length === 0);
    if (missing) return course.missingPart(missing);
    const every = wanted.flatMap(mention => course.parts(mention));
    const found = every.filter((one, i) => every.findIndex(({ part, lesson, index }) => part === one.part && lesson === one.lesson && index === one.index) === i);
    const [first, ...rest] = found;
    if (!first || rest.length === 0) return { idle: 'an activity cannot be joined with itself' };
    const game = found.find(({ part }) => part.kind === 'game');
    if (game) return { idle: `${quoted(course.partTitle(game.part))} is a game, which is played by itself` };
    if (new Set(found.map(({ part }) => part.kind === 'practice')).size > 1) return { idle: 'items to practise stay apart from other activities' };
    const says = `joined with ${listing(rest.map(({ part }) => quoted(course.partTitle(part))))}`;
    const sheets = new Map(lessonsOf(found).map(name => [name, course.sheet(name)!]));
    const gone = new Set(rest.filter(({ lesson }) => lesson === first.lesson).map(({ part }) => part));
    course.change(first.lesson, [line.change, says, ...sheets.values(), ...course.thingsIn([...sheets.values()])], sheet => {
        const parts = found.map(({ part, lesson }) => (lesson === first.lesson ? { ...part, from: originsOf(part, lesson) } : broughtInto(part, sheets.get(lesson)!, sheet, course.usedUp)));
        const joined = marked(joinParts(parts, sheet.uri), markOf(line, says));
        const after = { ...sheet, parts: sheet.parts.flatMap(part => (part === first.part ? [joined] : gone.has(part) ? [] : [part])) };
        return mendUnsure(after, sheet, words => markOf(line, words), part => course.partTitle(part));
    });
    for (const [name, parts] of byLesson(rest)) {
        if (name === first.lesson) continue;
        const away = `${listing(parts.map(part => quoted(course.partTitle(part))))} ${parts.length === 1 ? 'moves' : 'move'} to ${quoted(sheets.get(first.lesson)!.title)}`;
        course.change(name, [line.change, away, ...course.thingsIn([sheets.get(name)!])], sheet => marked(withoutParts(sheet, new Set(parts), removing(course, line)), markOf(line, away)));
    }
    const lost = lostRepeats(course, [...sheets.values()]);
    return { touched: lessonsOf(found), ...(lost !== '' && { says: `${done(line.change, course)}${lost}` }) };
}

function joinParts(parts: readonly PartSheet[], lessonUri: string): PartSheet {
    const first = parts[0]!;
    const into = first.uri ?? lessonUri;
    const from = <T extends { uri?: string }>(pick: (part: PartSheet) => readonly T[]): T[] => parts.flatMap(part => pick(part).map(line => fromFile(line, part.uri ?? lessonUri, into)));
    const timed = parts.flatMap(({ minutes }) => minutes ?? []);
    const items = parts.flatMap(part => part.items ?? []);
    const unsure = parts.find(part => part.unsure)?.unsure;
    // The pieces of a split practice have the same lines.
    const practice = [...new Set(parts.flatMap(part => part.practice ?? []))];
    return {
        ...without(first, 'piece'),
        minutes: timed.length === 0 ? undefined : timed.reduce((sum, minutes) => sum + minutes, 0),
        steps: from(({ steps }) => steps),
        needs: handedOnce(from(({ needs }) => needs)),
        cautions: from(({ cautions }) => cautions),
        ...(items.length > 0 && { items: items.reduce((sum, count) => sum + count, 0) }),
        ...(practice.length > 0 && { practice }),
        ...(unsure && { unsure }),
        from: parts.flatMap(part => part.from ?? [])
    };
}

function isSame(one: PartMention, other: PartMention): boolean {
    return one.lesson.name === other.lesson.name && one.part.name === other.part.name;
}

/** Lines that ask for the very same stand once where the piece of a split part has come back to it. */
function handedOnce(needs: readonly Need[]): Need[] {
    return needs.filter((need, i) => needs.indexOf(need) === i);
}
