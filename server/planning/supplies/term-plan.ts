import { declaresOnlyLessons, type Programme } from '@haversack/language/sheets/programme';
import type { CourseSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { chooseClass, type Audience, type Wanted } from '../audience.js';
import type { PlanningCache } from '../cache.js';
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

/**
 * The terms of a programme's classes, kept by the caller from one version of the programme to the next. After a change within
 * lessons only what it touches is counted again: those lessons, for each class the things they use, and schedule and coverage where a lesson's
 * parts, minutes, order or objectives changed; a lesson that only stands in other lines is led to there. Any other change begins anew.
 */
export class TermPlan {
    private programme: Programme | undefined;
    private reader: NumberReader | undefined;
    private readonly namings = new Namings();
    private attendances = new Map<string, Attendance>();
    private orders = new Map<CourseSheet | undefined, CourseOrder>();
    private schedules = new Map<string, ScheduleFigures>();
    private coverages = new Map<string, { grid: CoverageGrid; figures: CoverageFigures }>();
    private plans = new Map<string, ClassPlan>();
    private terms = new Map<string, ClassTerm>();

    constructor(private readonly cache: PlanningCache) {}

    /** The programme that later calls are about. */
    at(programme: Programme): this {
        if (programme === this.programme) return this;
        const changed = this.programme && changedLessons(this.programme, programme);
        if (changed) this.continueWith(programme, changed);
        else this.begin(programme);
        return this;
    }

    schedule(wanted: Wanted): ScheduleFigures {
        const key = keyOf(wanted);
        let schedule = this.schedules.get(key);
        if (!schedule) this.schedules.set(key, schedule = planSchedule(this.programme!, wanted, { orders: this.orders }));
        return schedule;
    }

    coverage(wanted: Wanted): CoverageFigures {
        const key = keyOf(wanted);
        let coverage = this.coverages.get(key);
        if (!coverage) {
            const grid = coverageGrid(this.programme!, wanted, { schedule: this.schedule(wanted), namings: this.namings });
            this.coverages.set(key, coverage = { grid, figures: coverageFigures(grid) });
        }
        return coverage.figures;
    }

    /** `schedule` must be of the same programme and class; without it one is made and kept. */
    term(wanted: Wanted, schedule = this.schedule(wanted)): ClassTerm {
        const key = keyOf(wanted);
        const kept = this.terms.get(key);
        if (kept?.plan.schedule === schedule) return kept;
        const programme = this.programme!;
        const audience = chooseClass(programme, wanted);
        const sharing = sharingWith(programme, audience.class).map(({ name }) => ({ name, audience: chooseClass(programme, { class: name }) }));
        const holdings = new Holdings(programme, audience, sharing.map(other => other.audience));
        const plan = this.plan(key, audience, schedule, holdings);
        const others = sharing.map(other => {
            const wantedToo = { class: other.name };
            const all = [other.audience, ...[audience, ...sharing.map(one => one.audience)].filter(one => one !== other.audience)];
            return this.plan(keyOf(wantedToo), other.audience, this.schedule(wantedToo), new Holdings(programme, all[0]!, all.slice(1)));
        });
        const term = new ClassTerm(programme, plan, new Cupboard(plan, others), holdings);
        this.terms.set(key, term);
        return term;
    }

    private plan(key: string, audience: Audience, schedule: ScheduleFigures, holdings: Holdings): ClassPlan {
        const kept = this.plans.get(key);
        if (kept?.schedule === schedule) return kept;
        this.reader ??= new NumberReader(this.programme!);
        const people = JSON.stringify(audience.people.crowds.map(({ learners, adults, groupsOf, clock }) => [learners, adults, groupsOf, clock]));
        let attendance = this.attendances.get(people);
        if (!attendance) this.attendances.set(people, attendance = new Attendance(audience.people.crowds));
        const plan = new ClassPlan(this.programme!, audience, schedule, holdings, attendance, this.reader, this.cache);
        this.plans.set(key, plan);
        return plan;
    }

    private begin(programme: Programme): void {
        this.programme = programme;
        this.reader = undefined;
        this.orders = new Map();
        this.attendances = new Map();
        this.schedules = new Map();
        this.coverages = new Map();
        this.plans = new Map();
        this.terms = new Map();
    }

    private continueWith(programme: Programme, changed: readonly (readonly [LessonSheet, LessonSheet])[]): void {
        this.programme = programme;
        this.orders = new Map();
        if (changed.some(([before, after]) => taughtAs(before) !== taughtAs(after)) || !this.move(changed.filter(([before, after]) => placedAs(before) !== placedAs(after)))) {
            this.schedules = new Map();
            this.coverages = new Map();
            this.plans = new Map();
            this.terms = new Map();
            return;
        }
        const touched = new Map<ClassPlan, string[]>();
        for (const plan of this.allPlans()) {
            plan.continueIn(programme);
            touched.set(plan, changed.flatMap(([, lesson]) => plan.recount(lesson, programme)));
        }
        for (const term of this.terms.values()) {
            term.programme = programme;
            term.forget(term.cupboard.members.flatMap(plan => touched.get(plan) ?? []));
        }
    }

    /** Lessons that stand in other lines: schedules, coverages and plans are the same elsewhere. False where one has to be made anew. */
    private move(changed: readonly (readonly [LessonSheet, LessonSheet])[]): boolean {
        if (changed.length === 0) return true;
        const lessons = new Map(changed.map(([, lesson]) => [lesson.name, lesson]));
        const plans = this.allPlans();
        const schedules = new Map<ScheduleFigures, ScheduleFigures>();
        for (const schedule of [...this.schedules.values(), ...[...plans].map(plan => plan.schedule)]) {
            const moved = schedules.get(schedule) ?? movedSchedule(schedule, lessons);
            if (!moved) return false;
            schedules.set(schedule, moved);
        }
        for (const [key, schedule] of this.schedules) this.schedules.set(key, schedules.get(schedule)!);
        for (const plan of plans) plan.follow(schedules.get(plan.schedule)!);
        for (const [key, { grid }] of this.coverages) {
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
function changedLessons(before: Programme, after: Programme): (readonly [LessonSheet, LessonSheet])[] | undefined {
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

/** All of a lesson that decides on a schedule and a coverage: alike for lessons with which they are the same, but for places. */
function taughtAs({ name, title, uri, draft, follows, introduces, practises, checks, parts }: LessonSheet): string {
    return JSON.stringify(
        [name, title, uri, draft, follows, introduces, practises, checks, parts.map(({ kind, name: part, title: partTitle, minutes, unsure }) => [kind, part, partTitle, minutes, unsure])],
        (key, value: unknown) => (key === 'at' ? undefined : value)
    );
}

/** The places of a lesson that a schedule and a coverage lead to. */
function placedAs({ at, follows, introduces, practises, checks, parts }: LessonSheet): string {
    return JSON.stringify([at, follows, introduces, practises, checks, parts.map(({ at: partAt, head, unsure }) => [partAt, head, unsure])]);
}
