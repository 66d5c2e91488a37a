import type { WeekBrief } from '@haversack/server/planning/figures';
import { briefStyles } from '@haversack/server/brief/styles';
import { briefSections } from '../../server/brief/sections.js';

/** The preview's sections in a bare page, under a policy as strict as the preview's: only the one stylesheet with the nonce. */
export function previewPage(brief: WeekBrief): string {
    const sections = briefSections(brief, { preview: true }).map(section => section.html).join('');
    return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-brief'"><title>Preview</title>`
        + `<style nonce="brief">${briefStyles()}</style></head><body><main class="brief">${sections}</main></body></html>`;
}
