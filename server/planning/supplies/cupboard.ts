import { dayOfIso, isoOfDay, weekdayOf } from '@haversack/language/attachments/day-numbers';
import { lastDayToOrder, type Lead } from '../buying/order-days.js';
import { readDay } from '../calendar.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import type { ClassPlan, Occurrence } from './class-plan.js';

/** A week of the cupboard: a week of its class, or a calendar week where several classes share it. */
export interface Slot {
    /** The number of the class's own week that tells of it. */
    week: number;
    /** ISO dates of the first and last meeting; absent without dates. */
    from?: string;
    to?: string;
}

/**
 * The weeks of a cupboard as one of its classes sees them. Where classes share it, the weeks are calendar weeks: what another class
 * takes in a week that this class does not have is told in its next one, after its last week in the last.
 */
export class Cupboard {
    readonly slots: readonly Slot[];
    /** The class asked for comes first. */
    readonly members: readonly ClassPlan[];
    readonly assumptions: string[] = [];
    private readonly slotOfMonday = new Map<string, number>();
    /** By lead, then by day. */
    private readonly orderDays = new Map<number, Map<string, { day?: string; week: number }>>();
    private mondays: readonly string[] | undefined;

    constructor(readonly own: ClassPlan, others: readonly ClassPlan[]) {
        const isDated = (plan: ClassPlan): boolean => plan.schedule.weeks.every(({ from }) => from !== undefined) && plan.schedule.weeks.length > 0;
        const counted = isDated(own) ? others.filter(isDated) : [];
        const left = others.filter(other => !counted.includes(other)).map(({ audience }) => quoted(audience.class?.title ?? ''));
        if (left.length > 0) this.assumptions.push(`Without dates for both, what ${listing(left)} ${left.length === 1 ? 'takes' : 'take'} from the shared cupboard is not counted.`);
        this.members = [own, ...counted];
        this.slots = this.members.length === 1 ? own.schedule.weeks.map(({ number, from, to }) => ({ week: number, from, to })) : this.calendarWeeks();
    }

    slotOf({ week, meeting }: Occurrence): number {
        return this.members.length === 1 ? week.number - 1 : this.slotOfMonday.get(mondayText(meeting.date ?? '')) ?? 0;
    }

    /** The slot of one of the own class's weeks; the number of slots for a week after the last. */
    slotOfWeek(number: number): number {
        if (this.members.length === 1) return Math.min(number - 1, this.slots.length);
        return this.slotOfMonday.get(mondayText(this.own.schedule.weeks[number - 1]?.from ?? '')) ?? this.slots.length;
    }

    /** The last day to order what is needed on a day, and the class's week in which it falls: 0 for before the first. */
    orderDay(neededBy: string, lead: Lead): { day?: string; week: number } {
        const key = lead.working ? -lead.days : lead.days;
        let days = this.orderDays.get(key);
        if (!days) this.orderDays.set(key, days = new Map());
        let found = days.get(neededBy);
        if (!found) {
            const day = this.lastDay(neededBy, lead);
            found = { day, week: day === undefined ? 0 : this.weekBegunBy(day) };
            days.set(neededBy, found);
        }
        return found;
    }

    private lastDay(neededBy: string, lead: Lead): string | undefined {
        if (!lead.working) {
            const needed = this.own.numbers.dayOf(neededBy);
            return needed === undefined ? undefined : isoOfDay(needed - lead.days);
        }
        const { daysOff } = this.own.schedule;
        const needed = readDay(neededBy);
        return needed && lastDayToOrder(needed, lead, other => {
            const iso = other.toString();
            return daysOff.some(({ from, to }) => from <= iso && iso <= to);
        })?.toString();
    }

    private weekBegunBy(day: string): number {
        this.mondays ??= this.own.schedule.weeks.map(({ from }) => mondayText(from ?? ''));
        let low = 0;
        let high = this.mondays.length;
        while (low < high) {
            const middle = (low + high) >> 1;
            if (this.mondays[middle]! <= day) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    private calendarWeeks(): Slot[] {
        const weeks = new Map<string, { from: string; to: string }>();
        for (const { schedule } of this.members) {
            for (const { from = '', to = from } of schedule.weeks) {
                const monday = mondayText(from);
                const known = weeks.get(monday);
                weeks.set(monday, known ? { from: from < known.from ? from : known.from, to: to > known.to ? to : known.to } : { from, to });
            }
        }
        const own = this.own.schedule.weeks;
        const mondays = own.map(({ from }) => mondayText(from ?? ''));
        return [...weeks].sort(([a], [b]) => (a < b ? -1 : 1)).map(([monday, days], slot) => {
            this.slotOfMonday.set(monday, slot);
            const following = mondays.findIndex(other => other >= monday);
            return { week: following < 0 ? own.length : following + 1, ...days };
        });
    }
}

function mondayText(date: string): string {
    const day = dayOfIso(date);
    return day === undefined ? '' : isoOfDay(day - weekdayOf(day));
}
