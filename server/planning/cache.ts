import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { GameSheet, LessonSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import type { Audience } from './audience.js';
import type { LessonDemand } from './demand.js';
import { CourseMemo } from './ledger/course-memo.js';
import type { TermPlan } from './supplies/term-plan.js';

/** Plans for so many different classes are kept for each lesson; more would be stale ones. */
const keptAudiences = 6;

/** What a computed demand was made from besides its lesson. */
interface Source {
    kind: 'thing' | 'game' | 'kit' | 'class' | 'course';
    name: string;
    sheet: object | undefined;
}

interface Entry {
    sources: Source[];
    demand: LessonDemand;
}

/**
 * Keeps what each lesson needs from one plan to the next. Keyed by the lesson's sheet, so a new version of a file forgets its
 * own; an entry also remembers every other sheet it was made from and counts only while they are all the same.
 */
export interface PlanningCache {
    demands: WeakMap<LessonSheet, Map<string, Entry>>;
    /** Stock and buying of each class over its term. */
    terms?: TermPlan;
    /** The same for each class as if nothing were changed for it, by class and course. */
    unadapted?: Map<string, PlanningCache>;
    /** What was worked out of adapted courses. */
    courses?: CourseMemo;
}

export function newPlanningCache(): PlanningCache {
    return { demands: new WeakMap() };
}

/** The sheets that adaptations have made. */
export function adaptingOf(cache: PlanningCache): AdaptingMemo {
    return (cache.courses ??= new CourseMemo()).adapting;
}

/** Looks names up in a programme and notes what it looked at. */
export class Reading {
    readonly sources: Source[] = [];

    constructor(readonly programme: Programme) {}

    thing(name: string): ThingSheet | undefined {
        return this.note('thing', name, thingNamed(this.programme, name));
    }

    game(name: string): GameSheet | undefined {
        return this.note('game', name, this.programme.games.get(name));
    }

    /** What is at hand depends on the classes that have the cupboard, their courses and every kit. */
    holdings(audiences: readonly Audience[]): void {
        for (const audience of audiences) {
            if (audience.class) this.note('class', audience.class.name, audience.class);
            // Of a course only the kits matter here, and these no adaptation changes.
            if (audience.course) this.note('course', audience.course.name, audience.course.uses);
        }
        for (const kit of this.programme.kits.values()) this.note('kit', kit.name, kit);
    }

    private note<T extends object>(kind: Source['kind'], name: string, sheet: T | undefined): T | undefined {
        this.sources.push({ kind, name, sheet });
        return sheet;
    }
}

function current(programme: Programme, source: Source): object | undefined {
    switch (source.kind) {
        case 'thing': return thingNamed(programme, source.name);
        case 'game': return programme.games.get(source.name);
        case 'kit': return programme.kits.get(source.name);
        case 'class': return programme.classes.get(source.name);
        case 'course': return programme.courses.get(source.name)?.uses;
    }
}

/** The kept demand, or a fresh one that is kept. `key` names the audience: who is there, which class and course. */
export function keptDemand(
    cache: PlanningCache, programme: Programme, lesson: LessonSheet, key: string, compute: (reading: Reading) => LessonDemand
): LessonDemand {
    const entries = cache.demands.get(lesson) ?? new Map<string, Entry>();
    const kept = entries.get(key);
    if (kept && kept.sources.every(s => current(programme, s) === s.sheet)) return kept.demand;
    const reading = new Reading(programme);
    const demand = compute(reading);
    entries.delete(key);
    entries.set(key, { sources: reading.sources, demand });
    const [oldest] = entries.keys();
    if (entries.size > keptAudiences && oldest !== undefined) entries.delete(oldest);
    cache.demands.set(lesson, entries);
    return demand;
}
