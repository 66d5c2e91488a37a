import type { Added, Change, PartMention } from '../sheets/adaptation-sheet.js';
import { capital, listing, quoted } from '../facts/wording.js';
import { asCommonNoun } from '../sheets/titles.js';

/** What things are called, for sentences. */
export interface Titles {
    lesson(name: string): string;
    part(mention: PartMention): string;
    thing(name: string): string;
    objective(name: string): string;
}

export function minutesInWords(minutes: number): string {
    return `${minutes} min`;
}

/** "lentils" for "Lentils": inside a sentence. */
export function thingInWords(titles: Titles, name: string): string {
    return asCommonNoun(titles.thing(name));
}

/** A change that was made, as a sentence without its full stop. */
export function done(change: Change, titles: Titles): string {
    const { lesson, part, both } = sayings(titles);
    switch (change.does) {
        case 'skip lesson': return `${lesson(change.lesson)} is left out`;
        case 'skip activity': return `${both(change.activity)} is left out`;
        case 'swap thing': return capital(`${thingInWords(titles, change.forThing.name)} instead of ${thingInWords(titles, change.thing.name)}${within(change, titles)}`);
        case 'swap lesson': return `${lesson(change.forLesson)} is taught instead of ${lesson(change.lesson)}`;
        case 'swap activity': return `${part(change.forActivity)} instead of ${both(change.activity)}`;
        case 'move lesson': return `${lesson(change.lesson)} now comes ${change.side} ${lesson(change.anchor)}`;
        case 'move activity': return `${both(change.activity)} now comes ${change.side} ${placeOf(change.anchor, change.activity, titles)}`;
        case 'split lesson': return `${lesson(change.lesson)} is split in two after ${part({ lesson: change.lesson, part: change.after, at: change.after.at })}`;
        case 'split activity': return `${both(change.activity)} is split in two after ${minutesInWords(change.minutes)}`;
        case 'join lessons': return `${lesson(change.lesson)} is joined with ${listing(change.others.map(lesson))}`;
        case 'join activities': return `${both(change.activity)} is joined with ${listing(change.others.map(other => placeOf(other, change.activity, titles)))}`;
        case 'insert lesson': return `${lesson(change.lesson)} is brought in ${change.side} ${lesson(change.anchor)}`;
        case 'insert activity': return `${part(change.activity)} is brought in ${change.side} ${both(change.anchor)}`;
        case 'retime lesson': return `${lesson(change.lesson)} takes ${minutesInWords(change.minutes)}`;
        case 'retime activity': return `${both(change.activity)} takes ${minutesInWords(change.minutes)}`;
        case 'add to lesson': return `To ${lesson(change.lesson)} is added: ${addedInWords(change.added, titles)}`;
        case 'add to activity': return `To ${both(change.activity)} is added: ${addedInWords(change.added, titles)}`;
    }
}

/** A change that could not be made, as what it asks for. */
export function asked(change: Change, titles: Titles): string {
    const { lesson, part, both } = sayings(titles);
    switch (change.does) {
        case 'skip lesson': return `Leave out ${lesson(change.lesson)}`;
        case 'skip activity': return `Leave out ${both(change.activity)}`;
        case 'swap thing': return `Use ${thingInWords(titles, change.forThing.name)} instead of ${thingInWords(titles, change.thing.name)}${within(change, titles)}`;
        case 'swap lesson': return `Teach ${lesson(change.forLesson)} instead of ${lesson(change.lesson)}`;
        case 'swap activity': return `Do ${part(change.forActivity)} instead of ${both(change.activity)}`;
        case 'move lesson': return `Move ${lesson(change.lesson)} to ${change.side} ${lesson(change.anchor)}`;
        case 'move activity': return `Move ${both(change.activity)} to ${change.side} ${placeOf(change.anchor, change.activity, titles)}`;
        case 'split lesson': return `Split ${lesson(change.lesson)} after ${part({ lesson: change.lesson, part: change.after, at: change.after.at })}`;
        case 'split activity': return `Split ${both(change.activity)} after ${minutesInWords(change.minutes)}`;
        case 'join lessons': return `Join ${lesson(change.lesson)} with ${listing(change.others.map(lesson))}`;
        case 'join activities': return `Join ${both(change.activity)} with ${listing(change.others.map(other => placeOf(other, change.activity, titles)))}`;
        case 'insert lesson': return `Bring in ${lesson(change.lesson)} ${change.side} ${lesson(change.anchor)}`;
        case 'insert activity': return `Bring in ${part(change.activity)} ${change.side} ${both(change.anchor)}`;
        case 'retime lesson': return `Give ${lesson(change.lesson)} ${minutesInWords(change.minutes)}`;
        case 'retime activity': return `Give ${both(change.activity)} ${minutesInWords(change.minutes)}`;
        case 'add to lesson': return `Add to ${lesson(change.lesson)}: ${addedInWords(change.added, titles)}`;
        case 'add to activity': return `Add to ${both(change.activity)}: ${addedInWords(change.added, titles)}`;
    }
}

interface Named {
    name: string;
}

function sayings(titles: Titles): { lesson: (mention: Named) => string; part: (mention: PartMention) => string; both: (mention: PartMention) => string } {
    const lesson = ({ name }: Named): string => quoted(titles.lesson(name));
    const part = (mention: PartMention): string => quoted(titles.part(mention));
    return { lesson, part, both: mention => `${part(mention)} of ${lesson(mention.lesson)}` };
}

/** With its lesson, unless that is the one the sentence speaks of. */
function placeOf(mention: PartMention, beside: PartMention, titles: Titles): string {
    const { part, both } = sayings(titles);
    return mention.lesson.name === beside.lesson.name ? part(mention) : both(mention);
}

function within({ within: where }: Extract<Change, { does: 'swap thing' }>, titles: Titles): string {
    if (!where) return '';
    const { lesson, both } = sayings(titles);
    return ` in ${where.part ? both({ lesson: where.lesson, part: where.part, at: where.part.at }) : lesson(where.lesson)}`;
}

function addedInWords({ parts, needs, introduces, practises, checks, steps, cautions, words: taught }: Added, titles: Titles): string {
    const objectives = (word: string, list: readonly Named[]): string[] => (list.length > 0 ? [`${word} ${listing(list.map(({ name }) => quoted(titles.objective(name))))}`] : []);
    const words = [
        ...taught.map(({ name }) => `the word ${quoted(name.replaceAll('-', ' '))}`), ...parts.map(({ title }) => quoted(title)),
        ...objectives('introducing', introduces), ...objectives('practising', practises), ...objectives('checking', checks),
        ...new Set(needs.flatMap(({ options }) => options[0]?.thing.name ?? []).map(name => thingInWords(titles, name))),
        ...howMany(steps.filter(({ word }) => word !== 'note').length, 'a step', 'steps'),
        ...howMany(steps.filter(({ word }) => word === 'note').length, 'a note', 'notes'),
        ...howMany(cautions.length, 'a caution', 'cautions')
    ];
    return words.length > 0 ? listing(words) : 'nothing';
}

function howMany(count: number, one: string, many: string): string[] {
    return count === 0 ? [] : [count === 1 ? one : `${count} ${many}`];
}
