import { htmlPage, type PageOptions } from '../html-page.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { termSections } from './sections.js';
import { termTitle } from './sentences.js';

/** The term as one HTML file that needs nothing else: no script, no font, no picture. */
export function termPage(term: TermFigures, options: PageOptions = {}): string {
    return htmlPage(termTitle(term), termSections(term, { root: options.root }), options);
}
