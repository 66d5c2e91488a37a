import type { Amount, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { comesWhole, figure } from './amounts.js';
import { dayLabel, readDay } from './calendar.js';
import { isUsedUp } from './demand.js';
import { largest } from './exact.js';
import type { BuyFigures, Figure } from './figures.js';
import type { WeekNeed } from './gross.js';
import type { WeekThing } from './things.js';
import { counted } from './wording.js';

/**
 * What to buy or order for a week: what is missing of things that come from the kit or the shop, or that packs are declared for.
 * What is wholly optional is not bought.
 */
export function buyList(things: readonly WeekThing[]): BuyFigures[] {
    return things.flatMap(thing => {
        const missing = thing.figures.missing;
        return missing && isBought(thing) ? [buy(thing, missing)] : [];
    });
}

/** The next week, whose own brief comes out before its first meeting. */
export interface NextWeek {
    nextFrom: string | undefined;
    /** Label of its first meeting. */
    firstMeeting: string;
}

/**
 * What of a later week's buying cannot wait for next week's brief: it must be ordered by, or is needed at, next week's first meeting. What
 * the weeks before it already buy of a thing that is handed back is not bought twice.
 */
export function orderNow(later: readonly WeekThing[], before: readonly WeekThing[], { nextFrom, firstMeeting }: NextWeek): BuyFigures[] {
    return later.flatMap(thing => {
        const missing = stillMissing(thing, before);
        if (!missing || !isBought(thing)) return [];
        const line = buy(thing, missing);
        const waits = nextFrom === undefined || line.neededBy === undefined
            ? leadDays(thing.need.thing) === 0 && thing.need.uses[0]?.meeting.label !== firstMeeting
            : (line.orderBy ?? line.neededBy) > nextFrom;
        return waits ? [] : [line];
    });
}

function stillMissing(thing: WeekThing, before: readonly WeekThing[]): Figure | undefined {
    const { missing } = thing.stock;
    const { figures, need } = thing;
    if (!missing || !figures.missing) return undefined;
    const same = isUsedUp(need.use) ? [] : before.filter(b => b.figures.name === figures.name && isBought(b));
    const bought = largest(same.flatMap(b => b.stock.missing ?? []));
    if (!bought.gt(0)) return figures.missing;
    const rest = missing.sub(bought);
    if (!rest.gt(0)) return undefined;
    const whole = comesWhole(need.measure) ? rest.ceil() : rest;
    return figure(whole, need.measure, [...figures.missing.trail, { words: `less what the weeks before already buy: ${figure(bought, need.measure).text}` }]);
}

function isBought({ figures, need }: WeekThing): boolean {
    if (figures.missing === undefined || figures.optional || figures.source === 'printed') return false;
    return figures.source === 'kit' || figures.source === 'shop' || (need.thing.kind === 'material' && need.thing.packs.length > 0);
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
    const written = (amount: Amount): string => `${amount.value}${amount.unit === undefined ? '' : ` ${amount.unit}`}`;
    return material.packs.map(p => `packs of ${written(p.amount)}${p.cost ? ` at ${p.cost.value} ${p.cost.currency}` : ''}`);
}
