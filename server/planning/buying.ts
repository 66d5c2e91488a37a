import { unitNamed } from '@haversack/language/facts/units';
import type { Amount, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { dayLabel, readDay } from './calendar.js';
import { readExact } from './exact.js';
import type { Figure } from './figure.js';
import type { BuyFigures } from './figures.js';
import type { WeekNeed } from './gross.js';
import { isBought } from './sources.js';
import type { WeekThing } from './things.js';
import { counted } from './wording.js';

/**
 * What to buy or order for a week: what is missing of things that come from the kit or the shop, or that packs are declared for.
 * What is wholly optional is not bought.
 */
export function buyList(things: readonly WeekThing[]): BuyFigures[] {
    return things.flatMap(thing => {
        const missing = missingOf(thing);
        return missing ? [buy(thing, missing)] : [];
    });
}

/** The next week, whose own brief comes out before its first meeting. */
export interface NextWeek {
    nextFrom: string | undefined;
    /** Label of its first meeting. */
    firstMeeting: string;
}

/**
 * What of a later week's buying cannot wait for next week's brief: it must be ordered by, or is needed at, next week's first meeting.
 */
export function orderNow(later: readonly WeekThing[], { nextFrom, firstMeeting }: NextWeek): BuyFigures[] {
    return later.flatMap(thing => {
        const missing = missingOf(thing);
        if (!missing) return [];
        const line = buy(thing, missing);
        const waits = nextFrom === undefined || line.neededBy === undefined
            ? leadDays(thing.need.thing) === 0 && thing.need.uses[0]?.meeting.label !== firstMeeting
            : (line.orderBy ?? line.neededBy) > nextFrom;
        return waits ? [] : [line];
    });
}

function missingOf({ figures, need, stock }: WeekThing): Figure | undefined {
    return !figures.optional && isBought(need.thing, figures.source, stock.atHand !== undefined) ? figures.missing : undefined;
}

/** The last day to order for the first use of the week; undefined where a thing is bought on the day or the week has no dates. */
export function lastDayToOrder({ thing, uses }: WeekNeed): string | undefined {
    const lead = leadDays(thing);
    const date = uses[0]?.meeting.date;
    const day = date === undefined ? undefined : readDay(date);
    return day && lead > 0 ? day.subtract({ days: lead }).toString() : undefined;
}

/** Whole days from order to arrival; 0 where none are declared. */
function leadDays(thing: ThingSheet): number {
    const days = thing.kind === 'material' ? thing.arrives?.days : undefined;
    return days !== undefined && Number.isFinite(days) ? Math.min(Math.max(0, Math.floor(days)), 3650) : 0;
}

function buy(thing: WeekThing, missing: Figure): BuyFigures {
    const { figures, need, stock } = thing;
    const meeting = need.uses[0]?.meeting;
    const day = meeting?.date === undefined ? undefined : readDay(meeting.date);
    const lead = leadDays(need.thing);
    const orderBy = lastDayToOrder(need);
    const orderDay = orderBy === undefined ? undefined : readDay(orderBy);
    const arrives = lead > 0 ? `; arrives in ${counted(lead, 'day')}, so order ${
        orderDay ? `by ${dayLabel(orderDay)}` : `at least ${counted(lead, 'day')} before`}` : '';
    const onTheWay = stock.onTheWay.map(words => `; ${words}`).join('');
    return {
        name: figures.name,
        title: figures.title,
        place: figures.place,
        missing,
        packs: need.thing.kind === 'material' ? packsInWords(need.thing) : [],
        source: figures.source,
        neededBy: meeting?.date,
        orderBy,
        when: `needed ${day ? '' : 'on '}${meeting?.label ?? 'this week'}${arrives}${onTheWay}`
    };
}

function packsInWords(material: MaterialSheet): string[] {
    return material.packs.map(p => `packs of ${packSize(p.amount, material)}${p.cost ? ` at ${p.cost.value} ${p.cost.currency}` : ''}`);
}

/** The number as declared, never in another unit, since it stands so on the pack: "25 sheets", "1 sheet". */
function packSize({ value, unit }: Amount, { counted: own }: MaterialSheet): string {
    if (unit === undefined) return value;
    const known = unitNamed(unit);
    const isOwn = own && [own.one, own.many].some(word => word.toLowerCase() === unit.toLowerCase());
    const [one, many] = isOwn ? [own.one, own.many] : known ? [known.symbol, known.plural] : [unit, unit];
    const size = readExact(value);
    return `${value} ${size?.gt(0) && size.lte(1) ? one : many}`;
}
