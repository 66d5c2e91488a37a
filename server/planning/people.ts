import Fraction from 'fraction.js';
import type { ClassSheet, GameSheet } from '@haversack/language/sheets/sheet';
import { largest, sum } from './exact.js';
import type { PeopleFigures } from './figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';

/** Learners who are taught together: a class without sections, or one section of it. */
export interface Crowd {
    /** The section's title; absent for a class without sections. */
    title?: string;
    learners: number;
    adults: number;
    /** Absent: no group size is declared, and the crowd is one group. */
    groupsOf?: number;
    /** "09:30"; absent where no hour is written. */
    clock?: string;
}

export interface People {
    crowds: Crowd[];
    figures: PeopleFigures;
}

/** A number of people beyond this is a slip of the hand. */
const mostPeople = 10_000;

export function pairsOf(learners: number): number {
    return Math.ceil(learners / 2);
}

/** `people` over `groups` groups as evenly as possible, the larger groups first: 7 over 3 is 3, 2, 2. */
export function evenly(people: number, groups: number): number[] {
    if (groups < 1) return [];
    const small = Math.floor(people / groups);
    const large = people % groups;
    return Array.from({ length: groups }, (_, i) => (i < large ? small + 1 : small));
}

/** Groups of at most `size`, as few and as even as possible; without a size all are one group. */
export function groupsOf(learners: number, size?: number): number[] {
    if (learners < 1) return [];
    return evenly(learners, size === undefined || size < 1 ? 1 : Math.ceil(learners / size));
}

/** "3, 2 and 2"; from five groups on by size: "6 of 4 and 1 of 3". */
export function sizesInWords(sizes: readonly number[]): string {
    if (sizes.length <= 4) return listing(sizes.map(String));
    const bySize = [...new Set(sizes)].map(size => `${sizes.filter(s => s === size).length} of ${size}`);
    return listing(bySize);
}

/** "2 to 4 players"; a single number is exactly that many. */
export function playersInWords(players: NonNullable<GameSheet['players']>): string {
    const { from, to } = bounds(players);
    return from === to ? counted(from, 'player') : `${from} to ${to} players`;
}

function bounds(players: NonNullable<GameSheet['players']>): { from: number; to: number } {
    const from = Math.max(1, players.from);
    return { from, to: Math.max(from, players.to ?? from) };
}

/**
 * How many tables play a game at once, who sits at each, and the reason in words. No table is larger than the game allows;
 * where the learners do not come out even, adults take the places that stay empty.
 */
export function tablesFor(crowd: Crowd, players: GameSheet['players']): { sizes: number[]; why: string } {
    const own = groupsOf(crowd.learners, crowd.groupsOf);
    if (!players || own.length === 0) return { sizes: own, why: "the class's own groups" };
    const { from, to } = bounds(players);
    const range = playersInWords(players);
    if (own.every(size => size >= from && size <= to)) return { sizes: own, why: `the class's own groups fit ${range}` };
    const sizes = evenly(crowd.learners, Math.ceil(crowd.learners / to) || 1);
    const free = sizes.filter(size => size < from).map(size => from - size);
    const why = free.length === 0 ? `the fewest even tables of ${range}` : `the game wants ${range}: ${adultsPlay(free, sizes.length, crowd.adults)}`;
    return { sizes, why };
}

/** `free` places at each table that is short: "an adult plays along at one table". */
function adultsPlay(free: readonly number[], tables: number, adults: number): string {
    const places = free.reduce((total, places) => total + places, 0);
    const where = tables === 1 ? '' : free.length === 1 ? ' at one table' : ` at ${free.length === tables ? 'each of the ' : ''}${free.length} tables`;
    const enough = places <= adults ? '' : `; that takes ${counted(places, 'adult')}, and ${adults} ${adults === 1 ? 'is' : 'are'} counted`;
    return `${places === 1 ? 'an adult plays' : 'adults play'} along${where}${enough}`;
}

/**
 * What all crowds use at once of a thing that is handed back: crowds at the same hour add up, and so does a crowd without an
 * hour (it may meet at any); of different hours the largest counts.
 */
export function atOnce(amounts: readonly Fraction[], crowds: readonly Crowd[]): Fraction {
    const byClock = new Map<string, Fraction>();
    const always: Fraction[] = [];
    amounts.forEach((amount, i) => {
        const clock = crowds[i]?.clock;
        if (clock === undefined) always.push(amount);
        else byClock.set(clock, (byClock.get(clock) ?? new Fraction(0)).add(amount));
    });
    return sum(always).add(largest(byClock.values()));
}

/** "9:30", "09:30" and "9.30" are one hour. */
function sameClock(written: string | undefined): string | undefined {
    if (written === undefined || written.trim() === '') return undefined;
    const parts = /^(\d{1,2})[:.](\d{2})$/.exec(written.trim());
    return parts ? `${(parts[1] ?? '').padStart(2, '0')}:${parts[2]}` : written.trim().toLowerCase();
}

/** The people of a class; without one, one learner with one adult. */
export function peopleOf(sheet: ClassSheet | undefined): People {
    const assumptions: string[] = [];
    const heads = (count: number, who: string): number => {
        if (!(count > mostPeople)) return Math.max(0, Math.floor(count) || 0);
        assumptions.push(`More than ${mostPeople} ${who} are written: counted as ${mostPeople}.`);
        return mostPeople;
    };
    if (!sheet) return withFigures([{ learners: 1, adults: 1 }], 1, ['No class is declared: one learner, one kit and four lessons a week.']);
    const adults = sheet.adults === undefined ? undefined : heads(sheet.adults, 'adults');
    if (sheet.sections.length === 0) {
        if (!sheet.learners) assumptions.push(`The class ${quoted(sheet.title)} does not say how many learners it has: one is counted.`);
        const learners = sheet.learners ? heads(sheet.learners.count, 'learners') : 1;
        if (learners === 0) assumptions.push(nobody(sheet));
        return withFigures([{ learners: Math.max(1, learners), adults: adults ?? 1, groupsOf: sheet.groupsOf }], adults ?? 1, assumptions);
    }
    const known = sheet.sections.map(s => (s.learners === undefined ? undefined : heads(s.learners, 'learners')));
    const silent = known.filter(n => n === undefined).length;
    const said = known.reduce<number>((total, n) => total + (n ?? 0), 0);
    const rest = sheet.learners ? heads(sheet.learners.count, 'learners') - said : silent;
    const shares = evenly(Math.max(0, rest), silent);
    if (silent > 0) {
        assumptions.push(sheet.learners
            ? 'Sections without a number of learners share the rest of the class.'
            : 'A section without a number of learners counts as one learner.');
    } else if (sheet.learners && rest !== 0) {
        assumptions.push(`The class ${quoted(sheet.title)} says ${counted(sheet.learners.count, 'learner')}, its sections add up to ${said}: the sections are counted.`);
    }
    const crowds = sheet.sections.map((s, i): Crowd => ({
        title: s.title,
        learners: known[i] ?? shares.shift() ?? 0,
        adults: s.adults === undefined ? adults ?? 1 : heads(s.adults, 'adults'),
        groupsOf: s.groupsOf ?? sheet.groupsOf,
        clock: sameClock(s.clock)
    }));
    const [first] = crowds;
    if (first && crowds.every(c => c.learners === 0)) {
        first.learners = 1;
        assumptions.push(nobody(sheet));
    }
    shareAdults(crowds, sheet, adults);
    const atOneHour = atOnce(crowds.map(c => new Fraction(c.adults)), crowds).valueOf();
    return withFigures(crowds, adults ?? atOneHour, assumptions);
}

function nobody(sheet: ClassSheet): string {
    return `The class ${quoted(sheet.title)} has no learners: one is counted.`;
}

/** The adults of the class are not in two rooms at once: sections of one hour that name none share what is left. */
function shareAdults(crowds: Crowd[], sheet: ClassSheet, adults: number | undefined): void {
    if (adults === undefined) return;
    const hours = new Set(crowds.map(c => c.clock));
    for (const hour of hours) {
        const here = crowds.map((crowd, i) => ({ crowd, own: sheet.sections[i]?.adults })).filter(c => c.crowd.clock === hour);
        const silent = here.filter(c => c.own === undefined);
        const spoken = here.reduce((total, c) => total + (c.own === undefined ? 0 : c.crowd.adults), 0);
        const shares = evenly(Math.max(0, adults - spoken), silent.length);
        silent.forEach((c, i) => { c.crowd.adults = shares[i] ?? 0; });
    }
}

function withFigures(crowds: Crowd[], adults: number, assumptions: string[]): People {
    const learners = crowds.reduce((total, c) => total + c.learners, 0);
    const pairs = crowds.reduce((total, c) => total + pairsOf(c.learners), 0);
    const groups = crowds.flatMap(c => groupsOf(c.learners, c.groupsOf));
    const words = crowds.map(c => `${c.title === undefined ? '' : `${c.title}, `}${crowdInWords(c)}`);
    const text = crowds.length > 1 ? `${counted(learners, 'learner')} in ${crowds.length} sections: ${words.join('; ')}` : words.join('');
    return { crowds, figures: { learners, adults, pairs, groups, text, assumptions } };
}

function crowdInWords(crowd: Crowd): string {
    const learners = counted(crowd.learners, 'learner');
    if (crowd.learners < 2) return learners;
    const groups = groupsOf(crowd.learners, crowd.groupsOf);
    const inGroups = crowd.groupsOf === undefined
        ? 'one group, no group size given'
        : groups.length === 1 ? `one group of ${groups[0]}`
            : groups.length <= 4 ? `groups of ${sizesInWords(groups)}` : `groups: ${sizesInWords(groups)}`;
    return `${learners}: ${counted(pairsOf(crowd.learners), 'pair')}; ${inGroups}`;
}
