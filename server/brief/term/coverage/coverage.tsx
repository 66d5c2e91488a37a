import { Fragment, type JSX } from 'preact';
import type { CoverageFigures, CoverageObjective, Does } from '../../../planning/coverage-figures.js';
import { Key, KeyMark } from '../../drawing/marks.js';
import { placed, Title } from '../../pieces/lead.js';
import { Message } from '../../pieces/message.js';
import { Section } from '../../pieces/section.js';
import { sentence } from '../../sentences.js';
import type { View } from '../../view.js';
import { words } from '../../words.js';
import type { TermFigures } from '../../../planning/term-figures.js';
import { strandTitle } from '../sentences.js';
import { allDoes, doesHeads, doesWords, termWords } from '../words.js';
import { CoverageGrid, gridShapes } from './grid.js';
import { gridsOf, strandsOf } from './grids.js';

export function Coverage({ term, view }: { term: TermFigures; view: View }): JSX.Element | null {
    const { coverage } = term;
    if (coverage.objectives.length === 0) return null;
    const strands = strandsOf(coverage);
    return (
        <Section id="term-coverage" title={termWords.coverage}>
            {coverage.objectives.some(objective => objective.cells.length > 0) ? <Key>{allDoes.map(does => <KeyMark mark={does}>{doesWords[does]}</KeyMark>)}</Key> : <p>{termWords.noObjectives}</p>}
            {strands.map(strand => {
                const title = strandTitle(strand.title, strands.length);
                return (
                    <div class="strand">
                        <h3><bdi>{title}</bdi></h3>
                        {strand.lessons.length === 0 && <p>{termWords.inNoLesson}</p>}
                        {gridShapes.map(shape => gridsOf(strand, shape.most).map((grid, index, all) => (
                            <CoverageGrid grid={grid} shape={shape} title={all.length > 1 ? `${title}, ${index + 1} of ${all.length}` : title} view={view} />
                        )))}
                        <details class="in-words">
                            <summary>{words.inWords}<span class="unseen">: <bdi>{title}</bdi></span></summary>
                            <ul class="plain">{strand.objectives.map(objective => <ObjectiveLine objective={objective} coverage={coverage} view={view} />)}</ul>
                        </details>
                    </div>
                );
            })}
            <Gaps coverage={coverage} view={view} />
        </Section>
    );
}

function ObjectiveLine({ objective, coverage, view }: { objective: CoverageObjective; coverage: CoverageFigures; view: View }): JSX.Element {
    return (
        <li {...placed(objective.place, view)}>
            <Title place={objective.place} view={view} text={objective.title} />
            <p class="quiet"><bdi>{sentence(objective.text)}</bdi></p>
            {allDoes.filter(does => objective.cells.some(cell => cell.does.includes(does)))
                .map(does => <p>{doesHeads[does]}: <Lessons objective={objective} does={does} coverage={coverage} view={view} /></p>)}
        </li>
    );
}

function Lessons({ objective, does, coverage, view }: { objective: CoverageObjective; does: Does; coverage: CoverageFigures; view: View }): JSX.Element {
    return (
        <>
            {objective.cells.filter(cell => cell.does.includes(does)).map((cell, index) => {
                const lesson = coverage.lessons.find(one => one.index === cell.lesson);
                return (
                    <Fragment>
                        {index > 0 && '; '}
                        <span {...placed(cell.place, view)}><Title place={cell.place} view={view} text={lesson?.title ?? ''} />{lesson?.week !== undefined && <span class="quiet">, week {lesson.week}</span>}</span>
                    </Fragment>
                );
            })}
        </>
    );
}

function Gaps({ coverage, view }: { coverage: CoverageFigures; view: View }): JSX.Element {
    return (
        <>
            <h3>{termWords.gaps}</h3>
            {coverage.gaps.length === 0
                ? <p>{termWords.noGaps}</p>
                : <ul class="plain">{coverage.gaps.map(gap => <li {...placed(gap.place, view)}><Message place={gap.place} view={view} text={gap.message} /></li>)}</ul>}
        </>
    );
}
