/** The brief's HTML, piece by piece, in the order in which the week happens. */
import type { JSX } from 'preact';
import { renderToString } from 'preact-render-to-string';
import type { WeekBrief } from '../planning/figures.js';
import { textHash } from './hash.js';
import { Lesson } from './lesson/lesson.js';
import { Buy } from './pieces/buy.js';
import { CautionSummary } from './pieces/caution-summary.js';
import { FetchList } from './pieces/fetch.js';
import { Header } from './pieces/header.js';
import { LookAhead } from './pieces/look-ahead.js';
import { Shelf } from './pieces/shelf.js';
import { makeView, type BriefOptions } from './view.js';

export type { BriefOptions };

export interface RenderedSection {
    /** Also the id of its outermost element: week, fetch, shelf, buy, cautions, lesson-NAME, ahead. */
    id: string;
    html: string;
    /** Equal for equal html. */
    hash: string;
}

/**
 * The sections that have something to say. Elements with a place carry `data-uri` and `data-line` (zero-based); in the preview each such line
 * also holds a `button.lead` with the same attributes, which leads back by keyboard.
 */
export function briefSections(brief: WeekBrief, options: BriefOptions = {}): RenderedSection[] {
    const view = makeView(brief, options);
    const sections: [string, JSX.Element][] = [
        ['week', <Header brief={brief} view={view} />],
        ['fetch', <FetchList brief={brief} view={view} />],
        ['shelf', <Shelf brief={brief} view={view} />],
        ['buy', <Buy brief={brief} view={view} />],
        ['cautions', <CautionSummary brief={brief} view={view} />],
        ...brief.lessons.map((lesson, index): [string, JSX.Element] => {
            const id = view.lessonId(index);
            return [id, <Lesson lesson={lesson} id={id} view={view} />];
        }),
        ['ahead', <LookAhead brief={brief} view={view} />]
    ];
    return sections
        .map(([id, section]) => ({ id, html: renderToString(section) }))
        .filter(section => section.html !== '')
        .map(section => ({ ...section, hash: textHash(section.html) }));
}
