import { cautionKind } from '@haversack/language/facts/cautions';
import type { Caution } from '@haversack/language/sheets/sheet';
import type { Difference } from '../edition-figures.js';
import type { Matched } from './matched.js';
import { placeIn, proseForPeople } from './plain.js';
import { difference } from './words.js';

interface Cautioned {
    uri: string;
    cautions: readonly Caution[];
}

/** Cautions that came, went or say something else; `of` tells whose they are where the group's title does not. */
export function cautionDifferences(matched: Matched, old: Cautioned, now: Cautioned, of = ''): Difference[] {
    const text = (caution: Caution, side: 'old' | 'new'): string => [title(caution.kind), caution.prose && proseForPeople(caution.prose, matched.titleIn(side))].filter(Boolean).join(': ');
    const before = old.cautions.map(caution => ({ caution, text: text(caution, 'old') }));
    const after = now.cautions.map(caution => ({ caution, text: text(caution, 'new') }));
    const gone = before.filter(one => !after.some(other => other.text === one.text));
    const added = after.filter(one => !before.some(other => other.text === one.text));
    const say = (words: string): string => (of === '' ? words : `${of}: ${words.charAt(0).toLowerCase()}${words.slice(1)}`);
    return [
        ...added.map(({ caution, text: words }) => {
            const former = gone.findIndex(one => one.caution.kind === caution.kind);
            const [was] = former < 0 ? [] : gone.splice(former, 1);
            const sides = { new: placeIn(now.uri, caution.at), old: was && placeIn(old.uri, was.caution.at) };
            return was ? difference('caution', say('Caution worded anew'), { ...sides, before: was.text, after: words }) : difference('caution', say(`A new caution: ${words}`), sides);
        }),
        ...gone.map(({ caution, text: words }) => difference('caution', say(`No longer a caution: ${words}`), { old: placeIn(old.uri, caution.at) }))
    ];
}

function title(kind: string): string {
    return cautionKind(kind)?.title ?? kind;
}
