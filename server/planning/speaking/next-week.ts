import { dayLabel, readDay } from '../calendar.js';
import type { Cue } from '../speaking-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import { say, thingInWords, type Telling } from './cues.js';
import { orderInWords } from './things.js';

/** What comes next, and what has to be ordered for it now. Nothing for a week that the plan does not have. */
export function nextWeekCues({ brief: { next, week, weeks, unplaced = [] } }: Telling): Cue[] {
    const over = unplaced.length > 0 ? [say(`The term has no day left for ${listing(unplaced.map(({ title }) => quoted(title)))}`)] : [];
    if (!next) return week === weeks ? [say('This is the last week of the plan'), ...over] : [];
    const day = next.from === undefined ? undefined : readDay(next.from);
    return [
        say(`${day ? `From ${dayLabel(day)} we have` : 'Then come'} ${next.lessons.length > 0 ? listing(next.lessons.map(({ title }) => quoted(title))) : 'no lessons'}`),
        ...(next.newThings.length > 0 ? [say(`New things to look out for: ${next.newThings.map(({ title, amount }) => `${thingInWords(title)}, ${amount.text}`).join('; ')}`)] : []),
        ...next.order.map(line => say(`Order now: ${orderInWords(line)}`, line.place)),
        ...over
    ];
}
