import type { JSX } from 'preact';
import { dayInWords } from '../days.js';
import { placed, Title } from '../pieces/lead.js';
import { WithChanges } from '../pieces/with-changes.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { findings, termAssumptions, termFacts } from './sentences.js';
import { termWords } from './words.js';

export function TermHeader({ term, view }: { term: TermFigures; view: View }): JSX.Element {
    const assumed = termAssumptions(term);
    return (
        <header id="term">
            {(term.course ?? term.class) && (
                <p class="course">
                    {term.course && <span {...placed(term.course.place, view)}><Title place={term.course.place} view={view} text={term.course.title} /></span>}
                    {term.course && term.class && ', '}
                    {term.class && <span {...placed(term.class.place, view)}><Title place={term.class.place} view={view} text={term.class.title} /></span>}
                </p>
            )}
            <h1>{termWords.term}</h1>
            <p class="facts">{termFacts(term)}</p>
            {term.today !== undefined && <p class="quiet">{`Seen from ${dayInWords(term.today)}.`}</p>}
            {term.adapted && <WithChanges adaptations={term.adapted.adaptations} view={view} />}
            <ul class="plain findings">{findings(term).map(({ text, section }) => <li><a href={`#${section}`}>{text}</a></li>)}</ul>
            {assumed.length > 0 && <p class="assumed">{words.assumed}: <bdi>{assumed.join(' ')}</bdi></p>}
        </header>
    );
}
