import { adaptCourse } from '@haversack/language/adapting/adapt-course';
import type { AppliedChange } from '@haversack/language/adapting/adapted';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import { breaksIn, keysOf, staysWhereItWas, type Break } from './breaks.js';
import { readCourse, wordsOf, type CourseReading } from './course-reading.js';
import { CourseMemo } from './course-memo.js';
import { Stages, type Stage } from './stages.js';

/** What one change breaks: one thing that is missing or late, in all lessons in which it shows. */
export interface Broken extends Break {
    /** Lessons in which it shows, each once by what it is made of, in order; empty where it concerns the whole course. */
    lessons: readonly NonNullable<Break['shows']>[];
}

/** One change with what it breaks. */
export interface ChangeMade {
    adaptation: AdaptationSheet;
    applied: AppliedChange;
    broken: Broken[];
}

export interface CourseChanges {
    /** The course as it is written, and after all changes. */
    base: CourseReading;
    adapted: CourseReading;
    stages: Stages;
    made: ChangeMade[];
    /** Where there are more changes than are looked at one by one: what all of them break together. */
    together?: Broken[];
}

/** With more changes, what they break is told of all together: each further one would be as long to look at as all before it. */
const mostLookedAt = 100;

/** So many lessons are gone through to see which change breaks what. */
const mostRead = 200_000;

/**
 * The changes of a course one after another, each with what does not hold because of it: what does not hold in the course as it is
 * written is nobody's doing, and what a later change mends is not told. The adaptations are those of the programme. Never throws.
 */
export function changesOf(programme: Programme, course: CourseSheet, adaptations: readonly AdaptationSheet[], memo = new CourseMemo()): CourseChanges {
    return memo.of(programme, ['changes', course.name, ...adaptations.map(({ name }) => name)].join(' '), () => makeChanges(programme, course, adaptations, memo));
}

function makeChanges(programme: Programme, course: CourseSheet, adaptations: readonly AdaptationSheet[], memo: CourseMemo): CourseChanges {
    const stages = new Stages(programme, course, adaptations, memo);
    const base = baseOf(programme, course, memo);
    const adapted = readCourse(stages.last, base.words, memo);
    const fresh = newBreaks(base, adapted).map((one): Break => (one.kind === 'prerequisite-later' && one.later && staysWhereItWas(one.later, base.reading, adapted) ? { ...one, stays: true } : one));
    const isMany = stages.count > mostLookedAt || stages.count * (stages.count + base.reading.lessons.length) > mostRead;
    const blamed = isMany ? new Map<number, Break[]>() : blame(fresh, changes => breaksIn(readCourse(stages.after(changes), base.words, memo)), stages.count);
    const written = adaptations.flatMap(adaptation => adaptation.changes.map(() => adaptation));
    const made = stages.last.changes.map((applied, i): ChangeMade => ({ adaptation: written[i]!, applied, broken: grouped(blamed.get(i) ?? []) }));
    return { base: base.reading, adapted, stages, made, ...(isMany && { together: grouped(fresh) }) };
}

/** What each change breaks, by its index: the change since which it has not held. */
function blame(fresh: readonly Break[], breaksAfter: (changes: number) => Break[], count: number): Map<number, Break[]> {
    const keys = new Map<number, ReadonlySet<string>>();
    const keysAfter = (changes: number): ReadonlySet<string> => {
        let known = keys.get(changes);
        if (!known) keys.set(changes, known = new Set(breaksAfter(changes).flatMap(keysOf)));
        return known;
    };
    const blamed = new Map<number, Break[]>();
    for (const one of fresh) {
        let since = count - 1;
        while (since > 0 && keysOf(one).some(key => keysAfter(since).has(key))) since--;
        blamed.set(since, [...blamed.get(since) ?? [], one]);
    }
    return blamed;
}

/** What does not hold with these changes made and holds without them; they need not be those of the programme. */
export function brokenBy(programme: Programme, course: CourseSheet, adaptations: readonly AdaptationSheet[], memo = new CourseMemo()): { after: Stage; broken: Broken[] } {
    const base = baseOf(programme, course, memo);
    const after = adaptCourse(programme, course, adaptations, memo.passing);
    return { after, broken: grouped(newBreaks(base, readCourse(after, base.words, memo))) };
}

/** A course as it is written. */
interface Base {
    reading: CourseReading;
    words: ReadonlySet<string>;
    keys: ReadonlySet<string>;
}

function baseOf(programme: Programme, course: CourseSheet, memo: CourseMemo): Base {
    return memo.of(programme, `base ${course.name}`, () => {
        const words = memo.of(programme, 'words', () => wordsOf(programme));
        const reading = readCourse(new Stages(programme, course, [], memo).last, words, memo);
        return { reading, words, keys: new Set(breaksIn(reading).flatMap(keysOf)) };
    });
}

/** Names by which what is broken is known with other changes beside it. */
export function keysOfBroken(broken: Broken): string[] {
    return broken.lessons.length === 0 ? keysOf(broken) : broken.lessons.flatMap(shows => keysOf({ ...broken, shows }));
}

function newBreaks({ keys }: Base, adapted: CourseReading): Break[] {
    return breaksIn(adapted).filter(one => !one.moot && !keysOf(one).some(key => keys.has(key)));
}

function grouped(breaks: readonly Break[]): Broken[] {
    const groups = new Map<string, Broken & { lessons: NonNullable<Break['shows']>[] }>();
    for (const one of breaks) {
        const { kind, about, behind, shows, gone } = one;
        const key = [gone ? 'gone' : kind, about, behind ?? ''].join(' ');
        const known = groups.get(key);
        if (!known) groups.set(key, { ...one, lessons: shows ? [shows] : [] });
        else if (shows && !known.lessons.some(({ origins }) => origins.some(origin => shows.origins.includes(origin)))) known.lessons.push(shows);
    }
    return [...groups.values()];
}
