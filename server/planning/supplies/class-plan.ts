import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import type { Audience } from '../audience.js';
import type { PlanningCache } from '../cache.js';
import { demandOf } from '../demand.js';
import type { Holdings } from '../holdings.js';
import type { Meeting, ScheduleFigures, WeekPlan } from '../schedule-figures.js';
import { LeanDemand, type Attendance } from './attendance.js';
import { sameMeasure, type NumberReader } from './lesson-needs.js';
import { pieceOf, taughtAt, type Piece, type Taught } from './pieces.js';
import { ratioOf } from './ratio.js';

/** A lesson, or a piece of one, at its meeting. */
export interface Occurrence {
    plan: ClassPlan;
    /** In teaching order, from 0. */
    index: number;
    week: WeekPlan;
    meeting: Meeting;
    taught: Taught;
    lesson: LessonSheet;
}

/** One occurrence's need of one thing. */
export interface ThingUse {
    at: Occurrence;
    demand: LeanDemand;
}

/** One class's term in numbers: who needs how much of what at which meeting. Lessons are counted once for the same people. */
export class ClassPlan {
    readonly occurrences: Occurrence[] = [];
    /** By thing, in teaching order. */
    readonly uses = new Map<string, ThingUse[]>();
    private readonly ofLesson = new Map<string, Occurrence[]>();
    private readonly demands: (readonly LeanDemand[])[] = [];

    constructor(
        public programme: Programme, readonly audience: Audience, public schedule: ScheduleFigures, readonly holdings: Holdings,
        private readonly attendance: Attendance, readonly numbers: NumberReader, private readonly cache: PlanningCache
    ) {
        for (const week of schedule.weeks) {
            for (const meeting of week.meetings) {
                for (const taught of taughtAt(meeting)) this.add(week, meeting, taught);
            }
        }
    }

    /** Counts one lesson anew; the names of the things whose numbers are others than before. */
    recount(lesson: LessonSheet, programme: Programme): string[] {
        this.programme = programme;
        const changed = new Set<string>();
        for (const at of this.ofLesson.get(lesson.name) ?? []) {
            at.lesson = lesson;
            const before = this.demands[at.index]!;
            const after = this.demandsAt(at);
            this.demands[at.index] = after;
            const known = new Map(before.map(demand => [demand.name, demand]));
            for (const demand of after) {
                const old = known.get(demand.name);
                known.delete(demand.name);
                if (!old || !isSame(old, demand)) changed.add(demand.name);
                if (old) this.uses.get(demand.name)!.find(use => use.at === at)!.demand = demand;
                else this.insert({ at, demand });
            }
            for (const name of known.keys()) {
                changed.add(name);
                const left = this.uses.get(name)!.filter(use => use.at !== at);
                if (left.length > 0) this.uses.set(name, left);
                else this.uses.delete(name);
            }
        }
        return [...changed];
    }

    /** In the order of their first use. */
    names(): string[] {
        const place = (uses: readonly ThingUse[]): [number, number] => {
            const { at, demand } = uses[0]!;
            return [at.index, this.demands[at.index]!.indexOf(demand)];
        };
        return [...this.uses].map(([name, uses]) => ({ name, place: place(uses) }))
            .sort((a, b) => a.place[0] - b.place[0] || a.place[1] - b.place[1]).map(({ name }) => name);
    }

    /** The weeks that use a thing, first to last. */
    weeksOf(name: string): number[] {
        return [...new Set(this.uses.get(name)?.map(({ at }) => at.week.number) ?? [])];
    }

    /** The weeks with a need for which a thing is one of the alternatives, chosen or not. */
    weeksWithChoiceOf(name: string): number[] {
        return [...new Set(this.occurrences.filter(({ lesson }) => this.numbers.of(lesson).options.includes(name)).map(({ week }) => week.number))];
    }

    /** Lessons of the term with a need that could not be counted. */
    incompleteLessons(): LessonSheet[] {
        return [...new Set(this.occurrences.map(({ lesson }) => lesson))].filter(lesson => this.numbers.of(lesson).incomplete);
    }

    /** On to a schedule that teaches the same at the same meetings: only places differ, of which nothing here hangs. */
    follow(schedule: ScheduleFigures): void {
        this.schedule = schedule;
    }

    /** On to a programme in which nothing else has changed. */
    continueIn(programme: Programme): void {
        this.programme = programme;
    }

    private add(week: WeekPlan, meeting: Meeting, taught: Taught): void {
        const lesson = this.programme.lessons.get(taught.lesson);
        if (!lesson) return;
        const at: Occurrence = { plan: this, index: this.occurrences.length, week, meeting, taught, lesson };
        this.occurrences.push(at);
        const same = this.ofLesson.get(lesson.name);
        if (same) same.push(at);
        else this.ofLesson.set(lesson.name, [at]);
        const demands = this.demandsAt(at);
        this.demands.push(demands);
        for (const demand of demands) {
            const uses = this.uses.get(demand.name);
            if (uses) uses.push({ at, demand });
            else this.uses.set(demand.name, [{ at, demand }]);
        }
    }

    private demandsAt({ taught, lesson }: Occurrence): readonly LeanDemand[] {
        const needs = this.numbers.of(lesson);
        const piece = taught.parts && pieceOf(taught, lesson, name => this.programme.games.get(name));
        return needs.choice ? this.chosen(lesson, piece) : this.attendance.demandsOf(needs, piece);
    }

    /** A choice hangs on what the class has; it is made where its reasons are told. */
    private chosen(lesson: LessonSheet, piece: Piece | undefined): LeanDemand[] {
        return [...demandOf(lesson, this.holdings, this.cache, piece).things].map(([name, demand]): LeanDemand => {
            const { thing, use, measure, optional, inKit } = demand;
            const lines = demand.lines.map(line => ({ line }));
            const { n, d } = ratioOf(demand.amount);
            const scale = demand.perCrowd.reduce((all, amount) => (all % amount.d === 0n ? all : all * amount.d), d);
            const perCrowd = demand.perCrowd.length > 1 ? demand.perCrowd.map(amount => amount.n * (scale / amount.d)) : undefined;
            return new LeanDemand({ name, thing, use, measure, optional, inKit, lines, d: scale }, n * (scale / d), perCrowd);
        });
    }

    private insert(use: ThingUse): void {
        const uses = this.uses.get(use.demand.name) ?? [];
        const at = uses.findIndex(other => other.at.index > use.at.index);
        this.uses.set(use.demand.name, at < 0 ? [...uses, use] : [...uses.slice(0, at), use, ...uses.slice(at)]);
    }
}

/** Of one thing for the same people: its use follows from its measure. */
function isSame(a: LeanDemand, b: LeanDemand): boolean {
    return a.n === b.n && a.d === b.d && a.optional === b.optional && a.inKit === b.inKit && sameMeasure(a.measure, b.measure) && (a.perCrowd ?? []).every((n, i) => n === b.perCrowd?.[i]);
}
