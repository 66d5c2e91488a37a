import type { AdaptationSheet } from '../sheets/adaptation-sheet.js';
import type { Programme } from '../sheets/programme.js';
import type { CourseSheet, LessonSheet, Mention } from '../sheets/sheet.js';
import { adaptationsFor, wantedCourse, type AdaptedWanted } from './adaptations-for.js';
import type { Adapted, AppliedChange } from './adapted.js';
import { addToActivity, addToLesson } from './additions.js';
import { joinLessons } from './join-lessons.js';
import { insertLesson, moveLesson, skipLesson, swapLesson } from './lesson-changes.js';
import { AdaptingMemo } from './memo.js';
import { insertActivity, moveActivity, skipActivity, swapActivity } from './part-changes.js';
import { repeatsAsTaught } from './repeats.js';
import { retimeActivity, retimeLesson } from './retime.js';
import { joinActivities, splitActivity } from './split-join-parts.js';
import { splitLesson } from './split-lesson.js';
import { swapThing } from './swap-thing.js';
import { WorkingCourse, type Line, type Outcome } from './working-course.js';
import { asked, done } from './words.js';

/**
 * The course of a class with every adaptation that reaches it, one after another; undefined where none does. `memo` is kept by the caller
 * from one version of the programme to the next, so that what did not change stays the very same. Never throws.
 */
export function adaptedFor(programme: Programme, wanted: AdaptedWanted, memo = new AdaptingMemo()): Adapted | undefined {
    const adaptations = adaptationsFor(programme, wanted).filter(({ changes }) => changes.length > 0);
    const course = adaptations.length === 0 ? undefined : programme.courses.get(wantedCourse(programme, wanted) ?? '');
    return course && adaptCourse(programme, course, adaptations, memo);
}

/** A course after these adaptations, one after another. What cannot be done is idle, with its reason. Never throws. */
export function adaptCourse(programme: Programme, course: CourseSheet, adaptations: readonly AdaptationSheet[], memo = new AdaptingMemo()): Adapted {
    return memo.of(programme, [course, ...adaptations], () => adapt(programme, course, adaptations, memo));
}

function adapt(programme: Programme, course: CourseSheet, adaptations: readonly AdaptationSheet[], memo: AdaptingMemo): Adapted {
    const working = new WorkingCourse(programme, course, memo);
    for (const adaptation of adaptations) {
        for (const change of adaptation.changes) {
            const line: Line = { adaptation, change, place: { uri: adaptation.uri, range: change.head } };
            const applied: AppliedChange = { ...line, says: '', touched: [] };
            const outcome = make(working, line, applied);
            if ('idle' in outcome) Object.assign(applied, { says: asked(change, working), idle: outcome.idle }, outcome.at && { idleAt: outcome.at }, outcome.unknown && { unknown: true });
            else Object.assign(applied, { says: outcome.says ?? done(change, working), touched: outcome.touched });
            working.changes.push(applied);
        }
    }
    return finished(working);
}

function make(course: WorkingCourse, line: Line, applied: AppliedChange): Outcome {
    const { change } = line;
    switch (change.does) {
        case 'skip lesson': return skipLesson(course, change, applied);
        case 'skip activity': return skipActivity(course, change, line);
        case 'swap thing': return swapThing(course, change, line);
        case 'swap lesson': return swapLesson(course, change, line, applied);
        case 'swap activity': return swapActivity(course, change, line);
        case 'move lesson': return moveLesson(course, change, line);
        case 'move activity': return moveActivity(course, change, line);
        case 'split lesson': return splitLesson(course, change, line);
        case 'split activity': return splitActivity(course, change, line);
        case 'join lessons': return joinLessons(course, change, line);
        case 'join activities': return joinActivities(course, change, line);
        case 'insert lesson': return insertLesson(course, change, line);
        case 'insert activity': return insertActivity(course, change, line);
        case 'retime lesson': return retimeLesson(course, change, line);
        case 'retime activity': return retimeActivity(course, change, line);
        case 'add to lesson': return addToLesson(course, change, line);
        case 'add to activity': return addToActivity(course, change, line);
    }
}

function finished(working: WorkingCourse): Adapted {
    const { programme, base } = working;
    const all = working.all();
    followWhatIsTaught(working);
    repeatsAsTaught(working);
    teachNothingWithoutParts(working);
    const sheets = new Map<string, LessonSheet>();
    for (const { name } of all) {
        const sheet = working.sheets.get(name);
        if (sheet && sheet !== programme.lessons.get(name)) sheets.set(name, sheet);
    }
    const course = courseOf(working);
    const played = new Set(working.games.size === 0 ? [] : all.flatMap(({ name }) => working.sheet(name)?.parts.flatMap(part => (part.kind === 'game' ? [part.name] : [])) ?? []));
    const games = [...working.games].filter(([name]) => played.has(name));
    const isSame = course === base && sheets.size === 0 && games.length === 0;
    return {
        programme: isSame ? programme : {
            ...programme,
            lessons: sheets.size === 0 ? programme.lessons : withMore(programme.lessons, sheets),
            courses: course === base ? programme.courses : new Map([...programme.courses, [course.name, course]]),
            games: games.length === 0 ? programme.games : new Map([...programme.games, ...games])
        },
        course, base,
        changes: working.changes,
        madeOf: new Map(all.map(({ name, madeOf }) => [name, madeOf])),
        leftOut: working.leftOut
    };
}

function withMore<T>(all: ReadonlyMap<string, T>, more: ReadonlyMap<string, T>): Map<string, T> {
    const both = new Map(all);
    for (const [name, sheet] of more) both.set(name, sheet);
    return both;
}

/** The base itself where the same lines stand in the same order. */
function courseOf({ base, units, memo }: WorkingCourse): CourseSheet {
    const isSame = units.every((unit, i) => {
        const { lessons } = base.units[i]!;
        return unit.length === lessons.length && unit.every(({ name, mention }, k) => mention === lessons[k] && mention.name === name);
    });
    if (isSame) return base;
    const lines = units.flatMap(unit => [unit.length, ...unit.flatMap(({ name, mention }) => [name, mention])]);
    return memo.of(base, lines, () => ({
        ...base, units: base.units.map((unit, i) => ({ ...unit, lessons: units[i]!.map(({ name, mention }): Mention => (mention.name === name ? mention : { ...mention, name })) }))
    }));
}

/** A lesson whose last part has gone elsewhere introduces, practises and checks nothing any more. */
function teachNothingWithoutParts(working: WorkingCourse): void {
    for (const { name, madeOf } of working.all()) {
        if (!isEmptied(working.sheet(name), madeOf, working.programme)) continue;
        working.change(name, ['emptied'], sheet => ({ ...sheet, introduces: [], practises: [], checks: [], words: [] }));
    }
}

/** Whether changes have taken every part of a lesson that had some. `madeOf`: lessons that it was made of. */
export function isEmptied(sheet: LessonSheet | undefined, madeOf: readonly string[], { lessons }: Programme): boolean {
    return sheet?.parts.length === 0 && madeOf.some(name => (lessons.get(name)?.parts.length ?? 0) > 0);
}

/** A lesson that follows one in pieces follows the last of them; one that follows a joined lesson waits for the whole. */
function followWhatIsTaught(working: WorkingCourse): void {
    const now = new Map<string, string>();
    for (const { name, madeOf } of working.all()) {
        for (const own of madeOf) {
            if (own === name) now.delete(own);
            else now.set(own, name);
        }
    }
    if (now.size === 0) return;
    for (const { name, madeOf } of working.all()) {
        const follows = working.sheet(name)?.follows;
        if (!follows?.some(({ name: other }) => now.has(other))) continue;
        const others = follows.filter(({ name: other }) => now.has(other) && !madeOf.includes(other));
        if (others.length === 0) continue;
        const key = others.map(({ name: other }) => `${other} ${now.get(other)}`).join();
        working.change(name, ['follows', key], own => ({
            ...own, follows: own.follows.map(mention => (others.includes(mention) ? { ...mention, name: now.get(mention.name)! } : mention))
                .filter((mention, i, list) => mention.name !== name && list.findIndex(other => other.name === mention.name) === i)
        }));
    }
}
