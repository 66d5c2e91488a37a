import type { JSX } from 'preact';
import type { Place } from '../../planning/figures.js';
import { placed } from '../pieces/lead.js';
import type { View } from '../view.js';
import { editionWords } from './words.js';

/** How either edition's places are told. */
export interface Views {
    old: View;
    new: View;
}

/** Where something stands in both editions, in small print. */
export function Places({ sides, views }: { sides: { old?: Place; new?: Place }; views: Views }): JSX.Element | null {
    const { old, new: now } = sides;
    if (!old && !now) return null;
    return (
        <p class="places">
            {old && <span class="address" {...placed(old, views.old)}>{editionWords.there.old}: <bdi>{views.old.addressInWords(old)}</bdi></span>}
            {old && now && <span class="address"> · </span>}
            {now && <span class="address" {...placed(now, views.new)}>{editionWords.there.new}: <bdi>{views.new.addressInWords(now)}</bdi></span>}
        </p>
    );
}
