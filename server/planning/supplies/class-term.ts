import type { Programme } from '@haversack/language/sheets/programme';
import { sumsByCurrency, type Sum } from '../buying/money.js';
import type { Holdings } from '../holdings.js';
import type { ClassPlan, ThingUse } from './class-plan.js';
import type { Cupboard } from './cupboard.js';
import { makeLedger, type Ledger } from './ledger.js';
import { costsOf, isLate, ordersOf, type LedgerOrder } from './orders.js';
import { clashesOf, shortagesOf, type DayClash, type MeetingShortage } from './shortages.js';

/** What follows from one ledger. */
interface ThingTerm {
    ledger: Ledger;
    orders: LedgerOrder[];
    shortages: MeetingShortage[];
    clashes: DayClash[];
    costs: Sum[];
}

/**
 * Stock and buying of one class's cupboard in numbers, thing by thing, each worked out when first asked for and kept until a need of
 * that thing changes. Texts and trails are made elsewhere, for what is shown.
 */
export class ClassTerm {
    private readonly things = new Map<string, ThingTerm>();
    private ordered: readonly LedgerOrder[] | undefined;
    private named: readonly string[] | undefined;
    private merged: ReadonlyMap<string, readonly ThingUse[]> | undefined;

    constructor(public programme: Programme, readonly plan: ClassPlan, readonly cupboard: Cupboard, readonly holdings: Holdings) {}

    /** Things that the term's lessons use, in the order of their first use; those of the own class first. */
    names(): readonly string[] {
        return this.named ??= [...new Set(this.cupboard.members.flatMap(plan => plan.names()))];
    }

    ledger(name: string): Ledger | undefined {
        return this.thing(name)?.ledger;
    }

    ordersFor(name: string): readonly LedgerOrder[] {
        return this.thing(name)?.orders ?? [];
    }

    /** All purchases of the term, by the week that needs them. */
    orders(): readonly LedgerOrder[] {
        return this.ordered ??= sorted(this.all().map(({ orders }) => orders), ({ week }) => week);
    }

    late(today: string): LedgerOrder[] {
        return sorted(this.all().map(({ orders }) => orders.filter(order => isLate(order, today))), ({ week }) => week);
    }

    /** In the order of the meetings. */
    shortages(): MeetingShortage[] {
        return sorted(this.all().map(({ shortages }) => shortages), ({ uses }) => uses[0]!.at.index);
    }

    clashes(): DayClash[] {
        return this.all().flatMap(({ clashes }) => clashes).sort((a, b) => a.date.localeCompare(b.date));
    }

    /** Of the whole term, one sum a currency. */
    costs(): Sum[] {
        return sumsByCurrency(this.all().flatMap(({ costs }) => costs));
    }

    /** Forgets what hangs on the needs of these things. */
    forget(names: Iterable<string>): void {
        this.merged = undefined;
        this.named = undefined;
        this.ordered = undefined;
        for (const name of names) this.things.delete(name);
    }

    private all(): ThingTerm[] {
        return this.names().map(name => this.thing(name)!);
    }

    private thing(name: string): ThingTerm | undefined {
        let term = this.things.get(name);
        const uses = term ? undefined : this.uses().get(name);
        if (uses) {
            const ledger = makeLedger(name, uses, this.cupboard, this.holdings);
            const orders = ordersOf(ledger, this.cupboard);
            term = {
                ledger, orders, shortages: shortagesOf(ledger, orders, this.cupboard), clashes: clashesOf(ledger, this.cupboard),
                costs: costsOf(ledger, ledger.record.lots)
            };
            this.things.set(name, term);
        }
        return term;
    }

    private uses(): ReadonlyMap<string, readonly ThingUse[]> {
        const { members } = this.cupboard;
        if (members.length === 1) return this.plan.uses;
        if (!this.merged) {
            const merged = new Map<string, ThingUse[]>();
            for (const { uses } of members) for (const [name, own] of uses) merged.set(name, [...(merged.get(name) ?? []), ...own]);
            this.merged = merged;
        }
        return this.merged;
    }
}

/** By a whole number from 0, things in their order where it is the same; by counting, since there may be thousands. */
function sorted<T>(lists: readonly (readonly T[])[], key: (value: T) => number): T[] {
    const next: number[] = [];
    let count = 0;
    for (const list of lists) {
        for (const value of list) {
            const place = key(value);
            while (next.length <= place) next.push(0);
            next[place]! += 1;
            count += 1;
        }
    }
    let from = 0;
    for (let place = 0; place < next.length; place++) {
        const own = next[place]!;
        next[place] = from;
        from += own;
    }
    const all = new Array<T>(count);
    for (const list of lists) for (const value of list) all[next[key(value)]!++] = value;
    return all;
}
