import type { BuyFigures, Source, ThingFigures, WeekBrief } from '../figures.js';
import type { Cue } from '../speaking-figures.js';
import { counted, listing, once } from '@haversack/language/facts/wording';
import { say, thingInWords, type Telling } from './cues.js';

/** More than these of a kit are not read out: who listens has the list. */
const mostReadOut = 6;

const from: Record<Source, string> = { kit: 'From the kit', home: 'From home', shop: 'From the shop', library: 'From the library', printed: 'To print' };

/** What to fetch, print, buy and order; what can stay where it is. */
export function thingCues({ brief }: Telling): Cue[] {
    const missing = brief.fetch.flatMap(({ things }) => things).filter(thing => thing.missing && !brief.buy.some(({ name }) => name === thing.name));
    const notNeeded = once(brief.lessons.flatMap(lesson => lesson.notNeeded.map(({ title }) => title)));
    return [
        ...(brief.fetch.length === 0 ? [say('There is nothing to fetch this week')] : brief.fetch.map(group => say(`${from[group.source]}: ${group.source === 'kit' ? kitInWords(group.things, brief) : group.things.map(withAmount).join('; ')}`))),
        ...missing.map(thing => say(`There are not enough ${thingInWords(thing.title, thing.kind)}: ${thing.missing?.text} more`, thing.place)),
        ...(brief.buy.length === 0 ? [say('There is nothing to buy or order for this week')] : brief.buy.map(line => say(`To buy or order: ${orderInWords(line)}`, line.place))),
        ...(notNeeded.length > 0 ? [say(`You may look for these and do not need them: ${listing(notNeeded.map(title => thingInWords(title)))}`)] : []),
        ...putAwayCues(brief)
    ];
}

/** The week has just begun: what it still uses goes only after its last meeting. */
function putAwayCues({ putAway }: WeekBrief): Cue[] {
    const days = once(putAway.map(({ after = 'this week' }) => after));
    return days.map(day => say(`After ${day} you can put away for good: ${listing(putAway.filter(({ after = 'this week' }) => after === day).map(({ title }) => thingInWords(title)))}`));
}

/** The new things of a long list, since the others are known by now; in the first week nothing is. */
function kitInWords(things: readonly ThingFigures[], { week }: WeekBrief): string {
    if (things.length <= mostReadOut) return things.map(withAmount).join('; ');
    const isNew = week === 1 ? [] : things.filter(thing => thing.isNew);
    const all = `${counted(things.length, 'thing')} on the list`;
    if (isNew.length === 0) return week === 1 ? all : `${all}, none of them new`;
    return isNew.length > mostReadOut ? `${all}, ${isNew.length} of them new` : `${all}. New this week: ${isNew.map(withAmount).join('; ')}`;
}

function withAmount(thing: ThingFigures): string {
    const or = thing.or.length > 0 ? ` or ${listing(thing.or.map(title => thingInWords(title)), 'or')}` : '';
    return `${thingInWords(thing.title, thing.kind)}${or}, ${thing.amount.text}${thing.optional ? ', if you like' : ''}`;
}

export function orderInWords({ title, missing, packsToBuy, when }: BuyFigures): string {
    const packs = packsToBuy?.length ? `, ${listing(packsToBuy.map(({ text }) => text))}` : '';
    return `${thingInWords(title)}, ${missing.text}${packs}: ${when}`;
}
