import type Fraction from 'fraction.js';
import type { Amount, MaterialSheet } from '@haversack/language/sheets/sheet';
import { comesWhole, figure } from './amounts.js';
import { dayLabel, readDay } from './calendar.js';
import { isUsedUp } from './demand.js';
import type { BuyFigures, Figure } from './figures.js';
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

/**
 * What of next week's buying cannot wait for next week's brief: it must be ordered by, or is needed at, its first meeting. What this
 * week's list already covers of a thing that is handed back is not bought twice.
 */
export function orderNow(next: readonly WeekThing[], current: readonly WeekThing[], nextFrom: string | undefined, firstMeeting: string): BuyFigures[] {
    return next.flatMap(thing => {
        const missing = stillMissing(thing, current);
        if (!missing || !isBought(thing)) return [];
        const line = buy(thing, missing);
        const waits = nextFrom === undefined || line.neededBy === undefined
            ? leadDays(thing) === 0 && thing.need.uses[0]?.meeting.label !== firstMeeting
            : (line.orderBy ?? line.neededBy) > nextFrom;
        return waits ? [] : [line];
    });
}

function stillMissing(thing: WeekThing, current: readonly WeekThing[]): Figure | undefined {
    const { missing } = thing.stock;
    const { figures, need } = thing;
    if (!missing || !figures.missing) return undefined;
    const same = isUsedUp(need.use) ? undefined : current.find(c => c.figures.name === figures.name);
    const bought: Fraction | undefined = same && isBought(same) ? same.stock.missing : undefined;
    if (!bought) return figures.missing;
    const rest = missing.sub(bought);
    if (!rest.gt(0)) return undefined;
    const whole = comesWhole(need.measure) ? rest.ceil() : rest;
    return figure(whole, need.measure, [...figures.missing.trail, { words: `less what this week's list already buys: ${figure(bought, need.measure).text}` }]);
}

function isBought({ figures, need }: WeekThing): boolean {
    if (figures.missing === undefined || figures.optional || figures.source === 'printed') return false;
    return figures.source === 'kit' || figures.source === 'shop' || (need.thing.kind === 'material' && need.thing.packs.length > 0);
}

function leadDays({ need }: WeekThing): number {
    const days = need.thing.kind === 'material' ? need.thing.arrives?.days : undefined;
    return days !== undefined && Number.isFinite(days) ? Math.min(Math.max(0, Math.floor(days)), 3650) : 0;
}

function buy(thing: WeekThing, missing: Figure): BuyFigures {
    const { figures, need, stock } = thing;
    const meeting = need.uses[0]?.meeting;
    const day = meeting?.date === undefined ? undefined : readDay(meeting.date);
    const lead = leadDays(thing);
    const orderBy = day && lead > 0 ? day.subtract({ days: lead }) : undefined;
    const arrives = lead > 0 ? `; arrives in ${counted(lead, 'day')}, so order ${
        orderBy ? `by ${dayLabel(orderBy)}` : `at least ${counted(lead, 'day')} before`}` : '';
    const onTheWay = stock.onTheWay.map(words => `; ${words}`).join('');
    return {
        name: figures.name,
        title: figures.title,
        place: figures.place,
        missing,
        packs: need.thing.kind === 'material' ? packsInWords(need.thing) : [],
        source: figures.source,
        neededBy: meeting?.date,
        orderBy: orderBy?.toString(),
        when: `needed ${day ? '' : 'on '}${meeting?.label ?? 'this week'}${arrives}${onTheWay}`
    };
}

function packsInWords(material: MaterialSheet): string[] {
    const written = (amount: Amount): string => `${amount.value}${amount.unit === undefined ? '' : ` ${amount.unit}`}`;
    return material.packs.map(p => `packs of ${written(p.amount)}${p.cost ? ` at ${p.cost.value} ${p.cost.currency}` : ''}`);
}
