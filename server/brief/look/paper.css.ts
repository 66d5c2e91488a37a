/** The papers that a page can be laid out for. */
export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];

/** Names of CSS Paged Media Module Level 3, section 7.1: 210 by 297 mm (ISO 216), 8.5 by 11 in. */
const sizes: Record<Paper, string> = { a4: 'A4', letter: 'letter' };

/** Fixes the paper; without one the printer's counts. */
export function paperStyles(paper: Paper | undefined): string {
    return paper === undefined ? '' : `@page { size: ${sizes[paper]}; }\n`;
}
