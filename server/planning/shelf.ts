import { thingNamed } from '@haversack/language/sheets/programme';
import type { BookSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { isUsedUp } from './demand.js';
import type { WeekBrief } from './figures.js';
import type { Plan } from './plan.js';
import { sharingWith } from './sharing.js';
import { sourceOf } from './sources.js';
import type { WeekThing } from './things.js';
import { capital, listing, once, quoted } from '@haversack/language/facts/wording';

type ShelfLine = WeekBrief['stayOnShelf'][number];

/** Weeks ahead in which a book from the library is told of, so that it can be reserved. */
const libraryWeeks = 2;

/**
 * What families may ask for though no lesson of the week uses it: what lessons call not needed, kit pieces, the course's books. A kit
 * piece that has done its work was put away for good in its last week and is not told again; a library book is not told
 * long before it is wanted.
 */
export function stayOnShelf(plan: Plan, week: number): ShelfLine[] {
    const used = plan.needs(week);
    const lines = new Map<string, ShelfLine>();
    const taught = plan.taught(week).map(t => t.lesson);
    const add = (name: string, why: (thing: ThingSheet) => string, more: Partial<ShelfLine> = {}): void => {
        const thing = thingNamed(plan.programme, name);
        if (!thing || thing.kind === 'print' || used.has(name) || lines.has(name)) return;
        lines.set(name, { name, title: thing.title, place: { uri: thing.uri, range: thing.at }, why: why(thing), kind: thing.kind, ...more });
    };
    for (const name of once(taught.flatMap(l => l.notNeeded.map(n => n.name)))) {
        const lessons = once(taught.filter(l => l.notNeeded.some(n => n.name === name)).map(l => quoted(l.title)));
        add(name, () => `Not needed for ${listing(lessons)}.`);
    }
    for (const kit of plan.audience.kits) {
        const of = { name: kit.sheet.name, title: kit.sheet.title, place: { uri: kit.sheet.uri, range: kit.sheet.at } };
        for (const { thing: { name } } of kit.sheet.holds) {
            const next = nextWeek(plan, name, week);
            if (next === undefined && plan.weeksOf(name).length > 0) continue;
            const choices = plan.weeksWithChoiceOf(name);
            if (next === undefined && choices.length > 0) {
                const choice = choices.find(w => w > week);
                // This week's list names it as what would do; after its last week nobody asks for it.
                if (choice !== undefined && !choices.includes(week)) add(name, () => `Would do in week ${choice} in place of what is chosen there.`);
                continue;
            }
            add(name, () => `In the kit ${quoted(kit.sheet.title)}; ${nextUse(plan, name, week)}.`, { kit: of, nextWeek: next });
        }
    }
    for (const book of plan.programme.books.values()) {
        const next = nextWeek(plan, book.name, week);
        if (next === undefined || (fromLibrary(book) && next > week + libraryWeeks)) continue;
        add(book.name, () => `${capital(nextUse(plan, book.name, week))}.`);
    }
    return [...lines.values()];
}

/** Things that are handed back, used this week for the last time. */
export function putAway(plan: Plan, week: number, things: readonly WeekThing[]): WeekBrief['putAway'] {
    const sharing = sharingWith(plan.programme, plan.audience.class).map(({ title }) => quoted(title));
    const ask = sharing.length > 0 ? ` Ask ${listing(sharing)} before it goes: the cupboard is theirs too.` : '';
    return things.flatMap(({ need, figures }) => {
        const last = plan.weeksOf(figures.name).at(-1);
        if (last !== week || isUsedUp(need.use)) return [];
        const after = need.uses.at(-1)?.meeting.label;
        return [{ name: figures.name, title: figures.title, place: figures.place, why: `Used for the last time ${after === undefined ? 'this week' : `on ${after}`}; no later week needs it.${ask}`, ...(after !== undefined && { after }) }];
    });
}

function nextUse(plan: Plan, name: string, week: number): string {
    const next = nextWeek(plan, name, week);
    return next === undefined ? 'no lesson of this plan uses it' : `next used in week ${next}`;
}

function nextWeek(plan: Plan, name: string, week: number): number | undefined {
    return plan.weeksOf(name).find(w => w > week);
}

function fromLibrary(book: BookSheet): boolean {
    return sourceOf({ thing: book }, false) === 'library';
}
