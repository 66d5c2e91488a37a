import type { ChangesFigures } from '../../planning/ledger-figures.js';
import { htmlPage, type PageOptions } from '../html-page.js';
import { changesSections } from './sections.js';
import { changesTitle } from './sentences.js';

/** The changes as one HTML file that needs nothing else: no script, no font, no picture. */
export function changesPage(changes: ChangesFigures, options: PageOptions = {}): string {
    return htmlPage(changesTitle(changes), changesSections(changes, { root: options.root }), options);
}
