import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { Wanted } from '../audience.js';
import { moneyFigure } from '../buying/money.js';
import { newPlanningCache } from '../cache.js';
import type { CoverageFigures } from '../coverage-figures.js';
import type { Difference, EditionGroup } from '../edition-figures.js';
import type { ScheduleFigures } from '../schedule-figures.js';
import { planSchedule } from '../schedule.js';
import type { MoneyFigure, SupplyFigures } from '../supply-figures.js';
import { planSupplies } from '../supplies/plan-supplies.js';
import { termPlanOf } from '../supplies/term-plan.js';
import { quoted } from '@haversack/language/facts/wording';
import type { Matched } from './matched.js';
import { comings, difference, group, instead, insteadOf } from './words.js';

interface Planned {
    schedule: ScheduleFigures;
    supplies: SupplyFigures;
    coverage: CoverageFigures;
}

/** A class's whole term with either edition: amounts, money, days, lessons that find no day, frameworks. */
export function termDifferences(matched: Matched, wanted: { old: Wanted; new: Wanted }, sheet: { old?: ClassSheet; new?: ClassSheet }): { groups: EditionGroup[]; frameworks: EditionGroup[] } {
    const before = planned(withClass(matched.old, sheet.new), wanted.old);
    const after = planned(withClass(matched.now, sheet.old), wanted.new);
    const title = (sheet.new ?? sheet.old)?.title;
    return {
        groups: [...group({ title, differences: [...days(before.schedule, after.schedule), ...leftOut(matched, before.schedule, after.schedule), ...money(before.supplies, after.supplies), ...amounts(matched, before.supplies, after.supplies)] })],
        frameworks: frameworks(before.coverage, after.coverage)
    };
}

/** Where an edition lacks the class, the other one's is planned for, with what the edition has for it. */
function withClass(programme: Programme, sheet: ClassSheet | undefined): Programme {
    if (!sheet || programme.classes.has(sheet.name)) return programme;
    return { ...programme, classes: new Map([...programme.classes, [sheet.name, sheet]]) };
}

function planned(programme: Programme, wanted: Wanted): Planned {
    const cache = newPlanningCache();
    const schedule = planSchedule(programme, wanted);
    return { schedule, supplies: planSupplies(programme, wanted, { schedule, cache }), coverage: termPlanOf(cache, programme).coverage(wanted) };
}

function amounts(matched: Matched, before: SupplyFigures, after: SupplyFigures): Difference[] {
    const old = new Map(before.things.map(thing => [matched.newThing(thing.name), thing]));
    const now = new Map(after.things.map(thing => [thing.name, thing]));
    return [...new Set([...now.keys(), ...old.keys()])].flatMap(name => {
        const [was, is] = [old.get(name), now.get(name)];
        const told = instead(was && was.need.text, is && is.need.text);
        if (told === undefined) return [];
        const says = was && is ? told : is ? `${is.need.text}, which was not needed before` : `no longer needed (was ${was!.need.text})`;
        return [difference('supply', `${(is ?? was)!.title}: ${says}`, { old: was?.place, new: is?.place })];
    });
}


/** One line for each currency; they are never added to one another. */
function money(before: SupplyFigures, after: SupplyFigures): Difference[] {
    const currencies = [...new Set([...before.costs.term, ...after.costs.term].map(({ currency }) => currency))].sort();
    const sums = currencies.flatMap(currency => {
        const of = (figures: SupplyFigures): MoneyFigure | undefined => figures.costs.term.find(sum => sum.currency === currency);
        const [was, is] = [of(before), of(after)];
        const more = BigInt(is?.minor ?? 0) - BigInt(was?.minor ?? 0);
        if (more === 0n) return [];
        const amount = moneyFigure({ minor: more < 0n ? -more : more, currency }).text;
        return [difference('money', `To buy over the term: ${is?.text ?? `nothing in ${currency}`} instead of ${was?.text ?? `nothing in ${currency}`}, ${amount} ${more > 0n ? 'more' : 'less'}`)];
    });
    const unpriced = comings(before.costs.unpriced, after.costs.unpriced, ({ name }) => name, ({ name }) => name);
    return [...sums, ...unpriced.added.map(({ title }) => difference('money', `${title}: to be bought, and no price is known`))];
}

function days(before: ScheduleFigures, after: ScheduleFigures): Difference[] {
    const meetings = ({ weeks }: ScheduleFigures): number => weeks.flatMap(week => week.meetings).filter(({ taught }) => taught.length > 0).length;
    const last = ({ weeks }: ScheduleFigures): string | undefined => {
        const taught = weeks.flatMap(week => week.meetings).filter(meeting => meeting.taught.length > 0);
        const { date, label } = taught[taught.length - 1] ?? {};
        return date === undefined ? undefined : `${label ?? ''} (${date})`;
    };
    const told = insteadOf(meetings(before), meetings(after), 'meeting', 'meetings');
    const end = instead(last(before), last(after));
    return [
        ...(told === undefined ? [] : [difference('days', `With a lesson: ${told}`)]),
        ...(end === undefined ? [] : [difference('days', `Last lesson: ${end}`)])
    ];
}

function leftOut(matched: Matched, before: ScheduleFigures, after: ScheduleFigures): Difference[] {
    const { gone, added } = comings(before.unplaced, after.unplaced, ({ lesson }) => matched.newLesson(lesson), ({ lesson }) => lesson);
    return [
        ...added.map(one => difference('left-out', `The term has no day left for ${quoted(one.title)}`, { new: one.place })),
        ...gone.filter(one => matched.now.lessons.has(matched.newLesson(one.lesson))).map(one => difference('left-out', `There is now a day for ${quoted(one.title)}`, { old: one.place }))
    ];
}

function frameworks(before: CoverageFigures, after: CoverageFigures): EditionGroup[] {
    return after.frameworks.flatMap(framework => {
        const former = before.frameworks.find(({ name }) => name === framework.name);
        const told = instead(former && shareOf(former), shareOf(framework));
        return former === undefined || told === undefined ? [] : [{ title: framework.title, old: former.place, new: framework.place, differences: [difference('framework', `Items met: ${told}`, { old: former.place, new: framework.place })] }];
    });
}

function shareOf({ wrong, text }: CoverageFigures['frameworks'][number]): string {
    return wrong ?? text;
}
