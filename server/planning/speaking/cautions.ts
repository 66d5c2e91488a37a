import { deferral } from '@haversack/language/facts/cautions';
import type { CautionFigures } from '../figures.js';
import type { Cue } from '../speaking-figures.js';
import { listing, once } from '@haversack/language/facts/wording';
import { begun, ended, say, thingInWords, type Telling } from './cues.js';

/** Each kind of caution once, with its things; what is serious in this room first. Nothing where there are none. */
export function cautionCues({ brief, inWords }: Telling): Cue[] {
    const all = [...brief.cautions].sort((a, b) => Number(b.serious !== undefined) - Number(a.serious !== undefined));
    const kinds = new Map<string, CautionFigures[]>();
    for (const caution of all) {
        const key = JSON.stringify([caution.kind, caution.text]);
        kinds.set(key, [...kinds.get(key) ?? [], caution]);
    }
    const cues = [...kinds.values()].flatMap(cautions => {
        const [{ serious = '', text, place }] = cautions as [CautionFigures];
        const things = once(cautions.flatMap(({ thing }) => (thing === undefined ? [] : [titleOf(thing)])));
        const added = once(cautions.flatMap(({ prose, thing }) => (prose ? [ended(`${thing === undefined || things.length < 2 ? '' : `${begun(titleOf(thing))}: `}${inWords(prose)}`)] : [])));
        return [say(`${things.length > 0 ? `${listing(things)}. ` : ''}${[serious, text, ...added].filter(Boolean).join(' ')}`, place)];
    });
    return cues.length > 0 ? [...cues, say(deferral)] : [];

    function titleOf(name: string): string {
        const known = Object.hasOwn(brief.names, name) ? brief.names[name] : undefined;
        return known ? thingInWords(known.title, known.kind) : name;
    }
}
