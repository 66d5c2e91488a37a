import type { Added, Change, PartMention, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Mention } from '@haversack/language/sheets/sheet';
import { counted, listing, quoted } from '@haversack/language/facts/wording';

/** How a mention is called now: its own name where it stays. */
export type Called = (mention: Mention) => string;

/** A change as its line of the language says it, its reason aside, names as `called` has them. */
export function changeLine(change: WrittenChange, called: Called = ({ name }) => name): string {
    const asOf = change.asOf ? ` as of edition ${change.asOf.edition}` : '';
    return `${wordsOf(change, called)}${asOf}`;
}

function wordsOf(change: Change, called: Called): string {
    const part = ({ lesson, part: inner }: PartMention): string => `${called(lesson)}.${called(inner)}`;
    switch (change.does) {
        case 'skip lesson': return `skip lesson ${called(change.lesson)}`;
        case 'skip activity': return `skip activity ${part(change.activity)}`;
        case 'swap thing': {
            const { within, ratio } = change;
            const where = within === undefined ? '' : ` in ${called(within.lesson)}${within.part ? `.${called(within.part)}` : ''}`;
            return `swap ${called(change.thing)} for ${called(change.forThing)}${ratio ? ` ${ratio.give} for ${ratio.replaces}` : ''}${where}`;
        }
        case 'swap lesson': return `swap lesson ${called(change.lesson)} for ${called(change.forLesson)}`;
        case 'swap activity': return `swap activity ${part(change.activity)} for ${part(change.forActivity)}`;
        case 'move lesson': return `move ${called(change.lesson)} ${change.side} ${called(change.anchor)}`;
        case 'move activity': return `move activity ${part(change.activity)} ${change.side} ${part(change.anchor)}`;
        case 'split lesson': return `split ${called(change.lesson)} after ${called(change.after)}`;
        case 'split activity': return `split activity ${part(change.activity)} after ${change.minutes} min`;
        case 'join lessons': return `join ${called(change.lesson)} with ${change.others.map(called).join(', ')}`;
        case 'join activities': return `join activity ${part(change.activity)} with ${change.others.map(part).join(', ')}`;
        case 'insert lesson': return `insert ${called(change.lesson)} ${change.side} ${called(change.anchor)}`;
        case 'insert activity': return `insert activity ${part(change.activity)} ${change.side} ${part(change.anchor)}`;
        case 'retime lesson': return `retime ${called(change.lesson)} to ${change.minutes} min`;
        case 'retime activity': return `retime activity ${part(change.activity)} to ${change.minutes} min`;
        case 'add to lesson': return `add to ${called(change.lesson)}${change.side && change.anchor ? ` ${change.side} ${called(change.anchor)}` : ''}`;
        case 'add to activity': return `add to activity ${part(change.activity)}`;
    }
}

/** What titles the things of a change have. */
export interface TitlesOfChange {
    lesson(name: string): string;
    part(mention: PartMention): string;
    thing(name: string): string;
}

/** What the adaptation wants, in words. */
export function wantsOf(change: Change, { lesson, part, thing }: TitlesOfChange): string {
    const lessonTitle = ({ name }: Mention): string => quoted(lesson(name));
    const partTitle = (mention: PartMention): string => `${quoted(part(mention))} of ${lessonTitle(mention.lesson)}`;
    switch (change.does) {
        case 'skip lesson': return `${lessonTitle(change.lesson)} is left out`;
        case 'skip activity': return `${partTitle(change.activity)} is left out`;
        case 'swap thing': {
            const within = change.within === undefined ? '' : ` in ${change.within.part ? partTitle({ lesson: change.within.lesson, part: change.within.part, at: change.within.part.at }) : lessonTitle(change.within.lesson)}`;
            return `${quoted(thing(change.forThing.name))} instead of ${quoted(thing(change.thing.name))}${within}`;
        }
        case 'swap lesson': return `${lessonTitle(change.forLesson)} instead of ${lessonTitle(change.lesson)}`;
        case 'swap activity': return `${partTitle(change.forActivity)} instead of ${partTitle(change.activity)}`;
        case 'move lesson': return `${lessonTitle(change.lesson)} is taught ${change.side} ${lessonTitle(change.anchor)}`;
        case 'move activity': return `${partTitle(change.activity)} comes ${change.side} ${partTitle(change.anchor)}`;
        case 'split lesson': return `${lessonTitle(change.lesson)} is split after ${quoted(part({ lesson: change.lesson, part: change.after, at: change.after.at }))}`;
        case 'split activity': return `${partTitle(change.activity)} is split after ${change.minutes} min`;
        case 'join lessons': return `${lessonTitle(change.lesson)} and ${listing(change.others.map(lessonTitle))} are one lesson`;
        case 'join activities': return `${partTitle(change.activity)} and ${listing(change.others.map(partTitle))} are one`;
        case 'insert lesson': return `${lessonTitle(change.lesson)} is taught too, ${change.side} ${lessonTitle(change.anchor)}`;
        case 'insert activity': return `${partTitle(change.activity)} comes too, ${change.side} ${partTitle(change.anchor)}`;
        case 'retime lesson': return `${lessonTitle(change.lesson)} takes ${change.minutes} min`;
        case 'retime activity': return `${partTitle(change.activity)} takes ${change.minutes} min`;
        case 'add to lesson': return `${lessonTitle(change.lesson)} also has ${addedInWords(change.added, thing)}`;
        case 'add to activity': return `${partTitle(change.activity)} also has ${addedInWords(change.added, thing)}`;
    }
}

/** "2 more steps, “Lentils” and “Sing”". */
function addedInWords({ steps, introduces, practises, checks, needs, cautions, parts }: Added, thing: (name: string) => string): string {
    const objectives = introduces.length + practises.length + checks.length;
    const words = [
        ...(steps.length > 0 ? [counted(steps.length, 'more step')] : []), ...(objectives > 0 ? [counted(objectives, 'more objective')] : []), ...(cautions.length > 0 ? [counted(cautions.length, 'more caution')] : []),
        ...needs.flatMap(({ options: [first] }) => (first ? [quoted(thing(first.thing.name))] : [])), ...parts.map(({ title }) => quoted(title))
    ];
    return words.length > 0 ? listing(words) : 'nothing more yet';
}
