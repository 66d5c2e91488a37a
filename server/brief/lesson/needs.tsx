import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';
import type { ChangePlaces } from '../change-places.js';
import { Changes } from '../pieces/change.js';
import { AmountLine } from '../pieces/figure.js';
import { Title } from '../pieces/lead.js';
import type { View } from '../view.js';
import { words } from '../words.js';

/** What a lesson or one of its parts uses, with the amount for the whole class. */
export function Needs({ needs, changes, view }: { needs: (PartFigures['needs'][number] & { optional?: boolean })[]; changes: ChangePlaces; view: View }): JSX.Element {
    return (
        <ul class="things">
            {needs.map(need => (
                <AmountLine
                    amount={need.amount} view={view} place={need.place}
                    head={<>
                        <Title place={need.place} view={view} text={need.title} />
                        {need.each && <span class="quiet">, <bdi>{need.each}</bdi></span>}
                        {need.optional && <span class="quiet"> ({words.optional})</span>}
                    </>}
                >
                    <Changes told={changes.get(need)} view={view} />
                </AmountLine>
            ))}
        </ul>
    );
}
