import { declaresOnlyLessons, type Programme } from '@haversack/language/sheets/programme';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { chooseClass, type Audience, type Wanted } from '../audience.js';
import { adaptingOf, type PlanningCache } from '../cache.js';
import { coverageFigures, coverageGrid, moveInGrid, type CoverageGrid } from '../coverage.js';
import { Namings } from '../coverage/namings.js';
import type { CoverageFigures } from '../coverage-figures.js';
import { Holdings } from '../holdings.js';
import type { ScheduleFigures } from '../schedule-figures.js';
import type { CourseOrder } from '../schedule/course-order.js';
import { planSchedule } from '../schedule.js';
import { movedSchedule } from '../schedule/moved.js';
import { Attendance } from './attendance.js';
import { ClassPlan } from './class-plan.js';
import { ClassTerm } from './class-term.js';
import { sharingWith } from '../sharing.js';
import { Cupboard } from './cupboard.js';
import { NumberReader } from './lesson-needs.js';

/** What a class is taught: the programme with the changes that reach it. */
interface Teaching {
    programme: Programme;
    class?: string;
    course?: string;
}

/** Lessons before and after. */
type Changed = readonly (readonly [LessonSheet, LessonSheet])[];

/**
 * The terms of a programme's classes, kept by the caller from one version of the programme to the next. After a change within
 * lessons only what it touches is counted again: those lessons as each class is taught them, for each class the things they use, and schedule and
 * coverage where a lesson's parts, minutes, order or objectives changed; a lesson that only stands in other lines is led to there. Any other
 * change begins anew.
 */
export class TermPlan {
    private programme: Programme | undefined;
    private readonly namings = new Namings();
    /** By what is taught and who is there. */
    private attendances = new Map<string, Attendance>();
    /** By what is taught. */
    private readers = new Map<string, NumberReader>();
    private orders = new Map<object | undefined, CourseOrder>();
    /** Of this version of the programme. */
    private audiences = new Map<string, Audience>();
    private teachings = new Map<string, Teaching>();
    private schedules = new Map<string, ScheduleFigures>();
    private coverages = new Map<string, { grid: CoverageGrid; figures: CoverageFigures }>();
    private plans = new Map<string, ClassPlan>();
    private terms = new Map<string, ClassTerm>();
    private readonly keys = new WeakMap<ClassPlan, string>();

    constructor(private readonly cache: PlanningCache) {}

    /** The programme that later calls are about. */
    at(programme: Programme): this {
        const { programme: before } = this;
        if (programme === before) return this;
        const changed = before && changedLessons(before, programme);
        if (changed) this.continueWith(programme, { before, changed });
        else this.begin(programme);
        return this;
    }

    schedule(wanted: Wanted): ScheduleFigures {
        const key = keyOf(wanted);
        let schedule = this.schedules.get(key);
        if (!schedule) this.schedules.set(key, schedule = planSchedule(this.programme!, wanted, { orders: this.orders, audience: this.audience(wanted) }));
        return schedule;
    }

    coverage(wanted: Wanted): CoverageFigures {
        const key = keyOf(wanted);
        let coverage = this.coverages.get(key);
        if (!coverage) {
            const grid = coverageGrid(this.audience(wanted), this.schedule(wanted), { namings: this.namings });
            this.coverages.set(key, coverage = { grid, figures: coverageFigures(grid) });
        }
        return coverage.figures;
    }

    /** `schedule` must be of the same programme and class; without it one is made and kept. */
    term(wanted: Wanted, schedule = this.schedule(wanted)): ClassTerm {
        const key = keyOf(wanted);
        const kept = this.terms.get(key);
        if (kept?.plan.schedule === schedule) return kept;
        const audience = this.audience(wanted);
        const sharing = sharingWith(this.programme!, audience.class).map(({ name }) => ({ name, audience: this.audience({ class: name }) }));
        const holdings = new Holdings(audience.programme, audience, sharing.map(other => other.audience));
        const plan = this.plan(key, audience, schedule, holdings);
        const others = sharing.map(other => {
            const wantedToo = { class: other.name };
            const all = [other.audience, ...[audience, ...sharing.map(one => one.audience)].filter(one => one !== other.audience)];
            return this.plan(keyOf(wantedToo), other.audience, this.schedule(wantedToo), new Holdings(other.audience.programme, all[0]!, all.slice(1)));
        });
        const term = new ClassTerm(audience.programme, plan, new Cupboard(plan, others), holdings);
        this.terms.set(key, term);
        return term;
    }

    /** The programme as a class is taught it. */
    taught(wanted: Wanted): Programme {
        return this.audience(wanted).programme;
    }

    private audience(wanted: Wanted): Audience {
        const key = keyOf(wanted);
        let audience = this.audiences.get(key);
        if (!audience) {
            this.audiences.set(key, audience = chooseClass(this.programme!, wanted, adaptingOf(this.cache)));
            this.teachings.set(key, { programme: audience.programme, class: audience.class?.name, course: audience.course?.name });
        }
        return audience;
    }

    private plan(key: string, audience: Audience, schedule: ScheduleFigures, holdings: Holdings): ClassPlan {
        const kept = this.plans.get(key);
        if (kept?.schedule === schedule) return kept;
        const taught = taughtKey(audience);
        let reader = this.readers.get(taught);
        if (!reader) this.readers.set(taught, reader = new NumberReader(audience.programme));
        const people = JSON.stringify([taught, audience.people.crowds.map(({ learners, adults, groupsOf, clock }) => [learners, adults, groupsOf, clock])]);
        let attendance = this.attendances.get(people);
        if (!attendance) this.attendances.set(people, attendance = new Attendance(audience.people.crowds));
        const plan = new ClassPlan(audience.programme, audience, schedule, holdings, attendance, reader, this.cache);
        this.keys.set(plan, key);
        this.plans.set(key, plan);
        return plan;
    }

    private begin(programme: Programme): void {
        this.programme = programme;
        this.readers = new Map();
        this.attendances = new Map();
        this.planAnew();
    }

    private planAnew(): void {
        this.orders = new Map();
        this.audiences = new Map();
        this.teachings = new Map();
        this.schedules = new Map();
        this.coverages = new Map();
        this.plans = new Map();
        this.terms = new Map();
    }

    private continueWith(programme: Programme, since: { before: Programme; changed: Changed }): void {
        this.programme = programme;
        const next = this.taughtNext(programme, since);
        if (!next) return this.begin(programme);
        const all = new Set([...next.values()].map(({ changed }) => changed));
        if ([...all].some(changed => changed.some(([before, after]) => taughtAs(before) !== taughtAs(after))) || !this.move(next)) return this.planAnew();
        this.orders = new Map();
        this.audiences = new Map();
        const touched = new Map<ClassPlan, string[]>();
        for (const plan of this.allPlans()) {
            const { programme: taught, changed } = next.get(this.keys.get(plan)!)!;
            plan.continueIn(taught);
            touched.set(plan, changed.flatMap(([, lesson]) => plan.recount(lesson, taught)));
        }
        for (const term of this.terms.values()) {
            term.programme = term.plan.programme;
            term.forget(term.cupboard.members.flatMap(plan => touched.get(plan) ?? []));
        }
        for (const [key, teaching] of this.teachings) teaching.programme = next.get(key)!.programme;
    }

    /** What each class is taught now, and the lessons in which that differs; undefined where a class's course is made up otherwise. */
    private taughtNext(programme: Programme, { before, changed }: { before: Programme; changed: Changed }): Map<string, { programme: Programme; changed: Changed }> | undefined {
        const next = new Map<string, { programme: Programme; changed: Changed }>();
        const known = new Map<Programme, Map<Programme, Changed>>([[before, new Map([[programme, changed]])]]);
        for (const [key, { programme: former, class: name, course }] of this.teachings) {
            const taught = adaptedFor(programme, { class: name, course }, adaptingOf(this.cache))?.programme ?? programme;
            const own = known.get(former)?.get(taught) ?? changedAdapted(former, taught, course);
            if (!own) return undefined;
            known.set(former, (known.get(former) ?? new Map<Programme, Changed>()).set(taught, own));
            next.set(key, { programme: taught, changed: own });
        }
        return next;
    }

    /** Lessons that stand in other lines: schedules, coverages and plans are the same elsewhere. False where one has to be made anew. */
    private move(next: ReadonlyMap<string, { changed: Changed }>): boolean {
        const placed = new Map<Changed, ReadonlyMap<string, LessonSheet>>();
        const movedOf = (key: string): ReadonlyMap<string, LessonSheet> => {
            const { changed } = next.get(key)!;
            let moved = placed.get(changed);
            if (!moved) placed.set(changed, moved = new Map(changed.filter(([before, after]) => placedAs(before) !== placedAs(after)).map(([, lesson]) => [lesson.name, lesson])));
            return moved;
        };
        const plans = this.allPlans();
        const schedules = new Map<ScheduleFigures, ScheduleFigures>();
        for (const [key, schedule] of [...this.schedules, ...[...plans].map(plan => [this.keys.get(plan)!, plan.schedule] as const)]) {
            if (schedules.has(schedule)) continue;
            const lessons = movedOf(key);
            const moved = lessons.size === 0 ? schedule : movedSchedule(schedule, lessons);
            if (!moved) return false;
            schedules.set(schedule, moved);
        }
        for (const [key, schedule] of this.schedules) this.schedules.set(key, schedules.get(schedule)!);
        for (const plan of plans) if (schedules.get(plan.schedule) !== plan.schedule) plan.follow(schedules.get(plan.schedule)!);
        for (const [key, { grid }] of this.coverages) {
            const lessons = movedOf(key);
            if (lessons.size === 0) continue;
            for (const lesson of lessons.values()) moveInGrid(grid, lesson, this.namings);
            this.coverages.set(key, { grid, figures: coverageFigures(grid) });
        }
        return true;
    }

    private allPlans(): Set<ClassPlan> {
        return new Set([...this.plans.values(), ...[...this.terms.values()].flatMap(term => term.cupboard.members)]);
    }
}

/** The kept plan of a cache, for this programme. */
export function termPlanOf(cache: PlanningCache, programme: Programme): TermPlan {
    cache.terms ??= new TermPlan(cache);
    return cache.terms.at(programme);
}

function keyOf({ class: name, course }: Wanted): string {
    return `${name ?? ''} ${course ?? ''}`;
}

/** The lessons that differ, before and after; undefined where anything else differs too. */
function changedLessons(before: Programme, after: Programme): Changed | undefined {
    if (before.files.size !== after.files.size || before.attachments.size !== after.attachments.size) return undefined;
    for (const [key, attachment] of after.attachments) if (before.attachments.get(key) !== attachment) return undefined;
    const changed: (readonly [LessonSheet, LessonSheet])[] = [];
    for (const [uri, file] of after.files) {
        const former = before.files.get(uri);
        if (former === file) continue;
        if (!former || !declaresOnlyLessons(file) || !declaresOnlyLessons(former) || former.lessons.length !== file.lessons.length) return undefined;
        for (const [i, lesson] of file.lessons.entries()) {
            const own = former.lessons[i]!;
            if (own.name !== lesson.name) return undefined;
            if (after.lessons.get(lesson.name) === lesson && own !== lesson) changed.push([own, lesson]);
        }
    }
    return changed;
}

/** The same for a programme as a class is taught it: undefined where its course has other lessons or its games are others. */
function changedAdapted(before: Programme, after: Programme, course: string | undefined): Changed | undefined {
    if (lineUp(before, course) !== lineUp(after, course) || before.lessons.size !== after.lessons.size) return undefined;
    if (before.games !== after.games) for (const [name, game] of after.games) if (before.games.get(name) !== game) return undefined;
    const changed: (readonly [LessonSheet, LessonSheet])[] = [];
    for (const [name, lesson] of after.lessons) {
        const former = before.lessons.get(name);
        if (!former) return undefined;
        if (former !== lesson) changed.push([former, lesson]);
    }
    return changed;
}

function lineUp({ courses }: Programme, course: string | undefined): string {
    return courses.get(course ?? '')?.units.map(({ lessons }) => lessons.map(({ name }) => name).join()).join('; ') ?? '';
}

/** Alike for classes that are taught the same lessons: those that the same adaptations reach. */
function taughtKey({ course, adapted }: Audience): string {
    return adapted ? JSON.stringify([course?.name, ...new Set(adapted.changes.map(({ adaptation }) => adaptation.name))]) : '';
}

/** All of a lesson that decides on a schedule and a coverage: alike for lessons with which they are the same, but for places. */
function taughtAs({ name, title, uri, draft, follows, introduces, practises, checks, parts }: LessonSheet): string {
    return JSON.stringify(
        [name, title, uri, draft, follows, introduces, practises, checks, parts.map(({ kind, name: part, title: partTitle, minutes, unsure }) => [kind, part, partTitle, minutes, unsure])],
        (key, value: unknown) => (key === 'at' ? undefined : value)
    );
}

/** The places of a lesson that a schedule and a coverage lead to. */
function placedAs({ at, follows, introduces, practises, checks, parts }: LessonSheet): string {
    return JSON.stringify([at, follows, introduces, practises, checks, parts.map(({ at: partAt, head, uri, unsure }) => [partAt, head, uri, unsure])]);
}
