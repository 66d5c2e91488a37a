/** The brief's HTML, piece by piece, in the order in which the week happens. */
import type { JSX } from 'preact';
import type { WeekBrief } from '../planning/figures.js';
import { leftOutAtEnd, leftOutBefore, type LeftOutLesson } from './left-out.js';
import { Lesson } from './lesson/lesson.js';
import { Buy } from './pieces/buy.js';
import { CautionSummary } from './pieces/caution-summary.js';
import { LeftOutLine, leftOutId } from './pieces/change.js';
import { FetchList } from './pieces/fetch.js';
import { Header } from './pieces/header.js';
import { LookAhead } from './pieces/look-ahead.js';
import { Shelf } from './pieces/shelf.js';
import { renderSections, type RenderedSection } from './rendered-section.js';
import { makeView, type BriefOptions, type View } from './view.js';

export type { BriefOptions };

/**
 * The sections that have something to say: week, fetch, shelf, buy, cautions, lesson-NAME, left-out-NAME, ahead. Elements with a place carry `data-uri` and `data-line` (zero-based); in the preview each such line
 * also holds a `button.lead` with the same attributes, which leads back by keyboard.
 */
export function briefSections(brief: WeekBrief, options: BriefOptions = {}): RenderedSection[] {
    const view = makeView(brief, options);
    return renderSections([
        ['week', <Header brief={brief} view={view} />],
        ['fetch', <FetchList brief={brief} view={view} />],
        ['shelf', <Shelf brief={brief} view={view} />],
        ['buy', <Buy brief={brief} view={view} />],
        ['cautions', <CautionSummary brief={brief} view={view} />],
        ...brief.lessons.flatMap((lesson, index): [string, JSX.Element][] => {
            const id = view.lessonId(index);
            return [...leftOutLines(leftOutBefore(brief, index), view), [id, <Lesson lesson={lesson} id={id} view={view} />]];
        }),
        ...leftOutLines(leftOutAtEnd(brief), view),
        ['ahead', <LookAhead brief={brief} view={view} />]
    ]);
}

function leftOutLines(lessons: readonly LeftOutLesson[], view: View): [string, JSX.Element][] {
    return lessons.map(lesson => [leftOutId(lesson), <LeftOutLine lesson={lesson} view={view} />]);
}
