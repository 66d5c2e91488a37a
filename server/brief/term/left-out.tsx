import type { JSX } from 'preact';
import type { Proposal } from '../../planning/schedule-figures.js';
import { placed, Title } from '../pieces/lead.js';
import { Message } from '../pieces/message.js';
import { Section } from '../pieces/section.js';
import type { View } from '../view.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { otherProblems } from './sentences.js';
import { termWords } from './words.js';

/** Lessons without a day, with what would make room; then whatever else does not hold. */
export function LeftOut({ term, view }: { term: TermFigures; view: View }): JSX.Element | null {
    const { unplaced, proposals } = term.schedule;
    const problems = otherProblems(term.schedule.problems);
    if (unplaced.length + problems.length === 0) return null;
    return (
        <Section id="term-left-out" title={unplaced.length > 0 ? termWords.leftOut : termWords.look}>
            {unplaced.length > 0 && (
                <>
                    <p>{termWords.leftOutWhy}</p>
                    <ul class="plain">
                        {unplaced.map(lesson => (
                            <li {...placed(lesson.place, view)}><Title place={lesson.place} view={view} text={lesson.title} /><span class="quiet">: <bdi>{lesson.why}</bdi></span></li>
                        ))}
                    </ul>
                </>
            )}
            {proposals.length > 0 && (
                <>
                    <h3>{termWords.waysOut}</h3>
                    <ul class="plain">{proposals.map(proposal => <Way proposal={proposal} />)}</ul>
                </>
            )}
            {unplaced.length > 0 && problems.length > 0 && <h3>{termWords.look}</h3>}
            {problems.length > 0 && (
                <ul class="plain">
                    {problems.map(problem => <li {...placed(problem.place, view)}><Message place={problem.place} view={view} text={problem.message} /></li>)}
                </ul>
            )}
        </Section>
    );
}

function Way({ proposal: { title, gives, givesUp, line } }: { proposal: Proposal }): JSX.Element {
    return (
        <li>
            <bdi>{title}</bdi>: <bdi>{gives}</bdi> <span>{termWords.givesUp}: <bdi>{givesUp}</bdi></span>
            {line && <p class="quiet">{termWords.toWrite}: <code>{line.text}</code></p>}
        </li>
    );
}
