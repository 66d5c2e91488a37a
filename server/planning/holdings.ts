import type Fraction from 'fraction.js';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { Held, Place } from '@haversack/language/sheets/sheet';
import { amountText, inMeasure, measureOf, type Measure } from './amounts.js';
import type { Audience, KitInPlay } from './audience.js';
import { readDay, type Day } from './calendar.js';
import { readExact, sum } from './exact.js';
import type { TrailStep } from './figure.js';
import { counted, quoted } from './wording.js';

/** An order that will add to what is at hand. */
export interface Arrival {
    /** Absent where no date is written or it does not exist: such an order is not counted on. */
    day?: Day;
    value: Fraction;
    place: Place;
}

/** What the class has of one thing when it starts, and what is on its way. */
export interface Holding {
    /** Kits and cupboard together; undefined where neither says anything of the thing. */
    value?: Fraction;
    steps: TrailStep[];
    arrivals: Arrival[];
    /** Lines that could not be counted, in whole sentences. */
    problems: string[];
}

/** What a class's kits and cupboard hold. Looked up once for each thing. */
export class Holdings {
    /** Names the audience, for caches: who is there, which class and which course. */
    readonly key: string;
    private readonly looked = new Map<string, Holding>();

    constructor(readonly programme: Programme, readonly audience: Audience) {
        this.key = JSON.stringify([audience.class?.name, audience.course?.name, audience.people.crowds]);
    }

    of(name: string, measure: Measure): Holding {
        const kept = this.looked.get(name);
        if (kept) return kept;
        const holding = this.look(name, measure);
        this.looked.set(name, holding);
        return holding;
    }

    atStart(name: string, measure: Measure): Fraction | undefined {
        return this.of(name, measure).value;
    }

    /** The kits in play that hold the thing. */
    kitsWith(name: string): KitInPlay[] {
        return this.audience.kits.filter(k => k.sheet.holds.some(h => h.thing.name === name));
    }

    private look(name: string, measure: Measure): Holding {
        const { class: sheet } = this.audience;
        const values: Fraction[] = [];
        const steps: TrailStep[] = [];
        const arrivals: Arrival[] = [];
        const problems: string[] = [];
        for (const kit of this.kitsWith(name)) {
            for (const held of kit.sheet.holds.filter(h => h.thing.name === name)) {
                const each = this.read(held, measure, `The kit ${quoted(kit.sheet.title)}`, problems);
                if (!each) continue;
                const value = each.mul(kit.count);
                values.push(value);
                steps.push({
                    words: `${counted(kit.count, 'kit')} ${quoted(kit.sheet.title)} with ${amountText(each, measure)}: ${amountText(value, measure)}`,
                    place: { uri: kit.sheet.uri, range: held.at }
                });
            }
        }
        for (const held of sheet?.onHand.filter(h => h.thing.name === name) ?? []) {
            const value = this.read(held, measure, 'The class', problems);
            if (!value || !sheet) continue;
            values.push(value);
            steps.push({ words: `on hand: ${amountText(value, measure)}`, place: { uri: sheet.uri, range: held.at } });
        }
        for (const held of sheet?.onOrder.filter(h => h.thing.name === name) ?? []) {
            const value = this.read(held, measure, 'The order of the class', problems);
            if (!value || !sheet) continue;
            const day = held.arriving && readDay(held.arriving.date);
            if (!day) problems.push(`${amountText(value, measure)} of ${quoted(this.title(name))} on order have no date of arrival: they are not counted on.`);
            arrivals.push({ day, value, place: { uri: sheet.uri, range: held.at } });
        }
        return { value: values.length > 0 ? sum(values) : undefined, steps, arrivals, problems };
    }

    private read(held: Held, measure: Measure, holder: string, problems: string[]): Fraction | undefined {
        const value = held.amount ? inMeasure(held.amount, measure) : readExact('1');
        if (!value) {
            const written = `${held.amount?.value}${held.amount?.unit === undefined ? '' : ` ${held.amount.unit}`}`;
            problems.push(`${holder} has ${written} of ${quoted(this.title(held.thing.name))}, which cannot be counted in ${
                measure.is === 'measured' ? measure.unit.symbol : measure.is === 'counted' ? measure.many : 'whole pieces'}: it is left out.`);
        }
        return value;
    }

    private title(name: string): string {
        return thingNamed(this.programme, name)?.title ?? name;
    }
}

/** The measure of a thing by itself, before any lesson asked for it. */
export function ownMeasure(holdings: Holdings, name: string): Measure {
    const thing = thingNamed(holdings.programme, name);
    const held = holdings.kitsWith(name)[0]?.sheet.holds.find(h => h.thing.name === name);
    return thing ? measureOf(thing, held?.amount) : { is: 'pieces' };
}
