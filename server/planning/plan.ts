import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { remeasure, type Measure } from './amounts.js';
import type { Audience } from './audience.js';
import { Reading, type PlanningCache } from './cache.js';
import { demandOf } from './demand.js';
import type { ScheduleFigures, WeekPlan } from './schedule-figures.js';
import { weekAmount, weekNeeds, type TaughtLesson, type WeekAmount, type WeekNeed } from './gross.js';
import { Holdings } from './holdings.js';
import { needLines } from './needs.js';

/** One audience's schedule with what its weeks need, each worked out when first asked for. */
export class Plan {
    readonly holdings: Holdings;
    private usage: ReadonlyMap<string, readonly number[]> | undefined;
    private choices: ReadonlyMap<string, readonly number[]> | undefined;
    private readonly weeksTaught = new Map<number, readonly TaughtLesson[]>();
    private readonly weeksNeeds = new Map<number, ReadonlyMap<string, WeekNeed>>();

    constructor(
        readonly programme: Programme, readonly audience: Audience, readonly schedule: ScheduleFigures, private readonly cache: PlanningCache
    ) {
        this.holdings = new Holdings(programme, audience);
    }

    week(number: number): WeekPlan | undefined {
        return this.schedule.weeks[number - 1];
    }

    taught(number: number): readonly TaughtLesson[] {
        const kept = this.weeksTaught.get(number);
        if (kept) return kept;
        const taught = this.lessonsOf(number).map(t => ({ ...t, demand: demandOf(t.lesson, this.holdings, this.cache) }));
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

    /** What a week needs of one thing, in `measure`; undefined where it needs none. Without a trail, so cheaper than `needs`. */
    gross(name: string, number: number, measure: Measure): WeekAmount | undefined {
        const gross = weekAmount(name, this.taught(number));
        const value = gross && remeasure(gross.value, gross.measure, measure);
        return gross && value && { ...gross, value, measure };
    }

    /** The weeks that use a thing, first to last; empty where none does. */
    weeksOf(name: string): readonly number[] {
        this.usage ??= this.readUsage(lesson => this.thingsOf(lesson));
        return this.usage.get(name) ?? [];
    }

    /** The weeks with a need for which a thing is one of the alternatives, chosen or not. */
    weeksWithChoiceOf(name: string): readonly number[] {
        this.choices ??= this.readUsage(lesson => needLines(lesson, new Reading(this.programme))
            .flatMap(({ need }) => (need.options.length > 1 ? need.options.map(o => o.thing.name) : [])));
        return this.choices.get(name) ?? [];
    }

    private lessonsOf(number: number): { lesson: LessonSheet; meeting: WeekPlan['meetings'][number] }[] {
        return (this.week(number)?.meetings ?? []).flatMap(meeting =>
            meeting.lessons.flatMap(name => {
                const lesson = this.programme.lessons.get(name);
                return lesson ? [{ lesson, meeting }] : [];
            }));
    }

    private readUsage(thingsOf: (lesson: LessonSheet) => Iterable<string>): ReadonlyMap<string, readonly number[]> {
        const usage = new Map<string, number[]>();
        for (const { number } of this.schedule.weeks) {
            for (const { lesson } of this.lessonsOf(number)) {
                for (const name of thingsOf(lesson)) {
                    const weeks = usage.get(name);
                    if (!weeks) usage.set(name, [number]);
                    else if (weeks[weeks.length - 1] !== number) weeks.push(number);
                }
            }
        }
        return usage;
    }

    /** Names only, without counting, unless a choice hangs on what is at hand. */
    private thingsOf(lesson: LessonSheet): Iterable<string> {
        const lines = needLines(lesson, new Reading(this.programme));
        if (lines.some(l => l.need.options.length > 1)) return demandOf(lesson, this.holdings, this.cache).things.keys();
        return lines.map(l => l.need.options[0]?.thing.name ?? '');
    }
}
