import type { JSX } from 'preact';
import type { CautionFigures } from '../../planning/figures.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { Lead, placed, Title } from './lead.js';
import { ProseText } from './prose.js';

/** One caution as a list item: the word itself, the thing, the usual advice and what the writer added. */
export function CautionLine({ caution, view }: { caution: CautionFigures; view: View }): JSX.Element {
    return (
        <li class="caution" {...placed(caution.place, view)}>
            <span class="label"><Lead place={caution.place} view={view}>{words.caution}</Lead></span>
            <div class="told">
                <p>{caution.thing !== undefined && <><Title view={view} text={view.titleOf(caution.thing)} />: </>}<bdi>{caution.text}</bdi></p>
                {caution.prose && <ProseText prose={caution.prose} view={view} />}
            </div>
        </li>
    );
}

export function Cautions({ cautions, view }: { cautions: CautionFigures[]; view: View }): JSX.Element | null {
    return cautions.length ? <ul class="steps">{cautions.map(caution => <CautionLine caution={caution} view={view} />)}</ul> : null;
}
