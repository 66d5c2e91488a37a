import type { WeekBrief } from '../planning/figures.js';
import { htmlPage, type PageOptions } from './html-page.js';
import { briefSections } from './sections.js';
import { weekTitle } from './sentences.js';

export type { PageOptions };

/** The brief as one HTML file that needs nothing else: no script, no font, no picture. */
export function briefPage(brief: WeekBrief, options: PageOptions = {}): string {
    return htmlPage(`${weekTitle(brief)}: ${brief.course.title}`, briefSections(brief, { root: options.root }), options);
}
