import type { WeekBrief } from '@haversack/server/planning/figures';
import { briefStyles } from '@haversack/server/brief/styles';
import type { ChangesFigures } from '@haversack/server/planning/ledger-figures';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { changesSections } from '../../server/brief/changes/sections.js';
import { briefSections } from '../../server/brief/sections.js';
import { termSections } from '../../server/brief/term/sections.js';

/** The preview's sections in a bare page, under a policy as strict as the preview's: only the one stylesheet with the nonce. */
export function previewPage(brief: WeekBrief): string {
    return barePage(briefSections(brief, { preview: true }));
}

export function termPreviewPage(term: TermFigures): string {
    return barePage(termSections(term, { preview: true }));
}

export function changesPreviewPage(changes: ChangesFigures): string {
    return barePage(changesSections(changes, { preview: true }));
}

function barePage(sections: readonly { html: string }[]): string {
    return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-brief'"><title>Preview</title>`
        + `<style nonce="brief">${briefStyles()}</style></head><body><main class="brief">${sections.map(section => section.html).join('')}</main></body></html>`;
}
