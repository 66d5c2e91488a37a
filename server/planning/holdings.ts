import type Fraction from 'fraction.js';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, Held, Place } from '@haversack/language/sheets/sheet';
import { amountText, inMeasure, type Measure } from './amounts.js';
import type { Audience, KitInPlay } from './audience.js';
import { readDay, type Day } from './calendar.js';
import { readExact, sum } from './exact.js';
import type { TrailStep } from './figure.js';
import { counted, quoted } from '@haversack/language/facts/wording';

/** An order that will add to what is at hand. */
export interface Arrival {
    /** Absent where no date is written or it does not exist: such an order is not counted on. */
    day?: Day;
    value: Fraction;
    place: Place;
}

/** What the cupboard has of one thing when its classes start, and what is on its way. */
export interface Holding {
    /** Kits and cupboard together; undefined where neither says anything of the thing. */
    value?: Fraction;
    /** Made when they are asked for. */
    readonly steps: TrailStep[];
    arrivals: Arrival[];
    /** Lines that could not be counted, in whole sentences. */
    problems: string[];
}

interface InKit {
    kit: KitInPlay;
    held: Held;
}

interface InClass {
    sheet: ClassSheet;
    held: Held;
}

/** What the kits and the cupboard of a class hold, and of the classes that share it. Looked up once for each thing. */
export class Holdings {
    /** Names the audience, for caches: who is there, which class and which course, and with whom the cupboard is shared. */
    readonly key: string;
    readonly audiences: readonly Audience[];
    private readonly looked = new Map<string, Holding>();
    private readonly inKits = new Map<string, InKit[]>();
    private readonly onHand = new Map<string, InClass[]>();
    private readonly onOrder = new Map<string, InClass[]>();

    constructor(readonly programme: Programme, readonly audience: Audience, sharing: readonly Audience[] = []) {
        this.audiences = [audience, ...sharing];
        this.key = JSON.stringify([...this.audiences.flatMap(a => [a.class?.name, a.course?.name]), audience.people.crowds]);
        for (const { kits, class: sheet } of this.audiences) {
            for (const kit of kits) for (const held of kit.sheet.holds) push(this.inKits, held.thing.name, { kit, held });
            for (const held of sheet?.onHand ?? []) push(this.onHand, held.thing.name, { sheet: sheet!, held });
            for (const held of sheet?.onOrder ?? []) push(this.onOrder, held.thing.name, { sheet: sheet!, held });
        }
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
        return [...new Set(this.inKits.get(name)?.map(({ kit }) => kit) ?? [])];
    }

    private look(name: string, measure: Measure): Holding {
        if (!this.inKits.has(name) && !this.onHand.has(name) && !this.onOrder.has(name)) return { steps: [], arrivals: [], problems: [] };
        const values: Fraction[] = [];
        const steps: (() => TrailStep)[] = [];
        const arrivals: Arrival[] = [];
        const problems: string[] = [];
        for (const { kit, held } of this.inKits.get(name) ?? []) {
            const each = this.read(held, measure, `The kit ${quoted(kit.sheet.title)}`, problems);
            if (!each) continue;
            const value = each.mul(kit.count);
            values.push(value);
            steps.push(() => ({
                words: `${counted(kit.count, 'kit')} ${quoted(kit.sheet.title)} with ${amountText(each, measure)}: ${amountText(value, measure)}`,
                place: { uri: kit.sheet.uri, range: held.at }
            }));
        }
        for (const { sheet, held } of this.onHand.get(name) ?? []) {
            const value = this.read(held, measure, this.classInWords(sheet), problems);
            if (!value) continue;
            values.push(value);
            const whose = sheet === this.audience.class ? '' : ` in ${quoted(sheet.title)}`;
            steps.push(() => ({ words: `on hand${whose}: ${amountText(value, measure)}`, place: { uri: sheet.uri, range: held.at } }));
        }
        for (const { sheet, held } of this.onOrder.get(name) ?? []) {
            const value = this.read(held, measure, `The order of ${sheet === this.audience.class ? 'the class' : `the class ${quoted(sheet.title)}`}`, problems);
            if (!value) continue;
            const day = held.arriving && readDay(held.arriving.date);
            if (!day) problems.push(`${amountText(value, measure)} of ${quoted(this.title(name))} on order have no date of arrival: they are not counted on.`);
            arrivals.push({ day, value, place: { uri: sheet.uri, range: held.at } });
        }
        const value = values.length > 1 ? sum(values) : values[0];
        return { value, get steps() { return steps.map(step => step()); }, arrivals, problems };
    }

    private classInWords(sheet: ClassSheet): string {
        return sheet === this.audience.class ? 'The class' : `The class ${quoted(sheet.title)}`;
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

function push<T>(lists: Map<string, T[]>, name: string, value: T): void {
    const list = lists.get(name);
    if (list) list.push(value);
    else lists.set(name, [value]);
}
