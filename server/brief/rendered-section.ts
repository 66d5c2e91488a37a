import type { JSX } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { textHash } from './hash.js';

export interface RenderedSection {
    /** Also the id of its outermost element. */
    id: string;
    html: string;
    /** Equal for equal html. */
    hash: string;
}

/** The sections that have something to say. */
export function renderSections(sections: readonly (readonly [id: string, section: JSX.Element])[]): RenderedSection[] {
    return sections
        .map(([id, section]) => ({ id, html: renderToString(section) }))
        .filter(section => section.html !== '')
        .map(section => ({ ...section, hash: textHash(section.html) }));
}
