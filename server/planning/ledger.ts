import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import { chooseClass, type Wanted } from './audience.js';
import { newPlanningCache, type PlanningCache } from './cache.js';
import { dayLabel, readDay } from './calendar.js';
import type { LedgerChange, LedgerFigures } from './ledger-figures.js';
import { compareTerms } from './ledger/compare-terms.js';
import { brokenBy, changesOf, keysOfBroken, type Broken, type ChangeMade, type CourseChanges } from './ledger/consequences.js';
import { lessonChanges, minutesChange } from './ledger/lesson-changes.js';
import type { CourseReading } from './ledger/course-reading.js';
import { CourseMemo } from './ledger/course-memo.js';
import { consequenceOf } from './ledger/wording.js';
import { termPlanOf } from './supplies/term-plan.js';
import { titled } from './titled.js';
import { once, quoted } from '@haversack/language/facts/wording';

export interface LedgerOptions {
    /** Kept by the caller from one plan to the next. */
    cache?: PlanningCache;
    /** ISO date: meetings before it have been. */
    today?: string;
}

/**
 * What the adaptations of a class's course bring about: each change with its consequences, and the term before and after. Undefined where
 * no adaptation applies. Never throws.
 */
export function planLedger(programme: Programme, wanted: Wanted = {}, { cache = newPlanningCache(), today }: LedgerOptions = {}): LedgerFigures | undefined {
    const { class: group, course: taught } = chooseClass(programme, wanted);
    const course = taught && programme.courses.get(taught.name);
    const adaptations = course ? adaptationsFor(programme, { class: group?.name, course: course.name }) : [];
    if (!course || adaptations.length === 0) return undefined;
    const names = { class: group?.name, course: course.name };
    const memo = courseMemoOf(cache);
    const changes = changesOf(programme, course, adaptations, memo);
    const base = withoutChanges(programme, adaptations);
    const before = termPlanOf(unadaptedCache(cache, names, programme), base).term(names);
    const after = termPlanOf(cache, programme).term(names);
    const alone = onlyTogether(programme, course, changes, memo);
    return {
        course: titled(course), class: group && titled(group),
        adaptations: adaptations.map(one => ({ ...titled(one), edition: one.edition, ...(one.notes.length > 0 && { notes: one.notes }) })),
        changes: changes.made.map((made, index) => changeFigures(made, index, changes, broken => !alone.has(broken))),
        otherConsequences: [...changes.together ?? alone].map(broken => consequenceOf(broken, changes.base)),
        minutes: minutesChange(changes),
        ...compareTerms(before, after),
        lessons: lessonChanges(changes),
        assumptions: once([...after.plan.schedule.assumptions, ...after.cupboard.assumptions, ...tooLate(after.plan.schedule.weeks[0]?.from, today), ...tooMany(changes)])
    };
}

/** The programme as if these adaptations were not written. */
export function withoutChanges(programme: Programme, adaptations: readonly AdaptationSheet[]): Programme {
    const left = [...programme.adaptations].filter(([, adaptation]) => !adaptations.includes(adaptation));
    return { ...programme, adaptations: new Map(left) };
}

export function courseMemoOf(cache: PlanningCache): CourseMemo {
    return cache.courses ??= new CourseMemo();
}

function unadaptedCache(cache: PlanningCache, { class: name, course }: Wanted, { classes, courses }: Programme): PlanningCache {
    const caches = cache.unadapted ??= new Map<string, PlanningCache>();
    const key = `${name ?? ''} ${course ?? ''}`;
    // While somebody types a name, each letter of it would leave a whole term behind.
    for (const known of caches.keys()) {
        const [knownClass = '', knownCourse = ''] = known.split(' ');
        if (knownClass !== '' && !classes.has(knownClass) || !courses.has(knownCourse)) caches.delete(known);
    }
    let own = caches.get(key);
    if (!own) caches.set(key, own = { ...newPlanningCache(), demands: cache.demands });
    return own;
}

function changeFigures({ adaptation, applied, broken }: ChangeMade, index: number, { base, stages, together }: CourseChanges, isOwn: (broken: Broken) => boolean): LedgerChange {
    const { change, place, says, idle } = applied;
    return {
        adaptation: { name: adaptation.name, title: adaptation.title }, place, says: broken.some(({ stays }) => stays) ? asPut(change, base) ?? says : says, because: change.because, idle,
        consequences: broken.filter(isOwn).map(one => consequenceOf(one, base)),
        ...(!together && { minutes: { before: stages.minutesAfter(index), after: stages.minutesAfter(index + 1) } })
    };
}

/** Of a lesson that is moved in the list and taught where it was. */
function asPut(change: WrittenChange, { programme }: CourseReading): string | undefined {
    if (change.does !== 'move lesson') return undefined;
    const [lesson, anchor] = [change.lesson, change.anchor].map(({ name }) => quoted(programme.lessons.get(name)?.title ?? name));
    return `${lesson} is put ${change.side} ${anchor}`;
}

/** What a change does not break when it is the only one; that nothing is left of an objective stands with the last change. */
function onlyTogether(programme: Programme, course: CourseSheet, { made }: CourseChanges, memo: CourseMemo): Set<Broken> {
    const together = new Set<Broken>();
    for (const { adaptation, applied, broken } of made) {
        if (broken.length === 0) continue;
        const known = new Set(brokenBy(programme, course, [{ ...adaptation, changes: [applied.change] }], memo).broken.flatMap(keysOfBroken));
        for (const one of broken) if (!one.gone && !keysOfBroken(one).some(key => known.has(key))) together.add(one);
    }
    return together;
}

function tooLate(first: string | undefined, today: string | undefined): string[] {
    const day = today === undefined ? undefined : readDay(today);
    if (first === undefined || day === undefined || today! <= first) return [];
    return [`Meetings before ${dayLabel(day)} are counted as if the changes had been made in time.`];
}

function tooMany({ together, made }: CourseChanges): string[] {
    return together ? [`These are ${made.length} changes, too many to look at one by one: what they break is told of all together, and the minutes of each are not counted.`] : [];
}
