import type { JSX } from 'preact';
import type { EditionFigures, ReappliedAdaptation, ReappliedChange } from '../../planning/edition-figures.js';
import { Labelled } from '../pieces/labelled.js';
import { Section } from '../pieces/section.js';
import { Places, type Views } from './places.js';
import { editionWords, outcomeWords } from './words.js';

/** What every change of every adaptation meets in the new edition: what needs a look first. */
export function Adaptations({ figures: { adaptations }, views }: { figures: EditionFigures; views: Views }): JSX.Element | null {
    if (adaptations.length === 0) return null;
    return (
        <Section id="editions-adaptations" title={editionWords.adaptations}>
            {adaptations.map(adaptation => <One adaptation={adaptation} views={views} />)}
        </Section>
    );
}

function One({ adaptation, views }: { adaptation: ReappliedAdaptation; views: Views }): JSX.Element {
    const { title, edition, side, summary, changes } = adaptation;
    return (
        <>
            <h3><bdi>{title}</bdi></h3>
            <p>{edition !== undefined && `${editionWords.writtenAgainst} ${edition}. `}{side === 'old' && `${editionWords.onlyOld} `}{summary}</p>
            {changes.some(({ outcome }) => outcome !== 'clean') && <ul class="plain">{changes.map(change => <Change change={change} side={side} views={views} />)}</ul>}
        </>
    );
}

function Change({ change, side, views }: { change: ReappliedChange; side: 'old' | 'new'; views: Views }): JSX.Element {
    const { outcome, settled, line, wants, newEdition, rewritten, place } = change;
    return (
        <li>
            {settled ? editionWords.settled : outcome === 'conflict' ? <strong>{outcomeWords.conflict}</strong> : outcomeWords[outcome]}: <code>{line}</code>
            {newEdition !== undefined && <Labelled label={editionWords.wants}><bdi>{wants}</bdi></Labelled>}
            {newEdition !== undefined && <Labelled label={editionWords.newEdition}><bdi>{newEdition}</bdi></Labelled>}
            {rewritten !== undefined && <Labelled label={editionWords.rewrite}><code>{rewritten}</code></Labelled>}
            {outcome !== 'clean' && <Places sides={{ [side]: place }} views={views} />}
        </li>
    );
}
