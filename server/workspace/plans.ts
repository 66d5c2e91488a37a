import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Adapted } from '@haversack/language/adapting/adapted';
import type { TermFigures } from '../planning/term-figures.js';
import { adaptingOf, newPlanningCache } from '../planning/cache.js';
import { planChanges } from '../planning/changes.js';
import type { WeekBrief } from '../planning/figures.js';
import { planLedger } from '../planning/ledger.js';
import type { ChangesFigures } from '../planning/ledger-figures.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { termPlanOf } from '../planning/supplies/term-plan.js';
import { placeOfLeftOut, taughtAs, weekOfTaught } from '../planning/taught-as.js';
import { planTerm } from '../planning/term.js';
import { planWeek } from '../planning/week.js';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import type { HaversackServerServices } from './services.js';

/** Plans of one programme as it is now, each made once and kept until a sheet changes. */
export class Plans {
    readonly cache = newPlanningCache();
    private view: ProgrammeView | undefined;
    private briefs = new Map<string, WeekBrief>();
    private terms = new Map<string, TermFigures>();
    private changed = new Map<string, ChangesFigures>();

    constructor(private readonly services: HaversackServerServices, private readonly key: ProgrammeKey) {}

    schedule(className?: string): ScheduleFigures {
        return termPlanOf(this.cache, this.current.programme).schedule({ class: className });
    }

    brief(week: number, className?: string): WeekBrief {
        const today = this.services.today.date;
        return this.kept(this.fresh().briefs, `${today} ${week} ${className ?? ''}`, programme =>
            planWeek(programme, { class: className, week }, { schedule: this.schedule(className), cache: this.cache, today }));
    }

    /** The whole term, with what is late on a day. */
    term(className: string | undefined, today: string): TermFigures {
        return this.kept(this.fresh().terms, `${today} ${className ?? ''}`, programme =>
            planTerm(programme, { class: className }, { schedule: this.schedule(className), today, cache: this.cache }));
    }

    /** What its adaptations change for a class. */
    changes(className: string | undefined): ChangesFigures {
        const today = this.services.today.date;
        return this.kept(this.fresh().changed, `${today} ${className ?? ''}`, programme => {
            const wanted = { class: className };
            return planChanges(programme, wanted, planLedger(programme, wanted, { cache: this.cache, today }));
        });
    }

    /** The first week in which a class is taught a lesson, or what its adaptations make of it; undefined where it is left out. */
    weekOf(lesson: string, className?: string): number | undefined {
        const schedule = this.schedule(className);
        return weekOfTaught(schedule, taughtAs(lesson, this.adapted(schedule)));
    }

    /** The same; of a lesson that is left out the week whose brief says so. */
    weekTelling(lesson: string, className?: string): number | undefined {
        const schedule = this.schedule(className);
        const adapted = this.adapted(schedule);
        const taught = taughtAs(lesson, adapted);
        return adapted && taught.leftOut ? placeOfLeftOut(lesson, adapted, schedule).week : weekOfTaught(schedule, taught);
    }

    /** What the week of a lesson needs of a thing: "week 3: 80, at hand 60". */
    factAbout(thing: string, lesson: string): string | undefined {
        const week = this.weekOf(lesson);
        if (week === undefined) return undefined;
        const found = this.brief(week).fetch.flatMap(group => group.things).find(({ name }) => name === thing);
        if (!found) return undefined;
        return `week ${week}: ${found.amount.text} needed${found.atHand ? `, ${found.atHand.text} at hand` : ''}${found.missing ? `, ${found.missing.text} missing` : ''}`;
    }

    classes(): { name: string; title: string }[] {
        return [...this.current.programme.classes.values()].map(({ name, title }) => ({ name, title }));
    }

    get current(): ProgrammeView {
        return this.services.sheets.viewAt(this.key);
    }

    private adapted({ class: className, course }: ScheduleFigures): Adapted | undefined {
        return course === undefined ? undefined : adaptedFor(this.current.programme, { class: className, course }, adaptingOf(this.cache));
    }

    private fresh(): this {
        const { current } = this;
        if (this.view !== current) {
            this.view = current;
            this.briefs = new Map();
            this.terms = new Map();
            this.changed = new Map();
        }
        return this;
    }

    private kept<T>(memo: Map<string, T>, key: string, make: (programme: ProgrammeView['programme']) => T): T {
        let value = memo.get(key);
        if (value === undefined) {
            value = make(this.current.programme);
            memo.set(key, value);
        }
        return value;
    }
}
