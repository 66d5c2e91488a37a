/** What was gathered for which week, kept in the workspace's memory. */

/** One week of one class: things are gathered for that. */
export interface GatheringWeek {
    programme: string;
    class?: string;
    /** ISO date of its first meeting; absent in plain weeks, which have their number alone. */
    from?: string;
    week: number;
}

interface KeptWeek {
    programme: string;
    class?: string;
    /** ISO date of its Monday. */
    monday?: string;
    /** Where it has no date. */
    week?: number;
    /** For each thing that was ticked the amount that it was ticked for. */
    amounts: Record<string, string>;
}

/** `was`: it was ticked for another amount, so it has to be looked at again. */
export type Standing = { gathered: boolean; was?: string };

/** The part of the editor's memory that is used here. */
export interface Memory {
    get(key: string): unknown;
    update(key: string, value: unknown): Thenable<void>;
}

const key = 'haversack.gathered';
/** Weeks whose Monday is longer ago are forgotten. */
const daysKept = 60;
/** The most weeks that are kept, those that were touched last. */
const weeksKept = 100;
const dayMilliseconds = 24 * 60 * 60 * 1000;

/** Keeps for each week of a class which things were gathered, and for which amount. */
export class Ticks {
    constructor(private readonly memory: Memory) {}

    standing(week: GatheringWeek, { name, amount }: { name: string; amount: string }): Standing {
        const amounts = this.find(week)?.amounts ?? {};
        const was = Object.hasOwn(amounts, name) ? amounts[name] : undefined;
        return { gathered: was === amount, ...(was !== undefined && was !== amount && { was }) };
    }

    gathered(week: GatheringWeek, things: readonly { name: string; amount: string }[]): number {
        return things.filter(thing => this.standing(week, thing).gathered).length;
    }

    /** Ticks things, or unticks them. `today` is an ISO date: what lies long before it is forgotten. */
    set(week: GatheringWeek, things: readonly { name: string; amount: string; gathered: boolean }[], today: string): Thenable<void> {
        const amounts = new Map(Object.entries(this.find(week)?.amounts ?? {}));
        for (const { name, amount, gathered } of things) {
            if (gathered) amounts.set(name, amount);
            else amounts.delete(name);
        }
        return this.write(week, Object.fromEntries(amounts), today);
    }

    untickAll(week: GatheringWeek, today: string): Thenable<void> {
        return this.write(week, {}, today);
    }

    private write(week: GatheringWeek, amounts: Record<string, string>, today: string): Thenable<void> {
        const others = this.weeks().filter(kept => !isSame(kept, week) && isRecent(kept, today));
        const own = Object.keys(amounts).length > 0 ? [{ programme: week.programme, class: week.class, ...moment(week), amounts }] : [];
        return this.memory.update(key, [...others, ...own].slice(-weeksKept));
    }

    private find(week: GatheringWeek): KeptWeek | undefined {
        return this.weeks().find(kept => isSame(kept, week));
    }

    /** What another edition of the extension, or somebody else, has left there is passed over. */
    private weeks(): KeptWeek[] {
        const kept = this.memory.get(key);
        return Array.isArray(kept) ? kept.filter(isKeptWeek) : [];
    }
}

function isSame(kept: KeptWeek, week: GatheringWeek): boolean {
    const { monday, week: number } = moment(week);
    return kept.programme === week.programme && kept.class === week.class && kept.monday === monday && kept.week === number;
}

/** A day off at its start does not make another week of it. */
function moment({ from, week }: GatheringWeek): Pick<KeptWeek, 'monday' | 'week'> {
    const day = from === undefined ? NaN : Date.parse(`${from}T00:00:00Z`);
    if (Number.isNaN(day)) return { week };
    const sinceMonday = (new Date(day).getUTCDay() + 6) % 7;
    return { monday: new Date(day - sinceMonday * dayMilliseconds).toISOString().slice(0, 10) };
}

function isRecent({ monday }: KeptWeek, today: string): boolean {
    const now = Date.parse(`${today}T00:00:00Z`);
    return monday === undefined || Number.isNaN(now) || now - Date.parse(`${monday}T00:00:00Z`) <= daysKept * dayMilliseconds;
}

function isKeptWeek(value: unknown): value is KeptWeek {
    if (typeof value !== 'object' || value === null) return false;
    const { programme, amounts } = value as Partial<KeptWeek>;
    return typeof programme === 'string' && typeof amounts === 'object' && amounts !== null && Object.values(amounts).every(amount => typeof amount === 'string');
}
