import type { Programme } from '@haversack/language/sheets/programme';
import type { Audience, Wanted } from './audience.js';
import type { PlanningCache } from './cache.js';
import { demandOf } from './demand.js';
import { weekNeeds, type TaughtLesson, type WeekNeed } from './gross.js';
import type { Holdings } from './holdings.js';
import type { ScheduleFigures, WeekPlan } from './schedule-figures.js';
import type { ClassTerm } from './supplies/class-term.js';
import { pieceOf, taughtAt } from './supplies/pieces.js';
import { termPlanOf } from './supplies/term-plan.js';

/** One audience's schedule with what its weeks need, each worked out with its reasons when first asked for; the term behind it is in numbers. */
export class Plan {
    readonly term: ClassTerm;
    private readonly weeksTaught = new Map<number, readonly TaughtLesson[]>();
    private readonly weeksNeeds = new Map<number, ReadonlyMap<string, WeekNeed>>();

    constructor(programme: Programme, wanted: Wanted, private readonly cache: PlanningCache, schedule?: ScheduleFigures) {
        this.term = termPlanOf(cache, programme).term(wanted, schedule);
    }

    /** As the class is taught it. */
    get programme(): Programme {
        return this.term.programme;
    }

    get audience(): Audience {
        return this.term.plan.audience;
    }

    get schedule(): ScheduleFigures {
        return this.term.plan.schedule;
    }

    get holdings(): Holdings {
        return this.term.holdings;
    }

    week(number: number): WeekPlan | undefined {
        return this.schedule.weeks[number - 1];
    }

    taught(number: number): readonly TaughtLesson[] {
        const kept = this.weeksTaught.get(number);
        if (kept) return kept;
        const taught = (this.week(number)?.meetings ?? []).flatMap(meeting => taughtAt(meeting).flatMap((one): TaughtLesson[] => {
            const lesson = this.programme.lessons.get(one.lesson);
            if (!lesson) return [];
            const piece = pieceOf(one, lesson, name => this.programme.games.get(name));
            return [{ lesson, meeting, taught: one, demand: demandOf(lesson, this.holdings, this.cache, piece) }];
        }));
        this.weeksTaught.set(number, taught);
        return taught;
    }

    needs(number: number): ReadonlyMap<string, WeekNeed> {
        const kept = this.weeksNeeds.get(number);
        if (kept) return kept;
        const needs = weekNeeds(this.taught(number));
        this.weeksNeeds.set(number, needs);
        return needs;
    }

    /** The weeks that use a thing, first to last; empty where none does. */
    weeksOf(name: string): readonly number[] {
        return this.term.plan.weeksOf(name);
    }

    /** The weeks with a need for which a thing is one of the alternatives, chosen or not. */
    weeksWithChoiceOf(name: string): readonly number[] {
        return this.term.plan.weeksWithChoiceOf(name);
    }
}
