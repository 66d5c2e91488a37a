import { thingsTaughtWith } from '@haversack/language/checks/lesson-facts';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { asCommonNoun } from '@haversack/language/sheets/titles';
import type { TermFigures } from '../planning/term-figures.js';
import type { ClassTerm } from '../plan-checks/term.js';
import { dayInWords } from '../plan-checks/days.js';
import { meetingsOf } from '../plan-checks/meetings.js';
import type { MoneyFigure, OrderFigures } from '../planning/supply-figures.js';
import { taughtAs, type TaughtAs } from '../planning/taught-as.js';
import { counted, listing, once, quoted } from '@haversack/language/facts/wording';

/** What the plans of all classes say of one declaration, a sentence or so for each class: for the hover. */

const mostNamed = 4;

export function aboutThing(name: string, terms: readonly ClassTerm[]): string[] {
    return perClass(terms, ({ supplies }) => {
        const record = supplies.record(name);
        if (!record) return undefined;
        const [order] = supplies.ordersFor(name);
        return sentence([
            `${record.need.text} needed over the term`, record.opening && `${record.opening.text} at hand before the first week`,
            record.runsOut?.text, order && `${packsOf(order)}: ${order.when}`
        ]);
    });
}

export function aboutLesson(lesson: LessonSheet, things: ReadonlySet<string>, terms: readonly ClassTerm[]): string[] {
    return perClass(terms, term => {
        const taught = taughtAs(lesson.name, term.adapted);
        if (taught.leftOut) return `left out by ${quoted(taught.leftOut.adaptation.title)}`;
        const days = meetingsOf(term.schedule).filter(({ lessons }) => taught.names.some(name => lessons.includes(name)));
        const unplaced = term.schedule.unplaced.find(one => taught.names.includes(one.lesson));
        if (days.length === 0) return unplaced && sentence([`not taught: ${unplaced.why}`, otherwiseTaught(taught, term)]);
        const buy = toBuy(lesson, things, term).map(({ title }) => asCommonNoun(title));
        return sentence([listing(days.map(({ label }) => label)), otherwiseTaught(taught, term), buy.length > 0 && `to buy: ${named(buy)}`]);
    });
}

/** For whom an activity is left out, by itself or with its lesson; nothing where it is done. */
export function aboutPart(lesson: string, part: string, terms: readonly ClassTerm[]): string[] {
    return perClass(terms, ({ adapted }) => {
        const whole = taughtAs(lesson, adapted).leftOut;
        if (whole) return `left out with its lesson by ${quoted(whole.adaptation.title)}`;
        const own = adapted?.changes.find(({ change, idle }) => idle === undefined && change.does === 'skip activity' && change.activity.lesson.name === lesson && change.activity.part.name === part);
        return own && `left out by ${quoted(own.adaptation.title)}`;
    });
}

/** "joined with “Two shelves”", "in 2 parts"; undefined where it is one lesson by itself. */
export function otherwiseTaught({ names, joinedWith }: TaughtAs, { taught: { lessons } }: Pick<ClassTerm, 'taught'>): string | undefined {
    if (joinedWith.length > 0) return `joined with ${named(joinedWith.map(name => quoted(lessons.get(name)?.title ?? name)))}`;
    return names.length > 1 ? `in ${names.length} parts` : undefined;
}

/** Orders that serve a week in which the lesson is taught, of things that it uses; each thing once. What has no packs is bought only in a shop. */
export function toBuy(lesson: LessonSheet, things: ReadonlySet<string>, { schedule, supplies, adapted, taught }: ClassTerm): OrderFigures[] {
    const { names } = taughtAs(lesson.name, adapted);
    const weeks = new Set(schedule.weeks.filter(({ meetings }) => meetings.some(({ lessons }) => names.some(name => lessons.includes(name)))).map(({ number }) => number));
    const used = adapted ? new Set(names.flatMap(name => taught.lessons.get(name) ?? []).flatMap(sheet => [...thingsTaughtWith(sheet, taught)])) : things;
    return [...used].flatMap(name => supplies.ordersFor(name).find(({ covers, packs, source }) => (packs.length > 0 || source === 'shop') && covers.some(week => weeks.has(week))) ?? []);
}

export function aboutClass({ schedule, supplies }: TermFigures): string[] {
    const meetings = meetingsOf(schedule);
    const [first, last] = [meetings[0], meetings[meetings.length - 1]];
    if (!first || !last) return [];
    const { unplaced } = schedule;
    const { term, perLearner } = supplies.costs;
    return [
        `${first.label} to ${last.label}: ${counted(meetings.length, 'meeting')} in ${counted(schedule.weeks.length, 'week')}`,
        ...(unplaced.length > 0 ? [`${counted(unplaced.length, 'lesson')} without a day: ${named(unplaced.map(({ title }) => quoted(title)))}`] : []),
        ...(term.length > 0 ? [`to buy for ${money(term)}${perLearner.length > 0 ? `, ${money(perLearner)} for each learner` : ''}`] : [])
    ];
}

export function aboutObjective(name: string, terms: readonly ClassTerm[]): string[] {
    return perClass(terms, ({ coverage }) => coverage.objectives.find(objective => objective.name === name)?.text);
}

export function aboutFramework(name: string, terms: readonly ClassTerm[]): string[] {
    return perClass(terms, ({ coverage }) => {
        const found = coverage.frameworks.find(framework => framework.name === name);
        return found && (found.wrong ?? found.text);
    });
}

/** The days that a calendar takes away from the class that names it. */
export function aboutCalendar(path: string, { schedule }: ClassTerm): string[] {
    const days = schedule.daysOff.filter(({ calendar, costs }) => calendar === path && costs);
    if (days.length === 0) return ['takes no meeting away'];
    const said = days.slice(0, 2 * mostNamed).map(({ from, to, title }) => `${from === to ? dayInWords(from) : `${dayInWords(from)} to ${dayInWords(to)}`}: ${title}`);
    return days.length > said.length ? [...said, `and ${days.length - said.length} more`] : said;
}

/** What holds for all classes alike is said once. */
function perClass(terms: readonly ClassTerm[], about: (term: ClassTerm) => string | undefined): string[] {
    const said = terms.map(term => ({ title: term.group.title, words: about(term) ?? '' }));
    const alike = once(said.map(({ words }) => words));
    if (alike.length === 1) return alike.filter(words => words !== '');
    return said.flatMap(({ title, words }) => (words === '' ? [] : [`${title}: ${words}`]));
}

function sentence(parts: readonly (string | false | undefined)[]): string {
    return parts.filter(Boolean).join('; ');
}

function packsOf({ packs, bought, title }: OrderFigures): string {
    return packs.length > 0 ? `buy ${listing(packs.map(({ text }) => text))}` : `find ${bought.text} ${asCommonNoun(title)}`;
}

function named(words: readonly string[]): string {
    return words.length <= mostNamed ? listing(words) : `${words.slice(0, mostNamed).join(', ')} and ${words.length - mostNamed} more`;
}

function money(sums: readonly MoneyFigure[]): string {
    return listing(sums.map(({ text }) => text));
}
