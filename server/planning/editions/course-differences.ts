import type { CourseSheet, LessonSheet, Place } from '@haversack/language/sheets/sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Difference, EditionGroup } from '../edition-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import type { Matched } from './matched.js';
import { movedItems } from './order.js';
import { minutesOf, placeIn, proseForPeople } from './plain.js';
import { taughtIn, type CoursePair } from './scope.js';
import { comings, difference, group, instead, insteadOf, minutesText, sureness } from './words.js';

const declaredAt = ({ uri, at }: { uri: string; at: Place['range'] }): Place => placeIn(uri, at);

/**
 * Which lessons came, went, have another title or stand elsewhere; what only those need who write, the names of lessons, comes last. `told`: names
 * that have been told for another course.
 */
export function orderDifferences(matched: Matched, { old, new: now }: CoursePair, told = new Set<string>()): EditionGroup[] {
    const before = taughtIn(old, matched.old);
    const after = taughtIn(now, matched.now);
    const title = (now ?? old)?.title;
    const sides = { old: old && declaredAt(old), new: now && declaredAt(now) };
    if (!old || !now) return group({ title, ...sides, differences: [courseComes(old, now, before, after)] });
    const differences: Difference[] = [
        ...goneLessons(matched, before, after, old), ...newLessons(matched, before, after, now), ...otherTitles(matched, before, after),
        ...moves(matched, before, after, old, now), ...otherUnits(matched, before, after, old, now)
    ];
    const [minutesBefore, minutesAfter] = [total(before), total(after)];
    if (minutesBefore !== minutesAfter || before.length !== after.length) {
        const lessons = insteadOf(before.length, after.length, 'lesson', 'lessons');
        differences.push(difference('minutes-in-all', `In all: ${listing([lessons, insteadOf(minutesBefore, minutesAfter, 'min', 'min')].flatMap(one => one ?? []))}`, sides));
    }
    differences.push(...otherNames(matched, before, after, told));
    return group({ title, ...sides, differences });
}

function courseComes(old: CourseSheet | undefined, now: CourseSheet | undefined, before: readonly LessonSheet[], after: readonly LessonSheet[]): Difference {
    return now
        ? difference('course', `A new course: ${counted(after.length, 'lesson')}, ${minutesText(total(after))}`, { new: declaredAt(now) })
        : difference('course', `The course is gone, with ${counted(before.length, 'lesson')}`, old && { old: declaredAt(old) });
}

function total(lessons: readonly LessonSheet[]): number {
    return lessons.reduce((sum, lesson) => sum + minutesOf(lesson), 0);
}

function goneLessons(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[], course: CourseSheet): Difference[] {
    const names = new Set(after.map(({ name }) => name));
    return before.filter(({ name }) => !matched.lessonPair(name) || !names.has(matched.newLesson(name))).map(lesson => {
        const kept = matched.lessonPair(lesson.name);
        return difference('lesson-removed', `${quoted(lesson.title)} is no longer taught; it came ${where(lesson, before)}${kept ? '; it is still written, but no line of the course names it' : ''}`, {
            old: lineOf(course, lesson.name) ?? declaredAt(lesson), new: kept && declaredAt(kept.new)
        });
    });
}

function newLessons(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[], course: CourseSheet): Difference[] {
    const known = new Set(before.map(({ name }) => matched.lessonPair(name)?.new.name));
    return after.filter(({ name }) => !known.has(name)).map(lesson =>
        difference('lesson-added', `${quoted(lesson.title)} is new, ${minutesText(minutesOf(lesson))}, ${where(lesson, after)}`, { new: lineOf(course, lesson.name) ?? declaredAt(lesson) }));
}

function otherTitles(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[]): Difference[] {
    return before.flatMap(old => {
        const { new: now, recognised } = matched.lessonPair(old.name) ?? {};
        if (!now || !after.includes(now) || old.title === now.title) return [];
        const says = old.name === now.name ? `${quoted(old.title)} is now called ${quoted(now.title)}` : `${quoted(old.title)} (${old.name}) is now ${quoted(now.title)} (${now.name})`;
        return [difference('lesson-renamed', says, { old: declaredAt(old), new: declaredAt(now), why: recognised && sureness(recognised) })];
    });
}

/** Lessons that kept their title: their name is what other lines call them by. */
function otherNames(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[], told: Set<string>): Difference[] {
    return before.flatMap(old => {
        const { new: now, recognised } = matched.lessonPair(old.name) ?? {};
        if (!now || !after.includes(now) || old.title !== now.title || old.name === now.name || told.has(old.name)) return [];
        told.add(old.name);
        return [difference('lesson-renamed', `${quoted(old.title)} is now written as ${now.name}, not ${old.name}`, { old: declaredAt(old), new: declaredAt(now), why: recognised && sureness(recognised) })];
    });
}

function moves(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[], old: CourseSheet, now: CourseSheet): Difference[] {
    const both = before.filter(lesson => after.some(({ name }) => matched.lessonPair(lesson.name)?.new.name === name));
    const place = new Map(after.map(({ name }, index) => [name, index]));
    const moved = movedItems(both.map(({ name }) => place.get(matched.newLesson(name))!));
    return both.flatMap((lesson, index) => {
        const pair = matched.lessonPair(lesson.name);
        if (!moved.has(index) || !pair) return [];
        return [difference('lesson-moved', `${quoted(pair.new.title)} is now taught ${where(pair.new, after)}, no longer ${where(lesson, before)}`, {
            old: lineOf(old, lesson.name), new: lineOf(now, pair.new.name)
        })];
    });
}

/** Lessons that stay where they are in the row and belong to another unit. */
function otherUnits(matched: Matched, before: readonly LessonSheet[], after: readonly LessonSheet[], old: CourseSheet, now: CourseSheet): Difference[] {
    const unitOf = (course: CourseSheet, name: string): CourseSheet['units'][number] | undefined => course.units.find(({ lessons }) => lessons.some(lesson => lesson.name === name));
    const byUnits = new Map<string, { from: string; to: string; lessons: LessonSheet[] }>();
    for (const lesson of before) {
        const pair = matched.lessonPair(lesson.name);
        const [from, to] = [unitOf(old, lesson.name), pair && unitOf(now, pair.new.name)];
        if (!pair || !after.includes(pair.new) || !from || !to || from.name === to.name || from.title === to.title) continue;
        const key = `${from.name} ${to.name}`;
        const entry = byUnits.get(key) ?? { from: from.title, to: to.title, lessons: [] };
        entry.lessons.push(pair.new);
        byUnits.set(key, entry);
    }
    return [...byUnits.values()].map(({ from, to, lessons }) => difference('unit',
        `${listing(lessons.map(({ title }) => quoted(title)))} ${lessons.length === 1 ? 'belongs' : 'belong'} to the unit ${quoted(to)}, no longer to ${quoted(from)}`,
        { new: lessons[0] && lineOf(now, lessons[0].name) }));
}

/** "after A", for a lesson in a row. */
function where(lesson: LessonSheet, row: readonly LessonSheet[]): string {
    const index = row.indexOf(lesson);
    const before = row[index - 1];
    const next = row[index + 1];
    return before ? `after ${quoted(before.title)}` : next ? `at the very start, before ${quoted(next.title)}` : 'as the only lesson';
}

/** The line of a course that names a lesson. */
export function lineOf({ uri, units }: CourseSheet, lesson: string): Place | undefined {
    const line = units.flatMap(({ lessons }) => lessons).find(({ name }) => name === lesson);
    return line && placeIn(uri, line.at);
}

/** Facts of the course itself: its edition, ages, kits, units and what is said of it. */
export function courseFacts(matched: Matched, { old, new: now }: CoursePair): EditionGroup[] {
    if (!old || !now) return [];
    const sides = { old: declaredAt(old), new: declaredAt(now) };
    const differences: Difference[] = [];
    const tell = (says: string | undefined, more = sides): void => { if (says !== undefined) differences.push(difference('course', says, more)); };
    const fact = (what: string, before: string | undefined, after: string | undefined): void => {
        const told = instead(before, after);
        if (told !== undefined) tell(`${what}: ${told}`);
    };
    fact('Title', old.title, now.title);
    fact('Edition', old.edition, now.edition);
    fact('Ages', agesText(old), agesText(now));
    const kits = (course: CourseSheet, titleOf: (name: string) => string): string[] => course.uses.map(({ kit, count, per }) => `${count} ${titleOf(kit.name)} ${per.who === 'all' ? 'in all' : per.who === 'family' ? 'per family' : `per ${per.of} learners`}`);
    const uses = comings(kits(old, name => matched.titleIn('new')(matched.newThing(name))), kits(now, matched.titleIn('new')), one => one, one => one);
    for (const one of uses.added) tell(`Kits: now ${one}`);
    for (const one of uses.gone) tell(`Kits: no longer ${one}`);
    const about = (course: CourseSheet, side: 'old' | 'new'): string | undefined => course.about && proseForPeople(course.about, matched.titleIn(side));
    if (about(old, 'old') !== about(now, 'new')) differences.push(difference('course', 'What is said of the course is worded anew', { ...sides, before: about(old, 'old'), after: about(now, 'new') }));
    const units = (course: CourseSheet): string => listing(course.units.map(({ title }) => quoted(title)));
    fact('Units', units(old) || undefined, units(now) || undefined);
    for (const unit of now.units) {
        const former = old.units.find(({ name }) => name === unit.name);
        const [before, after] = [former?.about && proseForPeople(former.about, matched.titleIn('old')), unit.about && proseForPeople(unit.about, matched.titleIn('new'))];
        if (former && before !== after) differences.push(difference('course', `What is said of the unit ${quoted(unit.title)} is worded anew`, { before, after, old: placeIn(old.uri, former.at), new: placeIn(now.uri, unit.at) }));
    }
    return group({ title: now.title, ...sides, differences });
}

function agesText({ ages }: CourseSheet): string | undefined {
    return ages && (ages.to === undefined ? `${ages.from} and up` : `${ages.from} to ${ages.to}`);
}

export function allLessons(programme: Programme, courses: readonly (CourseSheet | undefined)[]): LessonSheet[] {
    return courses.flatMap(course => taughtIn(course, programme));
}
