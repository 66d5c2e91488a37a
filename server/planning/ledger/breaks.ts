import type { ConsequenceKind } from '../ledger-figures.js';
import type { CourseReading, ReadLesson } from './course-reading.js';

/** Something that does not hold in a stage of the course, whatever brought it about. */
export interface Break {
    kind: ConsequenceKind;
    /** The objective, lesson or word that is missing or comes too late. */
    about: string;
    /** The objective that builds on it. */
    behind?: string;
    /** The lesson in which it shows; absent where it concerns the whole course. */
    shows?: ReadLesson;
    /** Lessons that practise or check what no lesson introduces. */
    users?: readonly ReadLesson[];
    /** The lesson that brings it, where that comes later. */
    later?: ReadLesson;
    /** What that lesson does with the objective. */
    does?: 'practises' | 'checks';
    /** Nothing of the objective is left: a fact to know, and nothing to mend. */
    gone?: true;
    /** Lessons still ask for it, though none introduces it. */
    asked?: true;
    /** Where a lesson is put behind one that follows it: it is taught where the course has it all the same. */
    stays?: true;
    /** It does not matter, as nothing of the objective is left. */
    moot?: true;
}

/** All that does not hold, in the order of the lessons. */
export function breaksIn(reading: CourseReading): Break[] {
    return [...objectivesIn(reading), ...reading.lessons.flatMap(lesson => [...followsIn(lesson, reading), ...wordsIn(lesson, reading)]), ...buildsOnIn(reading)];
}

/** Names by which the same break is known in other stages; lessons count by what they are made of. */
export function keysOf({ kind, about, behind, shows, gone }: Break): string[] {
    const what = `${gone ? 'gone' : kind} ${about} ${behind ?? ''}`;
    return shows ? shows.origins.map(origin => `${what} ${origin}`) : [what];
}

function objectivesIn({ programme, introduced, practised, checked }: CourseReading): Break[] {
    const breaks: Break[] = [];
    for (const about of programme.objectives.keys()) {
        const first = introduced.get(about);
        const uses = [...(practised.get(about) ?? []).map(shows => ({ shows, does: 'practises' as const })), ...(checked.get(about) ?? []).map(shows => ({ shows, does: 'checks' as const }))];
        if (!first) breaks.push({ kind: 'no-longer-introduced', about, ...(uses.length === 0 ? { gone: true } : { users: inOrder(uses) }) });
        if (!checked.has(about)) breaks.push({ kind: 'no-longer-checked', about, ...(!first && uses.length === 0 && { moot: true }) });
        if (first) for (const { shows, does } of uses) if (shows.index < first.index) breaks.push({ kind: 'practised-too-early', about, shows, does, later: first });
    }
    return breaks;
}

function inOrder(uses: readonly { shows: ReadLesson }[]): ReadLesson[] {
    return [...new Set(uses.map(({ shows }) => shows))].sort((a, b) => a.index - b.index);
}

function followsIn(shows: ReadLesson, { lastOf }: CourseReading): Break[] {
    return shows.sheet.follows.flatMap(({ name: about }): Break[] => {
        const before = lastOf.get(about);
        if (!before) return [{ kind: 'prerequisite-left-out', about, shows }];
        const isOwn = before.origins.some(origin => shows.origins.includes(origin));
        return before.listed > shows.listed && !isOwn ? [{ kind: 'prerequisite-later', about: asWritten(about, before), shows, later: before }] : [];
    });
}

/** A piece of a split lesson is known by the lesson. */
function asWritten(name: string, { origins }: ReadLesson): string {
    return origins.length === 1 ? origins[0]! : name;
}

function wordsIn(shows: ReadLesson, { taughtWords, wordsIn: named }: CourseReading): Break[] {
    return [...named(shows)].flatMap((about): Break[] => {
        const later = taughtWords.get(about);
        return later && later.index <= shows.index ? [] : [{ kind: 'word-not-taught', about, shows, later }];
    });
}

function buildsOnIn({ programme, introduced, practised, checked }: CourseReading): Break[] {
    return [...introduced].flatMap(([behind, shows]) => (programme.objectives.get(behind)?.buildsOn ?? []).flatMap(({ name: about }): Break[] => {
        const later = introduced.get(about);
        if (later) return later.index > shows.index ? [{ kind: 'builds-on-later', about, behind, shows, later }] : [];
        return [{ kind: 'builds-on-later', about, behind, shows, ...((practised.has(about) || checked.has(about)) && { asked: true }) }];
    }));
}

/** Whether a lesson is taught behind and before the same lessons as in the course as it is written. */
export function staysWhereItWas(lesson: ReadLesson, base: CourseReading, adapted: CourseReading): boolean {
    const then = base.lastOf.get(lesson.origins[0] ?? lesson.name);
    return then !== undefined && base.lessons.every(other => {
        const now = adapted.lastOf.get(other.name);
        return !now || now === lesson || other === then || (other.index < then.index) === (now.index < lesson.index);
    });
}
