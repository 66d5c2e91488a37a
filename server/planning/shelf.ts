import { thingNamed } from '@haversack/language/sheets/programme';
import type { ThingSheet } from '@haversack/language/sheets/sheet';
import { isUsedUp } from './demand.js';
import type { WeekBrief } from './figures.js';
import type { Plan } from './plan.js';
import type { WeekThing } from './things.js';
import { listing, once, quoted } from './wording.js';

type ShelfLine = WeekBrief['stayOnShelf'][number];

/** What families may ask for though no lesson of the week uses it: what lessons call not needed, kit pieces, the course's books. */
export function stayOnShelf(plan: Plan, week: number): ShelfLine[] {
    const used = plan.needs(week);
    const lines = new Map<string, ShelfLine>();
    const taught = plan.taught(week).map(t => t.lesson);
    const add = (name: string, why: (thing: ThingSheet) => string): void => {
        const thing = thingNamed(plan.programme, name);
        if (!thing || thing.kind === 'print' || used.has(name) || lines.has(name)) return;
        lines.set(name, { name, title: thing.title, place: { uri: thing.uri, range: thing.at }, why: why(thing) });
    };
    for (const name of once(taught.flatMap(l => l.notNeeded.map(n => n.name)))) {
        const lessons = once(taught.filter(l => l.notNeeded.some(n => n.name === name)).map(l => quoted(l.title)));
        add(name, () => `Not needed for ${listing(lessons)}.`);
    }
    for (const kit of plan.audience.kits) {
        for (const held of kit.sheet.holds) {
            add(held.thing.name, () => `In the kit ${quoted(kit.sheet.title)}; ${nextUse(plan, held.thing.name, week)}.`);
        }
    }
    for (const book of plan.programme.books.values()) {
        if (plan.weeksOf(book.name).length > 0) add(book.name, () => `${capital(nextUse(plan, book.name, week))}.`);
    }
    return [...lines.values()];
}

/** Things that are handed back, used this week for the last time. */
export function putAway(plan: Plan, week: number, things: readonly WeekThing[]): ShelfLine[] {
    return things.flatMap(({ need, figures }) => {
        const last = plan.weeksOf(figures.name).at(-1);
        if (last !== week || isUsedUp(need.use)) return [];
        const meeting = need.uses.at(-1)?.meeting.label ?? 'this week';
        return [{ name: figures.name, title: figures.title, place: figures.place, why: `Used for the last time on ${meeting}; no later week needs it.` }];
    });
}

function nextUse(plan: Plan, name: string, week: number): string {
    const weeks = plan.weeksOf(name);
    const next = weeks.find(w => w > week);
    if (next !== undefined) return `next used in week ${next}`;
    return weeks.length > 0 ? `last used in week ${weeks.at(-1)}, not needed again` : 'no lesson of this plan uses it';
}

function capital(text: string): string {
    return text.charAt(0).toUpperCase() + text.slice(1);
}
